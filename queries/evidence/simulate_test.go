package evidence

import (
	"fmt"
	"math"
	"math/rand/v2"

	"gonum.org/v1/gonum/stat/distuv"
)

// model is a kind of season whose truth is known: a boat that trolls legs at one
// of several speeds with a lure on each line. Trips differ in how many fish
// were there by a gamma law with mean 1.
type model struct {
	trips  int
	rate   float64 // strikes per line-hour at the first speed
	shape  float64 // of the trips' gamma law: the smaller the more they differ
	bites  float64 // of the legs' gamma law within trips; 0: legs do not differ
	speeds []float64
	// fast is the chance of each leg to run at a speed, given the trip's luck.
	fast func(luck float64) []float64
}

// leg is a stretch of a simulated trip.
type simLeg struct {
	trip, leg int64
	speed     int
	hour      int
	lures     []int // one a line
	hours     float64
	strikes   []int64 // one a line
}

const simLures = 5

// season draws one season.
func (m model) season(r *rand.Rand) []simLeg {
	var legs []simLeg
	gamma := distuv.Gamma{Alpha: m.shape, Beta: m.shape, Src: r}
	for trip := range m.trips {
		luck := gamma.Rand()
		legs = append(legs, m.trip(r, int64(trip+1), luck)...)
	}
	return legs
}

func (m model) trip(r *rand.Rand, trip int64, luck float64) []simLeg {
	var legs []simLeg
	weights := m.fast(luck)
	luckHere := luck
	for i := range 3 + r.IntN(3) {
		l := simLeg{trip: trip, leg: trip*100 + int64(i), hour: 6 + i*2, hours: .5 + r.ExpFloat64(), speed: weighted(r, weights)}
		if m.bites > 0 {
			luckHere = luck * distuv.Gamma{Alpha: m.bites, Beta: m.bites, Src: r}.Rand()
		}
		for range 4 + r.IntN(2) {
			l.lures = append(l.lures, r.IntN(simLures))
			mean := m.rate * m.speeds[l.speed] * luckHere * l.hours
			l.strikes = append(l.strikes, int64(distuv.Poisson{Lambda: mean, Src: r}.Rand()))
		}
		legs = append(legs, l)
	}
	return legs
}

func weighted(r *rand.Rand, weights []float64) int {
	sum := 0.0
	for _, w := range weights {
		sum += w
	}
	x := r.Float64() * sum
	for i, w := range weights {
		if x -= w; x < 0 {
			return i
		}
	}
	return len(weights) - 1
}

// factor is a simulated season by a factor; level names a line's level.
func factor(name string, byLeg bool, legs []simLeg, level func(l simLeg, line int) int) Factor {
	f := Factor{Name: name, ByLeg: byLeg}
	seen := map[int]bool{}
	top := 0
	for _, l := range legs {
		for i := range l.lures {
			at := level(l, i)
			seen[at] = true
			top = max(top, at)
			f.Cells = append(f.Cells, Cell{l.trip, l.leg, fmt.Sprint(at), l.hours, l.strikes[i]})
		}
	}
	for at := range top + 1 {
		if seen[at] {
			f.Levels = append(f.Levels, fmt.Sprint(at))
		}
	}
	return f
}

func bySpeed(l simLeg, _ int) int   { return l.speed }
func byLure(l simLeg, line int) int { return l.lures[line] }
func byHour(l simLeg, _ int) int    { return l.hour }

func seeded(n uint64) *rand.Rand { return rand.New(rand.NewPCG(n, 5)) }

// evenly gives every speed the same chance whatever the luck.
func evenly(n int) func(float64) []float64 {
	w := make([]float64, n)
	for i := range w {
		w[i] = 1
	}
	return func(float64) []float64 { return w }
}

func mean(xs []float64) float64 {
	sum := 0.0
	for _, x := range xs {
		sum += x
	}
	return sum / float64(len(xs))
}

func sd(xs []float64) float64 {
	m, sum := mean(xs), 0.0
	for _, x := range xs {
		sum += (x - m) * (x - m)
	}
	return math.Sqrt(sum / float64(len(xs)-1))
}
