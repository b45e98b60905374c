package main

import (
	"bufio"
	"context"
	"database/sql"
	"errors"
	"fmt"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"syscall"
	"testing"
	"time"

	"github.com/xuri/excelize/v2"

	"wakeledger/pipeline/store"
)

// columns of the logs that the benchmarks read, with the type that the
// database's own reader is told.
var benchColumns = []struct{ heading, typ string }{
	{"Trip", "VARCHAR"}, {"Boat", "VARCHAR"}, {"Date", "DATE"}, {"Start", "TIME"}, {"End", "TIME"}, {"Speed (kn)", "DOUBLE"},
	{"Lat", "DOUBLE"}, {"Lon", "DOUBLE"}, {"SST (C)", "DOUBLE"}, {"Approach", "VARCHAR"}, {"Line", "VARCHAR"}, {"Lure", "VARCHAR"},
	{"Lure weight (g)", "DOUBLE"}, {"Colour", "VARCHAR"}, {"Drag (kg)", "DOUBLE"}, {"Setback (m)", "DOUBLE"},
	{"Strikes", "BIGINT"}, {"Hooked", "BIGINT"}, {"Landed", "BIGINT"}, {"Released", "BIGINT"},
}

// benchRows calls put with each row: five legs a trip, four lines a leg.
func benchRows(n int, put func(row []string)) {
	rng := rand.New(rand.NewPCG(1, 2))
	lures := []string{"Blue Ferrule", "Tin Gusset", "Pintuck", "Treadle", "Basting Iron"}
	places := []string{"port long", "port short", "starboard short", "starboard long"}
	day := time.Date(1990, 1, 1, 0, 0, 0, 0, time.UTC)
	row := make([]string, len(benchColumns))
	for i := range n {
		line, leg, trip := i%4, i/4%5, i/20
		if line == 0 {
			start := 360 + leg*120
			end := start + 30 + rng.IntN(60)
			row[0], row[1] = fmt.Sprint("T", trip), fmt.Sprint("Boat ", trip%7)
			row[2] = day.AddDate(0, 0, trip/7).Format("2006-01-02")
			row[3], row[4] = fmt.Sprintf("%02d:%02d", start/60, start%60), fmt.Sprintf("%02d:%02d", end/60, end%60)
			row[5] = fmt.Sprintf("%.1f", 6+rng.Float64()*10)
			row[6], row[7] = fmt.Sprintf("%.4f", 30+5*rng.Float64()), fmt.Sprintf("%.4f", -140-5*rng.Float64())
			row[8], row[9] = fmt.Sprintf("%.1f", 16+8*rng.Float64()), "straight"
		}
		row[10], row[11] = places[line], lures[rng.IntN(len(lures))]
		row[12], row[13] = fmt.Sprint(150+50*rng.IntN(12)), []string{"blue", "pink", "black"}[rng.IntN(3)]
		row[14], row[15] = fmt.Sprintf("%.1f", 8+rng.Float64()*8), fmt.Sprint(40+rng.IntN(160))
		strike := rng.IntN(10) / 9
		hooked := strike * (rng.IntN(10) / 3 % 2)
		row[16], row[17], row[18], row[19] = fmt.Sprint(strike), fmt.Sprint(hooked), fmt.Sprint(hooked*rng.IntN(2)), "0"
		put(row)
	}
}

func benchCSV(b *testing.B, name string, n int) {
	b.Helper()
	f, err := os.Create(name)
	if err != nil {
		b.Fatal(err)
	}
	w := bufio.NewWriter(f)
	for i, c := range benchColumns {
		fmt.Fprint(w, c.heading, [2]string{",", "\n"}[i/(len(benchColumns)-1)])
	}
	benchRows(n, func(row []string) {
		for i, cell := range row {
			fmt.Fprint(w, cell, [2]string{",", "\n"}[i/(len(row)-1)])
		}
	})
	if err := w.Flush(); err != nil {
		b.Fatal(err)
	}
	f.Close()
}

// timed runs a command of this package's, or the program that WAKELEDGER_BIN
// names, in a process of its own. Its peak memory is that process's: this one
// stays small, for a child's count begins with its parent's.
func timed(b *testing.B, name string, args ...string) (seconds, peakMiB float64) {
	b.Helper()
	if bin := os.Getenv("WAKELEDGER_BIN"); bin != "" && name == "wakeledger" {
		name = bin
	}
	c := exec.Command(name, args...)
	began := time.Now()
	if out, err := c.CombinedOutput(); err != nil {
		b.Fatalf("%v\n%s", err, out)
	}
	return time.Since(began).Seconds(), float64(c.ProcessState.SysUsage().(*syscall.Rusage).Maxrss) / 1024
}

// load runs the whole command in a new season file.
func load(b *testing.B, dir, log string) (seconds, peakMiB float64) {
	b.Helper()
	db := filepath.Join(dir, "bench.duckdb")
	os.Remove(db)
	return timed(b, "wakeledger", "--db", db, "load", log)
}

// readCSV runs the database's own reader into a typed table of a new file, with
// the order of the rows kept as is its default, or not.
func readCSV(b *testing.B, dir, log string, ordered bool) float64 {
	b.Helper()
	name := filepath.Join(dir, "own.duckdb")
	os.Remove(name)
	seconds, _ := timed(b, "own-reader", name, log, fmt.Sprint(ordered))
	return seconds
}

// ownReader is the command own-reader.
func ownReader() {
	types := ""
	for i, c := range benchColumns {
		if i > 0 {
			types += ", "
		}
		types += fmt.Sprintf("'%s': '%s'", c.heading, c.typ)
	}
	db, err := store.Open(context.Background(), os.Args[1])
	if err == nil {
		var rows *sql.Rows
		rows, err = db.Query(context.Background(), fmt.Sprintf(
			"SET preserve_insertion_order = %s; CREATE TABLE typed AS SELECT * FROM read_csv('%s', header = true, columns = {%s})",
			os.Args[3], os.Args[2], types))
		if err == nil {
			for rows.Next() {
			}
			err = errors.Join(rows.Err(), rows.Close(), db.Close())
		}
	}
	if err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
}

// Loading a flat CSV, every cell checked, against the database's own reader in
// the same run: the ratio of their rates, and the peak memory of the command.
func BenchmarkLoadCSV(b *testing.B) {
	for _, n := range []int{100_000, 1_000_000} {
		b.Run(fmt.Sprint(n), func(b *testing.B) {
			dir := b.TempDir()
			log := filepath.Join(dir, "flat.csv")
			benchCSV(b, log, n)
			readCSV(b, dir, log, true) // the file is in the system's cache from here on
			var ours, own, unordered, peak float64
			for b.Loop() {
				s, p := load(b, dir, log)
				ours, peak = ours+s, max(peak, p)
				own += readCSV(b, dir, log, true)
				unordered += readCSV(b, dir, log, false)
			}
			b.ReportMetric(own/ours, "of-read_csv")
			b.ReportMetric(unordered/ours, "of-unordered-read_csv")
			b.ReportMetric(float64(n*b.N)/ours, "rows/s")
			b.ReportMetric(peak, "peak-MiB")
			b.ReportMetric(0, "ns/op")
		})
	}
}

// Loading a workbook against openpyxl's read-only mode, where that is installed.
func BenchmarkLoadWorkbook(b *testing.B) {
	const n = 100_000
	dir := b.TempDir()
	log := filepath.Join(dir, "flat.xlsx")
	f := excelize.NewFile()
	// a stream leaves the dimension at one cell, which is all that openpyxl would then read
	if err := f.SetSheetDimension("Sheet1", fmt.Sprint("A1:T", n+1)); err != nil {
		b.Fatal(err)
	}
	w, err := f.NewStreamWriter("Sheet1")
	if err != nil {
		b.Fatal(err)
	}
	put := func(at int, row []string) {
		cells := make([]any, len(row))
		for i, c := range row {
			cells[i] = c
			if v := 0.0; len(c) > 0 && c[0] <= '9' {
				if k, err := fmt.Sscanf(c+"\n", "%f\n", &v); k == 1 && err == nil && i != 2 && i != 3 && i != 4 {
					cells[i] = v
				}
			}
		}
		if err := w.SetRow(fmt.Sprint("A", at), cells); err != nil {
			b.Fatal(err)
		}
	}
	head := make([]string, len(benchColumns))
	for i, c := range benchColumns {
		head[i] = c.heading
	}
	put(1, head)
	at := 1
	benchRows(n, func(row []string) { at++; put(at, row) })
	if err := w.Flush(); err != nil {
		b.Fatal(err)
	}
	if err := f.SaveAs(log); err != nil {
		b.Fatal(err)
	}
	interpreter := "python3"
	if exec.Command("/usr/bin/python3", "-c", "import openpyxl").Run() == nil {
		interpreter = "/usr/bin/python3" // Debian's, whose packages another in the path does not see
	}
	python := "import openpyxl,sys\nn=0\nfor r in openpyxl.load_workbook(sys.argv[1],read_only=True).worksheets[0].iter_rows(values_only=True): n+=1\nassert n>=100000"
	var ours, other, peak float64
	for b.Loop() {
		s, p := load(b, dir, log)
		ours, peak = ours+s, max(peak, p)
		began := time.Now()
		if err := exec.Command(interpreter, "-c", python, log).Run(); err != nil {
			b.Logf("openpyxl is not installed (%v): no ratio to it", err)
			continue
		}
		other += time.Since(began).Seconds()
	}
	if other > 0 {
		b.ReportMetric(other/ours, "of-openpyxl")
	}
	b.ReportMetric(float64(n*b.N)/ours, "rows/s")
	b.ReportMetric(peak, "peak-MiB")
	b.ReportMetric(0, "ns/op")
}
