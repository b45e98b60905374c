package estimate

import (
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"gonum.org/v1/gonum/stat"
)

// pairs are fish of 100 cm by 100 cm, so that L G^2 is 10^6 and W is K x 10^6.
func pairs(species string, kg ...float64) []Pair {
	var out []Pair
	for _, w := range kg {
		out = append(out, Pair{Species: species, LengthCM: 100, GirthCM: 100, ScaleKG: w})
	}
	return out
}

// TestFitOwnByHand: W = 50, 50, 50, 50, 62.5 with L G^2 = 10^6.
//
//	K       = 50 x 1.25^(1/5) / 10^6                     = 5.2281976e-05
//	SLog    : logs 0,0,0,0,d above ln 50, d = ln 1.25    : sqrt(d^2 (1 - 1/5) / 4) = 0.0997928
//	without 62.5: K gives 50, off by 12.5
//	without a 50: 50 x 1.25^(1/4) = 52.868563, off by 2.868563, four times
//	LOOOwn  = (12.5 + 4 x 2.868563) / 5                  = 4.7948505
//	common  : 10^6 / 28901.8336 = 34.599881, off by 15.400119 four times and 27.900119
//	LOOCommon = (4 x 15.400119 + 27.900119) / 5          = 17.900119
func TestFitOwnByHand(t *testing.T) {
	o := FitOwn(pairs("PBF", 50, 50, 50, 50, 62.5))["PBF"]
	checks := []struct {
		name      string
		got, want float64
	}{
		{"K", o.K, 50e-6 * math.Pow(1.25, 0.2)}, {"SLog", o.SLog, math.Log(1.25) * math.Sqrt(0.2)},
		{"LOOOwn", o.LOOOwn, 4.7948505}, {"LOOCommon", o.LOOCommon, 17.900119},
	}
	for _, c := range checks {
		if !near(c.got, c.want, 1e-6) {
			t.Errorf("%s = %.9g, want %.9g", c.name, c.got, c.want)
		}
	}
	if !o.Used || o.N != 5 || o.Species != "PBF" || o.MinCM != 100 || o.MaxCM != 100 {
		t.Errorf("%+v", o)
	}
}

// TestFitOwnNotUsed: W = 40, 40, 40, 40, 80. Without 80 K gives 40, off by 40;
// without a 40 it gives 40 x 2^(1/4) = 47.568285, off by 7.568285: LOOOwn 14.054628.
// The common constant is off by 5.400119 four times and 45.400119: 13.400119.
func TestFitOwnNotUsed(t *testing.T) {
	o := FitOwn(pairs("YFT", 40, 40, 40, 40, 80))["YFT"]
	if !near(o.LOOOwn, 14.054628, 1e-6) || !near(o.LOOCommon, 13.400119, 1e-6) || o.Used {
		t.Errorf("%+v", o)
	}
	c := mustDefault(t)
	es := c.Weigh(Fish{Species: "YFT", LengthCM: 100, GirthCM: 70}, map[string]Own{"YFT": o})
	if es[0].Method != LengthAndGirth || !hasNote(es[0], "own coefficient is not used") {
		t.Errorf("%+v", es[0])
	}
}

// TestLeaveOneOutByRefit compares with the plain way: fit on the others, each time.
func TestLeaveOneOutByRefit(t *testing.T) {
	rng := rand.New(rand.NewPCG(11, 12))
	ps := simulate(rng, 12, 4.2e-5, 0.15)
	got := FitOwn(ps)["XXX"]
	want := 0.0
	for i, p := range ps {
		others := append(append([]Pair{}, ps[:i]...), ps[i+1:]...)
		k := FitOwn(others)["XXX"].K
		want += math.Abs(k*p.LengthCM*p.GirthCM*p.GirthCM-p.ScaleKG) / float64(len(ps))
	}
	if !near(got.LOOOwn, want, 1e-12) {
		t.Errorf("LOOOwn %g, refitted %g", got.LOOOwn, want)
	}
}

func TestFitOwnEdges(t *testing.T) {
	if got := FitOwn(nil); len(got) != 0 {
		t.Errorf("no pairs gave %v", got)
	}
	four := FitOwn(pairs("PBF", 50, 51, 52, 53))["PBF"]
	if four.Used || four.N != 4 || !strings.Contains(four.Why, "4, and it takes 5") {
		t.Errorf("%+v", four)
	}
	bad := append(pairs("PBF", 0, -1, math.NaN(), math.Inf(1)), Pair{"", 100, 100, 50, ""}, Pair{"PBF", 0, 100, 50, ""}, Pair{"PBF", 100, math.NaN(), 50, ""})
	if got := FitOwn(bad); len(got) != 0 {
		t.Errorf("unusable pairs gave %v", got)
	}
	same := FitOwn(pairs("PBF", 50, 50, 50, 50, 50))
	es := mustDefault(t).Weigh(Fish{Species: "PBF", LengthCM: 100, GirthCM: 100}, same)
	if es[0].Method != OwnCoefficient || es[0].HasInterval {
		t.Errorf("five equal fish give no spread, yet %+v", es[0])
	}
}

// TestFitOwnKinds: the kind with most pairs is fitted, and a fish measured in
// another way does not get its coefficient.
func TestFitOwnKinds(t *testing.T) {
	ps := pairs("PBF", 50, 51, 52, 53, 54, 55)
	for i := range ps {
		ps[i].LengthKind = "CFL"
	}
	ps = append(ps, pairs("PBF", 90, 91)...)
	own := FitOwn(ps)
	if o := own["PBF"]; o.N != 6 || o.LengthKind != CurvedFork || !o.Used || !strings.Contains(o.Why, "2 fish measured in another way") {
		t.Errorf("%+v", o)
	}
	c := mustDefault(t)
	if es := c.Weigh(Fish{Species: "PBF", LengthCM: 100, GirthCM: 70, LengthKind: "curved"}, own); es[0].Method != OwnCoefficient {
		t.Errorf("curved: %+v", es[0])
	}
	es := c.Weigh(Fish{Species: "PBF", LengthCM: 100, GirthCM: 70, LengthKind: "FL"}, own)
	if es[0].Method != LengthAndGirth || !hasNote(es[0], "fitted on curved fork length") {
		t.Errorf("straight: %+v", es[0])
	}
}

// simulate draws n fish of species XXX with W = k L G^2 exp(s z).
func simulate(rng *rand.Rand, n int, k, s float64) []Pair {
	out := make([]Pair, n)
	for i := range out {
		l := 90 + 110*rng.Float64()
		g := l * (0.65 + 0.15*rng.Float64())
		out[i] = Pair{Species: "XXX", LengthCM: l, GirthCM: g, ScaleKG: k * l * g * g * math.Exp(s*rng.NormFloat64())}
	}
	return out
}

// TestOwnCoverage: the 90 % interval holds 90 % of 10,000 new fish, each beside a
// newly fitted coefficient, for the least number of pairs and for a good season's.
// The true coefficient is twice the common one, so that it is used always.
func TestOwnCoverage(t *testing.T) {
	c := mustDefault(t)
	for _, n := range []int{5, 8, 20} {
		rng := rand.New(rand.NewPCG(2026, uint64(n)))
		hits, trials := 0, 10000
		for range trials {
			ps := simulate(rng, n+1, 2*commonK, 0.08)
			p := ps[n]
			es := c.Weigh(Fish{Species: "XXX", LengthCM: p.LengthCM, GirthCM: p.GirthCM}, FitOwn(ps[:n]))
			if es[0].Method != OwnCoefficient || !es[0].HasInterval {
				t.Fatalf("%+v", es[0])
			}
			if es[0].LoKG <= p.ScaleKG && p.ScaleKG <= es[0].HiKG {
				hits++
			}
		}
		if share := float64(hits) / float64(trials); math.Abs(share-0.90) > 0.01 {
			t.Errorf("n = %d: the interval held %.2f %% of the fish", n, 100*share)
		}
	}
}

// TestRelationCoverage: a relation of 200 fish is fitted anew for each of 10,000
// fish, its residual spread put into the catalogue row, and the interval must hold
// 90 % of the fish.
func TestRelationCoverage(t *testing.T) {
	c := mustDefault(t)
	rng := rand.New(rand.NewPCG(7, 8))
	const n, trials = 200, 10000
	draw := func() (l, w float64) {
		l = 60 + 190*rng.Float64()
		return l, 2e-5 * math.Pow(l, 2.98) * math.Exp(0.11*rng.NormFloat64())
	}
	hits := 0
	for range trials {
		x, y := make([]float64, n), make([]float64, n)
		for i := range x {
			l, w := draw()
			x[i], y[i] = math.Log(l), math.Log(w)
		}
		a, b := stat.LinearRegression(x, y, nil, false)
		ss := 0.0
		for i := range x {
			ss += (y[i] - a - b*x[i]) * (y[i] - a - b*x[i])
		}
		r := Relation{Species: "XXX", A: math.Exp(a), B: b, LengthKind: ForkLength, WeightState: Round, N: n, ResidualS: math.Sqrt(ss / (n - 2))}
		l, w := draw()
		e, _ := c.byRelation(Fish{Species: "XXX", LengthCM: l, LengthKind: "FL"}, r)
		if e.HasInterval && e.LoKG <= w && w <= e.HiKG {
			hits++
		}
	}
	if share := float64(hits) / trials; math.Abs(share-0.90) > 0.01 {
		t.Errorf("the interval held %.2f %% of the fish", 100*share)
	}
}

// TestInterval: t(0.95, 4) = 2.131847, z(0.95) = 1.644854 (printed tables).
func TestInterval(t *testing.T) {
	lo, hi := interval(100, 0.1, 5, 4)
	half := 2.131847 * 0.1 * math.Sqrt(1.2)
	if !near(lo, 100*math.Exp(-half), 1e-6) || !near(hi, 100*math.Exp(half), 1e-6) {
		t.Errorf("%g %g", lo, hi)
	}
	lo, hi = interval(100, 0.1, 0, -2)
	if !near(lo, 100*math.Exp(-0.1644854), 1e-6) || !near(hi, 100*math.Exp(0.1644854), 1e-6) {
		t.Errorf("n unknown: %g %g", lo, hi)
	}
}
