package stats

import (
	"math"

	"gonum.org/v1/gonum/floats"
	"gonum.org/v1/gonum/stat"
)

// RatioKind is a way to estimate k in weight = k * size.
type RatioKind string

// The estimators of a ratio coefficient.
const (
	GeometricMean RatioKind = "geometric mean of the ratios" // even errors in per cent
	RatioOfSums   RatioKind = "sum over sum"                 // variance in proportion to size
	MeanOfRatios  RatioKind = "mean of the ratios"           // variance in proportion to size squared
)

// LeaveOneOut is a ratio coefficient and its errors on what it was not fitted
// to.
type LeaveOneOut struct {
	K        float64   // fitted to all pairs
	N        int       // pairs used
	Dropped  int       // pairs with a value that is not finite and above 0
	Min, Max float64   // range of the sizes
	Ks       []float64 // fitted without each pair in turn
	Errors   Agreement // of the predictions from Ks against the weights
	InSample Agreement // of the predictions from K, which flatter it
	Warnings []Warning
}

// LeaveOut fits weight = k * size, where size is length times girth squared, or
// whatever weight is in proportion to, and predicts each weight by the k of all
// other pairs (Stone 1974, Journal of the Royal Statistical Society B
// 36:111-147). A coefficient judged on the pairs it was fitted to looks better
// than it is.
//
// ok is false with fewer than two pairs of values above 0, where the slices
// differ in length, the kind is unknown or conf is not between 0 and 1.
func LeaveOut(size, weight []float64, kind RatioKind, conf float64) (LeaveOneOut, bool) {
	x, y, dropped := positivePairs(size, weight)
	r := LeaveOneOut{K: math.NaN(), N: len(x), Dropped: dropped, Min: math.NaN(), Max: math.NaN()}
	if dropped > 0 {
		r.Warnings = append(r.Warnings, WarnNotPositive)
	}
	if len(x) < 2 || !validLevel(conf) || math.IsNaN(ratioCoefficient(x, y, kind)) {
		return r, false
	}
	r.K, r.Min, r.Max = ratioCoefficient(x, y, kind), floats.Min(x), floats.Max(x)
	out, in := make([]float64, len(x)), make([]float64, len(x))
	for i := range x {
		k := ratioCoefficient(without(x, i), without(y, i), kind)
		r.Ks = append(r.Ks, k)
		out[i], in[i] = k*x[i], r.K*x[i]
	}
	r.Errors, _ = Agree(out, y, conf)
	r.InSample, _ = Agree(in, y, conf)
	return r, true
}

// ratioCoefficient is k by one of the estimators, NaN by an unknown one.
func ratioCoefficient(x, y []float64, kind RatioKind) float64 {
	ratios := make([]float64, len(x))
	floats.DivTo(ratios, y, x)
	switch kind {
	case GeometricMean:
		return stat.GeometricMean(ratios, nil)
	case RatioOfSums:
		return floats.Sum(y) / floats.Sum(x)
	case MeanOfRatios:
		return stat.Mean(ratios, nil)
	}
	return math.NaN()
}

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

// without is a copy of the values less the i-th.
func without(values []float64, i int) []float64 {
	out := append([]float64(nil), values[:i]...)
	return append(out, values[i+1:]...)
}
