package evidence

import (
	"fmt"
	"math"
	"math/rand/v2"

	"gonum.org/v1/gonum/stat/distuv"

	"wakeledger/queries/stats"
)

// world is a kind of season whose truth is known: a boat that trolls a handful of
// legs a trip, each at one speed, with a lure on each line. Trips differ in how
// many fish were there by a gamma law with mean 1, and so do legs within trips.
type world struct {
	trips   int
	perTrip float64 // strikes of a usual trip
	luck    float64 // squared coefficient of variation of the trips' law
	bite    float64 // and of the legs'
	speeds  []float64
	lures   []float64
	hour    func(hour float64) float64 // how good an hour is; nil: all alike
	month   []float64                  // how good a month is; nil: all alike
	// run is the weight of each speed on a leg; nil: all alike.
	run func(speed int, luck float64, month int, hour float64) float64
	// seen is the chance that a trip's crew sticks to the speed of its leg before.
	stick float64
}

type simLeg struct {
	trip, leg  int64
	speed      int
	start      float64 // hour of the day
	hours      float64
	temp       float64
	month      int
	approach   int
	state      int
	lures      []int // one a line
	strikes    []int64
	setback    []int
	strikeHour [][]float64
}

func gammaOf(r *rand.Rand, cv2 float64) float64 {
	if cv2 == 0 {
		return 1
	}
	return distuv.Gamma{Alpha: 1 / cv2, Beta: 1 / cv2, Src: r}.Rand()
}

// season draws one season.
func (w world) season(r *rand.Rand) []simLeg {
	var legs []simLeg
	for trip := range w.trips {
		month := trip * 5 / w.trips
		luck := gammaOf(r, w.luck)
		day := luck
		if w.month != nil {
			day *= w.month[month]
		}
		start, temp, state := 5.5+r.Float64()*2, 18+float64(month)+r.NormFloat64(), r.IntN(3)
		var before *simLeg
		for i := range 4 + r.IntN(4) {
			l := simLeg{trip: int64(trip + 1), leg: int64(trip*100 + i + 1), start: start, hours: .4 +
				.8*r.ExpFloat64(), temp: temp, month: month, state: state, approach: r.IntN(3)}
			l.speed = w.pick(r, luck, month, start)
			if before != nil && r.Float64() < w.stick {
				l.speed = before.speed
			}
			if before == nil || r.Float64() < .5 {
				for range 5 {
					l.lures = append(l.lures, r.IntN(len(w.lures)))
					l.setback = append(l.setback, min(3, max(0, len(l.lures)-2+r.IntN(2))))
				}
			} else {
				l.lures, l.setback = before.lures, before.setback
			}
			w.fish(r, &l, day*gammaOf(r, w.bite))
			start += l.hours + .1
			temp += .4 * r.NormFloat64()
			if r.Float64() < .2 {
				state = r.IntN(3)
			}
			legs = append(legs, l)
			before = &l
		}
	}
	return legs
}

func (w world) pick(r *rand.Rand, luck float64, month int, hour float64) int {
	weights, sum := make([]float64, len(w.speeds)), 0.0
	for i := range weights {
		weights[i] = 1
		if w.run != nil {
			weights[i] = w.run(i, luck, month, hour)
		}
		sum += weights[i]
	}
	x := r.Float64() * sum
	for i, v := range weights {
		if x -= v; x < 0 {
			return i
		}
	}
	return len(weights) - 1
}

// fish draws a leg's strikes, line by line.
func (w world) fish(r *rand.Rand, l *simLeg, here float64) {
	for _, lure := range l.lures {
		mean := w.perTrip / 33 * w.speeds[l.speed] * w.lures[lure] * here * l.hours
		if w.hour != nil {
			mean *= w.hour(math.Mod(l.start+l.hours/2, 24))
		}
		n := int64(0)
		if mean > 0 {
			n = int64(distuv.Poisson{Lambda: mean, Src: r}.Rand())
		}
		l.strikes = append(l.strikes, n)
		var at []float64
		for range n {
			at = append(at, l.start+r.Float64()*l.hours)
		}
		l.strikeHour = append(l.strikeHour, at)
	}
}

// simFactors is a simulated season by each of its factors.
func simFactors(legs []simLeg) []Factor {
	class := func(unit float64, n int) map[string]float64 {
		m := map[string]float64{}
		for i := range n {
			m[fmt.Sprint(i)] = unit * float64(i)
		}
		return m
	}
	line := func(of func(l simLeg, i int) int) func(simLeg, int) string {
		return func(l simLeg, i int) string { return fmt.Sprint(of(l, i)) }
	}
	leg := func(of func(l simLeg) int) func(simLeg, int) string {
		return func(l simLeg, _ int) string { return fmt.Sprint(of(l)) }
	}
	temp := func(l simLeg) int { return max(0, min(6, int(l.temp-17))) }
	return []Factor{
		simFactor(legs, "speed-band", false, class(2, 7), leg(func(l simLeg) int { return l.speed })),
		simFactor(legs, "lure", true, nil, line(func(l simLeg, i int) int { return l.lures[i] })),
		simFactor(legs, "lure-weight", true, class(100, 4), line(func(l simLeg, i int) int { return l.lures[i] % 3 })),
		simFactor(legs, "colour", true, nil, line(func(l simLeg, i int) int { return l.lures[i] * 7 % 4 })),
		simFactor(legs, "setback", true, class(10, 4), line(func(l simLeg, i int) int { return l.setback[i] })),
		simFactor(legs, "position", true, nil, line(func(_ simLeg, i int) int { return i })),
		simFactor(legs, "approach", false, nil, leg(func(l simLeg) int { return l.approach })),
		simFactor(legs, "month", false, nil, leg(func(l simLeg) int { return l.month })),
		simHour(legs, "hour", 1), simHour(legs, "light", 4),
		simFactor(legs, "moon", false, nil, leg(func(l simLeg) int { return int(l.trip) % 4 })),
		simFactor(legs, "sea-temp", false, class(1, 7), leg(temp)),
		simFactor(legs, "sea-state", false, class(1, 3), leg(func(l simLeg) int { return l.state })),
	}
}

func simFactor(legs []simLeg, name string, byLeg bool, score map[string]float64,
	level func(simLeg, int) string) Factor {
	f := Factor{Name: name, ByLeg: byLeg, Score: score}
	for _, l := range legs {
		for i := range l.lures {
			f.Cells = append(f.Cells, Cell{l.trip, l.leg, int64(i + 1), level(l, i), l.hours, l.strikes[i]})
		}
	}
	f.levels()
	return f
}

// simHour splits legs at every full hour (light: at every fourth).
func simHour(legs []simLeg, name string, width float64) Factor {
	f := Factor{Name: name}
	label := func(h float64) string {
		s := math.Floor(math.Mod(h, 24)/width) * width
		if f.Score == nil {
			f.Score = map[string]float64{}
		}
		f.Score[fmt.Sprintf("%02.0f:00", s)] = s
		return fmt.Sprintf("%02.0f:00", s)
	}
	for _, l := range legs {
		for i := range l.lures {
			for t := l.start; t < l.start+l.hours-1e-9; {
				next := math.Min(math.Floor(t/width+1+1e-9)*width, l.start+l.hours)
				f.Cells = append(f.Cells, Cell{l.trip, l.leg, int64(i + 1), label(t + 1e-9), next - t, 0})
				t = next
			}
			for _, t := range l.strikeHour[i] {
				f.Cells = append(f.Cells, Cell{l.trip, l.leg, int64(i + 1), label(t), 0, 1})
			}
		}
	}
	if name == "light" {
		f.Score = nil
	}
	f.levels()
	return f
}

func (f *Factor) levels() {
	seen := map[string]bool{}
	for _, c := range f.Cells {
		seen[c.Level] = true
	}
	for i := range 24 {
		for _, l := range []string{fmt.Sprint(i), fmt.Sprintf("%02d:00", i)} {
			if seen[l] {
				f.Levels = append(f.Levels, l)
			}
		}
	}
}

// judge is all findings of a simulated season.
func judge(legs []simLeg) ([]Comparison, []Finding) {
	factors := simFactors(legs)
	var all []Comparison
	for _, f := range factors {
		all = append(all, compare(f, factors, false))
	}
	return all, Find(all)
}

// judgeOne is the finding on one factor, as it would be beside the others if none
// of them showed anything.
func judgeOne(legs []simLeg, name string, intervals bool) (Comparison, Finding) {
	factors := simFactors(legs)
	var c Comparison
	var all []Comparison
	for _, f := range factors {
		if f.Name == name {
			c = compare(f, factors, intervals)
		} else if f.Name != "month" && f.Name != "moon" { // no trip has two of theirs
			all = append(all, Comparison{Factor: f.Name, Reference: 0,
				Levels: []Level{{Level: "a", RestP: math.NaN()},
					{Level: "b", RestP: 1, Count: stats.Count{Effort: 1}}}})
		}
	}
	return c, Find(append(all, c))[len(all)]
}
