package evidence

import (
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"wakeledger/queries/stats"
)

func words(level string) string { return "<" + level + ">" }

// In a few seasons where nothing matters nothing much is settled; where one of
// two speeds is three times as good it mostly is (TestStudyNull and
// TestStudyPower run them at length).
func TestSeasonsInSmall(t *testing.T) {
	settled, found := 0, 0
	const runs = 8
	for run := range runs {
		null := world{trips: 12, perTrip: 3, luck: .5, speeds: ones(3), lures: ones(4), stick: .3}
		_, all := judge(null.season(rand.New(rand.NewPCG(uint64(run), 1))))
		for _, f := range all {
			if f.Verdict == Settled {
				settled++
				break
			}
		}
		good := world{trips: 30, perTrip: 3, luck: .5, speeds: []float64{1, 3}, lures: ones(4), stick: .3}
		c, f := judgeOne(good.season(rand.New(rand.NewPCG(uint64(run), 2))), "speed-band", true)
		if f.Verdict == Settled && f.Better == "1" {
			found++
		}
		for _, l := range c.Levels {
			if iv := l.Ratio.Interval; l.Why == "" && (l.Ratio.P < Alpha) != !iv.Contains(1) {
				t.Errorf("p %v beside %v", l.Ratio.P, iv)
			}
		}
		if s := f.Sentence(words); !strings.HasPrefix(s, "Speed, ") || strings.Contains(s, "NaN") {
			t.Error(s)
		}
	}
	if settled > 1 || found < runs-2 {
		t.Errorf("settled %d times without reason, found %d of %d", settled, found, runs)
	}
}

// One trip, one level and no strikes say so and give no ratio.
func TestNothingToCompare(t *testing.T) {
	for name, cells := range map[string][]Cell{
		"nothing": nil, "one level": {{1, 1, 1, "a", 5, 2}}, "no strikes": {{1, 1, 1, "a", 5, 0}, {1, 2, 1, "b", 5, 0}},
		"other trips": {{1, 1, 1, "a", 50, 5}, {2, 2, 1, "b", 50, 5}},
	} {
		c := Compare(Factor{Name: "lure", ByLeg: true, Levels: []string{"a", "b"}, Cells: cells}, nil)
		f := Find([]Comparison{c})[0]
		if f.Verdict != NotSettled || f.Better != "" || !strings.Contains(f.Sentence(words), "not settled") {
			t.Errorf("%s: %+v", name, f)
		}
		for _, l := range c.Levels {
			if l.Ratio.Known() || l.Why == "" {
				t.Errorf("%s: %+v", name, l)
			}
		}
	}
}

// A speed that was always run with one approach cannot be told from it.
func TestMixedUpIsNamed(t *testing.T) {
	speed, approach := Factor{Name: "speed-band", Levels: []string{"a", "b"}},
		Factor{Name: "approach", Levels: []string{"x", "y"}}
	for trip := range int64(20) {
		for leg := range int64(4) {
			speed.Cells = append(speed.Cells, Cell{trip, trip*10 + leg, 1, speed.Levels[leg%2], 5, 2 + leg%2})
			approach.Cells = append(approach.Cells, Cell{trip, trip*10 + leg, 1, approach.Levels[leg%2], 5, 2 + leg%2})
		}
	}
	c := Compare(speed, []Factor{speed, approach})
	if c.Mixed != "approach" || math.Abs(c.MixedBy-1) > 1e-6 || c.Levels[1].Ratio.Known() {
		t.Errorf("%+v", c)
	}
}

// Three questions: a speed at p .012; dawn at .01 beside an hour at .5, which are
// kin and count as the square root of two; and an approach at 1. By Holm's steps
// speed has 3 x .012 = .036, dawn, with .01414, then 2 x .01414 or as much, and the hour
// as many times dawn's as it is larger.
func TestKinShareTheirAllowance(t *testing.T) {
	one := func(name string, p float64) Comparison {
		return Comparison{Factor: name, Paired: 20, Levels: []Level{
			{Level: "a", Trips: 20, RestP: math.NaN(), Count: stats.Count{Effort: 9}, Beside: stats.Count{Events: 50}},
			{Level: "b", Trips: 20, RestP: p, Rest: Ratio{Ratio: 2}, Count: stats.Count{Effort: 9},
				Beside: stats.Count{Events: 50}},
		}}
	}
	found := Find([]Comparison{one("speed-band", .012), one("light", .01), one("hour", .5), one("approach", 1)})
	for i, want := range []float64{.036, .036, 1, 1} {
		if math.Abs(found[i].PSeason-want) > 1e-9 {
			t.Errorf("%s: %v, want %v", found[i].Factor, found[i].PSeason, want)
		}
	}
	if found[0].Verdict != Settled || found[1].Verdict != Settled ||
		found[2].Verdict != NotSettled || found[0].Factors != 4 {
		t.Errorf("%+v", found)
	}
}

// Simulated, ratios of three levels or more on 7 trips have intervals that are too
// narrow: there is none, and it says so. Two levels have one, and so has one level
// against the others.
func TestFewTripsHaveNoInterval(t *testing.T) {
	for n, given := range map[int]bool{2: true, 3: false} {
		w := world{trips: 7, perTrip: 30, luck: .5, speeds: ones(n), lures: ones(4), stick: .3}
		c, f := judgeOne(w.season(seeded(0, 1)), "speed-band", true)
		for i, l := range c.Levels {
			if i == c.Reference {
				continue
			}
			if !l.Ratio.Known() || l.Ratio.Interval.Known() != given || !math.IsNaN(l.Ratio.P) != given ||
				(l.Why == WhyFewTrips) == given {
				t.Errorf("%d speeds: %+v", n, l)
			}
		}
		if f.Better == "" || f.Verdict == Settled || !f.Ratio.Interval.Known() || c.Paired >= stats.MinTrips {
			t.Errorf("%d speeds: %+v", n, f)
		}
	}
}

// TestLastDigitsPickNoLevel holds that of two levels that say the same of each other, the first
// is named, whichever the last digits favour: they differ from one machine to another.
func TestLastDigitsPickNoLevel(t *testing.T) {
	for _, off := range []float64{-1e-13, 0, 1e-13} {
		level := func(name string, p, ratio float64) Level {
			r := unknownRatio()
			r.Ratio, r.P = ratio, p
			return Level{Level: name, Count: stats.Count{Events: 9, Effort: 40}, Rest: r, RestP: p}
		}
		f := find(Comparison{Factor: "turning", Levels: []Level{level("straight", .8, 1.1),
			level("turning", .8+off, 1/1.1)}})
		if f.Better != "straight" {
			t.Errorf("off by %g: %q is better than %q", off, f.Better, f.Other)
		}
	}
}
