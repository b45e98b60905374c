package evidence

import (
	"flag"
	"fmt"
	"math"
	"math/rand/v2"
	"os"
	"testing"
)

var (
	studyName = flag.String("study", "", "the simulation to run at full length")
	studyRuns = flag.Int("runs", 100, "seasons a case")
	studyOnly = flag.Int("trips", 0, "only seasons of so many trips")
	studySeed = flag.Uint64("seed", scored, "first seed")
	studyOut  = flag.String("out", "", "folder for the seasons that R reads")
)

// Seeds from scored on are for judging the model, those below for choosing its numbers.
const scored = 40000

// seeded is the source of one season of a case.
func seeded(run int, which uint64) *rand.Rand {
	return rand.New(rand.NewPCG(*studySeed+uint64(run), which))
}

func ones(n int) []float64 {
	v := make([]float64, n)
	for i := range v {
		v[i] = 1
	}
	return v
}

func TestStudyNull(t *testing.T) {
	if *studyName != "null" {
		t.Skip("a long simulation: -study null")
	}
	anything, seasons := 0, 0
	for _, trips := range studyTrips() {
		for _, cv := range []float64{0, .5, 1} {
			settled, leaning := 0, 0
			by := map[string]int{}
			for run := range *studyRuns {
				r := seeded(run, uint64(trips))
				_, found := judge(world{trips: trips, perTrip: 3, luck: cv, bite: cv / 2, speeds: ones(5), lures: ones(6), stick: .3}.season(r))
				s, l := 0, 0
				for _, f := range found {
					if f.Verdict == Settled {
						s = 1
						by[f.Factor]++
					}
					if f.Verdict == Leaning {
						l++
					}
				}
				settled, leaning = settled+s, leaning+l
			}
			anything, seasons = anything+settled, seasons+*studyRuns
			fmt.Printf("null trips %d luck %.1f: settled in %d of %d, leaning %.2f a season, %v\n", trips, cv, settled, *studyRuns, float64(leaning)/float64(*studyRuns), by)
		}
	}
	if 20*anything > seasons {
		t.Errorf("something is settled in %d of %d seasons without any effect: more than 5 %%", anything, seasons)
	}
}

// lme4Found is the share of such seasons in which lme4's fit finds the better speed, by
// speeds and trips (testdata/README.md tells how it was counted).
var lme4Found = map[int]map[int]float64{2: {12: .25, 30: .67, 60: 1}, 5: {12: .07, 30: .20, 60: .48}}

func TestStudyPower(t *testing.T) {
	if *studyName != "power" {
		t.Skip("a long simulation: -study power")
	}
	for _, trips := range studyTrips() {
		for _, n := range []int{2, 5} {
			found, pf, fs, across := 0, 0, 0, 0
			var out *os.File
			if *studyOut != "" {
				out, _ = os.Create(fmt.Sprintf("%s/power-%d-%d.csv", *studyOut, trips, n))
				fmt.Fprintln(out, "run,trip,leg,speed,better,hours,start,strikes,factors")
			}
			for run := range *studyRuns {
				r := seeded(run, uint64(trips*10+n))
				w := world{trips: trips, perTrip: 3, luck: .5, bite: 0, speeds: ones(n), lures: ones(6), stick: .3}
				better := r.IntN(n)
				w.speeds[better] = 2
				legs := w.season(r)
				c, one := judgeOne(legs, "speed-band", false)
				got := []Finding{one}
				is := func(f Finding) bool {
					return f.Better == fmt.Sprint(better) && !f.Trend || n == 2 && f.Better == fmt.Sprint(better)
				}
				if got[0].Verdict == Settled && is(got[0]) {
					found++
				}
				if got[0].P < Alpha && is(got[0]) {
					pf++
				}
				fs += got[0].Factors
				if c.Across {
					across++
				}
				for _, l := range legs {
					if out != nil {
						var s int64
						for _, x := range l.strikes {
							s += x
						}
						fmt.Fprintf(out, "%d,%d,%d,%d,%d,%.17g,%.17g,%d,%d\n", run, l.trip, l.leg, l.speed, better, l.hours*float64(len(l.lures)), l.start+l.hours/2, s, got[0].Factors)
					}
				}
			}
			n1 := float64(*studyRuns)
			fmt.Printf("power trips %d speeds %d: settled %.2f, leaning or settled %.2f; factors %.1f, across %d\n", trips, n, float64(found)/n1, float64(pf)/n1, float64(fs)/n1, across)
			out.Close()
			if want := .9 * lme4Found[n][trips]; float64(found)/n1 < want {
				t.Errorf("trips %d speeds %d: found in %.2f of the seasons, nine tenths of lme4's is %.2f", trips, n, float64(found)/n1, want)
			}
		}
	}
}

func studyTrips() []int {
	if *studyOnly > 0 {
		return []int{*studyOnly}
	}
	return []int{7, 12, 30, 60}
}

// TestStudyCoverage counts how often the intervals of rates and ratios hold the
// truth, and the bias of the ratio.
func TestStudyCoverage(t *testing.T) {
	if *studyName != "coverage" {
		t.Skip("a long simulation: -study coverage")
	}
	for _, trips := range studyTrips() {
		for _, cv := range []float64{0, .5, 1} {
			for _, n := range []int{2, 5} {
				w := world{trips: trips, perTrip: 3, luck: cv, bite: cv / 2, speeds: ones(n), lures: ones(6), stick: .3}
				for i := range w.speeds {
					w.speeds[i] = 1 + .5*float64(i%2)
				}
				coverage(t, fmt.Sprintf("luck %.1f, %d speeds", cv, n), w)
			}
		}
	}
}

func coverage(t *testing.T, name string, w world) {
	var ratios, held, rates, rateHeld, across int
	logs := 0.0
	for run := range *studyRuns {
		r := seeded(run, uint64(w.trips))
		c, _ := judgeOne(w.season(r), "speed-band", true)
		if c.Reference < 0 {
			continue
		}
		truth := func(level string) float64 { var i int; fmt.Sscan(level, &i); return w.speeds[i] }
		if c.Across {
			across++
		}
		for _, l := range c.Levels {
			if l.Thin {
				continue
			}
			rates++
			if l.Interval.Contains(truth(l.Level) * w.perTrip / 33) {
				rateHeld++
			}
			if l.Why == "" && l.Ratio.Known() {
				ratios++
				rel := truth(l.Level) / truth(c.Levels[c.Reference].Level)
				if l.Ratio.Interval.Contains(rel) {
					held++
				}
				logs += math.Max(-3, math.Min(3, math.Log(l.Ratio.Ratio/rel)))
			}
		}
	}
	fmt.Printf("coverage trips %d %s: ratio %.3f of %d, bias x%.3f, rate %.3f of %d, across %d\n", w.trips, name,
		float64(held)/float64(ratios), ratios, math.Exp(logs/float64(ratios)), float64(rateHeld)/float64(rates), rates, across)
	if share := float64(held) / float64(ratios); !(share >= .93 && share <= .98) {
		t.Errorf("trips %d %s: intervals of ratios hold in %.3f, want 0.93 to 0.98", w.trips, name, share)
	}
	if share := float64(rateHeld) / float64(rates); !(share >= .93 && share <= .98) {
		t.Errorf("trips %d %s: intervals of rates hold in %.3f, want 0.93 to 0.98", w.trips, name, share)
	}
}

// TestStudyConfounded has the speed follow the trip's luck, the month or the time
// of day, and no speed better than another.
func TestStudyConfounded(t *testing.T) {
	if *studyName != "confounded" {
		t.Skip("a long simulation: -study confounded")
	}
	follow := map[string]func(speed int, luck float64, month int, hour float64) float64{
		"luck":  func(s int, luck float64, _ int, _ float64) float64 { return likely(s, luck > .8, .85) },
		"month": func(s int, _ float64, m int, _ float64) float64 { return likely(s, m >= 2, .85) },
		"hour":  func(s int, _ float64, _ int, h float64) float64 { return likely(s, h < 9, .8) },
	}
	for _, trips := range studyTrips() {
		for _, by := range []string{"luck", "month", "hour"} {
			w := world{trips: trips, perTrip: 3, luck: .5, bite: .1, speeds: ones(2), lures: ones(6), stick: .3, run: follow[by]}
			if by == "month" {
				w.month = []float64{.6, .6, 1.4, 1.4, 1.4}
			}
			if by == "hour" {
				w.hour = func(h float64) float64 {
					if h < 9 {
						return 2
					}
					return .7
				}
			}
			coverage(t, "follows the "+by, w)
		}
	}
}

// likely is the weight of speed s of two where the second has a chance p, or 1-p
// where the sign is not there.
func likely(s int, sign bool, p float64) float64 {
	if sign == (s == 1) {
		return p
	}
	return 1 - p
}
