package bundle

import (
	"encoding/binary"
	"errors"
	"math"
	"runtime"
	"strings"
	"testing"
	"time"
)

// cost is the memory that f asks for in all, in bytes, and the time that it takes.
func cost(f func()) (bytes uint64, took time.Duration) {
	var before, after runtime.MemStats
	runtime.ReadMemStats(&before)
	began := time.Now()
	f()
	took = time.Since(began)
	runtime.ReadMemStats(&after)
	return after.TotalAlloc - before.TotalAlloc, took
}

// footerOf is a Parquet file of nothing but a footer.
func footerOf(footer []byte) []byte {
	b := append([]byte("PAR1"), footer...)
	b = binary.LittleEndian.AppendUint32(b, uint32(len(footer)))
	return append(b, "PAR1"...)
}

// A few kilobytes that would become gigabytes are refused, and cost little.
func TestHostileParts(t *testing.T) {
	people := func(n int, name string) []byte {
		rows := make([]Person, n)
		for i := range rows {
			rows[i] = Person{"crew", name}
		}
		b, err := writeParquet(rows)
		if err != nil {
			t.Fatal(err)
		}
		return b
	}
	for name, part := range map[string][]byte{
		"one long text ten thousand times": people(mostRows, strings.Repeat("x", 20_000)),
		"one text of 8 MiB":                people(1, strings.Repeat("x", 8<<20)),
		"too many rows":                    people(mostRows+1, "Ann"),
		"a list of 90 million": footerOf(append([]byte{0x15, 0x02, 0x19, 0xfc},
			binary.AppendUvarint(nil, 90_000_000)...)),
		"a text of 2 gigabytes": footerOf(append([]byte{0x15, 0x02, 0x18},
			binary.AppendUvarint(nil, 2<<30)...)),
		"structures without end":        footerOf([]byte(strings.Repeat("\x1c", 100_000))),
		"a footer longer than the file": append([]byte("PAR1PAR1PAR1"), 0xff, 0xff, 0xff, 0x7f, 'P', 'A', 'R', '1'),
		"nothing":                       {},
	} {
		if len(part) > mostPart {
			t.Fatalf("%s: %d bytes are no test: the part would be refused for its size", name, len(part))
		}
		var rows []Person
		var err error
		memory, took := cost(func() { err = readParquet(part, &rows) })
		if err == nil {
			t.Errorf("%s: read as %d rows", name, len(rows))
		}
		if memory > 64<<20 || took > 5*time.Second {
			t.Errorf("%s: %d MiB and %v to refuse %d bytes", name, memory>>20, took, len(part))
		}
	}
}

// Counts that no boat can have, or that contradict each other, are refused.
func TestImpossibleCounts(t *testing.T) {
	hours := func(v float64) *float64 { return &v }
	count := func(n int64) *int64 { return &n }
	for name, spoil := range map[string]func(*Season){
		"more boat-hours than a month has": func(s *Season) {
			s.Months[0].Level, s.Months[0].BoatHours = "2031-01", hours(745)
		},
		"a month of more trips than all": func(s *Season) { s.Months[0].Trips = s.Total.Trips + 1 },
		"a million trips":                func(s *Season) { s.Total.Trips = 1_000_000 },
		"a hundred lines out":            func(s *Season) { s.Total.BoatHours = s.Total.LineHours / 100 },
		"strikes without end": func(s *Season) {
			s.Total.Strikes = count(s.Total.Trips*mostStrikesTrip + 1)
		},
		"hours that are no number": func(s *Season) { s.Total.LineHours = math.NaN() },
		"hours without end":        func(s *Season) { s.Speeds[0].LineHours = math.Inf(1) },
		"more fish than strikes":   func(s *Season) { s.Species[0].Fish = *s.Total.Strikes + 1 },
		"a thousand heaviest fish": func(s *Season) {
			for range 1000 {
				s.Heaviest = append(s.Heaviest, Heavy{List: Dock, Species: Other, When: NotLogged, WeightKG: 50})
			}
		},
		"an interval upside down": func(s *Season) {
			s.Heaviest = []Heavy{{List: Estimate, Species: Other, When: NotLogged, WeightKG: 50,
				LoKG: hours(60), HiKG: hours(40)}}
		},
		"a thousand names": func(s *Season) { s.People = make([]Person, 1000) },
	} {
		s := season(t, "blue-7", 6)
		if err := s.Check(); err != nil {
			t.Fatalf("before: %v", err)
		}
		spoil(&s)
		if s.Check() == nil {
			t.Errorf("%s: not noticed", name)
		}
	}
}

// A file that is far larger than a summary is not opened.
func TestLargeFileIsRefused(t *testing.T) {
	if _, err := Read(make([]byte, mostFile)); !errors.Is(err, ErrForeign) {
		t.Errorf("a megabyte of nothing: %v, want ErrForeign", err)
	}
}
