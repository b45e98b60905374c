package evidence

import (
	"math"
	"math/rand/v2"
	"strings"
	"testing"
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
		c, f := judgeOne(good.season(rand.New(rand.NewPCG(uint64(run), 2))), "speed-band", 10, true)
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
	speed, approach := Factor{Name: "speed-band", Levels: []string{"a", "b"}}, Factor{Name: "approach", Levels: []string{"x", "y"}}
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
