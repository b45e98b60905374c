package evidence

import (
	"maps"
	"math"
	"slices"

	"wakeledger/queries/stats"
)

// Confidence is that of all intervals.
const Confidence = 0.95

// NotLogged is the level of what the log does not say. It has a rate, and is
// compared with nothing.
const NotLogged = "not logged"

// Ratio is a ratio of strike rates from the model.
type Ratio struct {
	Ratio    float64 // 0 or infinite where one side has no strike
	Interval stats.Interval
	P        float64 // of no difference, by itself
}

func unknownRatio() Ratio {
	nan := math.NaN()
	return Ratio{nan, stats.Interval{Lo: nan, Hi: nan}, nan}
}

// Known tells whether there is a ratio.
func (r Ratio) Known() bool { return !math.IsNaN(r.Ratio) }

// upside is the ratio seen from the other level.
func (r Ratio) upside() Ratio {
	return Ratio{1 / r.Ratio, stats.Interval{Lo: 1 / r.Interval.Hi, Hi: 1 / r.Interval.Lo}, r.P}
}

// Level is one level of a factor with the evidence for it. A float is NaN
// where it is not known.
type Level struct {
	Level    string
	Count    stats.Count // strikes that belong to line-hours, and those
	Trips    int         // with effort at the level
	Rate     float64
	Phi      float64        // dispersion that Interval is widened by; 1 for none
	Interval stats.Interval // of Rate
	Shrunk   float64        // Rate drawn towards the common rate, for ranking
	Thin     bool           // little effort: see Enough
	Ratio    Ratio          // to the reference level
	P        float64        // of Ratio, adjusted by Holm over the levels; NaN where not tested
	// Rest is the ratio to all other levels together, which a finding rests on:
	// one level against one other has half the strikes behind it. RestP is its
	// p-value, adjusted by Holm over the levels and the trend.
	Rest   Ratio
	RestP  float64
	Strata int // trips (ByLeg: legs) that fished the level and the reference
	// Beside and BesideStrata are what was fished where a trip (leg) had the level and any other.
	Beside       stats.Count
	BesideStrata int
	Inflated     float64 // how many times the variance of the ratio is what it would be with nothing held
	Why          string  // there is no ratio, or it is not tested
}

// Trend is the test that rates rise or fall with an ordered factor: one slope
// of the log rate on the levels' scores.
type Trend struct {
	Ratio     // of High to Low, the ends of the levels with enough effort
	Low, High string
	Adj       float64 // P, adjusted with those of the levels
	Behind    stats.Count
	Strata    int // trips (legs) that fished two levels or more and had a strike
	Known     bool
}

// Comparison is the evidence on one factor.
type Comparison struct {
	Factor    string
	ByLeg     bool
	Levels    []Level
	Reference int         // index of the level compared with: the one with the most effort; -1 for none
	Season    stats.Count // strikes that belong to line-hours, and those
	Trips     int         // with effort
	Paired    int         // of them those that fished two levels (ByLeg: together on a leg)
	Luck      float64     // squared coefficient of variation of the trips' luck, as Rate's intervals use it
	Trend     Trend
	Across    bool     // the trips' totals are added to what the same trips say
	Held      []string // factors held still
	Mixed     string   // the one that accounts for most of this factor within trips
	MixedBy   float64  // its share
	theta     float64
	TripHours []float64 // line-hours of each trip with any, in the order of trips
	Phi, DF   float64   // dispersion that the ratios' intervals allow for, and t's degrees of freedom
}

// Enough is the line-hours below which a level has little effort: those that
// bring three strikes at the season's rate. With fewer, even no strike at all is
// within what chance gives (the rule of three: Hanley and Lippman-Hand 1983, JAMA
// 249:1743-1745). It is 0 without strikes.
func Enough(season stats.Count) float64 {
	if season.Events == 0 {
		return 0
	}
	return 3 * season.Effort / float64(season.Events)
}

// Compare weighs one factor, with those of rest that it is mixed up with held
// still. The rates' intervals allow for the trips' luck (see rates); the ratio of
// each level to the one with the most effort, and the trend, are those of the
// model of stats.FitEffects.
func Compare(f Factor, rest []Factor) Comparison { return compare(f, rest, true) }

// Test is Compare without the ratios' intervals, which take most of its time: what a factor's
// p-value among the others needs.
func Test(f Factor, rest []Factor) Comparison { return compare(f, rest, false) }

// compare leaves out the ratios' intervals where nobody asks for them.
func compare(f Factor, rest []Factor, intervals bool) Comparison {
	c := Comparison{Factor: f.Name, ByLeg: f.ByLeg, Reference: -1, Phi: math.NaN(), DF: math.NaN()}
	sums := sumByLevel(f.Cells)
	trips := map[int64]float64{}
	for _, x := range f.Cells {
		if x.LineHours > 0 {
			trips[x.Trip] += x.LineHours
		}
		c.Season.Events += x.Strikes
		c.Season.Effort += x.LineHours
	}
	for _, t := range slices.Sorted(maps.Keys(trips)) {
		c.TripHours = append(c.TripHours, trips[t])
	}
	c.Trips = len(trips)
	for _, name := range f.Levels {
		s := sums[name]
		nan := math.NaN()
		c.Levels = append(c.Levels, Level{Level: name, Count: s.Count, Trips: len(s.trips),
			Rate: nan, Phi: 1, Shrunk: nan, P: nan,
			Interval: stats.Interval{Lo: nan, Hi: nan}, Ratio: unknownRatio(), Rest: unknownRatio(), RestP: nan,
			Inflated: nan, Thin: s.Effort < Enough(c.Season)})
	}
	c.rates(f)
	c.shrink()
	c.setReference()
	for i := range c.Levels {
		c.Levels[i].Why = whyNoHours // unless the model says more
	}
	if c.Reference >= 0 {
		c.share(f)
		c.model(f, rest, intervals)
	}
	return c
}

type levelSum struct {
	stats.Count
	trips map[int64]bool
}

func sumByLevel(cells []Cell) map[string]levelSum {
	sums := map[string]levelSum{}
	for _, x := range cells {
		s, ok := sums[x.Level]
		if !ok {
			s.trips = map[int64]bool{}
		}
		s.Events += x.Strikes
		s.Effort += x.LineHours
		if x.LineHours > 0 {
			s.trips[x.Trip] = true
		}
		sums[x.Level] = s
	}
	return sums
}

// shrink sets the rates for ranking.
func (c *Comparison) shrink() {
	var counts []stats.Count
	var at []int
	for i, l := range c.Levels {
		if l.Level != NotLogged && l.Count.Effort > 0 {
			counts, at = append(counts, l.Count), append(at, i)
		}
	}
	s, ok := stats.Shrink(counts, Confidence)
	if !ok {
		return
	}
	for i, r := range s.Levels {
		c.Levels[at[i]].Shrunk = r.Rate
	}
}

func (c *Comparison) setReference() {
	for i, l := range c.Levels {
		if l.Level != NotLogged && l.Count.Effort > 0 &&
			(c.Reference < 0 || l.Count.Effort > c.Levels[c.Reference].Count.Effort) {
			c.Reference = i
		}
	}
}

// share sets what the trips (ByLeg: legs) that fished a level and the reference
// hold of both.
func (c *Comparison) share(f Factor) {
	reference := c.Levels[c.Reference].Level
	sums := map[place]map[string]stats.Count{}
	for _, x := range f.merged() {
		p := place{trip: x.Trip}
		if f.ByLeg {
			p.leg = x.Leg
		}
		if sums[p] == nil {
			sums[p] = map[string]stats.Count{}
		}
		s := sums[p][x.Level]
		s.Events += x.Strikes
		s.Effort += x.LineHours
		sums[p][x.Level] = s
	}
	paired := map[int64]bool{}
	for _, p := range slices.SortedFunc(maps.Keys(sums), comparePlaces) {
		s := sums[p]
		var all stats.Count
		for _, l := range c.Levels {
			if x := s[l.Level]; l.Level != NotLogged && x.Effort > 0 {
				all.Events += x.Events
				all.Effort += x.Effort
			}
		}
		if logged(s) > 1 {
			paired[p.trip] = true
		}
		r := s[reference]
		for i := range c.Levels {
			l := &c.Levels[i]
			x := s[l.Level]
			if x.Effort <= 0 || l.Level == NotLogged {
				continue
			}
			if logged(s) > 1 {
				l.BesideStrata++
				l.Beside.Events += all.Events
				l.Beside.Effort += all.Effort
			}
			if i != c.Reference && r.Effort > 0 {
				l.Strata++
			}
		}
	}
	c.Paired = len(paired)
}

// logged counts the levels that the log names with effort.
func logged(levels map[string]stats.Count) int {
	n := 0
	for l, c := range levels {
		if l != NotLogged && c.Effort > 0 {
			n++
		}
	}
	return n
}

// Inflation is how many times as wide the widest of the ratios is as it would be
// with nothing held; NaN without ratios.
func (c Comparison) Inflation() float64 {
	most := math.NaN()
	for _, l := range c.Levels {
		if v := math.Sqrt(l.Inflated); !(v <= most) && l.Why == "" && !math.IsNaN(v) {
			most = v
		}
	}
	return most
}
