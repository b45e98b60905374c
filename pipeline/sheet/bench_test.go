package sheet

import (
	"bytes"
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"testing"

	"github.com/xuri/excelize/v2"
)

const (
	benchCols     = 20
	benchCSVRows  = 200000
	benchBookRows = 20000
)

// benchCSV writes a text file of invented legs, some 120 bytes a row.
func benchCSV(b *testing.B) string {
	var buf bytes.Buffer
	for i := range benchCSVRows {
		for c := range benchCols {
			if c > 0 {
				buf.WriteByte(',')
			}
			fmt.Fprintf(&buf, "%d", (i+1)*(c+7)%100003)
		}
		buf.WriteByte('\n')
	}
	return write(b, "log.csv", buf.String())
}

// benchBook writes a workbook of numbers and texts.
func benchBook(b *testing.B) string {
	f := excelize.NewFile()
	w, err := f.NewStreamWriter("Sheet1")
	if err != nil {
		b.Fatal(err)
	}
	row := make([]any, benchCols)
	for i := range benchBookRows {
		for c := range row {
			row[c] = float64(i*(c+7)%100003) / 8
			if c%4 == 0 {
				row[c] = fmt.Sprintf("lure %d", i%997)
			}
		}
		if err := w.SetRow(fmt.Sprintf("A%d", i+1), row); err != nil {
			b.Fatal(err)
		}
	}
	path := filepath.Join(b.TempDir(), "log.xlsx")
	if err := errors.Join(w.Flush(), f.SaveAs(path), f.Close()); err != nil {
		b.Fatal(err)
	}
	return path
}

func benchRows(b *testing.B, path string, want int) {
	b.ReportAllocs()
	for b.Loop() {
		book, err := Open(path, Options{})
		if err != nil {
			b.Fatal(err)
		}
		r, err := book.Rows(0)
		if err != nil {
			b.Fatal(err)
		}
		n := 0
		for r.Next() {
			n++
		}
		if err := errors.Join(r.Err(), r.Close(), book.Close()); err != nil || n != want {
			b.Fatalf("%d rows, %v", n, err)
		}
	}
	b.ReportMetric(float64(want)*float64(b.N)/b.Elapsed().Seconds(), "rows/s")
}

func BenchmarkCSV(b *testing.B)      { benchRows(b, benchCSV(b), benchCSVRows) }
func BenchmarkWorkbook(b *testing.B) { benchRows(b, benchBook(b), benchBookRows) }

// BenchmarkScan is the part of BenchmarkWorkbook that excelize does not do.
func BenchmarkScan(b *testing.B) {
	path := benchBook(b)
	book, err := Open(path, Options{})
	if err != nil {
		b.Fatal(err)
	}
	defer func() { _ = book.Close() }()
	wb, ok := book.(*workbook)
	if !ok {
		b.Fatal("not a workbook")
	}
	for b.Loop() {
		if _, err := scan(wb.sheets[0].file, wb.strings); err != nil {
			b.Fatal(err)
		}
	}
}

// BenchmarkStandardCSV is encoding/csv alone, to compare BenchmarkCSV with.
func BenchmarkStandardCSV(b *testing.B) {
	path := benchCSV(b)
	b.ReportAllocs()
	for b.Loop() {
		f, err := os.Open(path)
		if err != nil {
			b.Fatal(err)
		}
		r := csv.NewReader(f)
		r.ReuseRecord = true
		for err == nil {
			_, err = r.Read()
		}
		if !errors.Is(err, io.EOF) {
			b.Fatal(err)
		}
		if err := f.Close(); err != nil {
			b.Fatal(err)
		}
	}
}
