// Package stats turns counts, weights and shares into evidence: an estimate,
// the interval round it and the number it rests on.
//
// Every function works on plain slices and numbers, names the published method
// and the variant of it that it computes, and never panics on odd input: where
// nothing can be said it returns ok = false, or NaN as its
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
//	holm.go           p-values adjusted for the number of comparisons
//	shrink.go         rates drawn towards their common mean
//	effects.go        Poisson regression with an effect, or a law of luck, of each trip
//	effectsspread.go  its variances and dispersion
//	pairs.go          closed forms of it for pairs of counts
//	shared.go         how much one column says of another within strata
//	quantile.go       quantiles, median and its interval
//	agreement.go      two measurements of the same thing
//	concordance.go    Lin's coefficient
//	line.go           the straight line
//
// laws.go has the probability laws. The tests check
// each method against R, statsmodels or scipy on 200 random data sets (power by
// simulation); testdata holds the results with the scripts that made them.
//
// Common to all: a dispersion below 1 never narrows an interval; and a ratio's
// p-value is below 1-conf exactly where its interval leaves out 1.
package stats
