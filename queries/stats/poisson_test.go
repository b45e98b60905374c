package stats

import (
	"math"
	"testing"
)

// R 4.2.2, poisson.test(x)$conf.int.
func TestPoissonAgainstR(t *testing.T) {
	for _, c := range []struct {
		x            int64
		effort, conf float64
		want         Interval
	}{
		{0, 1, .95, Interval{0, 3.6888794541}},
		{1, 1, .95, Interval{0.0253178080, 5.5716433909}},
		{2, 1, .95, Interval{0.2422092785, 7.2246876677}},
		{3, 1, .95, Interval{0.6186721229, 8.7672730697}},
		{5, 1, .95, Interval{1.6234863901, 11.6683320793}},
		{10, 1, .95, Interval{4.7953886961, 18.3903560420}},
		{20, 1, .95, Interval{12.2165195854, 30.8883779027}},
		{31, 1, .95, Interval{21.06299598, 44.0020255}},
		{50, 1, .95, Interval{37.1109637375, 65.9187666643}},
		{100, 1, .95, Interval{81.3639912509, 121.6267937924}},
		{10, 1, .90, Interval{5.4254056971, 16.9622192357}},
		{7, 23.5, .95, Interval{0.1197601299, 0.6137308665}},
		{137, 24.19893, .95, Interval{4.7531248048, 6.6927093342}},
	} {
		rate, iv, ok := Poisson(c.x, c.effort, c.conf)
		if !ok {
			t.Errorf("Poisson(%d, %v) not ok", c.x, c.effort)
		}
		near(t, "rate", rate, float64(c.x)/c.effort, 1e-15)
		nearInterval(t, "interval", iv, c.want, 3e-9)
	}
}

// The one-sided 95 % bound of no events is -ln 0.05, the rule of three.
func TestPoissonRuleOfThree(t *testing.T) {
	_, iv, _ := Poisson(0, 1, .90)
	near(t, "upper", iv.Hi, -math.Log(.05), 1e-12)
}

func TestPoissonNothingToSay(t *testing.T) {
	for _, c := range []struct {
		x            int64
		effort, conf float64
	}{
		{3, 0, .95}, {3, -1, .95}, {3, math.NaN(), .95}, {3, math.Inf(1), .95},
		{-1, 2, .95}, {3, 2, 0}, {3, 2, 1}, {3, 2, math.NaN()},
	} {
		rate, iv, ok := Poisson(c.x, c.effort, c.conf)
		if ok || !math.IsNaN(rate) || iv.Known() {
			t.Errorf("Poisson(%v) = %v %v %v, want nothing", c, rate, iv, ok)
		}
	}
}

type rateCase struct {
	X                                   int64
	Effort, Conf, Lo, Hi, Phi, QLo, QHi float64
}

func loadRates(t *testing.T) []rateCase {
	var f struct{ Poisson []rateCase }
	loadOracle(t, "counts.json", &f)
	wantCases(t, len(f.Poisson))
	return f.Poisson
}

// 200 random rates against R's poisson.test (testdata/counts.R).
func TestPoissonRandom(t *testing.T) {
	for i, c := range loadRates(t) {
		_, iv, _ := Poisson(c.X, c.Effort, c.Conf)
		nearInterval(t, caseName("rate", i), iv, Interval{c.Lo, c.Hi}, oracleTol)
	}
}
