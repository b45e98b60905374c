package evidence

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"
)

// schools draws fish of two levels, trips whose fish share a size (the share of
// the spread that is the trip's is school), b heavier than a by shift.
func schools(r *rand.Rand, trips int, school, shift float64) [][]Fish {
	out := make([][]Fish, 2)
	for t := range trips {
		base := 40 + 10*math.Sqrt(school)*r.NormFloat64()
		for range 1 + r.IntN(4) {
			level := r.IntN(2)
			kg := base + 10*math.Sqrt(1-school)*r.NormFloat64() + shift*float64(level)
			out[level] = append(out[level], Fish{int64(t), kg})
		}
	}
	return out
}

// coveredSizes counts how often the intervals hold the truth, the second level's fish
// being 5 kg heavier.
func coveredSizes(runs int, draw func(run int) [][]Fish) (median, shift tallied) {
	for run := range runs {
		fish := draw(run)
		var of, in, pairs, held int
		for i, l := range CompareSizes([][]string{{"a", "b"}}, [][][]Fish{fish})[0] {
			if l.MedianInterval.Known() {
				of++
				if l.MedianInterval.Contains(40 + 5*float64(i)) {
					in++
				}
			}
			if l.ShiftInterval.Known() {
				pairs++
				if l.ShiftInterval.Contains(10*float64(i) - 5) {
					held++
				}
			}
		}
		median.add(in, of)
		shift.add(held, pairs)
	}
	return median, shift
}

// schoolsOf draws so many fish of either level, from one to four a trip.
func schoolsOf(r *rand.Rand, n int, school, shift float64) [][]Fish {
	out := make([][]Fish, 2)
	for trip := int64(0); len(out[0]) < n || len(out[1]) < n; trip++ {
		base := 40 + 10*math.Sqrt(school)*r.NormFloat64()
		for range 1 + r.IntN(4) {
			if level := r.IntN(2); len(out[level]) < n {
				out[level] = append(out[level], Fish{trip, base +
					10*math.Sqrt(1-school)*r.NormFloat64() + shift*float64(level)})
			}
		}
	}
	return out
}

// As TestSizeIntervalsHold, by fish: 5, 8, 15 and 40 at each of two levels. With few, most
// have no interval; those that are given hold as often as they promise, or oftener: with
// few trips no range of weights has just 95 %.
func TestSizeIntervalsOfFewFishHold(t *testing.T) {
	cases, runs := []int{8}, 60
	if *studyName == "few-fish" {
		cases, runs = []int{5, 8, 15, 40}, *studyRuns
	}
	for _, n := range cases {
		for _, school := range []float64{0, .3, .7} {
			name := fmt.Sprintf("sizes of %d fish, school %.1f", n, school)
			m, s := coveredSizes(runs, func(run int) [][]Fish {
				return schoolsOf(seeded(run, uint64(n)), n, school, 5)
			})
			fmt.Printf("%s: median %v, difference %v of %d\n", name, m, s, runs)
			m.hold(t, name+": medians", .93, 1)
			s.hold(t, name+": differences", .93, 1)
		}
	}
}

func TestSizeIntervalsHold(t *testing.T) {
	cases, runs := []int{12}, 100
	if *studyName == "sizes" {
		cases, runs = studyTrips(), *studyRuns
	}
	for _, trips := range cases {
		for _, school := range []float64{0, .3, .7} {
			name := fmt.Sprintf("sizes trips %d school %.1f", trips, school)
			m, s := coveredSizes(runs, func(run int) [][]Fish {
				return schools(seeded(run, uint64(trips)), trips, school, 5)
			})
			fmt.Printf("%s: median %v, difference %v of %d\n", name, m, s, runs)
			m.hold(t, name+": medians", .93, .98)
			s.hold(t, name+": differences", .93, .98)
		}
	}
}

// Six trips, all above: 2 of 64 flips are as lopsided. With five nothing is
// rarer than 2 of 32, so that there is no interval.
func TestFlips(t *testing.T) {
	if p := flipP(map[int64]float64{1: 1, 2: 1, 3: 1, 4: 1, 5: 1, 6: 1}, 6); p != 2./64 {
		t.Errorf("p %v", p)
	}
	if iv := medianInterval([]Fish{{1, 3}, {2, 4}, {3, 5}, {4, 6}, {5, 7}}); iv.Known() {
		t.Errorf("five trips: %v", iv)
	}
	six := []Fish{{1, 3}, {2, 4}, {3, 5}, {4, 6}, {5, 7}, {6, 8}}
	if iv := medianInterval(six); math.Abs(iv.Lo-3.1) > 1e-12 || math.Abs(iv.Hi-7.9) > 1e-12 {
		// (.05-2/64)/(14/64-2/64) of the way to the next
		t.Errorf("six trips: %v", iv)
	}
}
