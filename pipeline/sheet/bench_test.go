package sheet

import (
	"bytes"
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"
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

// benchBook writes a workbook of numbers and texts, the numbers as dates or times
// if styled.
func benchBook(b *testing.B, styled bool) string {
	f := excelize.NewFile()
	var styles [3]int
	for i, id := range []int{14, 20, 46} {
		var err error
		if styles[i], err = f.NewStyle(&excelize.Style{NumFmt: id}); err != nil {
			b.Fatal(err)
		}
	}
	w, err := f.NewStreamWriter("Sheet1")
	if err != nil {
		b.Fatal(err)
	}
	row := make([]any, benchCols)
	for i := range benchBookRows {
		for c := range row {
			row[c] = float64(i*(c+7)%100003) / 8
			if styled {
				row[c] = excelize.Cell{StyleID: styles[c%3], Value: row[c]}
			}
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
func BenchmarkWorkbook(b *testing.B) { benchRows(b, benchBook(b, false), benchBookRows) }

// BenchmarkODS is a book of as many rows and columns as BenchmarkWorkbook.
func BenchmarkODS(b *testing.B) {
	var rows strings.Builder
	for i := range benchBookRows {
		rows.WriteString("<t:table-row>")
		for c := range benchCols {
			fmt.Fprintf(&rows,
				`<t:table-cell t:style-name="ce%d" o:value-type="float" o:value="%d" c:value-type="float"><x:p>%d</x:p></t:table-cell>`, c, i*(c+7)%100003, i)
		}
		rows.WriteString("</t:table-row>")
	}
	benchRows(b, writeZip(b, "log.ods", odsParts("", oneTable(rows.String()))), benchBookRows)
}

// BenchmarkBIFF reads the stream of a workbook of that shape.
func BenchmarkBIFF(b *testing.B) {
	var cells strings.Builder
	for i := range benchBookRows {
		for c := range benchCols {
			cells.WriteString(rec(recRK, string([]byte{byte(i), byte(i >> 8), byte(c), 0, 0, 0,
				byte(i)<<2 | 2, byte(i >> 6), 1, 0})))
		}
	}
	data := stream("", cells.String())
	for b.Loop() {
		sheets, _, err := readBIFF(data, false)
		if err != nil || sheets[0].err != nil || len(sheets[0].grid.rows) != benchBookRows {
			b.Fatal(err, sheets[0].err)
		}
	}
}

// BenchmarkScan is the part of BenchmarkWorkbook that excelize does not do.
func BenchmarkScan(b *testing.B) { benchScan(b, benchBook(b, false)) }

// BenchmarkScanStyled is the same where each number has a format.
func BenchmarkScanStyled(b *testing.B) { benchScan(b, benchBook(b, true)) }

func benchScan(b *testing.B, path string) {
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
		if _, err := scan(wb.sheets[0].file, wb.facts); err != nil {
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
