package stats

import (
	"math"
	"testing"
)

// britishDoctors are coronary deaths by age, smokers against non-smokers (Doll
// and Hill's study, as printed in many texts).
var britishDoctors = []Stratum{
	{Count{32, 52407}, Count{2, 18790}},
	{Count{104, 43248}, Count{12, 10673}},
	{Count{206, 28612}, Count{28, 5710}},
	{Count{186, 12663}, Count{28, 2585}},
	{Count{102, 5317}, Count{31, 1462}},
}

// Ratio and interval by epiR 2.0.57, epi.2by2(method = "cohort.time").
func TestMantelHaenszelBritishDoctors(t *testing.T) {
	r, ok := MantelHaenszel(britishDoctors, .95)
	near(t, "ratio", r.Ratio, 1.424682017, 1e-9)
	nearInterval(t, "interval", r.Interval, Interval{1.154703101, 1.757784185}, 1e-9)
	crude := float64(r.Events[0]) / r.Effort[0] / (float64(r.Events[1]) / r.Effort[1])
	near(t, "crude", crude, 1.71982259, 1e-9)
	if !ok || r.Strata != 5 || r.Skipped != 0 || len(r.Warnings) != 0 {
		t.Errorf("%+v", r)
	}
	// p by hand from the published interval: z = ln R / (ln(hi/lo) / 3.92).
	z := math.Log(1.424682017) / (math.Log(1.757784185/1.154703101) / (2 * 1.959963984540054))
	near(t, "p", r.P, math.Erfc(z/math.Sqrt2), 1e-7)
}

// Strata that say nothing change nothing, and are counted.
func TestMantelHaenszelSkips(t *testing.T) {
	plain, _ := MantelHaenszel(britishDoctors, .95)
	more := append([]Stratum{
		{Count{0, 10}, Count{0, 20}}, {Count{5, 10}, Count{0, 0}}, {Count{0, 0}, Count{4, 3}},
	}, britishDoctors...)
	r, _ := MantelHaenszel(more, .95)
	near(t, "ratio", r.Ratio, plain.Ratio, 0)
	nearInterval(t, "interval", r.Interval, plain.Interval, 0)
	if r.Skipped != 3 || r.Strata != 5 {
		t.Errorf("%+v", r)
	}
	wantWarning(t, r.Warnings, WarnSkipped, true)
}

// In one stratum the variance of ln R is 1/a + 1/b at the pooled estimate:
// with equal efforts R = a/b and var = (a+b)/(a*b).
func TestMantelHaenszelOneStratumByHand(t *testing.T) {
	r, _ := MantelHaenszel([]Stratum{{Count{12, 7}, Count{4, 7}}}, .95)
	near(t, "ratio", r.Ratio, 3, 1e-14)
	near(t, "s.e.", r.LogSE, math.Sqrt(16./48), 1e-14)
	q, _ := QuasiMantelHaenszel([]Stratum{{Count{12, 7}, Count{4, 7}}}, .95, 4)
	near(t, "widened s.e.", q.LogSE, 2*r.LogSE, 1e-14)
	u, _ := QuasiMantelHaenszel([]Stratum{{Count{12, 7}, Count{4, 7}}}, .95, .1)
	near(t, "s.e. with phi below 1", u.LogSE, r.LogSE, 0)
}

func TestMantelHaenszelEdges(t *testing.T) {
	one, ok := MantelHaenszel([]Stratum{{Count{5, 2}, Count{0, 3}}}, .95)
	if !ok || !math.IsInf(one.Ratio, 1) || one.Interval.Known() || !math.IsNaN(one.P) {
		t.Errorf("one-sided: %+v", one)
	}
	wantWarning(t, one.Warnings, WarnOneSided, true)
	none, _ := MantelHaenszel([]Stratum{{Count{0, 2}, Count{5, 3}}}, .95)
	if none.Ratio != 0 || none.Interval.Known() {
		t.Errorf("one-sided: %+v", none)
	}
	for _, s := range [][]Stratum{nil, {{Count{0, 1}, Count{0, 1}}}, {{Count{-1, 1}, Count{2, 1}}}} {
		if r, ok := MantelHaenszel(s, .95); ok || !math.IsNaN(r.Ratio) || r.Interval.Known() {
			t.Errorf("%v: %+v", s, r)
		}
	}
	if _, ok := MantelHaenszel(britishDoctors, 1); ok {
		t.Error("conf 1 accepted")
	}
	if _, ok := QuasiMantelHaenszel(britishDoctors, .95, math.NaN()); ok {
		t.Error("phi NaN accepted")
	}
}

// 200 random stratified tables against epiR's epi.2by2 (testdata/strata.R).
func TestMantelHaenszelRandom(t *testing.T) {
	var f struct {
		MH []struct {
			A, B        []int64
			TA, TB      []float64
			Est, Lo, Hi float64
		}
	}
	loadOracle(t, "strata.json", &f)
	wantCases(t, len(f.MH))
	for i, c := range f.MH {
		var strata []Stratum
		for j := range c.A {
			strata = append(strata, Stratum{Count{c.A[j], c.TA[j]}, Count{c.B[j], c.TB[j]}})
		}
		r, _ := MantelHaenszel(strata, .95)
		near(t, caseName("ratio", i), r.Ratio, c.Est, oracleTol)
		nearInterval(t, caseName("interval", i), r.Interval, Interval{c.Lo, c.Hi}, oracleTol)
		if (r.P < .05) == r.Interval.Contains(1) {
			t.Errorf("case %d: p %v against interval %v", i, r.P, r.Interval)
		}
	}
}
