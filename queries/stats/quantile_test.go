package stats

import (
	"math"
	"testing"
)

var lengths = []float64{61, 64, 64, 66, 68, 70, 71, 71, 73, 75, 78, 82}

// R 4.2.2, quantile(type = 7).
func TestQuantile(t *testing.T) {
	for p, want := range map[float64]float64{.25: 65.5, .5: 70.5, .75: 73.5, 0: 61, 1: 82} {
		near(t, "quantile", Quantile(lengths, p), want, 1e-14)
	}
	inf := math.Inf(1)
	for _, c := range []struct {
		values  []float64
		p, want float64
	}{
		{nil, .5, math.NaN()}, {[]float64{math.NaN()}, .5, math.NaN()}, {[]float64{4}, .9, 4},
		{[]float64{4, 4, 4}, .3, 4}, {[]float64{3, math.NaN(), 1}, .5, 2}, {[]float64{1, 2}, -.1, math.NaN()},
		{[]float64{1, 2}, 1.1, math.NaN()}, {[]float64{1, 2}, math.NaN(), math.NaN()},
		{[]float64{inf, 1, inf}, .75, inf}, {[]float64{inf, 1, 2}, .5, 2}, {[]float64{1, inf}, .5, inf},
	} {
		near(t, "quantile", Quantile(c.values, c.p), c.want, 1e-14)
	}
}

// The coverages by R's pbinom: 0.9614, 0.9936 is more than needed.
func TestMedian(t *testing.T) {
	r, ok := Median(lengths, .95)
	if !ok || r.Median != 70.5 || r.Interval != (Interval{64, 75}) || r.N != 12 {
		t.Errorf("%+v", r)
	}
	near(t, "coverage", r.Coverage, .9614257812, 1e-9)
	wide, _ := Median(lengths, .999)
	if wide.Interval != (Interval{61, 82}) {
		t.Errorf("%+v", wide)
	}
	near(t, "coverage", wide.Coverage, .9995117188, 1e-9)
}

// Six values are the fewest with a 95 % interval: 1 - 2/64.
func TestMedianFew(t *testing.T) {
	six, _ := Median(lengths[:6], .95)
	near(t, "coverage", six.Coverage, 1-2./64, 1e-14)
	five, ok := Median(lengths[:5], .95)
	if !ok || five.Median != 64 || five.Interval.Known() {
		t.Errorf("%+v", five)
	}
	one, ok := Median([]float64{4, math.NaN()}, .95)
	if !ok || one.Median != 4 || one.N != 1 || one.Interval.Known() {
		t.Errorf("%+v", one)
	}
	same, _ := Median([]float64{2, 2, 2, 2, 2, 2}, .95)
	if same.Interval != (Interval{2, 2}) {
		t.Errorf("%+v", same)
	}
	for _, conf := range []float64{0, 1, math.NaN()} {
		if _, ok := Median(lengths, conf); ok {
			t.Errorf("conf %v accepted", conf)
		}
	}
	if r, ok := Median(nil, .95); ok || !math.IsNaN(r.Median) {
		t.Errorf("%+v", r)
	}
}

// 200 random samples against R's quantile and pbinom (testdata/ranks.R).
func TestQuantileAndMedianRandom(t *testing.T) {
	for i, c := range loadRanks(t) {
		near(t, caseName("quantile", i), Quantile(c.A, c.At), c.Q, oracleTol)
		r, _ := Median(c.A, c.Conf)
		near(t, caseName("median", i), r.Median, c.Median, oracleTol)
		near(t, caseName("coverage", i), r.Coverage, float64(c.Cover), oracleTol)
		nearInterval(t, caseName("interval", i), r.Interval, Interval{float64(c.MLo), float64(c.MHi)}, oracleTol)
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
