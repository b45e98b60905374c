package stats

import (
	"math"
	"testing"
)

// British doctors by age, clusters the five ages: t on 4 degrees of freedom, by
// R 4.2.2 pt and qt from the coefficient and its robust error.
func TestRateRatioRobust(t *testing.T) {
	f := fitOK(t, doctorsData(true))
	r, ok := f.RateRatio("s", RobustSE, .95)
	near(t, "ratio", r.Ratio, math.Exp(0.3545356373), 1e-9)
	near(t, "p", r.P, 0.19825805325, 1e-8)
	nearInterval(t, "interval", r.Interval, Interval{0.752468508412, 2.700582274877}, 1e-8)
	if !ok || r.Method != MethodClusterRobust || r.Strata != 5 || r.Phi != 1 {
		t.Errorf("%+v", r)
	}
	wantWarning(t, r.Warnings, WarnFewClusters, true)
}

// warpbreaks, R's summary of glm(breaks ~ wool + tension, quasipoisson): t
// on 50 degrees of freedom.
func TestRateRatioQuasi(t *testing.T) {
	f := fitOK(t, warpbreaks())
	r, ok := f.RateRatio("tension=M", QuasiSE, .95)
	near(t, "p", r.P, 0.0127748290877, 1e-8)
	nearInterval(t, "interval", r.Interval, Interval{0.564844615573, 0.931055620391}, 1e-9)
	near(t, "phi", r.Phi, 4.261521884, 1e-9)
	if !ok || r.Method != MethodQuasiPoisson {
		t.Errorf("%+v", r)
	}
	if bare, ok := f.RateRatio("tension=M", RobustSE, .95); ok || bare.Interval.Known() {
		t.Errorf("robust without clusters: %+v", bare)
	}
	for _, c := range []struct {
		kind SEKind
		conf float64
	}{{SEKind(9), .95}, {ModelSE, 1}} {
		if r, ok := f.RateRatio("tension=M", c.kind, c.conf); ok || r.Interval.Known() {
			t.Errorf("%+v: %+v", c, r)
		}
		if _, iv, ok := f.StandardisedRate(nil, c.kind, c.conf); ok || iv.Known() {
			t.Errorf("%+v: %+v", c, iv)
		}
	}
}

// Counts less spread than Poisson's do not narrow the interval.
func TestRateRatioUnderdispersed(t *testing.T) {
	f := fitOK(t, RegressionData{Events: []int64{5, 5, 5, 9, 9, 10}, Effort: ones(6), Columns: []Column{{"x", []float64{0, 0, 0, 1, 1, 1}}}})
	if f.Phi >= 1 {
		t.Fatalf("phi %v", f.Phi)
	}
	quasi, _ := f.RateRatio("x", QuasiSE, .95)
	model, _ := f.RateRatio("x", ModelSE, .95)
	near(t, "s.e.", quasi.LogSE, model.LogSE, 1e-12)
	near(t, "phi", quasi.Phi, 1, 0)
}

// With one factor alone, the standardised rate is the level's own, and the
// delta method gives the variance 1/x of the log of a Poisson rate.
func TestStandardisedRateByHand(t *testing.T) {
	f := fitOK(t, RegressionData{Events: []int64{4, 5, 12, 4}, Effort: []float64{2, 1, 4, 4}, Columns: []Column{{"x", []float64{0, 0, 1, 1}}}})
	for value, want := range map[float64]struct{ rate, events float64 }{0: {3, 9}, 1: {2, 16}} {
		rate, iv, ok := f.StandardisedRate(map[string]float64{"x": value}, ModelSE, .95)
		near(t, "rate", rate, want.rate, 1e-10)
		near(t, "upper", iv.Hi, want.rate*math.Exp(1.959963984540054/math.Sqrt(want.events)), 1e-9)
		if !ok {
			t.Error("not ok")
		}
	}
	// Nothing set: the rate over all, 25 events in 11.
	rate, _, _ := f.StandardisedRate(nil, ModelSE, .95)
	near(t, "over all", rate, 25./11, 1e-10)
	if _, _, ok := f.StandardisedRate(map[string]float64{"y": 1}, ModelSE, .95); ok {
		t.Error("unknown column accepted")
	}
}
