package evidence

import (
	"math"

	"wakeledger/queries/stats"
)

// Confidence is that of all intervals.
const Confidence = 0.95

// NotLogged is the level of what the log does not say. It has a rate, and is
// compared with nothing.
const NotLogged = "not logged"

// Cell is the effort at one level of a factor on one trip, or on one leg of it,
// and the strikes that belong to that effort.
type Cell struct {
	Trip, Leg int64 // Leg 0: the whole trip
	Level     string
	LineHours float64
	Strikes   int64
}

// Factor is one factor's cells. Cells of one leg (or of one trip, where Leg is
// 0) and level are added up.
type Factor struct {
	Name   string
	ByLeg  bool     // differs between lines fished together: compared within legs
	Levels []string // in the order in which they are shown
	Cells  []Cell
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
	// Ratio is the same-trip ratio to the reference level, where Told.
	Ratio stats.RateRatio
	Told  bool
	P     float64 // of Ratio, adjusted by Holm over the factor's levels
	Why   string  // there is no ratio, or no interval for it
}

// Comparison is the evidence on one factor.
type Comparison struct {
	Factor     string
	ByLeg      bool
	Levels     []Level
	Reference  int         // index of the level compared with: the one with the most effort; -1 for none
	Season     stats.Count // strikes that belong to line-hours, and those
	Dispersion stats.DispersionResult
	Phi        float64 // of all levels together: Dispersion.Phi, at least 1; 1 where not Widened
	Widened    bool    // there are trips enough for a dispersion: intervals allow for it
	Within     float64 // dispersion left within trips (and legs, where ByLeg); 1 where not Widened
	Trips      int     // with effort
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

// Compare weighs one factor. The rates' intervals are exact for Poisson counts
// and, from stats.MinTrips trips on, widened by the dispersion of the trip x
// level counts (see levelPhi). The ratio of each level to the one with the most effort is
// Mantel and Haenszel's within trips (within legs where ByLeg), from as many trips
// on with its variance widened too (see ratioOf).
func Compare(f Factor) Comparison {
	c := Comparison{Factor: f.Name, ByLeg: f.ByLeg, Reference: -1, Phi: 1, Within: 1}
	sums := sumByLevel(f.Cells)
	trips := map[int64]bool{}
	for _, x := range f.Cells {
		if x.LineHours > 0 {
			trips[x.Trip] = true
		}
		c.Season.Events += x.Strikes
		c.Season.Effort += x.LineHours
	}
	c.Trips = len(trips)
	known := logged(f.Cells)
	c.Dispersion = stats.Dispersion(tripCells(known))
	c.Widened = c.Trips >= stats.MinTrips && c.Dispersion.Phi > 0
	var phi map[string]float64
	if c.Widened {
		c.Phi = math.Max(1, c.Dispersion.Phi)
		c.Within = withinTrips(known, f.ByLeg)
		phi = levelPhi(tripCells(known), c.Phi)
	}
	for _, name := range f.Levels {
		c.Levels = append(c.Levels, c.level(name, sums[name], phi[name]))
	}
	c.shrink()
	c.setReference()
	c.ratios(strata(known, f.ByLeg))
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

// level is a level's rate. What is not logged has no dispersion of its own and
// takes that of all.
func (c *Comparison) level(name string, s levelSum, phi float64) Level {
	nan := math.NaN()
	l := Level{Level: name, Count: s.Count, Trips: len(s.trips), Rate: nan, Phi: math.Max(phi, c.Phi), Shrunk: nan, P: nan,
		Interval: stats.Interval{Lo: nan, Hi: nan}, Thin: s.Effort < Enough(c.Season),
		Ratio: stats.RateRatio{Ratio: nan, Interval: stats.Interval{Lo: nan, Hi: nan}, P: nan}}
	if rate, iv, ok := stats.QuasiPoisson(s.Events, s.Effort, Confidence, l.Phi); ok {
		l.Rate, l.Interval = rate, iv
	}
	return l
}

// logged are the cells of levels that the log names.
func logged(cells []Cell) []Cell {
	var out []Cell
	for _, x := range cells {
		if x.Level != NotLogged {
			out = append(out, x)
		}
	}
	return out
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
		if l.Level != NotLogged && l.Count.Effort > 0 && (c.Reference < 0 || l.Count.Effort > c.Levels[c.Reference].Count.Effort) {
			c.Reference = i
		}
	}
}

// Why there is no ratio, or no interval for one.
const (
	whyReference = "the level with the most effort, which the others are compared with"
	whyNoHours   = "no line-hours at this level"
	whyNoTrip    = "no trip fished both levels with a strike"
	whyNoLeg     = "no leg fished both levels together with a strike"
	whyOneSide   = "all strikes of the shared trips fell at one of the two levels"
)

// ratios sets each level's ratio to the reference and the adjusted p-values.
func (c *Comparison) ratios(byStratum map[stratumKey]map[string]stats.Count) {
	p := make([]float64, len(c.Levels))
	keys := sortedKeys(byStratum)
	for i := range c.Levels {
		l := &c.Levels[i]
		p[i] = math.NaN()
		switch {
		case l.Level == NotLogged:
			l.Why = "not a level: the log does not say"
			continue
		case i == c.Reference:
			l.Why = whyReference
			continue
		case l.Count.Effort <= 0 || c.Reference < 0:
			l.Why = whyNoHours
			continue
		}
		var pairs []pair
		for _, key := range keys {
			s := byStratum[key]
			pairs = append(pairs, pair{key.trip, stats.Stratum{A: s[l.Level], B: s[c.Levels[c.Reference].Level]}})
		}
		l.Ratio, l.Told = ratioOf(pairs, c.Widened)
		p[i] = l.Ratio.P
		switch {
		case !l.Told && c.ByLeg:
			l.Why = whyNoLeg
		case !l.Told:
			l.Why = whyNoTrip
		case !l.Ratio.Interval.Known():
			l.Why = whyOneSide
		}
	}
	for i, adjusted := range stats.Holm(p) {
		c.Levels[i].P = adjusted
	}
}
