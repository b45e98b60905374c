package evidence

import (
	"maps"
	"math"
	"slices"

	"gonum.org/v1/gonum/stat/distuv"

	"wakeledger/queries/stats"
)

// Trips differ in how many fish were there, so that a level's count has variance
// e + c*sum(e^2) over its trips, with e the expected count of each and c the
// squared coefficient of variation of luck (the gamma-Poisson law). c is estimated by
// moments over all trip x level cells,
//
//	c = sum((x-e)^2 - e(1-h)) / sum(e^2(1 - 2h + H)),  at least 0,
//
// with h the cell's share of the level's expected strikes and H the sum of h^2 over
// the level's cells (the quadratic variance of Breslow 1984, Applied Statistics
// 33:38-44, from memory), and drawn towards priorLuck as if that had been seen on
// priorLuckTrips trips. The numbers are checked by simulation.
const (
	priorLuck      = 0.05
	priorLuckTrips = 2
)

// A product that is added to is rounded first, by its conversion: a processor may do both at
// once, and another one has other last digits then.

// rates sets the levels' rates and their intervals: exact for a Poisson count
// (Garwood 1936), widened by 1 + c*sum(e^2)/sum(e), c itself widened by Student's t
// on half the trips, of few as of seven: the luckiest tell most of it.
func (c *Comparison) rates(f Factor) {
	byLevel := map[string]map[int64]stats.Count{}
	trips := map[int64]bool{}
	for _, x := range f.Cells {
		if byLevel[x.Level] == nil {
			byLevel[x.Level] = map[int64]stats.Count{}
		}
		s := byLevel[x.Level][x.Trip]
		s.Events += x.Strikes
		s.Effort += x.LineHours
		byLevel[x.Level][x.Trip] = s
		trips[x.Trip] = true
	}
	var over, squares float64
	for _, l := range c.Levels {
		o, s := luckOf(l.Count, byLevel[l.Level])
		over, squares = over+o, squares+s
	}
	n := float64(len(trips))
	c.Luck = priorLuck
	if squares > 0 {
		c.Luck = (priorLuckTrips*priorLuck + float64((n-1)*math.Max(0, over/squares))) / (priorLuckTrips + n - 1)
	}
	t := distuv.StudentsT{Sigma: 1, Nu: math.Max(3, (n-1)/2)}.Quantile(1 - Alpha/2)
	wide := t / distuv.UnitNormal.Quantile(1-Alpha/2)
	for i := range c.Levels {
		l := &c.Levels[i]
		if l.Count.Effort <= 0 {
			continue
		}
		share := 0.0 // sum of h^2
		for _, t := range order(byLevel[l.Level]) {
			share += float64(square(byLevel[l.Level][t].Effort / l.Count.Effort))
		}
		l.Phi = 1 + float64(c.Luck*wide*wide*share*math.Max(0.5, float64(l.Count.Events)))
		l.Rate, l.Interval, _ = stats.QuasiPoisson(l.Count.Events, l.Count.Effort, Confidence, l.Phi)
	}
}

// luckOf is a level's two sums of the estimate of c.
func luckOf(all stats.Count, trips map[int64]stats.Count) (over, squares float64) {
	if all.Events == 0 || all.Effort <= 0 {
		return 0, 0
	}
	share := 0.0
	for _, t := range order(trips) {
		share += float64(square(trips[t].Effort / all.Effort))
	}
	for _, t := range order(trips) {
		h := trips[t].Effort / all.Effort
		e := float64(all.Events) * h
		over += float64(square(float64(trips[t].Events)-e)) - float64(e*(1-h))
		squares += float64(e * e * (1 - 2*h + share))
	}
	return over, squares
}

func order(m map[int64]stats.Count) []int64 { return slices.Sorted(maps.Keys(m)) }

func square(x float64) float64 { return x * x }
