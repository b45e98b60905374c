package evidence

import "testing"

// BenchmarkCompareByLeg is a season of 20,000 legs of five lines: far more than a boat fishes.
func BenchmarkCompareByLeg(b *testing.B) {
	m := model{trips: 5000, rate: .2, shape: 1.4, speeds: []float64{1, 1}, fast: evenly(2)}
	f := factor("lure", true, m.season(seeded(1)), byLure)
	for b.Loop() {
		Compare(f)
	}
}
