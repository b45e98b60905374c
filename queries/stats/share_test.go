package stats

import (
	"math"
	"testing"
)

// The examples of Newcombe 1998 and others, by R 4.2.2 prop.test(r, n,
// correct = FALSE) and binom.test(r, n).
func TestSharesAgainstR(t *testing.T) {
	for _, c := range []struct {
		r, n          int64
		wilson, exact Interval
	}{
		{81, 263, Interval{0.2552885199, 0.366209577}, Interval{0.2527367456, 0.3676219226}},
		{15, 148, Interval{0.06238639953, 0.1604872417}, Interval{0.05784401008, 0.1616504903}},
		{0, 20, Interval{0, 0.1611251581}, Interval{0, 0.168433471}},
		{1, 29, Interval{0.006113214293, 0.1717552188}, Interval{0.0008726468836, 0.1776442955}},
		{5, 5, Interval{0.5655175352, 1}, Interval{0.4781762499, 1}},
		{3, 7, Interval{0.1582198553, 0.7495416355}, Interval{0.0989882784, 0.8159484324}},
	} {
		share, iv, ok := Wilson(c.r, c.n, .95)
		near(t, "share", share, float64(c.r)/float64(c.n), 1e-15)
		nearInterval(t, "Wilson", iv, c.wilson, 1e-9)
		l := binomialLogits(float64(c.r), float64(c.n), .025)
		nearInterval(t, "exact", Interval{expit(l.Lo), expit(l.Hi)}, c.exact, 1e-9)
		if !ok {
			t.Errorf("%d of %d: not ok", c.r, c.n)
		}
	}
}

// A funnel of 120 strikes, 84 hooked, 61 landed; same source.
func TestWilsonFunnel(t *testing.T) {
	for _, c := range []struct {
		r, n int64
		want Interval
	}{
		{84, 120, Interval{.61284858, .77474376}},
		{61, 84, Interval{.62252581, .81007174}},
		{61, 120, Interval{.42002540, .59612428}},
	} {
		_, iv, _ := Wilson(c.r, c.n, .95)
		nearInterval(t, "funnel", iv, c.want, 1.5e-8)
	}
}

func TestSharesNothingToSay(t *testing.T) {
	for _, c := range []struct {
		r, n int64
		conf float64
	}{{0, 0, .95}, {1, 0, .95}, {-1, 5, .95}, {6, 5, .95}, {1, -5, .95}, {1, 5, 1}, {1, 5, math.NaN()}} {
		share, iv, ok := Wilson(c.r, c.n, c.conf)
		if ok || !math.IsNaN(share) || iv.Known() {
			t.Errorf("%v: %v %v %v, want nothing", c, share, iv, ok)
		}
	}
}

// One of one and none of one still give an interval inside [0, 1].
func TestSharesOfOne(t *testing.T) {
	_, none, _ := Wilson(0, 1, .95)
	_, one, _ := Wilson(1, 1, .95)
	z2 := 1.959963984540054 * 1.959963984540054
	nearInterval(t, "0 of 1", none, Interval{0, z2 / (1 + z2)}, 1e-12)
	nearInterval(t, "1 of 1", one, Interval{1 / (1 + z2), 1}, 1e-12)
}

// 200 random shares against R's prop.test and binom.test (testdata/counts.R).
func TestSharesRandom(t *testing.T) {
	var f struct {
		Share []struct {
			R, N                   int64
			Conf, WLo, WHi, Lo, Hi float64
		}
	}
	loadOracle(t, "counts.json", &f)
	wantCases(t, len(f.Share))
	for i, c := range f.Share {
		_, w, _ := Wilson(c.R, c.N, c.Conf)
		nearInterval(t, caseName("Wilson", i), w, Interval{c.WLo, c.WHi}, oracleTol)
		l := binomialLogits(float64(c.R), float64(c.N), (1-c.Conf)/2)
		nearInterval(t, caseName("exact", i), Interval{expit(l.Lo), expit(l.Hi)}, Interval{c.Lo, c.Hi}, oracleTol)
	}
}

func expit(x float64) float64 { return 1 / (1 + math.Exp(-x)) }
