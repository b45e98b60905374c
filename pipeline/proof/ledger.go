package proof

import (
	"fmt"
	"math"
	"strings"

	"wakeledger/pipeline/entry"
	"wakeledger/pipeline/plan"
	"wakeledger/pipeline/record"
	"wakeledger/pipeline/spelling"
)

// Stats are what the rows of one block came to.
type Stats struct {
	Rows      int
	Stretches int     // rows or phrases with a start and an end, or hours
	Hours     float64 // of them
	LineHours float64 // of those with a number of lines
	NoLines   int     // of them, without a number of lines
	NoLinesH  float64
	LureOnly  int // of them, those that say no more of lines than a lure
	LureOnlyH float64
	SameClock int     // rows of the clock times of another: of its bites, or of its lines
	NoSpeed   int     // of them, without a speed
	Miles     float64 // of the others: hours times speed
	Half      []Half  // rows with a start or an end alone
	Long      []Long  // stretches of more than half a day
	Own       float64 // hours that the log worked out itself, of stretches with clocks
	OwnClock  float64 // the same by their clocks
	Strikes   int     // rows or counts that tell of a strike
	Listed    int     // strikes and fish of rows of their own and of phrases
	ByCount   int     // strikes of counts
	Hooked    int     // of ByCount, those that were hooked
	Held      int     // of Listed, those that were not missed
	Lost      int     // of ByCount, those lost and missed
	Landed    int     // of ByCount, those brought to the boat
	Boated    int     // of Listed, those brought to the boat
	Released  int     // of Landed, those let go
	Freed     int     // of Boated, those let go
	Measures  int     // lengths, girths and scale weights
	Fateless  []int64 // of these, those that say nothing at all of it, and measure no fish
	Unsaid    []int64 // rows of strikes whose outcome says no more than that something bit
	Missed    bool    // a row says that a bite was missed
	Taped     []int64 // rows of strikes that were missed, by their words, and whose fish were taped or weighed
	None      bool    // a row of counts says 0: one without any is not of none
	Placed    bool    // rows of strikes or fish say of which day, trip or stretch they are
	Days      map[string]bool
	First     map[int64]int64    // the first row of each date, in days since 1970
	Worked    []Worked           // rows with hours of trolling, in their order
	Dayless   []int64            // of them, those that name neither a day nor a trip
	DayHours  map[string]float64 // by the number of a day, hours of rows without clock times, lines or lures
	Overlaps  []Overlap
	Twice     []Overlap        // rows of one stretch that count bites both, and differ in nothing that parts these
	Staggered []Overlap        // the same of two lines, which are a stretch each
	Aside     []record.Problem // cells and rows set aside
	Told      map[string]*Told // of strikes, by each day and each trip that rows name
	Fished    map[string]bool  // days and trips that rows of stretches name
	Rowwise   []Listed         // the trips, strikes and fish of rows of their own, as many as are looked at
	Untrolled []int64          // rows passed over as not trolled, or left out by an answer
	spans     map[string][]span
}

type span struct {
	from, to int64
	row      int64
	line     string
	bites    string // what its row counts; see bitesOf
}

// Half is a row with a start or an end alone: the column that is not filled, its day, and the
// clock of the other in seconds.
type Half struct {
	Row   int64
	Day   string
	Lacks string
	Clock int64
}

// Long is a row whose stretch is longer than half a day, in seconds of its day.
type Long struct{ Row, Start, End int64 }

// Worked is a row with hours of trolling, and its day.
type Worked struct {
	Row int64
	Day string
}

// Listed is a row of a trip, a strike or a fish: the day and the trip that it names, and how many were hooked.
type Listed struct {
	Row  int64
	Keys []string
	Held int
}

// mostRowwise bounds the rows of strikes and fish that are looked at one by one.
const mostRowwise = 20000

// Overlap is two rows of one day whose stretches overlap.
type Overlap struct{ Row, Other int64 }

// Row is one entry as it is kept.
type Row struct {
	Kind   plan.Kind
	Num    int64
	Values map[string]entry.Value
}

// longLeg is from which length in seconds on a stretch is doubted: half a day, as when an
// afternoon's clock says morning.
const longLeg = 12 * 3600

// mostSpans bounds the stretches of a day that are held against each other.
const mostSpans = 200

// Add takes an entry.
func (s *Stats) Add(r Row) {
	v := r.Values
	day := dayOf(v)
	if s.Days == nil {
		s.Days, s.spans, s.First = map[string]bool{}, map[string][]span{}, map[int64]int64{}
	}
	if d := v["date"]; d.Known {
		if _, ok := s.First[d.Int]; !ok {
			s.First[d.Int] = r.Num
		}
	}
	for _, name := range []string{"length_cm", "girth_cm", "scale_kg"} {
		if v[name].Known {
			s.Measures++
		}
	}
	switch r.Kind {
	case plan.Trips:
		if len(s.Rowwise) < mostRowwise {
			s.Rowwise = append(s.Rowwise, Listed{r.Num, keysOf(v), 0})
		}
	case plan.Legs, plan.Flat:
		s.effort(r, day)
		if s.Fished == nil {
			s.Fished = map[string]bool{}
		}
		for _, key := range append(keysOf(v), laterDay(v)...) {
			s.Fished[key] = true
		}
	}
	switch r.Kind {
	case plan.Strikes, plan.Fish:
		s.Listed++
		s.Strikes++
		s.listed(r)
		s.tell(v, listedTold(v))
		if len(s.Rowwise) < mostRowwise {
			s.Rowwise = append(s.Rowwise, Listed{r.Num, keysOf(v), listedTold(v).Listed.Held})
		}
	case plan.Flat:
		n := max(v["strikes_n"].Int, v["hooked_n"].Int+v["missed_n"].Int, v["landed_n"].Int+v["released_n"].Int+
			v["lost_n"].Int+v["missed_n"].Int)
		if n == 0 && (v["outcome"].Known || v["species_logged"].Known) {
			n = 1
			s.Listed++
			s.listed(r)
		} else {
			s.tell(v, countedTold(v))
			s.None = s.None || n == 0 && countsKnown(v)
			s.ByCount += int(n)
			s.Hooked += int(max(v["hooked_n"].Int, v["landed_n"].Int+v["released_n"].Int+v["lost_n"].Int))
			s.Lost += int(v["lost_n"].Int + v["missed_n"].Int)
			s.Landed += int(v["landed_n"].Int + v["released_n"].Int)
			s.Released += int(v["released_n"].Int)
			s.Missed = s.Missed || v["missed_n"].Int > 0
		}
		s.Strikes += int(n)
	}
}

// worked are the numbers of the rows with hours of trolling.
func (s *Stats) worked() map[int64]bool {
	out := map[int64]bool{}
	for _, w := range s.Worked {
		out[w.Row] = true
	}
	return out
}

// laterDay is the day, as keysOf names it, on which a stretch ended, where that is none on which its trip began.
func laterDay(v map[string]entry.Value) []string {
	const day = 86400
	if d, end := v["date"], v["end_s"]; d.Known && end.Known && end.Int > day {
		return []string{fmt.Sprint("day ", d.Int+end.Int/day)}
	}
	return nil
}

// listed counts a row of one strike or fish.
func (s *Stats) listed(r Row) {
	v := r.Values
	s.Placed = s.Placed || v["date"].Known || v["trip"].Known || v["leg"].Known ||
		v["time_s"].Known || v["strike"].Known
	if v["outcome"].Text != "missed" {
		s.Held++
	}
	switch outcome := v["outcome"].Text; {
	case outcome == "landed" || outcome == "released":
		s.Boated++
		if outcome == "released" {
			s.Freed++
		}
	case outcome == "missed":
		s.Missed = true
		if v["length_cm"].Known || v["girth_cm"].Known || v["scale_kg"].Known {
			s.Taped = append(s.Taped, r.Num)
		}
	case outcome == "hooked", outcome == "" && r.Kind != plan.Fish:
		s.Unsaid = append(s.Unsaid, r.Num)
		if outcome == "" && !v["length_cm"].Known && !v["girth_cm"].Known && !v["scale_kg"].Known {
			s.Fateless = append(s.Fateless, r.Num)
		}
	case outcome == "" && (!v["kept"].Known || v["kept"].Int == 1):
		s.Boated++
	}
}

func dayOf(v map[string]entry.Value) string {
	switch {
	case v["date"].Known:
		return fmt.Sprint(v["date"].Int)
	case v["trip"].Known:
		return "trip " + spelling.Trip(v["trip"].Text)
	}
	return ""
}

func (s *Stats) effort(r Row, day string) {
	v := r.Values
	start, end, hours := v["start_s"], v["end_s"], v["duration_s"]
	clocks := start.Known && end.Known
	if !clocks && !hours.Known {
		switch {
		case start.Known && !end.Known:
			s.Half = append(s.Half, Half{r.Num, day, "end_s", start.Int})
		case end.Known && !start.Known:
			s.Half = append(s.Half, Half{r.Num, day, "start_s", end.Int})
		}
		return
	}
	s.Rows++
	s.Worked = append(s.Worked, Worked{r.Num, day})
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
		if v["date"].Known && !clocks && !v["line"].Known && !v["lure"].Known {
			if s.DayHours == nil {
				s.DayHours = map[string]float64{}
			}
			s.DayHours[day] += h
		}
	} else {
		s.Dayless = append(s.Dayless, r.Num)
	}
	if clocks && s.again(day, span{start.Int, end.Int, r.Num, v["line"].Text, bitesOf(v)}) {
		s.SameClock++
		return
	}
	if clocks && end.Int-start.Int > longLeg && !ownLength(v) {
		s.Long = append(s.Long, Long{r.Num, start.Int, end.Int})
	}
	s.Stretches++
	s.Hours += h
	s.LineHours += h * float64(v["lines_out"].Int)
	switch gear := v["lure_weight_g"].Known || v["setback_m"].Known || v["count_s"].Known; {
	case v["lines_out"].Known || v["line"].Known || v["lure"].Known && gear:
	case v["lure"].Known:
		s.LureOnly++
		s.LureOnlyH += h
	default:
		s.NoLines++
		s.NoLinesH += h
	}
	if !v["speed_kn"].Known {
		s.NoSpeed++
	}
	s.Miles += h * v["speed_kn"].Real
}

// ownLength reports whether a row's own hours say that it is as long as its clock times, less what was stopped.
func ownLength(v map[string]entry.Value) bool {
	length := float64(v["end_s"].Int-v["start_s"].Int) - v["stopped_s"].Real
	return v["duration_s"].Known && math.Abs(length-v["duration_s"].Real) < aMinute
}

// aMinute is in seconds what hours written as a fraction are off at the most.
const aMinute = 60

// bitesOf names the bites that a row counts by how many they are, and by what tells them from others of their stretch;
// "" where it counts none.
func bitesOf(v map[string]entry.Value) string {
	out, counted := "", false
	for _, name := range []string{"strikes_n", "hooked_n", "landed_n", "released_n", "lost_n", "missed_n", "outcome",
		"species_logged", "line", "lure", "angler"} {
		counted = counted || strings.HasSuffix(name, "_n") && v[name].Int > 0
		out += fmt.Sprint(v[name].Int, " ", v[name].Text, "\x00")
	}
	if !counted {
		return ""
	}
	return out
}

// again tells a stretch that an earlier row of its day has already, and notes one that
// only overlaps with it.
func (s *Stats) again(day string, x span) bool {
	spans := s.spans[day]
	for _, o := range spans {
		if o.from == x.from && o.to == x.to {
			if day != "" && x.bites != "" && x.bites == o.bites {
				s.Twice = append(s.Twice, Overlap{o.row, x.row})
			}
			return true
		}
		switch {
		case x.from >= o.to || o.from >= x.to || x.row == o.row || day == "":
		case x.line == o.line:
			s.Overlaps = append(s.Overlaps, Overlap{o.row, x.row})
		case x.from != o.from && x.line != "" && o.line != "":
			s.Staggered = append(s.Staggered, Overlap{o.row, x.row})
		}
	}
	if len(spans) < mostSpans {
		s.spans[day] = append(spans, x)
	}
	return false
}
