package evidence

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"wakeledger/queries/stats"
)

// modelled is the season of a plan as counts of the model, and whether that settles it.
func modelled(q Question, trips [][2][2]float64) bool {
	var rows []stats.Obs
	for t, n := range trips {
		for half := range 2 {
			for setting := range 2 {
				o := stats.Obs{Stratum: t, Cell: 2*t + setting, X: []float64{float64(half), float64(setting)},
					Count: stats.Count{Events: int64(n[half][setting]), Effort: 10}}
				if q.ByLeg {
					o.Stratum = 2*t + half
				} else if (half+setting+t)%2 == 1 {
					continue
				}
				rows = append(rows, o)
			}
		}
	}
	fit, ok := stats.FitEffects(rows, 2)
	if !ok || !fit.Kept[1] || fit.Events < MinStrikes || fit.Beta[1] <= 0 {
		return false
	}
	c := Comparison{ByLeg: q.ByLeg}
	c.steady(fit)
	return ratioOf(fit, 1, c.Phi, c.DF, false).P*q.allowed < Alpha
}

// The chance that a plan promises is the share of simulated next seasons that the
// model itself settles, drawn from seeds of their own; the plan's closed form says
// the same of each of them.
func TestPlanKeepsItsPromise(t *testing.T) {
	runs := 100
	if *studyName == "plan" {
		runs = 200
	}
	for _, q := range []Question{
		{Ratio: 2, Rate: .1, Luck: .5, Phi: 1, allowed: 8, tripHours: []float64{15, 30, 45}},
		{Ratio: 2, Rate: .1, Luck: .5, Phi: 1.3, allowed: 8, tripHours: []float64{15, 30, 45}},
		{Ratio: 2, Rate: .1, Luck: 1, Phi: 1, ByLeg: true, allowed: 8, tripHours: []float64{15, 30, 45}},
		{Ratio: 2, Rate: .3, Luck: 1, Phi: 2, ByLeg: true, allowed: 12, tripHours: []float64{5, 40}},
	} {
		q.plan()
		chances := q.Chances(q.Trips)
		promised := chances[q.Trips-1]
		settled := 0
		for run := range runs {
			r := rand.New(rand.NewPCG(*studySeed+uint64(run), 99))
			var trips [][2][2]float64
			var s tally
			for i := range q.Trips {
				trips = append(trips, q.draw(r, i))
				s.add(trips[i], q.ByLeg)
			}
			full := modelled(q, trips)
			if full {
				settled++
			}
			if full != s.settles(q) {
				t.Errorf("run %d of %+v: the model settles it: %v, the plan's closed form does not agree", run, q, full)
			}
		}
		share := float64(settled) / float64(runs)
		fmt.Printf("plan of %d trips, by leg %v, phi %.1f: promised %.2f, settled %.3f of %d (error %.3f)\n",
			q.Trips, q.ByLeg, q.Phi, promised, share, runs, math.Sqrt(share*(1-share)/float64(runs)))
		slack := 0.05 + 2*math.Sqrt(.16/float64(runs)) // two errors of the count
		if q.Trips == 0 || math.Abs(share-Power) > slack {
			t.Errorf("%+v: settled in %v", q, share)
		}
		if chances[stats.MinTrips-2] != 0 || chances[q.Trips/2-1] >= promised ||
			promised < Power || chances[q.Trips-2] >= Power {
			t.Errorf("chances %v", chances)
		}
	}
}
