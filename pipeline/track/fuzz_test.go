package track

import (
	"math"
	"os"
	"path/filepath"
	"testing"

	"wakeledger/pipeline/record"
)

// FuzzTrack: whatever a file holds, reading it ends without a panic, and every
// piece is a time, a place and a speed that can be.
func FuzzTrack(f *testing.F) {
	for _, name := range []string{"logger.gpx", "logger.nmea"} {
		b, err := os.ReadFile(filepath.Join("testdata", name))
		if err != nil {
			f.Fatal(err)
		}
		f.Add(b[:min(len(b), 2000)])
	}
	f.Add([]byte("time;lat;lon;speed\n2026-02-14T04:12:00Z;-36,6;176,1;9\n2026-02-14T04:12:09Z;-36,6;176,1005;9\n"))
	f.Add([]byte("<gpx><!-- > --><trkpt lat='1' lon='2'><![CDATA[x]]><time>"))
	f.Fuzz(func(t *testing.T, b []byte) {
		file := filepath.Join(t.TempDir(), "a")
		if err := os.WriteFile(file, b, 0o600); err != nil {
			t.Fatal(err)
		}
		keep := func(record.Problem) error { return nil }
		_ = Each(file, Options{}, keep, func(f File) error {
			if f.Reader == nil {
				return nil
			}
			_, err := Cut(f.Reader, Settings{}, func(p Piece) error {
				if math.IsNaN(p.RunKn) || p.RunKn < 0 || p.Seconds <= 0 || p.Seconds > 10 ||
					math.Abs(p.Lat) > 90 || math.Abs(p.Lon) > 180 {
					t.Fatalf("%+v", p)
				}
				return nil
			})
			return err
		})
	})
}
