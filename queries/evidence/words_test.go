package evidence

import (
	"math"
	"strings"
	"testing"

	"wakeledger/queries/stats"
)

func same(s string) string { return s }

// one is a finding with a ratio that was compared on 20 trips.
func one(lo, ratio, hi float64) Finding {
	return Finding{Factor: "speed-band", Better: "fast", Other: "slow", Factors: 12, Compared: 3, Levels: 4, Trips: 20,
		P: .2, PSeason: .9, Verdict: NotSettled, Season: stats.Count{Events: 90, Effort: 400},
		Ratio: stats.RateRatio{Ratio: ratio, Interval: stats.Interval{Lo: lo, Hi: hi}, P: .04, Strata: 20,
			Events: [2]int64{31, 20}, Effort: [2]float64{148, 160}}}
}

func TestSentences(t *testing.T) {
	behind := " Behind it: 51 strikes in 308 line-hours on 20 trips that fished both."
	for _, c := range []struct {
		name   string
		change func(*Finding)
		f      Finding
		want   string
	}{
		{"settled", func(f *Finding) { f.P, f.PSeason = .001, .01 }, one(1.2, 1.68, 2.34),
			"Speed, settled: fast brought between 1.2 and 2.3 times the strikes of slow per line-hour, on the same trips (best guess 1.7 times)." + behind},
		{"leaning for the number of factors", func(f *Finding) { f.P, f.PSeason = .03, .3 }, one(1.2, 1.68, 2.34),
			"Speed, leaning: fast brought about 1.7 times the strikes of slow per line-hour, on the same trips (likely 1.2 to 2.3 times), but with 12 factors compared, luck alone could do this. Try it again before relying on it." + behind},
		{"leaning for few trips", func(f *Finding) { f.P, f.PSeason, f.Trips, f.Ratio.Strata = .001, .01, 7, 7 }, one(1.2, 1.68, 2.34),
			"Speed, leaning: fast brought about 1.7 times the strikes of slow per line-hour, on the same trips (likely 1.2 to 2.3 times), but too few trips. Try it again before relying on it. Behind it: 51 strikes in 308 line-hours on 7 trips that fished both."},
		{"two trips lean to nothing", func(f *Finding) { f.P, f.PSeason, f.Ratio.Strata = .001, .01, 2 }, one(1.2, 1.68, 2.34),
			"Speed, not settled: fast brought about 1.7 times the strikes of slow per line-hour, on the same trips (1.2 to 2.3 times); where 4 levels were compared, luck does that often enough. Behind it: 51 strikes in 308 line-hours on 2 trips that fished both."},
		{"not settled", func(*Finding) {}, one(.8, 1.3, 2.1),
			"Speed, not settled: fast may bring anything from 0.80 to 2.1 times the strikes of slow per line-hour, on the same trips (best guess 1.3 times)." + behind},
		{"just over one", func(*Finding) {}, one(1.001, 1.4, 1.9),
			"Speed, not settled: fast brought about 1.4 times the strikes of slow per line-hour, on the same trips (just over 1 to 1.9 times); where 4 levels were compared, luck does that often enough." + behind},
		{"by legs", func(f *Finding) { f.ByLeg, f.Factor = true, "lure" }, one(.8, 1.3, 2.1),
			"Lure, not settled: fast may bring anything from 0.80 to 2.1 times the strikes of slow per line-hour, fished side by side (best guess 1.3 times). Behind it: 51 strikes in 308 line-hours on 20 legs that fished both."},
		{"nothing shared", func(f *Finding) { f.Better, f.Compared, f.P = "", 0, math.NaN() }, one(1, 1, 1),
			"Speed, not settled: no trip fished two of its levels with a strike, so that it cannot be told from the days when the fish were simply there (90 strikes in 400 line-hours)."},
		{"no hours", func(f *Finding) { f.Better, f.Levels, f.Factor = "", 0, "angler" }, one(1, 1, 1), "Angler, not settled: the log gives no hours by angler."},
	} {
		f := c.f
		c.change(&f)
		f.judge()
		if got := f.Sentence(same); got != c.want {
			t.Errorf("%s:\n%s\nwant\n%s", c.name, got, c.want)
		}
	}
}

// Whatever the season, the words are not stronger than the interval: what is
// settled or leaning has an interval that leaves out 1, and the sentence prints
// that interval.
func TestWordsNotStrongerThanInterval(t *testing.T) {
	m := model{trips: 25, rate: .25, shape: 1.4, speeds: []float64{1, 1, 2, 1}, fast: evenly(4)}
	r := seeded(6)
	told := map[Verdict]int{}
	for range 60 {
		for _, f := range Find(factorsOf(m.season(r))) {
			told[f.Verdict]++
			s := f.Sentence(same)
			if f.Verdict != NotSettled && !(f.Ratio.Interval.Lo > 1) {
				t.Errorf("%s with the interval %v: %s", f.Verdict, f.Ratio.Interval, s)
			}
			if f.Better != "" && !strings.Contains(s, ratio(f.Ratio.Interval.Lo)) {
				t.Errorf("the interval %v is not in: %s", f.Ratio.Interval, s)
			}
			for _, v := range []Verdict{Settled, Leaning} {
				if f.Verdict == NotSettled && strings.Contains(s, ", "+string(v)+":") {
					t.Errorf("not settled, but: %s", s)
				}
			}
		}
	}
	if told[Settled] == 0 || told[Leaning] == 0 || told[NotSettled] == 0 {
		t.Errorf("verdicts %v: not all were put to the test", told)
	}
}
