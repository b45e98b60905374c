package stats

import "math"

// Contrast is a difference between two settings that a season should be able
// to tell.
type Contrast struct {
	Rate  float64 // events per unit of effort at the first setting
	Ratio float64 // of the second setting's rate to it; not 1
	Phi   float64 // dispersion of the counts; below 1 it counts as 1
	Conf  float64 // of the interval that is to leave out a ratio of 1, so 0.95 for p < 0.05
	Power float64 // the chance that it does, 0.8 by custom
}

// EffortPlan is the effort that a Contrast takes.
type EffortPlan struct {
	Effort float64    // at each of the two settings, in the unit of the rate
	Events [2]float64 // expected in it at the first and the second setting
}

// EffortToTell returns the effort, the same at each of two settings, from which
// their true ratio of rates is told from 1 with the asked power:
//
//	effort = (z(1-a/2) + z(power))^2 * Phi * (1/r1 + 1/r2) / (ln(r2/r1))^2
//
// with r1 and r2 the rates. It is the sample size of Wald's test of the log
// ratio, whose variance is Phi*(1/x1 + 1/x2): approach 2 of Zhu and Lakkis 2014
// (Statistics in Medicine 33:376-387, from memory) without their negative
// binomial term, in place of which Phi stands here. ExactRatio and QuasiRatio,
// being exact, reach about 0.77 to 0.81 where 0.8 is planned (simulated).
//
// ok is false where the rate or ratio is not positive and finite, the ratio is
// 1, Phi is not a positive finite number, conf is not between 0 and 1, or the
// power is not between (1-conf)/2 and 1.
func EffortToTell(c Contrast) (EffortPlan, bool) {
	none := EffortPlan{math.NaN(), [2]float64{math.NaN(), math.NaN()}}
	if !c.valid() || !(c.Power > (1-c.Conf)/2 && c.Power < 1) {
		return none, false
	}
	z := normalQuantile(1-(1-c.Conf)/2) + normalQuantile(c.Power)
	t := z * z * c.unitVariance() / square(math.Log(c.Ratio))
	return EffortPlan{t, [2]float64{c.Rate * t, c.Rate * c.Ratio * t}}, true
}

// PowerOf returns the power that an effort at each of the two settings gives,
// by the formula of EffortToTell the other way round; c.Power is not used. ok is
// false as there, and where the effort is not positive and finite.
func PowerOf(c Contrast, effort float64) (power float64, ok bool) {
	if !c.valid() || !validEffort(effort) {
		return math.NaN(), false
	}
	z := math.Abs(math.Log(c.Ratio))/math.Sqrt(c.unitVariance()/effort) - normalQuantile(1-(1-c.Conf)/2)
	return math.Erfc(-z/math.Sqrt2) / 2, true
}

// unitVariance is the variance of the log ratio at one unit of effort each.
func (c Contrast) unitVariance() float64 {
	return math.Max(1, c.Phi) * (1 + 1/c.Ratio) / c.Rate
}

func (c Contrast) valid() bool {
	return validEffort(c.Rate) && validEffort(c.Ratio) && c.Ratio != 1 && validEffort(c.Phi) && validLevel(c.Conf)
}
