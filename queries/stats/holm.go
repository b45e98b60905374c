package stats

import (
	"math"
	"sort"
)

// Holm adjusts p-values for their number (Holm 1979, Scandinavian Journal of
// Statistics 6:65-70): in ascending order each is multiplied by the number not
// yet passed, made no smaller than the one before, and capped at 1. The result
// is in the order of p.
//
// A p-value that is NaN or outside 0..1 was no comparison: it comes back NaN
// and does not count towards the number.
func Holm(p []float64) []float64 {
	adjusted := make([]float64, len(p))
	var order []int
	for i, v := range p {
		adjusted[i] = math.NaN()
		if v >= 0 && v <= 1 {
			order = append(order, i)
		}
	}
	sort.SliceStable(order, func(i, j int) bool { return p[order[i]] < p[order[j]] })
	floor := 0.0
	for rank, i := range order {
		floor = math.Max(floor, math.Min(1, float64(len(order)-rank)*p[i]))
		adjusted[i] = floor
	}
	return adjusted
}
