package track

import (
	"bytes"
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"math"
	"os"
	"path/filepath"
	"testing"
	"time"

	"wakeledger/pipeline/record"
)

// benchGPX writes days of nine hours with a fix each second.
func benchGPX(b *testing.B, days int) string {
	b.Helper()
	var out bytes.Buffer
	out.WriteString(
		`<?xml version="1.0"?><gpx version="1.1" creator="bench" xmlns="http://www.topografix.com/GPX/1/1">`)
	r := sail(outing)
	for d := range days {
		out.WriteString("<trk><trkseg>\n")
		for i, f := range r.fixes(1, 3, rng(uint64(d))) {
			at := noon.AddDate(0, 0, d).Add(time.Duration(i) * time.Second)
			fmt.Fprintf(&out, "<trkpt lat=\"%.7f\" lon=\"%.7f\"><ele>1.2</ele><time>%s</time></trkpt>\n", f.Lat,
				f.Lon, at.Format(time.RFC3339))
		}
		out.WriteString("</trkseg></trk>\n")
	}
	out.WriteString("</gpx>\n")
	file := filepath.Join(b.TempDir(), "bench.gpx")
	if err := os.WriteFile(file, out.Bytes(), 0o600); err != nil {
		b.Fatal(err)
	}
	return file
}

// BenchmarkTrack compares reading a track into pieces with counting the lines of
// its file, which is as fast as memory, and with passing over its tags by
// encoding/xml.
func BenchmarkTrack(b *testing.B) {
	file := benchGPX(b, 4)
	st, err := os.Stat(file)
	if err != nil {
		b.Fatal(err)
	}
	b.SetBytes(st.Size())
	var ours, scan, tokens time.Duration
	for b.Loop() {
		began := time.Now()
		n := 0
		err := Each(file, Options{}, func(record.Problem) error { return nil }, func(f File) error {
			_, err := Cut(f.Reader, Settings{}, func(p Piece) error {
				if !math.IsNaN(p.RunKn) {
					n++
				}
				return nil
			})
			return err
		})
		if err != nil || n == 0 {
			b.Fatal(n, err)
		}
		ours += time.Since(began)
		began = time.Now()
		if lines(b, file) < 1000 {
			b.Fatal("no lines")
		}
		scan += time.Since(began)
		began = time.Now()
		passOver(b, file)
		tokens += time.Since(began)
	}
	b.ReportMetric(float64(ours)/float64(scan), "x-scan")
	b.ReportMetric(float64(ours)/float64(tokens), "x-xml")
}

func passOver(b *testing.B, file string) {
	b.Helper()
	f, err := os.Open(file)
	if err != nil {
		b.Fatal(err)
	}
	defer f.Close()
	d := xml.NewDecoder(f)
	for {
		if _, err := d.RawToken(); errors.Is(err, io.EOF) {
			return
		} else if err != nil {
			b.Fatal(err)
		}
	}
}

func lines(b *testing.B, file string) int {
	b.Helper()
	f, err := os.Open(file)
	if err != nil {
		b.Fatal(err)
	}
	defer f.Close()
	n, block := 0, make([]byte, 64<<10)
	for {
		got, err := f.Read(block)
		n += bytes.Count(block[:got], []byte{'\n'})
		if err != nil {
			return n
		}
	}
}
