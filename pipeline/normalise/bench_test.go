package normalise_test

import (
	"fmt"
	"os"
	"path/filepath"
	"testing"

	"wakeledger/pipeline/normalise"
	"wakeledger/pipeline/sheet"
	"wakeledger/testdata/bench"
)

// Each names a workbook that a copy of this program writes or reads, and does
// nothing else, so that its memory is that of the one thing.
const (
	writeEnv  = "WAKELEDGER_WRITE_LOG"
	readEnv   = "WAKELEDGER_READ_LOG"
	benchRows = 100_000
	looked    = 3000 // rows from which the plan is inferred, as the loader does
)

func TestMain(m *testing.M) {
	var err error
	n := benchRows
	if log := os.Getenv(writeEnv); log != "" {
		err = bench.Workbook(log, n)
	} else if log := os.Getenv(readEnv); log != "" {
		n, err = understand(log)
	} else {
		os.Exit(m.Run())
	}
	if err != nil || n != benchRows {
		fmt.Fprintln(os.Stderr, n, err)
		os.Exit(1)
	}
}

// understand reads the first sheet of a log to its end, every cell understood and
// none kept. It returns the number of rows kept.
func understand(path string) (n int, err error) {
	book, err := sheet.Open(path, sheet.Options{})
	if err != nil {
		return 0, err
	}
	defer func() { err = closeAfter(book, err) }()
	x, err := normalise.Take(filepath.Base(path), book, looked)
	if err != nil {
		return 0, err
	}
	data := x.Log.Data()
	if len(data) != 1 || !data[0].Block.Open {
		return 0, fmt.Errorf("%s: %d blocks with data, expected one that goes on", path, len(data))
	}
	reader, err := x.Reader(data[0], normalise.Settings{})
	if err != nil {
		return 0, err
	}
	err = eachRow(book, 0, func(r *sheet.Row) bool {
		if values, _, _ := reader.Row(r); values != nil {
			n++
		}
		return true
	})
	return n, err
}

// Reading and understanding a workbook of 100,000 rows, without storing it,
// against openpyxl's read-only mode in the same run, where that is installed.
func BenchmarkReadWorkbook(b *testing.B) {
	log := filepath.Join(b.TempDir(), "flat.xlsx")
	b.Setenv(writeEnv, log)
	if _, err := bench.Run(os.Args[0]); err != nil {
		b.Fatal(err)
	}
	b.Setenv(writeEnv, "")
	b.Setenv(readEnv, log)
	var ours, other, peak float64
	for b.Loop() {
		c, err := bench.Run(os.Args[0])
		if err != nil {
			b.Fatal(err)
		}
		ours, peak = ours+c.Seconds, max(peak, c.PeakMiB)
		if c, err = bench.Openpyxl(log); err != nil {
			b.Logf("no ratio to openpyxl: %v", err)
		}
		other += c.Seconds
	}
	b.ReportMetric(other/ours, "of-openpyxl")
	b.ReportMetric(float64(benchRows*b.N)/ours, "rows/s")
	b.ReportMetric(peak, "peak-MiB")
	b.ReportMetric(0, "ns/op")
}

func closeAfter(book sheet.Book, err error) error {
	if cerr := book.Close(); err == nil {
		err = cerr
	}
	return err
}

func eachRow(book sheet.Book, i int, do func(*sheet.Row) bool) error {
	rows, err := book.Rows(i)
	if err != nil {
		return err
	}
	for rows.Next() && do(rows.Row()) {
	}
	if err := rows.Err(); err != nil {
		return err
	}
	return rows.Close()
}
