package main

import (
	"bytes"
	"context"
	"database/sql"
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strconv"
	"testing"

	"wakeledger/pipeline"
	"wakeledger/pipeline/store"
	"wakeledger/reports/bundle"
	"wakeledger/reports/gather"
	"wakeledger/testdata/bench"
)

// must runs a command and adds its time to total. A process's peak begins with the
// size of the one that starts it, so that this one has others write what is large.
func must(b *testing.B, total *float64, name string, args ...string) (peakMiB float64) {
	b.Helper()
	c, err := bench.Run(name, args...)
	if err != nil {
		b.Fatal(err)
	}
	*total += c.Seconds
	return c.PeakMiB
}

func orFatal(b *testing.B, err error) {
	b.Helper()
	if err != nil {
		b.Fatal(err)
	}
}

// load runs the whole command in a new season file.
func load(b *testing.B, total *float64, dir string, logs ...string) (peakMiB float64) {
	b.Helper()
	db := filepath.Join(dir, "bench.duckdb")
	os.Remove(db)
	return must(b, total, "wakeledger", append([]string{"--db", db, "load"}, logs...)...)
}

// readCSV runs the database's own reader into a typed table of a new file, with
// the order of the rows kept as is its default, or not.
func readCSV(b *testing.B, total *float64, dir, log string, ordered bool) {
	b.Helper()
	name := filepath.Join(dir, "own.duckdb")
	os.Remove(name)
	must(b, total, "own-reader", name, log, fmt.Sprint(ordered))
}

// ownReader is the command own-reader.
func ownReader() {
	types := ""
	for i, c := range bench.Columns {
		if i > 0 {
			types += ", "
		}
		types += fmt.Sprintf("'%s': '%s'", c.Heading, c.Type)
	}
	db, err := store.Open(context.Background(), os.Args[1])
	if err == nil {
		var rows *sql.Rows
		rows, err = db.Query(context.Background(), fmt.Sprintf(
			"SET preserve_insertion_order = %s; CREATE TABLE typed AS SELECT * FROM read_csv('%s', header = true, "+
				"columns = {%s})",
			os.Args[3], os.Args[2], types))
		if err == nil {
			for rows.Next() {
			}
			err = errors.Join(rows.Err(), rows.Close(), db.Close())
		}
	}
	leave(err)
}

// countLines is the command count-lines: as plain a scan of a file as there is.
func countLines() {
	f, err := os.Open(os.Args[1])
	block := make([]byte, 64<<10)
	for n, got := 0, 0; err == nil; n += bytes.Count(block[:got], []byte{'\n'}) {
		got, err = f.Read(block)
	}
	leave(notEnd(err))
}

// readXML is the command read-xml: the standard library's pass over a file's tags.
func readXML() {
	f, err := os.Open(os.Args[1])
	if err == nil {
		for d := xml.NewDecoder(f); err == nil; {
			_, err = d.RawToken()
		}
	}
	leave(notEnd(err))
}

func notEnd(err error) error {
	if errors.Is(err, io.EOF) {
		return nil
	}
	return err
}

func leave(err error) {
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
			orFatal(b, bench.CSV(log, n))
			var ours, own, unordered, peak, first float64
			readCSV(b, &first, dir, log, true) // the file is in the system's cache from here on
			for b.Loop() {
				peak = max(peak, load(b, &ours, dir, log))
				readCSV(b, &own, dir, log, true)
				readCSV(b, &unordered, dir, log, false)
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
	var making float64
	must(b, &making, "write-workbook", log, fmt.Sprint(n))
	var ours, other, peak float64
	for b.Loop() {
		peak = max(peak, load(b, &ours, dir, log))
		c, err := bench.Openpyxl(log)
		if err != nil {
			b.Logf("no ratio to openpyxl: %v", err)
		}
		other += c.Seconds
	}
	b.ReportMetric(other/ours, "of-openpyxl")
	b.ReportMetric(float64(n*b.N)/ours, "rows/s")
	b.ReportMetric(peak, "peak-MiB")
	b.ReportMetric(0, "ns/op")
}

// A season of one-second fixes with the log of its legs: loading both, and the
// first question, which makes the season's tables, against two reads of the
// track's file: counting its lines, and the standard library's pass over its tags.
func BenchmarkLoadTrack(b *testing.B) {
	for _, trips := range []int{6, 60} {
		b.Run(fmt.Sprint(trips, "trips"), func(b *testing.B) {
			dir := b.TempDir()
			gpx, legs := filepath.Join(dir, "season.gpx"), filepath.Join(dir, "legs.csv")
			fixes, err := bench.Track(gpx, legs, trips)
			orFatal(b, err)
			var ours, ask, lines, tags, peak float64
			for b.Loop() {
				peak = max(peak, load(b, &ours, dir, gpx, legs))
				peak = max(peak, must(b, &ask, "wakeledger", "--db",
					filepath.Join(dir, "bench.duckdb"), "ask", "track-speed"))
				must(b, &lines, "count-lines", gpx)
				must(b, &tags, "read-xml", gpx)
			}
			b.ReportMetric((ours+ask)/lines, "x-line-count")
			b.ReportMetric((ours+ask)/tags, "x-xml-pass")
			b.ReportMetric(float64(fixes*b.N)/(ours+ask), "fixes/s")
			b.ReportMetric(peak, "peak-MiB")
			b.ReportMetric(0, "ns/op")
		})
	}
}

// The club's page of boats of 40 trips each, from the bundles that 'export club'
// writes: the whole command, and its memory at ten times the boats.
func BenchmarkClub(b *testing.B) {
	const trips = 40
	dir := b.TempDir()
	var seconds float64
	must(b, &seconds, "share-boats", dir, "300", fmt.Sprint(trips))
	bundles, err := filepath.Glob(filepath.Join(dir, "*.zip"))
	if err != nil || len(bundles) != 300 {
		b.Fatal(len(bundles), err)
	}
	for _, boats := range []int{30, 300} {
		b.Run(fmt.Sprint(boats, "boats"), func(b *testing.B) {
			var seconds, peak float64
			for b.Loop() {
				args := append([]string{"report", "club", "--out", filepath.Join(dir, "club.html")}, bundles[:boats]...)
				peak = max(peak, must(b, &seconds, "wakeledger", args...))
			}
			b.ReportMetric(seconds/float64(b.N), "s/page")
			b.ReportMetric(float64(boats*trips*b.N)/seconds, "trips/s")
			b.ReportMetric(peak, "peak-MiB")
			b.ReportMetric(0, "ns/op")
		})
	}
}

// writeWorkbook is the command write-workbook: FILE, rows.
func writeWorkbook() {
	n, err := strconv.Atoi(os.Args[2])
	leave(errors.Join(err, bench.Workbook(os.Args[1], n)))
}

// shareBoats is the command share-boats: DIR, boats, trips of each.
func shareBoats() {
	boats, err1 := strconv.Atoi(os.Args[2])
	trips, err2 := strconv.Atoi(os.Args[3])
	err := errors.Join(err1, err2)
	for boat := range boats {
		if err == nil {
			err = share(filepath.Join(os.Args[1], fmt.Sprintf("boat-%d.zip", boat)), boat, trips)
		}
	}
	leave(err)
}

// share writes what one boat of its own season shares.
func share(name string, boat, trips int) (err error) {
	ctx := context.Background()
	log := name + ".csv"
	if err := bench.Boat(log, boat, trips); err != nil {
		return err
	}
	s, err := pipeline.Open(ctx, "", pipeline.Config{Boat: fmt.Sprint("boat ", boat)})
	if err != nil {
		return err
	}
	defer func() { err = errors.Join(err, s.DB.Close(), os.Remove(log)) }()
	if _, err := s.Load(ctx, []string{log}); err != nil {
		return err
	}
	if err := s.Derive(ctx); err != nil {
		return err
	}
	season, _, err := gather.Share(ctx, s.DB, fmt.Sprint("boat ", boat),
		gather.ShareOptions{ID: fmt.Sprint("boat-", boat), Top: gather.DefaultTop}, nil)
	if err != nil {
		return err
	}
	f, err := os.Create(name)
	if err != nil {
		return err
	}
	return errors.Join(bundle.Write(f, season), f.Close())
}
