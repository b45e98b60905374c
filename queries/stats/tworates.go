package stats

import (
	"math"

	"gonum.org/v1/gonum/mathext"
)

// RateRatio is the ratio of two rates and the evidence for it.
type RateRatio struct {
	Ratio    float64  // first over second; 0 or +Inf where one side has no events
	Interval Interval // for Ratio, at Conf
	P        float64  // two-sided, of a ratio of 1; agrees with Interval
	Phi      float64  // dispersion allowed for: 1 for none
	Conf     float64
	Events   [2]int64   // events that entered, first and second
	Effort   [2]float64 // effort that entered
}

// ExactRatio compares two Poisson rates, a over b, given their total count:
// a's events are then binomial with p = ta/(ta+tb) under equality (Przyborowski
// and Wilenski 1940, Biometrika 31:313-323). The interval is Clopper and
// Pearson's for that share, carried over by p/(1-p) * tb/ta.
//
// Of the two-sided p-values in use this is twice the smaller tail, at most 1.
// It agrees with the interval: P < 1-conf exactly where the interval leaves out
// 1. The sum of all outcomes no likelier than the observed one (R's
// poisson.test) is smaller, and can contradict the interval.
//
// ok is false where neither side has events, an effort is not positive and
// finite, a count is negative, or conf is not between 0 and 1.
func ExactRatio(a, b Count, conf float64) (RateRatio, bool) {
	return QuasiRatio(a, b, conf, 1)
}

// QuasiRatio is ExactRatio with both counts divided by the dispersion phi
// before the limits and tails are taken: effective counts, as in QuasiPoisson
// and as Korn and Graubard 1998 (Survey Methodology 24:193-201) do for shares
// from clustered samples. A phi below 1 counts as 1. ok is false also where
// phi is not a positive finite number.
func QuasiRatio(a, b Count, conf, phi float64) (RateRatio, bool) {
	if !a.usable() || !b.usable() || a.Events+b.Events == 0 || !validLevel(conf) || !validEffort(phi) {
		return RateRatio{Ratio: math.NaN(), Interval: unknown(), P: math.NaN()}, false
	}
	phi = math.Max(phi, 1)
	x, y := float64(a.Events)/phi, float64(b.Events)/phi
	perEffort := b.Effort / a.Effort
	logOdds := binomialLogits(x, x+y, (1-conf)/2)
	lower, upper := binomialTails(x, x+y, a.Effort/(a.Effort+b.Effort))
	return RateRatio{
		Ratio:    x / y * perEffort,
		Interval: Interval{math.Exp(logOdds.Lo) * perEffort, math.Exp(logOdds.Hi) * perEffort},
		P:        math.Min(1, 2*math.Min(lower, upper)),
		Phi:      phi,
		Conf:     conf,
		Events:   [2]int64{a.Events, b.Events},
		Effort:   [2]float64{a.Effort, b.Effort},
	}, true
}

// binomialTails are P(X <= x) and P(X >= x) of a binomial variable, by the
// incomplete beta function, which lets x and n be fractions.
func binomialTails(x, n, p float64) (lower, upper float64) {
	lower, upper = 1, 1
	if x < n {
		lower = mathext.RegIncBeta(n-x, x+1, 1-p)
	}
	if x > 0 {
		upper = mathext.RegIncBeta(x, n-x+1, p)
	}
	return lower, upper
}
