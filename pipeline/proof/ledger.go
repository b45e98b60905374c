package proof

import (
	"fmt"

	"wakeledger/pipeline/entry"
	"wakeledger/pipeline/plan"
	"wakeledger/pipeline/record"
)

// Stats are what the rows of one block came to.
type Stats struct {
	Rows      int
	Stretches int     // rows or phrases with a start and an end, or hours
	Hours     float64 // of them
	NoLines   int     // of them, without a number of lines
	NoLinesH  float64
	NoSpeed   int     // of them, without a speed
	HalfTimed int     // rows with a start or an end alone
	Own       float64 // hours that the log worked out itself, of stretches with clocks
	OwnClock  float64 // the same by their clocks
	Strikes   int     // rows or counts that tell of a strike
	Listed    int     // strikes and fish of rows of their own and of phrases
	ByCount   int     // strikes of counts
	Days      map[string]bool
	Overlaps  []Overlap
	Aside     []record.Problem // cells and rows set aside
	spans     map[string][]span
}

type span struct {
	from, to int64
	row      int64
	line     string
}

// Overlap is two rows of one day whose stretches overlap.
type Overlap struct{ Row, Other int64 }

// Row is one entry as it is kept.
type Row struct {
	Kind   plan.Kind
	Num    int64
	Values map[string]entry.Value
}

// mostSpans bounds the stretches of a day that are held against each other.
const mostSpans = 200

// Add takes an entry.
func (s *Stats) Add(r Row) {
	v := r.Values
	day := dayOf(v)
	if s.Days == nil {
		s.Days, s.spans = map[string]bool{}, map[string][]span{}
	}
	switch r.Kind {
	case plan.Legs, plan.Flat:
		s.effort(r, day)
	}
	switch r.Kind {
	case plan.Strikes, plan.Fish:
		s.Listed++
		s.Strikes++
	case plan.Flat:
		n := max(v["strikes_n"].Int, v["hooked_n"].Int, v["landed_n"].Int+v["released_n"].Int+v["lost_n"].Int+v["missed_n"].Int)
		if n == 0 && (v["outcome"].Known || v["species_logged"].Known) {
			n = 1
			s.Listed++
		} else {
			s.ByCount += int(n)
		}
		s.Strikes += int(n)
	}
}

func dayOf(v map[string]entry.Value) string {
	switch {
	case v["date"].Known:
		return fmt.Sprint(v["date"].Int)
	case v["trip"].Known:
		return "trip " + v["trip"].Text
	}
	return ""
}

func (s *Stats) effort(r Row, day string) {
	v := r.Values
	start, end, hours := v["start_s"], v["end_s"], v["duration_s"]
	clocks := start.Known && end.Known
	if !clocks && !hours.Known {
		if start.Known != end.Known {
			s.HalfTimed++
		}
		return
	}
	s.Rows++
	h := hours.Real / 3600
	if clocks {
		h = float64(end.Int-start.Int)/3600 - v["stopped_s"].Real/3600
		if hours.Known {
			s.Own += hours.Real / 3600
			s.OwnClock += h
		}
	}
	if day != "" {
		s.Days[day] = true
	}
	if clocks && s.again(day, span{start.Int, end.Int, r.Num, v["line"].Text}) {
		return
	}
	s.Stretches++
	s.Hours += h
	if !v["lines_out"].Known && !v["line"].Known && !v["lure"].Known {
		s.NoLines++
		s.NoLinesH += h
	}
	if !v["speed_kn"].Known {
		s.NoSpeed++
	}
}

// again tells a stretch that an earlier row of its day has already, and notes one that
// only overlaps with it.
func (s *Stats) again(day string, x span) bool {
	spans := s.spans[day]
	for _, o := range spans {
		if o.from == x.from && o.to == x.to {
			return true
		}
		if x.from < o.to && o.from < x.to && x.row != o.row && x.line == o.line && day != "" {
			s.Overlaps = append(s.Overlaps, Overlap{o.row, x.row})
		}
	}
	if len(spans) < mostSpans {
		s.spans[day] = append(spans, x)
	}
	return false
}
