package stats

import (
	"math"

	"gonum.org/v1/gonum/stat"
)

// limitSDs is how many standard deviations the limits of agreement lie from
// the bias (Bland and Altman 1999; the paper of 1986 rounds it to 2).
const limitSDs = 1.96

// FewPairs is the number of pairs below which the limits of agreement are too narrow to
// be what further differences are expected within: 1.96 standard deviations hold 95 % of
// them for many pairs, 85 % for 5 and 93.6 % for 30 (by t, in R).
const FewPairs = 30

// Limits is the spread of the differences between two measurements of the same
// things.
type Limits struct {
	Bias         float64  // mean difference, first less second
	BiasInterval Interval // t
	SD           float64  // of the differences, n-1 divisor
	Lo, Hi       float64  // limits of agreement, Bias -/+ 1.96 SD
	LoInterval   Interval // of Lo itself
	HiInterval   Interval // of Hi itself
	Next         Interval // prediction interval of one more difference, t
}

// Agreement is how far estimates are from a reference, in its own unit.
type Agreement struct {
	N       int // pairs used
	Dropped int // pairs with a value that is not a finite number
	Limits
	MAE         float64 // mean absolute difference
	RMSE        float64 // root of the mean squared difference
	MPE         float64 // mean difference in per cent of the reference
	MAPE        float64 // mean absolute difference in per cent of the reference
	NoPercent   int     // pairs left out of MPE and MAPE: the reference is not above 0
	Trend       float64 // slope of the difference on the mean of the two
	TrendP      float64 // two-sided, of a slope of 0; NaN where it cannot be told
	Concordance ConcordanceResult
}

// Agree compares estimates with the reference values of the same things (Bland
// and Altman 1986, Lancet i:307-310): bias, limits of agreement with their own
// intervals, mean absolute, root mean squared and percentage errors, and Lin's
// concordance.
//
// The standard error of a limit is SD * sqrt(1/n + 1.96^2/(2(n-1))) (Bland and
// Altman 1999, Statistical Methods in Medical Research 8:135-160); the paper of
// 1986 approximates it by SD * sqrt(3/n). Intervals are on n-1 degrees of
// freedom of t. The limits hold for differences that do not change with size:
// where they do (Trend), take AgreeRatio.
//
// ok is false without a single finite pair, where the lengths differ or where
// conf is not between 0 and 1. With one pair there is no SD, and no limits.
func Agree(estimate, reference []float64, conf float64) (Agreement, bool) {
	x, y, dropped := finitePairs(estimate, reference)
	nan := math.NaN()
	a := Agreement{N: len(x), Dropped: dropped, Limits: limitsOf(nil, conf), MAE: nan, RMSE: nan, MPE: nan, MAPE: nan,
		Trend: nan, TrendP: nan, Concordance: Concordance(nil, nil, conf)}
	if len(x) == 0 || len(estimate) != len(reference) || !validLevel(conf) {
		return a, false
	}
	d := differences(x, y)
	a.Limits = limitsOf(d, conf)
	a.errors(d, y)
	a.trend(x, y, d)
	a.Concordance = Concordance(x, y, conf)
	return a, true
}

// Expected is where the share conf of further differences is expected: the limits of
// agreement; of fewer than 30 pairs the prediction interval of one more.
func (a Agreement) Expected() Interval {
	if a.N < FewPairs {
		return a.Next
	}
	return Interval{a.Lo, a.Hi}
}

// limitsOf is the limits of agreement of differences.
func limitsOf(d []float64, conf float64) Limits {
	nan := math.NaN()
	l := Limits{nan, unknown(), nan, nan, nan, unknown(), unknown(), unknown()}
	n := float64(len(d))
	if n == 0 || !validLevel(conf) {
		return l
	}
	l.Bias = stat.Mean(d, nil)
	if n < 2 {
		return l
	}
	l.SD = stat.StdDev(d, nil)
	l.Lo, l.Hi = l.Bias-limitSDs*l.SD, l.Bias+limitSDs*l.SD
	t := tQuantile(1-(1-conf)/2, n-1)
	around := func(at, share float64) Interval {
		half := t * l.SD * math.Sqrt(share)
		return Interval{at - half, at + half}
	}
	limitShare := 1/n + square(limitSDs)/(2*(n-1))
	l.BiasInterval = around(l.Bias, 1/n)
	l.LoInterval, l.HiInterval = around(l.Lo, limitShare), around(l.Hi, limitShare)
	l.Next = around(l.Bias, 1+1/n)
	return l
}

// errors sets the mean errors of the differences d from the reference y.
func (a *Agreement) errors(d, y []float64) {
	var abs, sq, pct, absPct, n float64
	for i, v := range d {
		abs += math.Abs(v)
		sq += v * v
		if y[i] > 0 {
			n++
			pct += 100 * v / y[i]
			absPct += 100 * math.Abs(v) / y[i]
		}
	}
	all := float64(len(d))
	a.MAE, a.RMSE = abs/all, math.Sqrt(sq/all)
	a.MPE, a.MAPE = pct/n, absPct/n // NaN where no reference is above 0
	a.NoPercent = len(d) - int(n)
}

// trend sets the regression of difference on mean (Bland and Altman 1999).
func (a *Agreement) trend(x, y, d []float64) {
	mean := make([]float64, len(x))
	for i := range x {
		mean[i] = (x[i] + y[i]) / 2
	}
	line, ok := fitLine(mean, d)
	if !ok {
		return
	}
	a.Trend = line.slope
	a.TrendP = tP(line.slope/line.slopeSE(), line.n-2)
}

// RatioAgreement is how far estimates are from a reference as a factor.
type RatioAgreement struct {
	N           int      // pairs used
	Dropped     int      // pairs with a value that is not finite and above 0
	Ratio       float64  // geometric mean of estimate over reference
	Interval    Interval // of Ratio
	LogSD       float64  // standard deviation of the log ratio
	Lo, Hi      float64  // limits of agreement of the ratio
	LoInterval  Interval
	HiInterval  Interval
	Next        Interval          // prediction interval of one more ratio
	Concordance ConcordanceResult // of the logarithms
}

// Expected is as for Agreement, of further ratios.
func (a RatioAgreement) Expected() Interval {
	if a.N < FewPairs {
		return a.Next
	}
	return Interval{a.Lo, a.Hi}
}

// AgreeRatio is Agree on the logarithms, turned back into ratios: the scale on
// which errors of weights, which grow with size, are even (Bland and Altman
// 1986, 1999). ok is false as for Agree, with pairs that are above 0.
func AgreeRatio(estimate, reference []float64, conf float64) (RatioAgreement, bool) {
	x, y, dropped := positivePairs(estimate, reference)
	x, y = logs(x), logs(y)
	l := limitsOf(differences(x, y), conf)
	a := RatioAgreement{
		N: len(x), Dropped: dropped,
		Ratio: math.Exp(l.Bias), Interval: expInterval(l.BiasInterval), LogSD: l.SD,
		Lo: math.Exp(l.Lo), Hi: math.Exp(l.Hi),
		LoInterval: expInterval(l.LoInterval), HiInterval: expInterval(l.HiInterval), Next: expInterval(l.Next),
		Concordance: Concordance(x, y, conf),
	}
	return a, a.N > 0 && len(estimate) == len(reference) && validLevel(conf)
}

// finitePairs keeps the pairs in which both values are finite numbers; none
// where the lengths differ.
func finitePairs(a, b []float64) (x, y []float64, dropped int) {
	if len(a) != len(b) {
		return nil, nil, 0
	}
	for i := range a {
		if s := a[i] + b[i]; math.IsNaN(s) || math.IsInf(a[i], 0) || math.IsInf(b[i], 0) {
			dropped++
			continue
		}
		x, y = append(x, a[i]), append(y, b[i])
	}
	return x, y, dropped
}

func differences(x, y []float64) []float64 {
	d := make([]float64, len(x))
	for i := range x {
		d[i] = x[i] - y[i]
	}
	return d
}

// logs is the natural logarithms of values above 0.
func logs(xs []float64) []float64 {
	out := make([]float64, len(xs))
	for i, x := range xs {
		out[i] = math.Log(x)
	}
	return out
}

func expInterval(iv Interval) Interval { return Interval{math.Exp(iv.Lo), math.Exp(iv.Hi)} }

// positivePairs keeps the pairs in which both values are finite and above 0.
func positivePairs(a, b []float64) (x, y []float64, dropped int) {
	finiteA, finiteB, dropped := finitePairs(a, b)
	for i := range finiteA {
		if finiteA[i] <= 0 || finiteB[i] <= 0 {
			dropped++
			continue
		}
		x, y = append(x, finiteA[i]), append(y, finiteB[i])
	}
	return x, y, dropped
}
