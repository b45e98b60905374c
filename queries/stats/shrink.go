package stats

import (
	"math"

	"gonum.org/v1/gonum/stat/distuv"
)

// ShrunkRate is one level's rate drawn towards the common mean.
type ShrunkRate struct {
	Raw      float64  // events over effort
	Rate     float64  // posterior mean
	Weight   float64  // of the level's own rate in it, 0 to 1
	Interval Interval // central posterior interval
}

// Shrinkage is the rates of several levels seen as draws from one gamma law.
type Shrinkage struct {
	Mean     float64      // of the gamma law: all events over all effort
	Variance float64      // of the gamma law; 0 where the levels differ by chance alone
	Alpha    float64      // shape, Mean^2/Variance; +Inf where Variance is 0
	Beta     float64      // rate, Mean/Variance; +Inf where Variance is 0
	Levels   []ShrunkRate // in the order given; all NaN for a level without usable effort
	Skipped  int          // such levels
}

// Shrink draws the levels' rates towards their common mean by as much as their
// effort is small: gamma-Poisson empirical Bayes with the moments of Marshall
// 1991 (Applied Statistics 40:283-294), global mean. With m the mean, s2 the
// effort-weighted variance of the raw rates and t their mean effort,
// Variance = s2 - m/t, floored at 0; a level's posterior is
// Gamma(Alpha+events, Beta+effort).
//
// Where Variance is 0 all levels have the mean, and its exact interval (that
// of Poisson over the totals). The gamma law is taken as known, which makes
// the intervals somewhat too narrow; they are for ranking, not for testing.
//
// ok is false where no level has effort or conf is not between 0 and 1.
func Shrink(levels []Count, conf float64) (Shrinkage, bool) {
	used, skipped := usableCounts(levels)
	s := Shrinkage{Mean: math.NaN(), Variance: math.NaN(), Alpha: math.NaN(), Beta: math.NaN(), Skipped: skipped}
	if len(used) == 0 || !validLevel(conf) {
		return s, false
	}
	s.fitMoments(used)
	events, effort := totals(used)
	_, pooled, _ := Poisson(events, effort, conf)
	for _, c := range levels {
		s.Levels = append(s.Levels, s.posterior(c, pooled, conf))
	}
	return s, true
}

// fitMoments sets the gamma law by Marshall's moments.
func (s *Shrinkage) fitMoments(used []Count) {
	events, effort := totals(used)
	s.Mean = float64(events) / effort
	var s2 float64
	for _, c := range used {
		s2 += c.Effort * square(float64(c.Events)/c.Effort-s.Mean) / effort
	}
	s.Variance = math.Max(0, s2-s.Mean*float64(len(used))/effort)
	s.Alpha, s.Beta = math.Inf(1), math.Inf(1)
	if s.Variance > 0 {
		s.Alpha, s.Beta = square(s.Mean)/s.Variance, s.Mean/s.Variance
	}
}

// posterior is one level's; pooled is the interval where there is no variation.
func (s *Shrinkage) posterior(c Count, pooled Interval, conf float64) ShrunkRate {
	if !c.usable() {
		return ShrunkRate{math.NaN(), math.NaN(), math.NaN(), unknown()}
	}
	raw := float64(c.Events) / c.Effort
	if s.Variance == 0 {
		return ShrunkRate{raw, s.Mean, 0, pooled}
	}
	w := c.Effort / (c.Effort + s.Beta)
	law := distuv.Gamma{Alpha: s.Alpha + float64(c.Events), Beta: s.Beta + c.Effort}
	tail := (1 - conf) / 2
	return ShrunkRate{raw, s.Mean + w*(raw-s.Mean), w, Interval{law.Quantile(tail), law.Quantile(1 - tail)}}
}

// usableCounts keeps the counts that can enter a rate.
func usableCounts(counts []Count) (used []Count, skipped int) {
	for _, c := range counts {
		if c.usable() {
			used = append(used, c)
		}
	}
	return used, len(counts) - len(used)
}

// totals adds up events and effort.
func totals(counts []Count) (events int64, effort float64) {
	for _, c := range counts {
		events += c.Events
		effort += c.Effort
	}
	return events, effort
}
