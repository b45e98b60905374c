package stats

// Poisson returns the rate x/effort of x events and its exact central interval
// (Garwood 1936, Biometrika 28:437-442): half of chi-square quantiles on 2x and
// 2x+2 degrees of freedom, over the effort. With x = 0 the lower end is 0 and
// the upper keeps the two-sided tail, (1-conf)/2.
//
// The interval takes events to be independent; events that come in clusters
// need it wider, see Dispersion and QuasiPoisson.
//
// ok is false, and every number NaN, where x is negative, the effort is not
// positive and finite, or conf is not between 0 and 1.
func Poisson(x int64, effort, conf float64) (rate float64, iv Interval, ok bool) {
	return QuasiPoisson(x, effort, conf, 1)
}
