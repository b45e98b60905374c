package evidence

import (
	"math"

	"wakeledger/queries/stats"
)

// SizeLevel is the weights of one level.
type SizeLevel struct {
	Level     string
	N         int
	Median    stats.MedianResult
	Known     bool           // Median is
	Reference bool           // the level with the most weights, which the others are compared with
	Test      stats.RankTest // against the reference: Shift in kg, level less reference
	Tested    bool
	P         float64 // of Test, adjusted by Holm over the levels; NaN where not tested
	Why       string  // there is no test
}

// minWeights is the number of weights on each side below which two levels are
// not compared: with 4 and 4 the smallest exact p-value is 0.03.
const minWeights = 4

// CompareSizes compares weights in kg between levels: medians with the
// interval of order statistics, and each level with the one that has the most
// weights by Mann and Whitney's test, exact for small numbers without ties,
// adjusted by Holm. Weights are in the order of levels.
func CompareSizes(levels []string, weights [][]float64) []SizeLevel {
	out := make([]SizeLevel, len(levels))
	ref := -1
	for i, name := range levels {
		l := SizeLevel{Level: name, N: len(weights[i]), P: math.NaN()}
		l.Median, l.Known = stats.Median(weights[i], Confidence)
		if name != NotLogged && l.N >= minWeights && (ref < 0 || l.N > out[ref].N) {
			ref = i
		}
		out[i] = l
	}
	p := make([]float64, len(out))
	for i := range out {
		l := &out[i]
		p[i] = math.NaN()
		switch {
		case l.Level == NotLogged:
			l.Why = "not a level: the log does not say"
		case ref < 0 || l.N < minWeights:
			l.Why = "fewer than four weights"
		case i == ref:
			l.Reference, l.Why = true, "the level with the most weights, which the others are compared with"
		default:
			l.Test, l.Tested = stats.MannWhitney(weights[i], weights[ref], Confidence)
			p[i] = l.Test.P
		}
	}
	for i, adjusted := range stats.Holm(p) {
		out[i].P = adjusted
	}
	return out
}
