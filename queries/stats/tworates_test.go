package stats

import (
	"math"
	"testing"
)

// R 4.2.2: interval by poisson.test, p as twice the smaller tail by pbinom.
// The first pair is R's documented example, the second Rothman's fluoroscopy
// table, the third example 1 of Gu, Ng, Tang and Schucany 2008.
func TestExactRatioAgainstR(t *testing.T) {
	for _, c := range []struct {
		a, b  Count
		ratio float64
		want  Interval
		p     float64
	}{
		{Count{11, 800}, Count{21, 3011}, 1.971488095, Interval{0.8584264034, 4.277265944}, 0.1120173195754},
		{Count{41, 28010}, Count{15, 19017}, 1.8557586576, Interval{1.0056840627, 3.6093003111}, 0.0476602467546},
		{Count{60, 51477.5}, Count{30, 54308.7}, 2.1099975718, Interval{1.3397357218, 3.3883655736}, 0.00085610538809},
		{Count{0, 1}, Count{3, 1}, 0, Interval{0, 2.41995189}, .25},
		{Count{2, 1}, Count{5, 1}, .4, Interval{0.03809019, 2.44327879}, .453125},
		{Count{1, 1}, Count{10, 1}, .1, Interval{0.00230427, 0.70293903}, .01171875},
		{Count{4, 1}, Count{15, 1}, 4. / 15, Interval{0.06442376, 0.83706377}, .0192108154},
		{Count{0, 10}, Count{4, 12}, 0, Interval{0, 1.8178402312}, math.NaN()},
	} {
		r, ok := ExactRatio(c.a, c.b, .95)
		if !ok {
			t.Fatalf("%v / %v: not ok", c.a, c.b)
		}
		near(t, "ratio", r.Ratio, c.ratio, 1e-9)
		nearInterval(t, "interval", r.Interval, c.want, 2e-6) // the short rows have 8 decimals
		if !math.IsNaN(c.p) {
			near(t, "p", r.P, c.p, 1e-8)
		}
	}
}

// The upper limit of nothing over x is by hand: p^n = 0.025.
func TestExactRatioZeroByHand(t *testing.T) {
	r, _ := ExactRatio(Count{0, 1}, Count{3, 1}, .95)
	p := 1 - math.Pow(.025, 1./3)
	near(t, "upper", r.Interval.Hi, p/(1-p), 1e-12)
	inv, _ := ExactRatio(Count{3, 1}, Count{0, 1}, .95)
	near(t, "ratio", inv.Ratio, math.Inf(1), 0)
	nearInterval(t, "inverse", inv.Interval, Interval{(1 - p) / p, math.Inf(1)}, 1e-12)
}

type twoCase struct {
	X           []int64
	T           []float64
	Conf, Lo, P float64
	Ratio, Hi   num
}

// 200 random pairs against R (testdata/counts.R); and in each, p is below
// 1-conf exactly where the interval leaves out 1.
func TestExactRatioRandom(t *testing.T) {
	var f struct{ Two []twoCase }
	loadOracle(t, "counts.json", &f)
	wantCases(t, len(f.Two))
	out := 0
	for i, c := range f.Two {
		r, _ := ExactRatio(Count{c.X[0], c.T[0]}, Count{c.X[1], c.T[1]}, c.Conf)
		near(t, caseName("ratio", i), r.Ratio, float64(c.Ratio), oracleTol)
		nearInterval(t, caseName("interval", i), r.Interval, Interval{c.Lo, float64(c.Hi)}, oracleTol)
		near(t, caseName("p", i), r.P, c.P, oracleTol)
		if (r.P < 1-c.Conf) == r.Interval.Contains(1) {
			t.Errorf("case %d: p %v against interval %v", i, r.P, r.Interval)
		}
		if r.P < 1-c.Conf {
			out++
		}
	}
	if out < 20 || out > 180 {
		t.Errorf("%d of 200 intervals leave out 1: the agreement was hardly tried", out)
	}
}

// Clusters of two: the same as half the events.
func TestQuasiRatioPairs(t *testing.T) {
	half, _ := ExactRatio(Count{4, 1}, Count{15, 2}, .95)
	r, ok := QuasiRatio(Count{8, 1}, Count{30, 2}, .95, 2)
	if !ok || r.Phi != 2 || r.Events != [2]int64{8, 30} {
		t.Errorf("%+v", r)
	}
	near(t, "ratio", r.Ratio, half.Ratio, 1e-14)
	nearInterval(t, "interval", r.Interval, half.Interval, 1e-12)
	near(t, "p", r.P, half.P, 1e-12)
}

func TestExactRatioNothing(t *testing.T) {
	ok := Count{3, 2}
	for _, c := range []struct {
		a, b      Count
		conf, phi float64
	}{
		{Count{0, 2}, Count{0, 2}, .95, 1}, {Count{3, 0}, ok, .95, 1}, {ok, Count{3, math.Inf(1)}, .95, 1},
		{Count{-1, 2}, ok, .95, 1}, {ok, ok, 1, 1}, {ok, ok, .95, math.NaN()}, {ok, ok, .95, 0},
	} {
		r, said := QuasiRatio(c.a, c.b, c.conf, c.phi)
		if said || r.Interval.Known() || !math.IsNaN(r.P) || !math.IsNaN(r.Ratio) {
			t.Errorf("%+v: %+v", c, r)
		}
	}
}
