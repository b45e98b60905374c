// Package stats turns counts, weights and shares into evidence: an estimate,
// the interval round it, the number it rests on, and what to beware of.
//
// Every function works on plain slices and numbers, names the published method
// and the variant of it that it computes, and never panics on odd input: where
// nothing can be said it returns ok = false, or NaN with a Warning, as its
// comment states. Confidence levels are fractions (0.95). Rates are events per
// unit of effort, in whatever unit the effort came in; the trade's is the
// line-hour.
//
// The files, one method each:
//
//	poisson.go        rate and its exact interval (quasi.go: widened for clusters)
//	share.go          share and its interval
//	dispersion.go     how much more than Poisson's the counts vary between trips
//	tworates.go       ratio of two rates, exact
//	heterogeneity.go  several rates: are they one?
//	mantelhaenszel.go ratio of rates within strata
//	holm.go           p-values adjusted for the number of comparisons
//	shrink.go         rates drawn towards their common mean
//	regression.go     Poisson regression with offset, and around it design.go
//	                  (columns), separation.go (coefficients that run off),
//	                  covariance.go (standard errors), adjusted.go (ratios and
//	                  standardised rates), linear.go (least squares)
//	ranks.go          two samples compared by rank
//	quantile.go       quantiles, median and its interval
//	agreement.go      two measurements of the same thing
//	concordance.go    Lin's coefficient
//	loglog.go         W = a L^b (line.go: the straight line)
//	leaveout.go       a coefficient judged on what it was not fitted to
//	power.go          effort needed to tell two rates apart
//
// warning.go lists all warnings, laws.go the probability laws. The tests check
// each method against R, statsmodels or scipy on 200 random data sets (power by
// simulation); testdata holds the results with the scripts that made them.
//
// Common to all: a dispersion below 1 never narrows an interval; and a ratio's
// p-value is below 1-conf exactly where its interval leaves out 1.
package stats
