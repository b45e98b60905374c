package stats

import (
	"math"
	"math/rand/v2"
	"testing"
)

// Peak flow by large (Wright) and mini meter, first readings of 17 subjects
// (Bland and Altman 1986).
var (
	largeMeter = []float64{494, 395, 516, 434, 476, 557, 413, 442, 650, 433, 417, 656, 267, 478, 178, 423, 427}
	miniMeter  = []float64{512, 430, 520, 428, 500, 600, 364, 380, 658, 445, 432, 626, 260, 477, 259, 350, 451}
)

// The paper prints -2.1, 38.8, limits at two standard deviations -79.7 and
// 75.5, the bias from -22.0 to 17.8; the digits here are R 4.2.2's.
func TestAgreeBlandAltman(t *testing.T) {
	a, ok := Agree(largeMeter, miniMeter, .95)
	if !ok || a.N != 17 || a.Dropped != 0 {
		t.Errorf("%+v", a)
	}
	near(t, "bias", a.Bias, -2.117647059, 1e-9)
	near(t, "s.d.", a.SD, 38.76512987, 1e-9)
	near(t, "lower limit", a.Lo, -78.09730161, 1e-9)
	near(t, "upper limit", a.Hi, 73.86200749, 1e-9)
	near(t, "lower limit of 2 s.d.", a.Bias-2*a.SD, -79.64790681, 1e-9)
	near(t, "upper limit of 2 s.d.", a.Bias+2*a.SD, 75.41261269, 1e-9)
	nearInterval(t, "bias", a.BiasInterval, Interval{-22.0488376966, 17.8135435790}, 1e-9)
	nearInterval(t, "next", a.Next, Interval{-86.67852740, 82.44323328}, 1e-9)
	const se, t16 = 16.3951079847, 2.1199052992 // the standard error of a limit, 1999 formula
	nearInterval(t, "lower limit", a.LoInterval, Interval{a.Lo - t16*se, a.Lo + t16*se}, 1e-9)
	nearInterval(t, "upper limit", a.HiInterval, Interval{a.Hi - t16*se, a.Hi + t16*se}, 1e-9)
	near(t, "trend", a.Trend, 0.0286874452, 1e-8)
	near(t, "trend p", a.TrendP, .74949853, 1e-8)
	r, _ := AgreeRatio(largeMeter, miniMeter, .95)
	near(t, "ratio", r.Ratio, 0.98828463, 1e-8)
	near(t, "lower limit of ratio", r.Lo, 0.77826743, 1e-8)
	near(t, "upper limit of ratio", r.Hi, 1.25497543, 1e-8)
}

// By hand: differences 1, -2, 4 from references 10, 20, 40.
func TestAgreeErrorsByHand(t *testing.T) {
	a, _ := Agree([]float64{11, 18, 44}, []float64{10, 20, 40}, .95)
	near(t, "bias", a.Bias, 1, 1e-14)
	near(t, "MAE", a.MAE, 7./3, 1e-14)
	near(t, "RMSE", a.RMSE, math.Sqrt(7), 1e-14)
	near(t, "MPE", a.MPE, 10./3, 1e-14)
	near(t, "MAPE", a.MAPE, 10, 1e-14)
	near(t, "s.d.", a.SD, 3, 1e-14)
}

func TestAgreeEdges(t *testing.T) {
	one, ok := Agree([]float64{5}, []float64{4}, .95)
	if !ok || one.Bias != 1 || one.MAPE != 25 || !math.IsNaN(one.SD) ||
		one.BiasInterval.Known() || one.LoInterval.Known() {
		t.Errorf("one pair: %+v", one)
	}
	nan, inf := math.NaN(), math.Inf(1)
	some, ok := Agree([]float64{5, nan, 3, inf, -inf}, []float64{4, 2, 0, 1, inf}, .95)
	if !ok || some.N != 2 || some.Dropped != 3 || some.NoPercent != 1 || some.MAPE != 25 {
		t.Errorf("not finite: %+v", some)
	}
	zero, _ := Agree([]float64{1, 2}, []float64{0, 0}, .95)
	near(t, "MAPE of zeros", zero.MAPE, nan, 0)
	for _, c := range []struct {
		x, y []float64
		conf float64
	}{{nil, nil, .95}, {[]float64{1}, []float64{1, 2}, .95},
		{[]float64{nan}, []float64{1}, .95}, {largeMeter, miniMeter, 1}} {
		a, ok := Agree(c.x, c.y, c.conf)
		r, ok2 := AgreeRatio(c.x, c.y, c.conf)
		if ok || ok2 || !math.IsNaN(a.Bias) || !math.IsNaN(r.Ratio) || a.LoInterval.Known() || r.LoInterval.Known() {
			t.Errorf("%v %v: %+v %+v", c.x, c.y, a, r)
		}
	}
	ratio, ok := AgreeRatio([]float64{2, 4, 0, -3}, []float64{1, 2, 5, 6}, .95)
	if !ok || ratio.N != 2 || ratio.Dropped != 2 {
		t.Errorf("%+v", ratio)
	}
	near(t, "ratio", ratio.Ratio, 2, 1e-14)
	near(t, "its spread", ratio.LogSD, 0, 1e-14)
}

// A difference that grows with size is pointed out.
func TestAgreeTrend(t *testing.T) {
	a, _ := Agree([]float64{11, 22.5, 33, 44.2, 55, 66.1}, []float64{10, 20, 30, 40, 50, 60}, .95)
	if a.Trend <= 0 || a.TrendP >= .05 {
		t.Errorf("trend %v, p %v", a.Trend, a.TrendP)
	}
}

// Where further differences are expected holds 95 % of them, with few pairs and many:
// a new difference beside each of 20,000 sets of pairs. The limits of agreement alone, 1.96
// standard deviations, would hold 85 % at 5 pairs.
func TestExpectedHolds(t *testing.T) {
	const sets = 20000
	for _, n := range []int{5, 8, 15, 40} {
		r := rand.New(rand.NewPCG(14, uint64(n)))
		held, ratios := 0, 0
		x, y := make([]float64, n+1), make([]float64, n+1)
		for range sets {
			for i := range x {
				y[i] = 40 + 60*r.Float64()
				x[i] = y[i] * math.Exp(.03+.08*r.NormFloat64())
			}
			a, _ := AgreeRatio(x[:n], y[:n], .95)
			if a.Expected().Contains(x[n] / y[n]) {
				ratios++
			}
			for i := range x {
				x[i] = y[i] + 2 + 5*r.NormFloat64()
			}
			b, _ := Agree(x[:n], y[:n], .95)
			if b.Expected().Contains(x[n] - y[n]) {
				held++
			}
		}
		share, ratio := float64(held)/sets, float64(ratios)/sets
		t.Logf("%2d pairs: held %.3f of differences, %.3f of ratios (error %.4f)", n, share,
			ratio, math.Sqrt(.95*.05/sets))
		if math.Min(share, ratio) < .935 || math.Max(share, ratio) > .96 {
			t.Errorf("%d pairs: held %.3f of differences and %.3f of ratios, want 0.95", n, share, ratio)
		}
	}
}

// limitRow is what testdata/agreement.R writes for one scale.
func checkLimits(t *testing.T, what string, l Limits, want []float64) {
	t.Helper()
	got := []float64{l.Bias, l.BiasInterval.Lo, l.BiasInterval.Hi, l.SD, l.Lo, l.Hi, l.LoInterval.Lo, l.LoInterval.Hi,
		l.HiInterval.Lo, l.HiInterval.Hi, l.Next.Lo, l.Next.Hi}
	for j := range want {
		near(t, what, got[j], want[j], oracleTol)
	}
}

func checkConcordance(t *testing.T, what string, c ConcordanceResult, want []float64) {
	t.Helper()
	near(t, what, c.Rho, want[0], oracleTol)
	nearInterval(t, what, c.Interval, Interval{want[1], want[2]}, oracleTol)
	near(t, what+" accuracy", c.Accuracy, want[3], oracleTol)
}

type pairCase struct {
	X, Y, Len                          []float64
	Conf, At, K                        float64
	Limits, Ratio, Errors, Trend       []float64
	Lin, LogLin, Line, Pred, Mid, Left []float64
}

func loadPairs(t *testing.T) []pairCase {
	var cases []pairCase
	loadOracle(t, "agreement.json", &cases)
	wantCases(t, len(cases))
	return cases
}

// 200 random sets of pairs against R and epiR (testdata/agreement.R).
func TestAgreeRandom(t *testing.T) {
	for i, c := range loadPairs(t) {
		a, _ := Agree(c.X, c.Y, c.Conf)
		checkLimits(t, caseName("limits", i), a.Limits, c.Limits)
		for j, got := range []float64{a.MAE, a.RMSE, a.MPE, a.MAPE} {
			near(t, caseName("errors", i), got, c.Errors[j], oracleTol)
		}
		near(t, caseName("trend", i), a.Trend, c.Trend[0], oracleTol)
		near(t, caseName("trend p", i), a.TrendP, c.Trend[1], oracleTol)
		checkConcordance(t, caseName("concordance", i), a.Concordance, c.Lin)
		r, _ := AgreeRatio(c.X, c.Y, c.Conf)
		checkConcordance(t, caseName("log concordance", i), r.Concordance, c.LogLin)
		l := []float64{r.Ratio, r.Interval.Lo, r.Interval.Hi, math.Exp(r.LogSD), r.Lo, r.Hi,
			r.LoInterval.Lo, r.LoInterval.Hi,
			r.HiInterval.Lo, r.HiInterval.Hi, r.Next.Lo, r.Next.Hi}
		for j, want := range c.Ratio {
			near(t, caseName("ratio", i), l[j], math.Exp(want), oracleTol)
		}
	}
}

// TestExpectedCoverage: where 95 in 100 further fish are expected holds 93 to 96 % of
// them, as differences and as ratios, of 5 fish and of 40; the limits of agreement alone,
// 1.96 standard deviations, do not: by theory P(|t| < 1.96 / sqrt(1 + 1/n)) on n-1 degrees
// of freedom, 85.2 % for 5 (R: 2 * pt(1.96 / sqrt(1.2), 4) - 1).
func TestExpectedCoverage(t *testing.T) {
	const trials = 20000
	rng := rand.New(rand.NewPCG(14, 5))
	for _, n := range []int{5, 8, 15, 40} {
		held, ratio, plain := 0, 0, 0
		for range trials {
			tape, scale := make([]float64, n), make([]float64, n)
			fish := func() (w, s float64) {
				s = 40 + 60*rng.Float64()
				return s + 3 + 5*rng.NormFloat64(), s
			}
			for i := range tape {
				tape[i], scale[i] = fish()
			}
			a, _ := Agree(tape, scale, 0.95)
			w, s := fish()
			iv := a.Expected()
			held += count(iv.Lo <= w-s && w-s <= iv.Hi)
			plain += count(a.Lo <= w-s && w-s <= a.Hi)
			for i := range tape {
				tape[i] = scale[i] * math.Exp((tape[i]-scale[i])/50)
			}
			r, _ := AgreeRatio(tape, scale, 0.95)
			iv = r.Expected()
			ratio += count(iv.Lo <= math.Exp((w-s)/50) && math.Exp((w-s)/50) <= iv.Hi)
		}
		of := func(k int) float64 { return 100 * float64(k) / trials }
		t.Logf("%2d fish: expected %.1f %%, as ratios %.1f %%, limits of agreement %.1f %%", n,
			of(held), of(ratio), of(plain))
		for _, p := range []float64{of(held), of(ratio)} {
			if p < 93 || p > 96 {
				t.Errorf("%d fish: %.1f %% of further fish were where they were expected", n, p)
			}
		}
	}
}

func count(yes bool) int {
	if yes {
		return 1
	}
	return 0
}
