package stats

import (
	"math"

	"gonum.org/v1/gonum/stat/distuv"
)

// QuasiPoisson returns the rate x/effort and the exact interval of Poisson
// widened for a dispersion phi, the variance of a count over its mean.
//
// The widening is by effective counts: x events that come phi at a time carry
// the information of x/phi independent ones, so the chi-square quantiles are
// taken on 2x/phi and 2x/phi+2 degrees of freedom and the ends multiplied by
// phi. This is the gamma interval of Fay and Feuer 1997 (Statistics in Medicine
// 16:791-801) with variance phi*x and largest weight phi. With phi = 1 it is
// Garwood's interval; for large x its half-width grows by sqrt(phi), as in
// quasi-likelihood; and it still has an upper end at x = 0, where multiplying
// on the log scale has none. A phi below 1 counts as 1: an interval is never
// made narrower than the exact one.
//
// ok is false as for Poisson, and where phi is not a positive finite number.
func QuasiPoisson(x int64, effort, conf, phi float64) (rate float64, iv Interval, ok bool) {
	if x < 0 || !validEffort(effort) || !validLevel(conf) || !validEffort(phi) {
		return math.NaN(), unknown(), false
	}
	phi = math.Max(phi, 1)
	tail := (1 - conf) / 2
	df := 2 * float64(x) / phi
	unit := phi / 2 / effort
	if x > 0 {
		iv.Lo = unit * distuv.ChiSquared{K: df}.Quantile(tail)
	}
	iv.Hi = unit * distuv.ChiSquared{K: df + 2}.Quantile(1-tail)
	return float64(x) / effort, iv, true
}
