package stats

import (
	"math"
	"testing"
)

// R 4.2.2, p.adjust(p, "holm").
func TestHolmAgainstR(t *testing.T) {
	nan := math.NaN()
	for _, c := range []struct{ p, want []float64 }{
		{[]float64{.01, .02, .03, .04, .05}, []float64{.05, .08, .09, .09, .09}},
		{[]float64{.01, .02, .03, .04}, []float64{.04, .06, .06, .06}},
		{[]float64{.04, .01, .03, .02}, []float64{.06, .04, .06, .06}},
		{[]float64{.2}, []float64{.2}},
		{[]float64{.6, .7, .9}, []float64{1, 1, 1}},
		{[]float64{0, 1}, []float64{0, 1}},
		{[]float64{nan, .02, nan, .01}, []float64{nan, .02, nan, .02}},
		{[]float64{-1, 2, .03}, []float64{nan, nan, .03}},
		{nil, nil},
	} {
		got := Holm(c.p)
		if len(got) != len(c.want) {
			t.Fatalf("Holm(%v) = %v", c.p, got)
		}
		for i := range got {
			near(t, "adjusted", got[i], c.want[i], 1e-14)
		}
	}
}

// 200 random sets against R's p.adjust (testdata/counts.R).
func TestHolmRandom(t *testing.T) {
	var f struct{ Holm []struct{ P, Adjusted []num } }
	loadOracle(t, "counts.json", &f)
	wantCases(t, len(f.Holm))
	for i, c := range f.Holm {
		got := Holm(values(c.P))
		for j, want := range values(c.Adjusted) {
			near(t, caseName("adjusted", i), got[j], want, oracleTol)
		}
	}
}
