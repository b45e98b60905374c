package stats

import (
	"math"
	"testing"
)

// Five bands, by R 4.2.2 chisq.test; the exact p by enumeration there.
func TestHomogeneityAgainstR(t *testing.T) {
	h, ok := Homogeneity(counts([]int64{2, 9, 21, 6, 1}, []float64{6.5, 14.25, 18, 9.75, 3.5}))
	near(t, "X2", h.X2, 7.3701561596, 1e-10)
	near(t, "exact p", h.P, 0.1132983610, 1e-9)
	near(t, "chi-square p", chiSquareTail(h.X2, 4), 0.1175730427, 1e-9)
	near(t, "smallest expected", h.MinExpected, 2.625, 1e-14)
	if !ok || h.DF != 4 || h.Levels != 5 || h.Events != 39 || h.Method != MethodExactMultinomial {
		t.Errorf("%+v", h)
	}
	wantWarning(t, h.Warnings, WarnThinExpected, false)
	s := h.Scaled(2)
	wantWarning(t, s.Warnings, WarnThinExpected, true)
	near(t, "scaled X2", s.X2, 7.3701561596/2, 1e-10)
	near(t, "scaled p", s.P, math.Exp(-s.X2/2)*(1+s.X2/2), 1e-12) // the tail on 4 df has a closed form
	for _, phi := range []float64{.5, math.NaN(), 1} {
		if h.Scaled(phi).P != h.P {
			t.Errorf("phi %v changes p", phi)
		}
	}
}

func TestHomogeneityEdges(t *testing.T) {
	for _, levels := range [][]Count{nil, {{3, 2}}, {{0, 2}, {0, 4}}, {{3, 2}, {1, 0}}} {
		h, ok := Homogeneity(levels)
		if ok || !math.IsNaN(h.X2) || !math.IsNaN(h.P) {
			t.Errorf("%v: %+v", levels, h)
		}
	}
	h, ok := Homogeneity([]Count{{10, 5}, {20, 10}, {7, math.NaN()}})
	if !ok || h.X2 != 0 || h.P != 1 || h.Skipped != 1 {
		t.Errorf("equal rates: %+v", h)
	}
	wantWarning(t, h.Warnings, WarnNoEffort, true)
	wantWarning(t, h.Warnings, WarnThinExpected, false)
}

// 200 random tables against R's chisq.test (testdata/counts.R).
func TestHomogeneityRandom(t *testing.T) {
	var f struct {
		Several []struct {
			X            []int64
			T            []float64
			X2, P, Exact float64
		}
	}
	loadOracle(t, "counts.json", &f)
	wantCases(t, len(f.Several))
	exact := 0
	for i, c := range f.Several {
		h, _ := Homogeneity(counts(c.X, c.T))
		near(t, caseName("X2", i), h.X2, c.X2, oracleTol)
		near(t, caseName("chi-square p", i), chiSquareTail(h.X2, float64(h.DF)), c.P, oracleTol)
		if c.Exact >= 0 {
			near(t, caseName("exact p", i), h.P, c.Exact, oracleTol)
			exact++
		} else if h.MinExpected >= 5 {
			near(t, caseName("p", i), h.P, c.P, oracleTol)
		}
	}
	if exact < 50 {
		t.Errorf("only %d exact p-values compared", exact)
	}
}

// Two levels by hand: 3 events of an hour each, all at one: 2 * (1/2)^3. The
// p-value of two levels is the binomial one.
func TestHomogeneityExactByHand(t *testing.T) {
	h, _ := Homogeneity([]Count{{3, 1}, {0, 1}})
	near(t, "p", h.P, .25, 1e-12)
	// Too many outcomes: 60 events over 12 levels.
	many, _ := Homogeneity(counts([]int64{5, 5, 5, 5, 5, 5, 5, 5, 5, 5, 9, 1}, []float64{1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1.9, 1}))
	if many.Method != MethodChiSquare {
		t.Errorf("%+v", many)
	}
	wantWarning(t, many.Warnings, WarnThinExpected, true)
}
