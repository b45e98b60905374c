package queries

import (
	"encoding/json"
	"math"
	"math/rand/v2"
	"os"
	"strconv"
	"testing"
)

// Slopes and intervals against statsmodels: testdata/track_current.py, 200 sets
// of groups.
func TestSlopesAgainstStatsmodels(t *testing.T) {
	b, err := os.ReadFile("testdata/track_current.json")
	if err != nil {
		t.Fatal(err)
	}
	var outside struct {
		Cases []struct {
			Groups   [][][2]float64
			DF       int
			Slope    []float64
			Interval [][2]float64
		}
	}
	if err := json.Unmarshal(b, &outside); err != nil {
		t.Fatal(err)
	}
	if len(outside.Cases) != 200 {
		t.Fatalf("%d cases", len(outside.Cases))
	}
	for i, c := range outside.Cases {
		var s pooled
		fits := make([]slope, len(c.Groups))
		for g, runs := range c.Groups {
			points := make([]point, len(runs))
			for k, r := range runs {
				points[k] = point{r[0], r[1]}
			}
			fits[g] = fitSlope(points)
			s = s.with(fits[g])
		}
		if s.df != c.DF {
			t.Errorf("case %d: %d degrees of freedom, want %d", i, s.df, c.DF)
		}
		for g, f := range fits {
			half, ok := s.half(f, 0.95)
			if !ok || math.Abs(f.value-c.Slope[g]) > 1e-9 || math.Abs(f.value-half-c.Interval[g][0]) > 1e-8 ||
				math.Abs(f.value+half-c.Interval[g][1]) > 1e-8 {
				t.Errorf("case %d, group %d: %v ± %v, want %v, %v", i, g, f.value, half, c.Slope[g], c.Interval[g])
			}
		}
	}
}

// By hand: out at 10 and 10.4 kn, back at 8 and 8 is a current of 1.1; what is left
// over is 0.2 twice, 0.08 on 2 degrees of freedom, t 4.3027 (tables): ±0.4303. One
// way out and one back on another trip have that scatter: ±0.6085.
func TestSlopeByHand(t *testing.T) {
	twice := fitSlope([]point{{1, 10}, {1, 10.4}, {-1, 8}, {-1, 8}})
	once := fitSlope([]point{{1, 10}, {-1, 9}})
	s := pooled{}.with(once).with(twice)
	a, _ := s.half(twice, .95)
	b, _ := s.half(once, .95)
	if math.Abs(twice.value-1.1) > 1e-12 || math.Abs(once.value-.5) > 1e-12 || s.df != 2 ||
		math.Abs(a-.43027) > 1e-5 || math.Abs(b-.60849) > 1e-5 {
		t.Errorf("%v ± %v and %v ± %v on %d", twice.value, a, once.value, b, s.df)
	}
	if _, ok := (pooled{}).with(once).half(once, .95); ok {
		t.Error("an interval of two runs alone")
	}
}

// sea is what a simulated boat runs in.
type sea struct {
	rng     *rand.Rand
	current float64 // kn along the way
	tide    float64 // kn that it loses from run to run
	cross   float64 // kn across it
	throttle,
	wave, wander float64 // standard deviations, kn: of a run, of a minute; degrees of the course
}

// run simulates a way of so many minutes from a place along the line: runs are at
// 9 kn through the water, a throttle's error apart.
func (s *sea) run(trip int64, minute *int64, at *float64, course float64, minutes int) []runMinute {
	const logged = 9.0
	speed := logged
	through := speed + s.throttle*s.rng.NormFloat64()
	noise := 0.0
	var out []runMinute
	for range minutes {
		// waves and helm: half of a minute's error stays for the next
		noise = .5*noise + math.Sqrt(.75)*s.wave*s.rng.NormFloat64()
		off := s.wander * s.rng.NormFloat64() * math.Pi / 180
		sign := math.Cos(course)
		kn := math.Sqrt(through*through-s.cross*s.cross) + noise + sign*s.current
		*at += sign * kn / 60
		out = append(out, runMinute{TripID: trip, Trip: strconv.FormatInt(trip, 10), Boat: "Petrel", LegID: trip,
			LoggedKn: &speed, Minute: *minute, Seconds: 60, Kn: kn,
			North: 60 * math.Cos(course+off), East: 60 * math.Sin(course+off), LatDeg: -36 + *at/60, LonDeg: 179.99})
		*minute++
	}
	*minute += 4 // coming about
	return out
}

// season is trips of two to six runs to and fro; truth is each one's mean current
// towards the north.
func (s *sea) season(trips int) (minutes []runMinute, truth []float64) {
	minute := int64(30000000)
	for trip := range int64(trips) {
		s.current, s.cross = .8*s.rng.NormFloat64(), .5*s.rng.NormFloat64()
		at := 0.0
		runs := 2 + s.rng.IntN(5)
		for i := range runs {
			minutes = append(minutes, s.run(trip, &minute, &at, float64(i%2)*math.Pi, 30+s.rng.IntN(15))...)
			s.current -= s.tide
		}
		truth = append(truth, s.current+s.tide*float64(runs+1)/2)
		minute += 24 * 60
	}
	return minutes, truth
}

// northward is a current with its sign towards the north.
func northward(c Current) (kn, lo, hi float64) {
	if c.SetDeg >= 90 && c.SetDeg < 270 {
		return -c.CurrentKn, -*c.CurrentHi, -*c.CurrentLo
	}
	return c.CurrentKn, *c.CurrentLo, *c.CurrentHi
}

// With a known current and a throttle that is set anew for each run, intervals of
// 95 % hold it 95 times in 100, within what so many of them tell; with a tide that
// turns on the way, whose change they take for scatter, more often.
func TestCurrentIntervalCoversTheCurrent(t *testing.T) {
	if testing.Short() {
		t.Skip("'make prove' simulates the seasons")
	}
	const seasons = 500
	for _, c := range []struct {
		name  string
		sea   sea
		trips int
		more  float64 // coverage above 95 % that is right
	}{
		{"throttle errs", sea{throttle: .25, wave: .2, wander: 6}, 5, 0},
		{"only waves", sea{wave: .4, wander: 3}, 5, 0},
		{"small, and a wandering course", sea{throttle: .1, wave: .3, wander: 10}, 5, 0},
		{"one trip alone", sea{throttle: .2, wave: .2, wander: 6}, 1, 0},
		{"tide", sea{throttle: .1, wave: .2, wander: 6, tide: .15}, 5, .05},
	} {
		c.sea.rng = rand.New(rand.NewPCG(11, 4))
		n, held, width, off := 0, 0, 0.0, 0.0
		for range seasons {
			minutes, truth := c.sea.season(c.trips)
			for _, r := range currents(minutes) {
				trip, err := strconv.Atoi(r.Trip)
				if err != nil {
					t.Fatal(err)
				}
				if r.CurrentLo == nil {
					continue
				}
				kn, lo, hi := northward(r)
				n, width, off = n+1, width+hi-lo, off+kn-truth[trip]
				if lo <= truth[trip] && truth[trip] <= hi {
					held++
				}
			}
		}
		share, off := float64(held)/float64(n), off/float64(n)
		t.Logf("%s: %d intervals, %.3f of them hold the current; ±%.2f kn on average, the estimate off by %.4f kn",
			c.name, n, share, width/2/float64(n), off)
		if n < seasons*c.trips*7/10 || share < .95-.015 || share > .95+.015+c.more || math.Abs(off) > .02 {
			t.Errorf("%s: coverage %.3f of %d, mean error %.4f", c.name, share, n, off)
		}
	}
}

// A run has its way back on the same ground, at the same throttle, in the same
// trip, or none.
func TestCurrentLines(t *testing.T) {
	north, south, east := 0.0, math.Pi, math.Pi/2
	type leg struct {
		trip    int64
		course  float64
		minutes int
		apart   float64 // minutes of arc that the boat is put on by before it
		logged  float64
	}
	for name, c := range map[string]struct {
		legs []leg
		runs [][2]int64 // out and back, of each line
	}{
		"to and fro": {[]leg{{1, north, 30, 0, 9}, {1, south, 30, 0, 9}}, [][2]int64{{1, 1}}},
		"to, fro and to": {[]leg{{1, north, 30, 0, 9}, {1, south, 30, 0, 9}, {1, north, 30, 0, 9}},
			[][2]int64{{2, 1}}},
		"twice": {[]leg{{1, north, 30, 0, 9}, {1, south, 30, 0, 9}, {1, north, 30, 0, 9},
			{1, south, 30, 0, 9}}, [][2]int64{{2, 2}}},
		"one way":             {[]leg{{1, north, 60, 0, 9}}, nil},
		"across":              {[]leg{{1, north, 30, 0, 9}, {1, east, 30, 0, 9}}, nil},
		"on other ground":     {[]leg{{1, north, 30, 0, 9}, {1, south, 30, 10, 9}}, nil},
		"at another throttle": {[]leg{{1, north, 30, 0, 9}, {1, south, 30, 0, 11}}, nil},
		"on another trip":     {[]leg{{1, north, 30, 0, 9}, {2, south, 30, 0, 9}}, nil},
		"four minutes":        {[]leg{{1, north, 6, 0, 9}, {1, south, 6, 0, 9}}, nil},
		"on two grounds": {[]leg{{1, north, 30, 0, 9}, {1, south, 30, 0, 9}, {1, north, 30, 20, 9},
			{1, south, 30, 0, 9}}, [][2]int64{{1, 1}, {1, 1}}},
		"parted by a gap": {[]leg{{1, north, 30, 0, 9}, {1, north, 30, 2, 9}, {1, south, 60, 0, 9}},
			[][2]int64{{1, 1}}},
		"two trips, once each": {[]leg{{1, north, 30, 0, 9}, {1, south, 30, 0, 9}, {2, north, 30, 0, 9},
			{2, south, 30, 0, 9}}, [][2]int64{{1, 1}, {1, 1}}},
		"begun on the way south": {[]leg{{1, south, 30, 0, 9}, {1, north, 30, 0, 9}}, [][2]int64{{1, 1}}},
	} {
		s := sea{rng: rand.New(rand.NewPCG(1, 1)), current: .7}
		minute, at := int64(30000000), 0.0
		var minutes []runMinute
		for i, l := range c.legs {
			at += l.apart
			for _, m := range s.run(l.trip, &minute, &at, l.course, l.minutes) {
				logged := l.logged
				m.LegID, m.LoggedKn = int64(i), &logged
				minutes = append(minutes, m)
			}
		}
		rows := currents(minutes)
		if len(rows) != len(c.runs) {
			t.Errorf("%s: %+v", name, rows)
			continue
		}
		for i, r := range rows {
			if r.OutRuns != c.runs[i][0] || r.BackRuns != c.runs[i][1] || r.CourseDeg != 0 || r.SetDeg != 0 ||
				math.Abs(r.CurrentKn-.7) > 1e-5 || math.Abs(r.OutKn-9.7) > 1e-5 || math.Abs(r.BackKn-8.3) > 1e-5 {
				t.Errorf("%s: %+v, want 0.7 kn setting north, out at 9.7, back at 8.3", name, r)
			}
			if (r.CurrentLo != nil) != (r.OutRuns+r.BackRuns > 2) {
				t.Errorf("%s: an interval from %v of %d and %d runs", name, r.CurrentLo, r.OutRuns, r.BackRuns)
			}
		}
	}
}
