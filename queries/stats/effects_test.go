package stats

import (
	"math"
	"testing"
)

// Ten seasons against R's glm with an indicator a trip, the likelihood of the
// gamma law maximised in R, and lme4's normal law (testdata/effects.R).
func TestEffectsAgainstR(t *testing.T) {
	var cases []struct {
		Levels                                int
		Trip, Level                           []int
		X, Hours, Beta, SE, Less, Luck, Mixed []float64
		Strikes                               []int64
		Theta                                 float64
	}
	loadOracle(t, "effects.json", &cases)
	if len(cases) != 10 {
		t.Fatalf("%d data sets, want 10", len(cases))
	}
	for i, c := range cases {
		var obs []Obs
		for r := range c.Trip {
			x := make([]float64, c.Levels)
			if c.Level[r] > 0 {
				x[c.Level[r]-1] = 1
			}
			x[c.Levels-1] = c.X[r]
			obs = append(obs, Obs{Stratum: c.Trip[r], Cell: r, X: x, Count: Count{c.Strikes[r], c.Hours[r]}})
		}
		f, ok := FitEffects(obs, c.Levels)
		luck, ok2 := FitLuck(obs, c.Levels, c.Theta)
		free, ok3 := FitLuck(obs, c.Levels, 0)
		if !ok || !ok2 || !ok3 {
			t.Fatalf("case %d: no fit", i)
		}
		for j := range c.Beta {
			near(t, caseName("log ratio", i), f.Beta[j], c.Beta[j], 1e-6)
			near(t, caseName("its error", i), math.Sqrt(f.Variance(j)), c.SE[j], 1e-6)
			near(t, caseName("by luck", i), luck.Beta[j], c.Luck[j], 1e-6)
			if d := math.Abs(free.Beta[j] - c.Mixed[j]); d > 0.5*c.SE[j] { // another law of luck
				t.Errorf("case %d column %d: %v, lme4 has %v", i, j, free.Beta[j], c.Mixed[j])
			}
		}
		for j, want := range c.Less {
			near(t, caseName("deviance", i), f.Profile(j, 0), want, 1e-6)
			iv := f.Within(j, 3.84)
			for _, end := range []float64{iv.Lo, iv.Hi} {
				if !math.IsInf(end, 0) {
					near(t, caseName("profile at its end", i), f.Profile(j, end), 3.84, 1e-6)
				}
			}
		}
	}
}

// Two trips by hand: 4 and 8 strikes at the levels in equal hours, then 1 and 1.
// Given 12 and 2, level b has 9 of 14: a ratio of 9/5, profile 2*(9 ln(18/14) + 5 ln(10/14)).
func TestEffectsByHand(t *testing.T) {
	f, ok := FitEffects(twoLevels([][2]int64{{4, 8}, {1, 1}}), 1)
	if !ok {
		t.Fatal("no fit")
	}
	near(t, "ratio", math.Exp(f.Beta[0]), 1.8, 1e-9)
	near(t, "profile", f.Profile(0, 0), 2*(9*math.Log(18./14)+5*math.Log(10./14)), 1e-9)
	near(t, "variance", f.Variance(0), 14./45, 1e-9)
}

func twoLevels(trips [][2]int64) []Obs {
	var out []Obs
	for t, c := range trips {
		for level, n := range c {
			out = append(out, Obs{Stratum: t, Cell: 2*t + level, X: []float64{float64(level)}, Count: Count{n, 3}})
		}
	}
	return out
}

// A level without a strike has a ratio of 0 and an upper end: 12 of 12 at the
// other, 2*12*ln(1+r) = 3.84. What no trip ties has nothing.
func TestEffectsEdges(t *testing.T) {
	f, ok := FitEffects(twoLevels([][2]int64{{4, 0}, {8, 0}}), 1)
	iv := f.Within(0, 3.84)
	if !ok || f.Beta[0] > -15 || !math.IsInf(iv.Lo, -1) {
		t.Errorf("no strike at a level: %v %v", f.Beta, iv)
	}
	near(t, "upper end", math.Exp(iv.Hi), math.Exp(3.84/24)-1, 1e-6)
	for name, obs := range map[string][]Obs{
		"nothing": nil, "one trip of one level": twoLevels([][2]int64{{4, 4}})[:1],
		"no strikes": twoLevels([][2]int64{{0, 0}}),
		"no effort":  {{X: []float64{1}, Count: Count{3, 0}}, {X: []float64{0}, Count: Count{3, 0}}},
	} {
		if f, ok := FitEffects(obs, 1); ok || f.Kept[0] {
			t.Errorf("%s: %+v", name, f)
		}
	}
	twice := twoLevels([][2]int64{{4, 8}, {1, 1}})
	for i := range twice {
		twice[i].X = append(twice[i].X, 2*twice[i].X[0])
	}
	if f, ok := FitEffects(twice, 2); !ok || !f.Kept[0] || f.Kept[1] || !math.IsInf(f.Variance(1), 1) {
		t.Errorf("a column twice: %+v", f.Kept)
	}
}
