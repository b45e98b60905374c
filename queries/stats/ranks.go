package stats

import (
	"math"
	"slices"
	"sort"
)

// The laws that a RankTest can take its p-value from.
const (
	MethodRankExact  = "Mann-Whitney, exact"
	MethodRankNormal = "Mann-Whitney, normal with tie and continuity correction"
)

// exactRanks is the sample size from which the normal law is used, as in R's
// wilcox.test.
const exactRanks = 50

// RankTest compares two samples by rank.
type RankTest struct {
	U             float64  // pairs with a above b, ties counting a half; R's W
	P             float64  // two-sided
	Method        string   // the law that P and ShiftInterval come from
	Shift         float64  // Hodges-Lehmann: median of all differences a - b
	ShiftInterval Interval // unknown where the samples are too small for Conf
	Conf          float64
	N             [2]int // values used
	Dropped       int    // values that are not finite
	Warnings      []Warning
}

// MannWhitney tests whether values of a tend to be above those of b (Mann and
// Whitney 1947, Annals of Mathematical Statistics 18:50-60).
//
// Without ties and with fewer than 50 values on each side P is exact, twice the
// smaller tail of U. Otherwise U is referred to the normal law with the
// variance corrected for ties and half a unit of continuity; Method says which.
// Where all values are equal P is 1.
//
// Shift is the estimate of Hodges and Lehmann 1963 (Annals of Mathematical
// Statistics 34:598-611), with the interval of ordered differences that the
// same law gives.
//
// ok is false where a side has no finite value or conf is not between 0 and 1.
func MannWhitney(a, b []float64, conf float64) (RankTest, bool) {
	a, droppedA := finite(a)
	b, droppedB := finite(b)
	r := RankTest{U: math.NaN(), P: math.NaN(), Shift: math.NaN(), ShiftInterval: unknown(), Conf: conf,
		N: [2]int{len(a), len(b)}, Dropped: droppedA + droppedB}
	if r.Dropped > 0 {
		r.Warnings = append(r.Warnings, WarnNotFinite)
	}
	if len(a) == 0 || len(b) == 0 || !validLevel(conf) {
		return r, false
	}
	differences := pairDifferences(a, b)
	r.U = countAbove(differences)
	r.Shift = quantileSorted(differences, .5)
	ties := tieSum(a, b)
	if ties == 0 && len(a) < exactRanks && len(b) < exactRanks {
		r.exact(differences)
	} else {
		r.normal(differences, ties)
	}
	if !r.ShiftInterval.Known() {
		r.Warnings = append(r.Warnings, WarnTooFew)
	}
	return r, true
}

// exact takes P and the interval from the law of U without ties.
func (r *RankTest) exact(differences []float64) {
	r.Method = MethodRankExact
	cdf := rankLaw(r.N[0], r.N[1])
	u, pairs := int(r.U), len(differences)
	// The law is symmetric: the upper tail at u is the lower one at pairs-u.
	r.P = math.Min(1, 2*math.Min(cdf[u], cdf[pairs-u]))
	tail := (1 - r.Conf) / 2 * (1 + 1e-9) // a tail met exactly, such as 1 in 20, may round either way
	cut := sort.Search(len(cdf), func(i int) bool { return cdf[i] > tail })
	r.setInterval(differences, cut)
}

// normal takes P and the interval from the normal approximation.
func (r *RankTest) normal(differences []float64, ties float64) {
	r.Method = MethodRankNormal
	m, n := float64(r.N[0]), float64(r.N[1])
	total := m + n
	sd := math.Sqrt(m * n / 12 * (total + 1 - ties/(total*(total-1))))
	if ties > 0 {
		r.Warnings = append(r.Warnings, WarnTied)
	}
	if sd == 0 || total == 1 {
		r.P = 1
		r.Warnings = append(r.Warnings, WarnAllEqual)
		return
	}
	away := math.Max(0, math.Abs(r.U-m*n/2)-.5)
	r.P = normalP(away / sd)
	z := normalQuantile(1 - (1-r.Conf)/2)
	r.setInterval(differences, int(math.Floor(m*n/2-z*sd)))
}

// setInterval leaves out cut differences at each end, less one; a cut of 0
// leaves nothing to stand on.
func (r *RankTest) setInterval(differences []float64, cut int) {
	if cut >= 1 && 2*cut <= len(differences) {
		r.ShiftInterval = Interval{differences[cut-1], differences[len(differences)-cut]}
	}
}

// rankLaw is the distribution function of U at 0, 1, ..., m*n where all
// orders of m and n values are equally likely. With i values of one side and j
// of the other, ways[j][u] adds up over the side that the largest belongs to.
func rankLaw(m, n int) []float64 {
	ways := make([][]float64, n+1)
	for j := range ways {
		ways[j] = make([]float64, m*n+1)
		ways[j][0] = 1
	}
	for range m {
		for j := 1; j <= n; j++ {
			for u := m * n; u >= 0; u-- { // downwards: ways[j][u-j] must still be the old one
				fewer := 0.0
				if u >= j {
					fewer = ways[j][u-j]
				}
				ways[j][u] = ways[j-1][u] + fewer
			}
		}
	}
	cdf := ways[n]
	for u := 1; u < len(cdf); u++ {
		cdf[u] += cdf[u-1]
	}
	all := cdf[len(cdf)-1]
	for u := range cdf {
		cdf[u] /= all
	}
	return cdf
}

// pairDifferences are all a - b, in ascending order.
func pairDifferences(a, b []float64) []float64 {
	d := make([]float64, 0, len(a)*len(b))
	for _, x := range a {
		for _, y := range b {
			d = append(d, x-y)
		}
	}
	slices.Sort(d)
	return d
}

// countAbove counts differences above 0, and half of those at 0.
func countAbove(differences []float64) float64 {
	u := 0.0
	for _, d := range differences {
		switch {
		case d > 0:
			u++
		case d == 0:
			u += .5
		}
	}
	return u
}

// tieSum is the sum of t^3 - t over groups of t equal values.
func tieSum(a, b []float64) float64 {
	all := slices.Sorted(slices.Values(slices.Concat(a, b)))
	sum, run := 0.0, 1.0
	for i := 1; i <= len(all); i++ {
		if i < len(all) && all[i] == all[i-1] {
			run++
			continue
		}
		sum += run*run*run - run
		run = 1
	}
	return sum
}

// finite keeps the values that are finite numbers, and counts the others.
func finite(xs []float64) (kept []float64, dropped int) {
	for _, x := range xs {
		if !math.IsNaN(x) && !math.IsInf(x, 0) {
			kept = append(kept, x)
		}
	}
	return kept, len(xs) - len(kept)
}
