package stats

import (
	"math"
	"testing"
)

// The meters of Bland and Altman, by epiR's epi.ccc.
func TestConcordanceMeters(t *testing.T) {
	c := Concordance(miniMeter, largeMeter, .95)
	near(t, "rho", c.Rho, 0.9427424314, 1e-9)
	nearInterval(t, "interval", c.Interval, Interval{.8504918732, .9787262792}, 1e-9)
	near(t, "accuracy", c.Accuracy, .9994306931, 1e-9)
	near(t, "scale shift", c.ScaleShift, .9725091213, 1e-9)
	near(t, "location shift", c.LocationShift, .0190302501, 1e-8)
	near(t, "r", c.R, .9432794469, 1e-9)
	// The same with n-1 in place of n, which some programs give.
	m := momentsOf(miniMeter, largeMeter)
	n := 17. / 16
	near(t, "n-1", 2*m.sxy*n/(m.sxx*n+m.syy*n+square(m.meanX-m.meanY)), 0.9427524674, 1e-9)
}

// By hand: 1 2 3 against 2 3 4: variances 2/3, shift 1: 2(2/3)/(4/3+1) = 4/7.
func TestConcordanceByHand(t *testing.T) {
	c := Concordance([]float64{1, 2, 3}, []float64{2, 3, 4}, .95)
	near(t, "rho", c.Rho, 4./7, 1e-14)
	near(t, "r", c.R, 1, 1e-14)
	if c.Interval.Known() || c.N != 3 {
		t.Errorf("three pairs: %+v", c)
	}
}

func TestConcordanceEdges(t *testing.T) {
	same := Concordance(largeMeter, largeMeter, .95)
	if same.Rho != 1 || same.Interval.Known() {
		t.Errorf("equal pairs: %+v", same)
	}
	flat := Concordance([]float64{2, 2, 2, 2}, []float64{2, 2, 2, 2}, .95)
	one := Concordance([]float64{2, 2, 2, 2}, []float64{1, 2, 3, 4}, .95)
	if !math.IsNaN(flat.Rho) || one.Rho != 0 || flat.Interval.Known() || one.Interval.Known() {
		t.Errorf("flat %+v, one side flat %+v", flat, one)
	}
	for _, c := range []ConcordanceResult{Concordance(nil, nil, .95), Concordance([]float64{1}, nil, .95),
		Concordance([]float64{1, math.NaN(), 3, 4}, []float64{1, 2, 3, 4}, .95),
		Concordance([]float64{1}, []float64{1}, .95)} {
		if !math.IsNaN(c.Rho) || c.Interval.Known() {
			t.Errorf("%+v", c)
		}
	}
}
