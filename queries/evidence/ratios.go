package evidence

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/stat/distuv"

	"wakeledger/queries/stats"
)

// Why there is no ratio, or no test of it.
const (
	whyReference = "fished most: the others are compared with it"
	whyNoHours   = "no line-hours"
	whyNoTrip    = "no trip fished this and the one compared with, and had a strike"
	whyNoLeg     = "no leg had this and the one compared with out, and a strike"
	whyThin      = "little effort: not tested"
	// WhyFewTrips is that of a ratio that can be guessed, but without an interval.
	WhyFewTrips = "too few trips for an interval: with three or more to compare it takes 8 trips that fished two"
)

// model sets the ratios, the trend and their p-values.
func (c *Comparison) model(f Factor, rest []Factor, intervals bool) {
	reference := c.Levels[c.Reference].Level
	o := observe(f, rest, reference)
	c.Held = o.names
	for _, g := range rest {
		if s := o.shared[g.Name]; s > c.MixedBy {
			c.Mixed, c.MixedBy = g.Name, s
		}
	}
	own := make([]int, 0, len(o.level))
	for i := range len(o.level) {
		own = append(own, o.first+i)
	}
	fit, ok := stats.FitEffects(o.rows, len(o.of)+len(o.level))
	if ok {
		c.steady(fit)
		fit = c.between(o, own, fit, monthOf(rest))
	}
	for i := range c.Levels {
		l := &c.Levels[i]
		l.Why = ""
		switch {
		case l.Level == NotLogged:
			l.Why = "the log does not say"
		case i == c.Reference:
			l.Why = whyReference
		case l.Count.Effort <= 0:
			l.Why = whyNoHours
		case !ok || !fit.Kept[o.first+o.level[l.Level]]:
			l.Why = whyNoTrip
			if f.ByLeg {
				l.Why = whyNoLeg
			}
		default:
			j := o.first + o.level[l.Level]
			l.Ratio, l.Inflated = ratioOf(fit, j, c.Phi, c.DF, intervals), fit.Inflation(j, own)
			switch {
			case l.Thin || c.Levels[c.Reference].Thin:
				l.Why = whyThin
			case len(o.level) > 1 && c.Paired < stats.MinTrips: // simulated, such intervals are too narrow
				l.Ratio.Interval, l.Ratio.P, l.Why = stats.Interval{Lo: math.NaN(), Hi: math.NaN()}, math.NaN(),
					WhyFewTrips
			}
		}
	}
	if ok {
		c.rest(o, intervals)
		c.trend(f, o, intervals)
	}
	c.adjust()
}

// held tells whether a level can be held against all others together.
func (l Level) held() bool {
	return !l.Thin && (l.Why == "" || l.Why == whyReference || l.Why == WhyFewTrips)
}

// rest sets the ratios of each level to all others together.
func (c *Comparison) rest(o obs, intervals bool) {
	tested := 0
	for _, l := range c.Levels {
		if l.held() {
			tested++
		}
	}
	if tested < 2 {
		return
	}
	for i := range c.Levels {
		l := &c.Levels[i]
		switch {
		case !l.held():
			continue
		case tested == 2 && len(o.level) == 1: // one against the other, seen once
			if i != c.Reference {
				l.Rest = l.Ratio
			}
			continue
		}
		fit, ok := c.single(o, func(level string) float64 {
			if level == l.Level {
				return 1
			}
			return 0
		})
		if j := o.first + 1; ok && fit.Kept[j] {
			l.Rest = ratioOf(fit, j, c.Phi, c.DF, intervals)
		}
	}
}

// single fits one value of the levels in place of a column each, by the same
// law of luck.
func (c *Comparison) single(o obs, value func(level string) float64) (*stats.Effects, bool) {
	reference := c.Levels[c.Reference].Level
	rows := make([]stats.Obs, len(o.rows))
	for i, r := range o.rows {
		x := append(slices.Clone(r.X[:o.first]), 0, value(reference)) // not logged; the value
		for level, j := range o.level {
			if r.X[o.first+j] == 0 {
				continue
			}
			x[o.first+1] = value(level)
			if level == NotLogged {
				x[o.first], x[o.first+1] = 1, 0
			}
		}
		r.X = x
		rows[i] = r
	}
	if c.Across {
		return stats.FitLuck(rows, o.first+2, c.theta)
	}
	return stats.FitEffects(rows, o.first+2)
}

// between adds what the trips say by their totals, where they agree with what the
// same trips say: the fit with a gamma law of the trips' luck, unless Mundlak's
// device (1978, Econometrica 46:69-85), the trips' own means of the columns, finds
// that trips which had more of a level had other luck (p below agree), the levels follow the month, or the
// same trips say less than leastWithin of it. The choice and its numbers are
// checked by simulation.
func (c *Comparison) between(o obs, own []int, within *stats.Effects, month map[int64]float64) *stats.Effects {
	rows, first := o.rows, o.first
	if c.ByLeg || c.Paired < stats.MinTrips {
		return within
	}
	k := first + len(own)
	luck, ok := stats.FitLuck(rows, k, 0)
	if !ok {
		return within
	}
	for _, j := range own {
		if within.Kept[j] != luck.Kept[j] || within.Kept[j] && luck.Variance(j) < leastWithin*within.Variance(j) {
			return within
		}
	}
	wide, n := mundlak(rows, first, len(own))
	if o.follows(wide, k, month) > followsMonth {
		return within
	}
	both, ok := stats.FitLuck(wide, n, luck.Theta)
	if !ok {
		return within
	}
	extra := 0.0
	for j := k; j < n; j++ {
		if both.Kept[j] {
			extra++
		}
	}
	if extra > 0 && (distuv.ChiSquared{K: extra}).Survival(
		math.Max(0, 2*(both.LogLik-luck.LogLik))/math.Max(1, c.Phi)) < agree {
		return within
	}
	c.Across, c.theta = true, luck.Theta
	return luck
}

const (
	agree        = 0.3
	followsMonth = 0.25
	leastWithin  = 0.55
)

// follows is the share of the trips' months that their means of the levels account for.
func (o obs) follows(wide []stats.Obs, from int, month map[int64]float64) float64 {
	var x [][]float64
	var z, weight []float64
	seen := map[int]bool{}
	for i, r := range wide {
		m, ok := month[o.trip[i]]
		if seen[r.Stratum] || !ok {
			continue
		}
		seen[r.Stratum] = true
		x, z, weight = append(x, r.X[from:]), append(z, m), append(weight, 1)
	}
	return stats.Shared(x, z, weight, make([]int, len(z)))
}

// monthOf numbers the month of each trip, where it is logged.
func monthOf(rest []Factor) map[int64]float64 {
	out := map[int64]float64{}
	for _, f := range rest {
		for _, c := range f.Cells {
			if at := slices.Index(f.Levels, c.Level); f.Name == "month" && at >= 0 && c.Level != NotLogged {
				out[c.Trip] = float64(at)
			}
		}
	}
	return out
}

// mundlak adds the strata's means of the factor's own columns, by effort.
func mundlak(rows []stats.Obs, first, own int) ([]stats.Obs, int) {
	means, effort := map[int][]float64{}, map[int]float64{}
	for _, r := range rows {
		if means[r.Stratum] == nil {
			means[r.Stratum] = make([]float64, own)
		}
		effort[r.Stratum] += r.Effort
		for i := range own {
			means[r.Stratum][i] += r.Effort * r.X[first+i]
		}
	}
	out := make([]stats.Obs, len(rows))
	for i, r := range rows {
		x := slices.Clone(r.X)
		for _, v := range means[r.Stratum] {
			x = append(x, v/effort[r.Stratum])
		}
		r.X = x
		out[i] = r
	}
	return out, first + 2*own
}

// The dispersion between legs, which come in bites, is drawn towards that of
// independent strikes as if some degrees of freedom had been seen with it (the
// moderated variance of Smyth 2004, Statistical Applications in Genetics and
// Molecular Biology 3(1):3). What differs between lines has that between trips at
// one level too, as where a lure suits a day. Simulation chose the numbers.
const (
	priorLegs  = 8
	priorTrips = 30
)

func (c *Comparison) steady(fit *stats.Effects) {
	c.Phi, c.DF = drawn(priorLegs)(fit.Dispersion(false))
	if c.ByLeg {
		phi, _ := drawn(priorTrips)(fit.Dispersion(true))
		c.Phi = math.Max(c.Phi, phi)
	}
}

// drawn draws a dispersion towards 1.
func drawn(prior float64) func(phi, df float64) (float64, float64) {
	return func(phi, df float64) (float64, float64) { return (prior + df*phi) / (prior + df), prior + df }
}

// pValue is that of a log-likelihood ratio (twice the difference), by Student's t and
// the dispersion, and by the normal law without one where that says less.
func pValue(off, phi, df float64) float64 {
	law := distuv.StudentsT{Sigma: 1, Nu: df}
	return 2 * math.Max(law.Survival(math.Sqrt(off/phi)), distuv.UnitNormal.Survival(math.Sqrt(off)))
}

// ratioOf is one column's ratio with its profile interval and p-value.
func ratioOf(fit *stats.Effects, j int, phi, df float64, interval bool) Ratio {
	r := Ratio{Ratio: math.Exp(fit.Beta[j]), P: pValue(fit.Profile(j, 0), phi, df)}
	if interval {
		t := distuv.StudentsT{Sigma: 1, Nu: df}.Quantile(1 - Alpha/2)
		iv := fit.Within(j, math.Max(phi*t*t, square(distuv.UnitNormal.Quantile(1-Alpha/2))))
		r.Interval = stats.Interval{Lo: math.Exp(iv.Lo), Hi: math.Exp(iv.Hi)}
	}
	if math.Abs(fit.Beta[j]) > 15 {
		r.Ratio = math.Exp(math.Copysign(math.Inf(1), fit.Beta[j]))
	}
	return r
}

// trend fits the score of an ordered factor in place of its levels, where three
// levels or more have enough effort.
func (c *Comparison) trend(f Factor, o obs, intervals bool) {
	tested := 0
	low, high := math.Inf(1), math.Inf(-1)
	for _, l := range c.Levels {
		s, ok := f.Score[l.Level]
		if !ok || l.Thin {
			continue
		}
		tested++
		if s < low {
			low, c.Trend.Low = s, l.Level
		}
		if s > high {
			high, c.Trend.High = s, l.Level
		}
	}
	if tested < 3 {
		return
	}
	fit, ok := c.single(o, func(level string) float64 { return (f.Score[level] - low) / (high - low) })
	if !ok || !fit.Kept[o.first+1] {
		return
	}
	for _, r := range o.rows {
		c.Trend.Behind.Effort += r.Effort
	}
	c.Trend.Known, c.Trend.Strata, c.Trend.Behind.Events = true, fit.Strata, fit.Events
	c.Trend.Ratio = ratioOf(fit, o.first+1, c.Phi, c.DF, intervals)
}

// adjust sets the adjusted p-values.
func (c *Comparison) adjust() {
	rest, p := []float64{math.NaN()}, make([]float64, len(c.Levels))
	if c.Trend.Known {
		rest[0] = c.Trend.P
	}
	for i, l := range c.Levels {
		p[i] = math.NaN()
		if l.Why == "" {
			p[i] = l.Ratio.P
		}
		rest = append(rest, l.Rest.P)
	}
	p, rest = stats.Holm(p), stats.Holm(rest)
	c.Trend.Adj = rest[0]
	for i := range c.Levels {
		c.Levels[i].P, c.Levels[i].RestP = p[i], rest[i+1]
	}
}
