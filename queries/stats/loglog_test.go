package stats

import (
	"math"
	"testing"
)

// Perch of Laengelmavesi (testdata/fish.R), by R 4.2.2 lm and predict.
func TestLogLogPerch(t *testing.T) {
	d := readColumns(t, "perch.csv")
	f, ok := FitLogLog(numbers(t, d["length_cm"]), numbers(t, d["weight_g"]))
	if !ok || f.N != 56 || f.Min != 8.4 || f.Max != 44 {
		t.Errorf("%+v", f)
	}
	near(t, "ln a", f.LnA, -4.8609717311, 1e-9)
	near(t, "ln a s.e.", f.LnASE, .1515818336, 1e-8)
	near(t, "b", f.B, 3.1529586752, 1e-9)
	near(t, "b s.e.", f.BSE, .0460577524, 1e-8)
	near(t, "s", f.S, .1176540929, 1e-8)
	near(t, "R2", f.R2, .9886083416, 1e-9)
	near(t, "correction", f.Correction(), 1.0069452499, 1e-9)
	near(t, "p of b = 3", tP((f.B-3)/f.BSE, 54), .0016129153, 1e-6)
	for _, c := range []struct {
		length, median float64
		next, of       Interval
	}{
		{30, 351.72972696, Interval{277.15904399, 446.36393259}, Interval{340.08805090, 363.76991341}},
		{40, 871.23587149, Interval{684.61775543, 1108.72371883}, unknown()},
	} {
		p, ok := f.At(c.length, .95)
		near(t, "median", p.Median, c.median, 1e-9)
		near(t, "mean", p.Mean, c.median*1.0069452499, 1e-9)
		nearInterval(t, "prediction", p.Interval, c.next, 1e-9)
		if c.of.Known() {
			nearInterval(t, "of the median", p.OfMedian, c.of, 1e-9)
		}
		if !ok || p.Outside || len(p.Warnings) != 0 {
			t.Errorf("%+v", p)
		}
	}
	far, ok := f.At(60, .95)
	if !ok || !far.Outside {
		t.Errorf("%+v", far)
	}
	wantWarning(t, far.Warnings, WarnOutside, true)
}

// W = 2 L^3 without scatter.
func TestLogLogExact(t *testing.T) {
	f, ok := FitLogLog([]float64{1, 2, 4, 0, math.NaN(), 5}, []float64{2, 16, 128, 3, 3, math.Inf(1)})
	if !ok || f.N != 3 || f.Dropped != 3 {
		t.Errorf("%+v", f)
	}
	near(t, "b", f.B, 3, 1e-12)
	near(t, "a", math.Exp(f.LnA), 2, 1e-12)
	near(t, "s", f.S, 0, 1e-12)
	wantWarning(t, f.Warnings, WarnNotPositive, true)
}

func TestLogLogNothing(t *testing.T) {
	for _, c := range [][2][]float64{{nil, nil}, {{1, 2}, {3, 4}}, {{5, 5, 5}, {1, 2, 3}}, {{1, 2, 3}, {1, 2}}} {
		f, ok := FitLogLog(c[0], c[1])
		if ok || !math.IsNaN(f.B) {
			t.Errorf("%v: %+v", c, f)
		}
		if p, ok := f.At(2, .95); ok || p.Interval.Known() || !math.IsNaN(p.Median) {
			t.Errorf("%+v", p)
		}
	}
	f, _ := FitLogLog([]float64{1, 2, 3}, []float64{1, 2, 4})
	for _, length := range []float64{0, -1, math.NaN(), math.Inf(1)} {
		if p, ok := f.At(length, .95); ok || p.Interval.Known() {
			t.Errorf("length %v: %+v", length, p)
		}
	}
	if _, ok := f.At(2, 1); ok {
		t.Error("conf 1 accepted")
	}
}

// 200 random relations against R's lm and predict (testdata/agreement.R).
func TestLogLogRandom(t *testing.T) {
	for i, c := range loadPairs(t) {
		f, _ := FitLogLog(c.Len, c.Y)
		for j, got := range []float64{f.LnA, f.B, f.LnASE, f.BSE, f.S, f.R2} {
			near(t, caseName("line", i), got, c.Line[j], oracleTol)
		}
		p, _ := f.At(c.At, c.Conf)
		near(t, caseName("median", i), p.Median, c.Pred[0], oracleTol)
		nearInterval(t, caseName("prediction", i), p.Interval, Interval{c.Pred[1], c.Pred[2]}, oracleTol)
		nearInterval(t, caseName("of the median", i), p.OfMedian, Interval{c.Mid[1], c.Mid[2]}, oracleTol)
	}
}
