package estimate

import (
	"flag"
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

// TestFitOwnByHand: W = 50, 50, 50, 50, 62.5 with L G^2 = 10^6, common 34.599881.
//
//	Geometric = 50 x 1.25^(1/5) / 10^6                   = 5.2281976e-05
//	SLog    : logs 0,0,0,0,c above ln 50, c = ln 1.25    : sqrt(c^2 (1 - 1/5) / 4) = 0.0997928
//	d       = ln(52.281976 / 34.599881)                  = 0.4127806
//	Share   = 1 - (0.0997928^2 / 5) / 0.4127806^2        = 0.9883118
//	K       = 34.599881 exp(0.9883118 x 0.4127806) / 10^6 = 5.2030330e-05
//	without 62.5: four equal fish, no spread: 50, off by 12.5
//	without a 50: s = c/2 = 0.1115718, d = ln(50 x 1.25^(1/4) / 34.599881) = 0.4239378,
//	              share 0.9826839, K 52.481903, off by 2.481903, four times
//	LOOOwn  = (12.5 + 4 x 2.481903) / 5                  = 4.4855222
//	common  : off by 15.400119 four times and 27.900119
//	LOOCommon = (4 x 15.400119 + 27.900119) / 5          = 17.900119
func TestFitOwnByHand(t *testing.T) {
	o := FitOwn(pairs("PBF", 50, 50, 50, 50, 62.5))["PBF"]
	checks := []struct {
		name      string
		got, want float64
	}{
		{"Geometric", o.Geometric, 50e-6 * math.Pow(1.25, 0.2)}, {"SLog", o.SLog, math.Log(1.25) * math.Sqrt(0.2)},
		{"Share", o.Share, 0.9883118389}, {"K", o.K, 5.203033040e-05}, {"LOOOwn", o.LOOOwn, 4.485522208},
		{"LOOCommon", o.LOOCommon, 17.900119},
	}
	for _, c := range checks {
		if !near(c.got, c.want, 1e-6) {
			t.Errorf("%s = %.9g, want %.9g", c.name, c.got, c.want)
		}
	}
	if !o.Used || o.N != 5 || o.Species != "PBF" || o.MinCM != 100 || o.MaxCM != 100 {
		t.Errorf("%+v", o)
	}
	if few := FitOwn(pairs("PBF", 40, 40, 40, 40, 80))["PBF"]; strings.Contains(o.Why, "difference") ||
		!strings.Contains(few.Why, "only 76 % of the difference") {
		t.Errorf("%q\n%q", o.Why, few.Why)
	}
}

// TestFitOwnNotUsed: W = 32, 32, 32, 32, 44 scatter on both sides of the common
// constant's 34.6, so nearly nothing of the difference is kept, and the common
// constant does as well or better.
func TestFitOwnNotUsed(t *testing.T) {
	o := FitOwn(pairs("YFT", 32, 32, 32, 32, 44))["YFT"]
	if o.Used || o.Share != 0 || o.K != commonK || !strings.Contains(o.Why, "can't tell it from 800") {
		t.Errorf("%+v", o)
	}
	c := mustDefault(t)
	es := c.Weigh(Fish{Species: "YFT", LengthCM: 100, GirthCM: 70}, map[string]Own{"YFT": o})
	if es[0].Method != LengthAndGirth || !hasNote(es[0], "own divisor is not used") {
		t.Errorf("%+v", es[0])
	}
}

// TestShrinkageEdges: a difference from the common constant no larger than its
// standard error goes to nothing; a large or a well known one stays whole.
func TestShrinkageEdges(t *testing.T) {
	at := math.Log(commonK)
	near0 := fitLogs([]float64{at - 0.1, at + 0.1, at - 0.1, at + 0.12})
	if near0.share != 0 || !near(near0.k, commonK, 1e-12) {
		t.Errorf("%+v", near0)
	}
	var many []float64
	for i := range 1000 {
		many = append(many, at+0.1+0.05*float64(i%2*2-1))
	}
	if f := fitLogs(many); f.share < 0.999 || !near(f.k, commonK*math.Exp(0.1), 1e-3) {
		t.Errorf("%+v", f)
	}
	if f := fitLogs([]float64{at + 0.3}); f.share != 1 || f.s != 0 {
		t.Errorf("%+v", f)
	}
	if f := fitLogs([]float64{at, at, at}); !near(f.k, commonK, 1e-12) {
		t.Errorf("three fish at the common constant: %+v", f)
	}
}

// TestPredictEach: a pair of too few fish of its species and length kind is not
// predicted; the others as FitOwn without them.
func TestPredictEach(t *testing.T) {
	ps := pairs("PBF", 50, 51, 52, 53, 54, 60)
	ps = append(ps, Pair{Species: "PBF", LengthCM: 100, GirthCM: 100, ScaleKG: 55, LengthKind: "CFL"},
		Pair{Species: "YFT", LengthCM: 100, GirthCM: 100, ScaleKG: 40}, Pair{LengthCM: 100, GirthCM: 100, ScaleKG: 40})
	got := PredictEach(ps)
	for i := range ps {
		if i >= 6 {
			if got[i] != 0 {
				t.Errorf("pair %d was predicted: %g", i, got[i])
			}
			continue
		}
		rest := append(append([]Pair{}, ps[:i]...), ps[i+1:6]...)
		if want := 1e6 * FitOwn(rest)["PBF"].K; !near(got[i], want, 1e-12) {
			t.Errorf("pair %d: %g, refitted %g", i, got[i], want)
		}
	}
	if len(PredictEach(nil)) != 0 {
		t.Error("nothing gave something")
	}
}

// TestLeaveOneOutByRefit compares with the plain way: fit on the others, each time.
func TestLeaveOneOutByRefit(t *testing.T) {
	rng := rand.New(rand.NewPCG(11, 12))
	ps := simulate(rng, 12, 4.2e-5, 0.15)
	got := FitOwn(ps)["ZZZ"]
	want := 0.0
	for i, p := range ps {
		others := append(append([]Pair{}, ps[:i]...), ps[i+1:]...)
		k := FitOwn(others)["ZZZ"].K
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
	bad := append(pairs("PBF", 0, -1, math.NaN(), math.Inf(1)), Pair{LengthCM: 100, GirthCM: 100, ScaleKG: 50},
		Pair{Species: "PBF", GirthCM: 100, ScaleKG: 50},
		Pair{Species: "PBF", LengthCM: 100, GirthCM: math.NaN(), ScaleKG: 50})
	if got := FitOwn(bad); len(got) != 0 {
		t.Errorf("unusable pairs gave %v", got)
	}
	same := FitOwn(pairs("PBF", 50, 50, 50, 50, 50))
	es := mustDefault(t).Weigh(Fish{Species: "PBF", LengthCM: 100, GirthCM: 100}, same)
	if es[0].Method != OwnCoefficient || es[0].HasInterval {
		t.Errorf("five equal fish give no spread, yet %+v", es[0])
	}
}

// TestDoubtedIsInNoFit: a slip of pounds for kilograms changes nothing but the count of
// those left out, and is itself weighed by the coefficient of the others.
func TestDoubtedIsInNoFit(t *testing.T) {
	sound := pairs("PBF", 50, 51, 52, 53, 54)
	all := append(append([]Pair{}, sound...), Pair{Species: "PBF", LengthCM: 100,
		GirthCM: 100, ScaleKG: 110, Doubted: true})
	want, got := FitOwn(sound)["PBF"], FitOwn(all)["PBF"]
	if got.K != want.K || got.N != 5 || got.Doubted != 1 || !strings.Contains(got.Why, "One more fish is left out") {
		t.Errorf("%+v", got)
	}
	each, without := PredictEach(all), PredictEach(sound)
	if !near(each[5], 1e6*want.K, 1e-12) || each[0] != without[0] {
		t.Errorf("%g, %g without it", each, without)
	}
	for i := range all {
		all[i].Doubted = true
	}
	if got := FitOwn(all); len(got) != 0 {
		t.Errorf("%+v", got)
	}
}

// TestFitOwnKinds: every length kind is fitted by itself, and a fish gets the
// coefficient of its own kind only.
func TestFitOwnKinds(t *testing.T) {
	ps := pairs("PBF", 50, 51, 52, 53, 54, 55)
	for i := range ps {
		ps[i].LengthKind = "CFL"
	}
	ps = append(ps, pairs("PBF", 90, 91)...)
	own := FitOwn(ps)
	if o := own["PBF"]; o.N != 6 || o.LengthKind != CurvedFork || !o.Used {
		t.Errorf("%+v", o)
	}
	if o := own[OwnKey("PBF", "")]; o.N != 2 || o.LengthKind != ForkLength || o.Used {
		t.Errorf("%+v", o)
	}
	c := mustDefault(t)
	if es := c.Weigh(Fish{Species: "PBF", LengthCM: 100, GirthCM: 70, LengthKind: "curved"},
		own); es[0].Method != OwnCoefficient {
		t.Errorf("curved: %+v", es[0])
	}
	es := c.Weigh(Fish{Species: "PBF", LengthCM: 100, GirthCM: 70, LengthKind: "FL"}, own)
	if es[0].Method != LengthAndGirth || !hasNote(es[0], "Too few fish with tape and scale: 2") {
		t.Errorf("straight: %+v", es[0])
	}
	es = c.Weigh(Fish{Species: "PBF", LengthCM: 100, GirthCM: 70, LengthKind: "total"}, own)
	if why := c.Unused(Fish{Species: "PBF", LengthCM: 100, GirthCM: 70, LengthKind: "total"}, own); len(es) != 0 ||
		!strings.Contains(why[0], "from fish measured by curved fork length") {
		t.Errorf("total: %+v %q", es, why)
	}
	for range 7 {
		ps = append(ps, pairs("PBF", 92)...)
	}
	own = FitOwn(ps)
	if own["PBF"].LengthKind != ForkLength || own[OwnKey("PBF", "curved")].K <= 0 ||
		own[OwnKey("PBF", "curved")].LengthKind != CurvedFork {
		t.Errorf("%+v", own)
	}
}

// simulate draws n fish of species ZZZ with W = k L G^2 exp(s z).
func simulate(rng *rand.Rand, n int, k, s float64) []Pair {
	out := make([]Pair, n)
	for i := range out {
		l := 90 + 110*rng.Float64()
		g := l * (0.65 + 0.15*rng.Float64())
		out[i] = Pair{Species: "ZZZ", LengthCM: l, GirthCM: g, ScaleKG: k * l * g * g * math.Exp(s*rng.NormFloat64())}
	}
	return out
}

var trials = flag.Int("trials", 2000, "simulated seasons for each case of a coverage test")

// TestOwnCoverageOfChosen: the 90 % interval of an own coefficient holds 88 to 93 % of
// new fish, each beside a newly fitted coefficient, counting only the seasons in which
// leave-one-out chose it: the choice is what made it too narrow. The true coefficient
// lies 0 to 4 spreads above the common constant. Of the seasons in which it was not
// chosen, the girth rule's interval holds as many. Run with -trials 40000 for figures to
// half a per cent.
func TestOwnCoverageOfChosen(t *testing.T) {
	c := mustDefault(t)
	for _, n := range []int{5, 8, 15, 40} {
		for _, apart := range []float64{0, 0.5, 1, 2, 4} {
			var plain, chosen, rule share
			rng := rand.New(rand.NewPCG(2026, uint64(n)))
			for range *trials {
				ps := simulate(rng, n+1, commonK*math.Exp(apart*0.08), 0.08)
				p := ps[n]
				own := FitOwn(ps[:n])
				e := c.Weigh(Fish{Species: "ZZZ", LengthCM: p.LengthCM, GirthCM: p.GirthCM}, own)[0]
				held := e.HasInterval && e.LoKG <= p.ScaleKG && p.ScaleKG <= e.HiKG
				if e.Method != OwnCoefficient {
					rule.add(held)
					continue
				}
				chosen.add(held)
				lo, hi := interval(e.WeightKG, own["ZZZ"].SLog, n, n-1)
				plain.add(lo <= p.ScaleKG && p.ScaleKG <= hi)
			}
			t.Logf("%2d pairs, %.1f spreads apart: chosen in %4.1f %% of seasons; its interval held %.1f %%, "+
				"without the widening %.1f %%; the rule's %.1f %%",
				n, apart, 100*float64(chosen.n)/float64(*trials), chosen.percent(), plain.percent(), rule.percent())
			chosen.check(t, "own coefficient", n, apart)
			if apart <= 1 { // further apart, the few seasons left are none that a boat would see
				rule.check(t, "girth rule", n, apart)
			}
		}
	}
}

// share counts how often something held.
type share struct{ held, n int }

func (s *share) add(held bool) {
	s.n++
	if held {
		s.held++
	}
}

func (s share) percent() float64 { return 100 * float64(s.held) / float64(s.n) }

// check wants 88 to 93 %, give or take three standard errors of the simulation; fewer
// than 200 seasons tell nothing.
func (s share) check(t *testing.T, what string, n int, apart float64) {
	t.Helper()
	slack := 300 * math.Sqrt(0.9*0.1/float64(max(s.n, 1)))
	if p := s.percent(); s.n >= 200 && (p < 88-slack || p > 93+slack) {
		t.Errorf("%s, %d pairs, %.1f spreads apart: the interval held %.1f %% of %d fish, want 88 to 93", what, n,
			apart, p, s.n)
	}
}

// TestRelationSpreadFromOwnFish: a relation without a published spread gets its
// interval from the boat's own fish, and it holds 90 % of 10,000 new ones.
func TestRelationSpreadFromOwnFish(t *testing.T) {
	c := mustDefault(t)
	draw := func(rng *rand.Rand) Fish {
		l := 90 + 110*rng.Float64()
		w := 1.7117e-5 * math.Pow(l, 3.0382) * math.Exp(0.1*rng.NormFloat64())
		return Fish{Species: "PBF", LengthCM: l, LengthKind: "FL", GirthCM: 0.73 * l, ScaleKG: w, WeightState: "round"}
	}
	for _, n := range []int{5, 12} {
		rng := rand.New(rand.NewPCG(3, uint64(n)))
		hits, trials := 0, 10000
		for range trials {
			var ps []Pair
			for range n {
				p, _ := c.PairOf(draw(rng))
				ps = append(ps, p)
			}
			f := draw(rng)
			scale := f.ScaleKG
			f.ScaleKG, f.GirthCM = 0, 0
			es := c.Weigh(f, FitOwn(ps))
			if es[0].Relation != "PBF-NWPAC" || !es[0].HasInterval || !hasNote(es[0], "the boat's own") ||
				hasNote(es[0], "No interval") {
				t.Fatalf("%+v", es[0])
			}
			if es[1].HasInterval {
				t.Fatalf("another relation was given the interval: %+v", es[1])
			}
			if es[0].LoKG <= scale && scale <= es[0].HiKG {
				hits++
			}
		}
		if share := float64(hits) / float64(trials); math.Abs(share-0.90) > 0.01 {
			t.Errorf("%d fish: the interval held %.2f %% of the fish", n, 100*share)
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
		r := Relation{Species: "ZZZ", A: math.Exp(a), B: b, LengthKind: ForkLength, WeightState: Round, N: n,
			ResidualS: math.Sqrt(ss / (n - 2))}
		l, w := draw()
		e, _ := c.byRelation(Fish{Species: "ZZZ", LengthCM: l, LengthKind: "FL"}, r)
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
