package stats

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/mathext"
)

// Quantile returns the p-quantile of the values, type 7 of Hyndman and Fan
// 1996 (American Statistician 50:361-365), the default of R: straight lines
// between the order statistics at (k-1)/(n-1). NaN values are not known and do
// not count. The result is NaN without values, and where p is not within 0..1.
func Quantile(values []float64, p float64) float64 {
	return quantileSorted(known(values), p)
}

// known is the values that are not NaN, in ascending order.
func known(values []float64) []float64 {
	var kept []float64
	for _, v := range values {
		if !math.IsNaN(v) {
			kept = append(kept, v)
		}
	}
	slices.Sort(kept)
	return kept
}

// quantileSorted is Quantile of values in ascending order.
func quantileSorted(sorted []float64, p float64) float64 {
	if len(sorted) == 0 || !(p >= 0 && p <= 1) {
		return math.NaN()
	}
	h := float64(len(sorted)-1) * p
	lo := int(h)
	part := h - float64(lo)
	if part == 0 || sorted[lo] == sorted[lo+1] {
		return sorted[lo]
	}
	return sorted[lo] + part*(sorted[lo+1]-sorted[lo])
}

// MedianResult is a median with its interval.
type MedianResult struct {
	Median   float64
	Interval Interval // two of the values; unknown with too few of them
	Coverage float64  // the confidence that the interval really has, at least that asked for
	N        int
}

// Median returns the median and the interval between the two order statistics,
// as many places from each end, that is the shortest to hold the median with at
// least the asked confidence (the sign test's; David and Nagaraja 2003, Order
// Statistics, section 7.1, from memory). It assumes nothing of the shape of the
// distribution. At 95 % it takes 6 values; with fewer there is no interval.
//
// ok is false without values or where conf is not between 0 and 1. NaN values
// do not count.
func Median(values []float64, conf float64) (MedianResult, bool) {
	sorted := known(values)
	n := len(sorted)
	r := MedianResult{Median: quantileSorted(sorted, .5), Interval: unknown(), Coverage: math.NaN(), N: n}
	if n == 0 || !validLevel(conf) {
		return r, false
	}
	for place := 1; 2*place <= n; place++ {
		// The interval misses with fewer than place values on either side.
		covers := 1 - 2*halfBinomial(place-1, n)
		if covers < conf*(1-1e-12) {
			break
		}
		r.Interval = Interval{sorted[place-1], sorted[n-place]}
		r.Coverage = covers
	}
	return r, true
}

// halfBinomial is P(X <= k) of a binomial variable with n tries at one half.
func halfBinomial(k, n int) float64 {
	return mathext.RegIncBeta(float64(n-k), float64(k+1), .5)
}
