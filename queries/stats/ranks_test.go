package stats

import (
	"math"
	"testing"
)

// Hollander and Wolfe's permeability data, R's wilcox.test example; exact p
// printed there as 0.1272 one-sided.
var (
	termAmnion  = []float64{.80, .83, 1.89, 1.04, 1.45, 1.38, 1.91, 1.64, .73, 1.46}
	earlyAmnion = []float64{1.15, .88, .90, .74, 1.21}
)

func TestMannWhitneyPermeability(t *testing.T) {
	r, ok := MannWhitney(termAmnion, earlyAmnion, .95)
	if !ok || r.Method != MethodRankExact || r.U != 35 || r.N != [2]int{10, 5} {
		t.Errorf("%+v", r)
	}
	near(t, "p", r.P, 0.254412254412, 1e-11)
	near(t, "shift", r.Shift, .305, 1e-12)
	nearInterval(t, "shift", r.ShiftInterval, Interval{-.15, .76}, 1e-12)
	if len(r.Warnings) != 0 {
		t.Errorf("warnings %q", r.Warnings)
	}
}

// Lengths with ties; R 4.2.2 wilcox.test, and scipy the same.
func TestMannWhitneyTies(t *testing.T) {
	a := []float64{61, 64, 64, 66, 68, 70, 71, 71, 73, 75, 78, 82}
	b := []float64{58, 60, 61, 63, 64, 64, 65, 67, 69, 70}
	r, _ := MannWhitney(a, b, .95)
	if r.U != 97 || r.Method != MethodRankNormal {
		t.Errorf("%+v", r)
	}
	near(t, "p", r.P, 0.015708403452, 1e-10)
	wantWarning(t, r.Warnings, WarnTied, true)
	if !r.ShiftInterval.Contains(r.Shift) || r.ShiftInterval.Contains(0) {
		t.Errorf("shift %v in %v", r.Shift, r.ShiftInterval)
	}
}

// By hand: 3 against 3, all above. One order of 20 is as far out on each side.
func TestMannWhitneyByHand(t *testing.T) {
	r, _ := MannWhitney([]float64{4, 5, 6.5}, []float64{1, 2.1, 3.3}, .9)
	near(t, "p", r.P, .1, 1e-14)
	// The tail of 1 in 20 is just met: from the first to the last difference.
	nearInterval(t, "shift", r.ShiftInterval, Interval{4 - 3.3, 5.5}, 1e-14)
	near(t, "shift", r.Shift, 3, 1e-14) // .7 1.7 1.9 2.9 3 3.2 4 4.4 5.5
	tight, _ := MannWhitney([]float64{4, 5, 6.5}, []float64{1, 2.1, 3.3}, .95)
	if tight.ShiftInterval.Known() {
		t.Errorf("%+v", tight)
	}
	wantWarning(t, tight.Warnings, WarnTooFew, true)
}

func TestMannWhitneyEdges(t *testing.T) {
	one, ok := MannWhitney([]float64{2}, []float64{1}, .95)
	if !ok || one.P != 1 || one.Shift != 1 || one.ShiftInterval.Known() {
		t.Errorf("one each: %+v", one)
	}
	same, ok := MannWhitney([]float64{3, 3}, []float64{3, 3, 3}, .95)
	if !ok || same.P != 1 || same.Shift != 0 {
		t.Errorf("all equal: %+v", same)
	}
	wantWarning(t, same.Warnings, WarnAllEqual, true)
	odd, _ := MannWhitney(append([]float64{math.NaN(), math.Inf(1)}, termAmnion...), earlyAmnion, .95)
	if odd.Dropped != 2 || odd.U != 35 {
		t.Errorf("not finite: %+v", odd)
	}
	wantWarning(t, odd.Warnings, WarnNotFinite, true)
	for _, c := range []struct {
		a, b []float64
		conf float64
	}{{nil, earlyAmnion, .95}, {termAmnion, []float64{math.NaN()}, .95}, {termAmnion, earlyAmnion, 0}} {
		if r, ok := MannWhitney(c.a, c.b, c.conf); ok || !math.IsNaN(r.P) || !math.IsNaN(r.Shift) {
			t.Errorf("%+v", r)
		}
	}
}

type rankCase struct {
	A, B                            []float64
	Conf, Exact, U, P, Shift, At, Q float64
	Lo, Hi, Cover, MLo, MHi         num
	Median                          float64
}

func loadRanks(t *testing.T) []rankCase {
	var cases []rankCase
	loadOracle(t, "ranks.json", &cases)
	wantCases(t, len(cases))
	return cases
}

// 200 random pairs of samples against R (testdata/ranks.R).
func TestMannWhitneyRandom(t *testing.T) {
	intervals := 0
	for i, c := range loadRanks(t) {
		r, _ := MannWhitney(c.A, c.B, c.Conf)
		if (r.Method == MethodRankExact) != (c.Exact == 1) {
			t.Errorf("case %d: %s", i, r.Method)
		}
		near(t, caseName("U", i), r.U, c.U, oracleTol)
		near(t, caseName("p", i), r.P, c.P, oracleTol)
		near(t, caseName("shift", i), r.Shift, c.Shift, oracleTol)
		if want := (Interval{float64(c.Lo), float64(c.Hi)}); want.Known() {
			nearInterval(t, caseName("interval", i), r.ShiftInterval, want, oracleTol)
			intervals++
		} else if c.Exact == 1 && r.ShiftInterval.Known() {
			t.Errorf("case %d: interval %v of samples too small for one", i, r.ShiftInterval)
		}
	}
	if intervals < 50 {
		t.Errorf("only %d intervals compared", intervals)
	}
}
