package stats

import (
	"math"
	"testing"
)

// The ratio of the meters; R 4.2.2, refitted without each subject.
func TestLeaveOutMeters(t *testing.T) {
	r, ok := LeaveOut(largeMeter, miniMeter, RatioOfSums, .95)
	near(t, "k", r.K, 1.0047021944, 1e-9)
	near(t, "RMSE", r.Errors.RMSE, 39.73478215, 1e-8)
	near(t, "MAE", r.Errors.MAE, 30.18904602, 1e-8)
	near(t, "in-sample RMSE", r.InSample.RMSE, 37.74278418, 1e-8)
	if !ok || r.N != 17 || r.Min != 178 || r.Max != 656 {
		t.Errorf("%+v", r)
	}
	mean, _ := LeaveOut(largeMeter, miniMeter, MeanOfRatios, .95)
	near(t, "mean of ratios", mean.K, 1.0193125162, 1e-9)
}

// R's trees: volume in proportion to girth squared times height.
func TestLeaveOutTrees(t *testing.T) {
	d := readColumns(t, "trees.csv")
	girth, height := numbers(t, d["Girth"]), numbers(t, d["Height"])
	size := make([]float64, len(girth))
	for i := range size {
		size[i] = girth[i] * girth[i] * height[i]
	}
	r, _ := LeaveOut(size, numbers(t, d["Volume"]), RatioOfSums, .95)
	near(t, "k", r.K, .00210361920341, 1e-11)
	near(t, "RMSE", r.Errors.RMSE, 2.51826892, 1e-8)
}

// Perch with girths derived from height and width (testdata/fish.R), R 4.2.2.
func TestLeaveOutPerch(t *testing.T) {
	d := readColumns(t, "perch.csv")
	girth, length := numbers(t, d["girth_cm"]), numbers(t, d["length_cm"])
	near(t, "first girth", girth[0], 5.58463474, 1e-8)
	size := make([]float64, len(girth))
	for i := range size {
		size[i] = girth[i] * girth[i] * length[i]
	}
	r, _ := LeaveOut(size, numbers(t, d["weight_g"]), RatioOfSums, .95)
	near(t, "k", r.K, .024622906903, 1e-9)
	near(t, "RMSE", r.Errors.RMSE, 43.03273973, 1e-8)
	near(t, "MAPE", r.Errors.MAPE, 7.60869927, 1e-8)
}

// By hand: ratios 1 and 4; each is predicted by the other's.
func TestLeaveOutByHand(t *testing.T) {
	r, ok := LeaveOut([]float64{1, 2, 0}, []float64{1, 8, 3}, GeometricMean, .95)
	near(t, "k", r.K, 2, 1e-14)
	near(t, "bias", r.Errors.Bias, (3.-6)/2, 1e-14)
	if !ok || r.Dropped != 1 || r.Ks[0] != 4 || r.Ks[1] != 1 {
		t.Errorf("%+v", r)
	}
	wantWarning(t, r.Warnings, WarnNotPositive, true)
}

func TestLeaveOutNothing(t *testing.T) {
	for _, c := range []struct {
		x, y []float64
		kind RatioKind
		conf float64
	}{
		{nil, nil, GeometricMean, .95}, {[]float64{1}, []float64{2}, GeometricMean, .95}, {[]float64{1, 2}, []float64{1}, GeometricMean, .95},
		{[]float64{1, 2}, []float64{1, 2}, "other", .95}, {[]float64{1, 2}, []float64{1, 2}, GeometricMean, 0},
	} {
		if r, ok := LeaveOut(c.x, c.y, c.kind, c.conf); ok || !math.IsNaN(r.K) {
			t.Errorf("%+v: %+v", c, r)
		}
	}
}

// 200 random sets against R, each kind in turn (testdata/agreement.R).
func TestLeaveOutRandom(t *testing.T) {
	kinds := []RatioKind{GeometricMean, RatioOfSums, MeanOfRatios}
	for i, c := range loadPairs(t) {
		r, _ := LeaveOut(c.X, c.Y, kinds[(i+1)%3], c.Conf)
		near(t, caseName("k", i), r.K, c.K, oracleTol)
		for j, got := range []float64{r.Errors.RMSE, r.Errors.MAE, r.Errors.MAPE} {
			near(t, caseName("errors", i), got, c.Left[j], oracleTol)
		}
	}
}
