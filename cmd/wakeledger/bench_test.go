package main

import (
	"bufio"
	"context"
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

// load runs the whole command in a new season file.
func load(b *testing.B, dir, log string) (seconds, peakMiB float64) {
	b.Helper()
	db := filepath.Join(dir, "bench.duckdb")
	os.Remove(db)
	c := exec.Command("wakeledger", "--db", db, "load", log)
	if bin := os.Getenv("WAKELEDGER_BIN"); bin != "" {
		c = exec.Command(bin, c.Args[1:]...)
	}
	began := time.Now()
	if out, err := c.CombinedOutput(); err != nil {
		b.Fatalf("%v\n%s", err, out)
	}
	return time.Since(began).Seconds(), float64(c.ProcessState.SysUsage().(*syscall.Rusage).Maxrss) / 1024
}

// readCSV is the database's own reader into a typed table of a new file.
func readCSV(b *testing.B, dir, log string) float64 {
	b.Helper()
	name := filepath.Join(dir, "own.duckdb")
	os.Remove(name)
	types := ""
	for i, c := range benchColumns {
		types += fmt.Sprintf("%s'%s': '%s'", [2]string{", ", ""}[min(1, 1/(i+1))], c.heading, c.typ)
	}
	began := time.Now()
	db, err := store.Open(context.Background(), name)
	if err != nil {
		b.Fatal(err)
	}
	rows, err := db.Query(context.Background(), fmt.Sprintf(
		"CREATE TABLE typed AS SELECT * FROM read_csv('%s', header = true, columns = {%s})", log, types))
	if err != nil {
		b.Fatal(err)
	}
	for rows.Next() {
	}
	rows.Close()
	if err := db.Close(); err != nil {
		b.Fatal(err)
	}
	return time.Since(began).Seconds()
}

// Loading a flat CSV, every cell checked, against the database's own reader in
// the same run: the ratio of their rates, and the peak memory of the command.
func BenchmarkLoadCSV(b *testing.B) {
	for _, n := range []int{100_000, 1_000_000} {
		b.Run(fmt.Sprint(n), func(b *testing.B) {
			dir := b.TempDir()
			log := filepath.Join(dir, "flat.csv")
			benchCSV(b, log, n)
			readCSV(b, dir, log) // the file is in the system's cache from here on
			var ours, own, peak float64
			for b.Loop() {
				s, p := load(b, dir, log)
				ours, peak = ours+s, max(peak, p)
				own += readCSV(b, dir, log)
			}
			b.ReportMetric(own/ours, "of-read_csv")
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
	python := "import openpyxl,sys\nn=0\nfor r in openpyxl.load_workbook(sys.argv[1],read_only=True).worksheets[0].iter_rows(values_only=True): n+=1\nassert n>=100000"
	var ours, other, peak float64
	for b.Loop() {
		s, p := load(b, dir, log)
		ours, peak = ours+s, max(peak, p)
		began := time.Now()
		if err := exec.Command("python3", "-c", python, log).Run(); err != nil {
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
