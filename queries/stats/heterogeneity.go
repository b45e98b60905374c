package stats

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/stat/combin"
)

// The laws that a HomogeneityTest can take its p-value from.
const (
	MethodChiSquare        = "Pearson's X2, chi-square"
	MethodExactMultinomial = "Pearson's X2, exact multinomial"
)

// maxOutcomes is how many ways of sharing out the events are still enumerated:
// some tenths of a second.
const maxOutcomes = 2_000_000

// HomogeneityTest asks whether several levels share one rate.
type HomogeneityTest struct {
	X2          float64 // sum of (O-E)^2/E
	DF          int     // levels less one
	P           float64 // of an X2 as large or larger
	Method      string  // the law that P comes from
	Levels      int     // levels with effort
	Events      int64
	MinExpected float64
	Skipped     int // levels without usable effort
	Warnings    []Warning
}

// Homogeneity tests k rates for being one: Pearson's X2 with each level
// expected to hold the common rate times its effort. Given their total the
// events are then multinomial. Where each level expects 5 or more, P is the
// chi-square tail on k-1 degrees of freedom; where one expects fewer, P is the
// exact probability of all outcomes whose X2 is no smaller than that observed,
// as long as there are no more than two million of them, and chi-square with a
// warning beyond. Method says which.
//
// ok is false with fewer than two levels with effort, or no events; the
// statistics are then NaN.
func Homogeneity(levels []Count) (HomogeneityTest, bool) {
	used, skipped := usableCounts(levels)
	events, effort := totals(used)
	h := HomogeneityTest{X2: math.NaN(), P: math.NaN(), MinExpected: math.NaN(),
		Levels: len(used), Events: events, Skipped: skipped}
	if skipped > 0 {
		h.Warnings = append(h.Warnings, WarnNoEffort)
	}
	if len(used) < 2 || events == 0 {
		return h, false
	}
	h.X2, h.DF, h.MinExpected = 0, len(used)-1, math.Inf(1)
	expected := make([]float64, len(used))
	for i, c := range used {
		expected[i] = float64(events) * c.Effort / effort
		h.X2 += square(float64(c.Events)-expected[i]) / expected[i]
		h.MinExpected = math.Min(h.MinExpected, expected[i])
	}
	switch {
	case h.MinExpected < 5 && outcomes(events, len(used)) <= maxOutcomes:
		h.Method = MethodExactMultinomial
		h.P = exactMultinomial(expected, events, h.X2)
	default:
		h.chiSquare()
	}
	return h, true
}

// chiSquare sets P from the chi-square law.
func (h *HomogeneityTest) chiSquare() {
	h.Method = MethodChiSquare
	h.P = chiSquareTail(h.X2, float64(h.DF))
	if h.MinExpected < 5 {
		h.Warnings = append(h.Warnings, WarnThinExpected)
	}
}

// Scaled is the test with X2 divided by the dispersion phi, for events that
// come in clusters, and referred to chi-square (McCullagh and Nelder 1989, from
// memory); a phi below 1, or one that is not known, changes nothing.
func (h HomogeneityTest) Scaled(phi float64) HomogeneityTest {
	if !validEffort(phi) || phi <= 1 || math.IsNaN(h.X2) {
		return h
	}
	h.X2 /= phi
	h.Warnings = slices.Clone(h.Warnings)
	h.chiSquare()
	return h
}

// outcomes is the number of ways to share n events out over k levels.
func outcomes(n int64, k int) float64 {
	return math.Round(combin.GeneralizedBinomial(float64(n)+float64(k)-1, float64(k)-1))
}

// exactMultinomial adds up the probability of every outcome with an X2 of at
// least the observed one, give or take rounding.
func exactMultinomial(expected []float64, n int64, observed float64) float64 {
	total := float64(n)
	whole, _ := math.Lgamma(total + 1)
	// Each level's part in X2 and in the log probability, by its count.
	part, logP := make([][]float64, len(expected)), make([][]float64, len(expected))
	for i, e := range expected {
		for x := range n + 1 {
			factorial, _ := math.Lgamma(float64(x) + 1)
			part[i] = append(part[i], square(float64(x)-e)/e)
			logP[i] = append(logP[i], float64(x)*math.Log(e/total)-factorial)
		}
	}
	p := 0.0
	var share func(level int, left int64, x2, log float64)
	share = func(level int, left int64, x2, log float64) {
		if level == len(expected)-1 {
			if x2+part[level][left] >= observed*(1-1e-9)-1e-12 {
				p += math.Exp(log + logP[level][left])
			}
			return
		}
		for x := range left + 1 {
			share(level+1, left-x, x2+part[level][x], log+logP[level][x])
		}
	}
	share(0, n, 0, whole)
	return math.Min(1, p)
}

// usableCounts keeps the counts that can enter a rate.
func usableCounts(counts []Count) (used []Count, skipped int) {
	for _, c := range counts {
		if c.usable() {
			used = append(used, c)
		}
	}
	return used, len(counts) - len(used)
}

// totals adds up events and effort.
func totals(counts []Count) (events int64, effort float64) {
	for _, c := range counts {
		events += c.Events
		effort += c.Effort
	}
	return events, effort
}
