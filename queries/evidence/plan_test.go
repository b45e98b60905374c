package evidence

import (
	"fmt"
	"math/rand/v2"
	"testing"
)

// The chance that a plan promises is the share of simulated next seasons that it
// settles, drawn from seeds of their own.
func TestPlanKeepsItsPromise(t *testing.T) {
	runs := 60
	if *studyName == "plan" {
		runs = 200
	}
	for _, q := range []Question{
		{Ratio: 2, Rate: .1, Luck: .5, Phi: 1, factors: 8, tripHours: []float64{15, 30, 45}},
		{Ratio: 2, Rate: .1, Luck: .5, Phi: 1.3, factors: 8, tripHours: []float64{15, 30, 45}},
		{Ratio: 2, Rate: .1, Luck: 1, Phi: 1, ByLeg: true, factors: 8, tripHours: []float64{15, 30, 45}},
	} {
		q.plan()
		settled := 0
		for run := range runs {
			if q.settles(q.draw(rand.New(rand.NewPCG(uint64(run), 99)), q.Trips)) {
				settled++
			}
		}
		share := float64(settled) / float64(runs)
		fmt.Printf("plan of %d trips, by leg %v, phi %.1f: promised %.2f, settled %.3f of %d\n", q.Trips, q.ByLeg, q.Phi, q.Chance(q.Trips), share, runs)
		if q.Trips == 0 || share < .65 || share > .95 {
			t.Errorf("%+v: settled in %v", q, share)
		}
	}
}
