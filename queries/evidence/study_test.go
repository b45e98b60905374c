package evidence

import (
	"flag"
	"fmt"
	"math"
	"math/rand/v2"
	"os"
	"testing"

	"gonum.org/v1/gonum/stat"
)

var (
	studyName = flag.String("study", "", "the simulation to run at full length")
	studyRuns = flag.Int("runs", 100, "seasons a case")
	studyOnly = flag.Int("trips", 0, "only seasons of so many trips")
	studyLuck = flag.Float64("luck", -1, "only seasons of such luck")
	studyBy   = flag.String("by", "", "only seasons in which the speed follows luck, month or hour")
	studySeed = flag.Uint64("seed", scored, "first seed")
	studyOut  = flag.String("out", "", "folder for the seasons that R reads")
)

// Seeds from scored on are for judging the model, those below for choosing its numbers.
const scored = 40000

// seeded is the source of one season of a case.
func seeded(run int, which uint64) *rand.Rand {
	return rand.New(rand.NewPCG(*studySeed+uint64(run), which))
}

// tallied counts hits by season: what a season tells of its levels is one draw.
type tallied struct{ hits, of []float64 }

func (s *tallied) add(hits, of int) {
	s.hits, s.of = append(s.hits, float64(hits)), append(s.of, float64(of))
}

// share is the share of hits with its simulation error.
func (s tallied) share() (share, err float64) {
	var hits, of, squares float64
	for i := range s.of {
		hits, of = hits+s.hits[i], of+s.of[i]
	}
	for i := range s.of {
		squares += square(s.hits[i] - hits/of*s.of[i])
	}
	p := (hits + 1) / (of + 2) // none and all have an error too
	return hits / of, math.Max(math.Sqrt(squares)/of, math.Sqrt(p*(1-p)/of))
}

func (s tallied) String() string {
	share, err := s.share()
	if math.IsNaN(share) {
		return "none given"
	}
	return fmt.Sprintf("%.3f (error %.3f)", share, err)
}

// hold fails where the share is outside its bounds by more than twice its error.
func (s tallied) hold(t *testing.T, what string, lo, hi float64) {
	t.Helper()
	if share, err := s.share(); share+2*err < lo || share-2*err > hi {
		t.Errorf("%s: %v, want %v to %v", what, s, lo, hi)
	}
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
	var anything tallied
	for _, trips := range studyTrips() {
		for _, cv := range studyLucks() {
			var settled tallied
			leaning, by := 0, map[string]int{}
			for run := range *studyRuns {
				w := world{trips: trips, perTrip: 3, luck: cv, bite: cv / 2, speeds: ones(5), lures: ones(6), stick: .3}
				_, found := judge(w.season(seeded(run, uint64(trips))))
				one := 0
				for _, f := range found {
					switch f.Verdict {
					case Settled:
						one = 1
						by[f.Factor]++
					case Leaning:
						leaning++
					}
				}
				settled.add(one, 1)
				anything.add(one, 1)
			}
			fmt.Printf("null trips %d luck %.1f: settled in %v of %d, leaning %.2f a season, %v\n", trips, cv, settled,
				*studyRuns, float64(leaning)/float64(*studyRuns), by)
		}
	}
	fmt.Printf("null in all: settled in %v of %d\n", anything, len(anything.of))
	anything.hold(t, "null seasons with anything settled", 0, .05)
}

func studyLucks() []float64 {
	if *studyLuck >= 0 {
		return []float64{*studyLuck}
	}
	return []float64{0, .5, 1}
}

// lme4Found is the share of such seasons in which lme4's fit finds the better speed, by
// speeds and trips (testdata/README.md tells how it was counted).
var lme4Found = map[int]map[int]float64{2: {12: .19, 30: .68, 60: .98}, 5: {12: .02, 30: .15, 60: .59}}

func TestStudyPower(t *testing.T) {
	if *studyName != "power" {
		t.Skip("a long simulation: -study power")
	}
	for _, trips := range studyTrips() {
		for _, n := range []int{2, 5} {
			var settled, leaning tallied
			across := 0
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
				c, f := judgeOne(legs, "speed-band", false)
				right := f.Better == fmt.Sprint(better) && (n == 2 || !f.Trend)
				settled.add(map[bool]int{true: 1}[right && f.Verdict == Settled], 1)
				leaning.add(map[bool]int{true: 1}[right && f.P < Alpha], 1)
				if c.Across {
					across++
				}
				if out != nil {
					writeLegs(out, run, better, f.Factors, legs)
				}
			}
			out.Close()
			fmt.Printf("power trips %d speeds %d: settled %v, leaning or settled %v of %d, across %d\n", trips, n,
				settled, leaning, *studyRuns, across)
			settled.hold(t, fmt.Sprintf("trips %d speeds %d: found, beside nine tenths of lme4's", trips, n),
				.9*lme4Found[n][trips], 1)
		}
	}
}

func writeLegs(out *os.File, run, better, factors int, legs []simLeg) {
	for _, l := range legs {
		var strikes int64
		for _, x := range l.strikes {
			strikes += x
		}
		fmt.Fprintf(out, "%d,%d,%d,%d,%d,%.17g,%.17g,%d,%d\n", run, l.trip, l.leg, l.speed, better,
			l.hours*float64(len(l.lures)), l.start+l.hours/2, strikes, factors)
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
		for _, cv := range studyLucks() {
			for _, n := range []int{2, 5} {
				w := world{trips: trips, perTrip: 3, luck: cv, bite: cv / 2, speeds: ones(n), lures: ones(6), stick: .3}
				for i := range w.speeds {
					w.speeds[i] = 1 + .5*float64(i%2)
				}
				name := fmt.Sprintf("trips %d luck %.1f, %d speeds", trips, cv, n)
				ratios, rates, _ := coverage(name, w)
				ratios.hold(t, name+": intervals of ratios", .93, .98)
				rates.hold(t, name+": intervals of rates", .93, .98)
			}
		}
	}
}

// coverage counts how often the intervals hold the truth; bias is the mean log of
// the ratio over its truth by season.
func coverage(name string, w world) (ratios, rates tallied, bias []float64) {
	across, n := 0, 0
	for run := range *studyRuns {
		c, _ := judgeOne(w.season(seeded(run, uint64(w.trips))), "speed-band", true)
		if c.Reference < 0 {
			continue
		}
		truth := func(level string) float64 { var i int; fmt.Sscan(level, &i); return w.speeds[i] }
		if c.Across {
			across++
		}
		var r, held, q, rateHeld int
		logs := 0.0
		for _, l := range c.Levels {
			if l.Thin {
				continue
			}
			q++
			if l.Interval.Contains(truth(l.Level) * w.perTrip / 33) {
				rateHeld++
			}
			if l.Why == "" && l.Ratio.Known() {
				r++
				rel := truth(l.Level) / truth(c.Levels[c.Reference].Level)
				if l.Ratio.Interval.Contains(rel) {
					held++
				}
				logs += math.Max(-3, math.Min(3, math.Log(l.Ratio.Ratio/rel)))
			}
		}
		rates.add(rateHeld, q)
		if n += r; r > 0 {
			ratios.add(held, r)
			bias = append(bias, logs/float64(r))
		}
	}
	mean, err := meanOf(bias)
	fmt.Printf("coverage %s: ratio %v of %d, bias x%.3f (error %.3f), rate %v, across %d of %d\n", name, ratios, n,
		math.Exp(mean), err, rates, across, *studyRuns)
	return ratios, rates, bias
}

// meanOf is a mean and its error.
func meanOf(x []float64) (mean, err float64) {
	mean, sd := stat.MeanStdDev(x, nil)
	return mean, sd / math.Sqrt(float64(len(x)))
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
			if *studyBy != "" && by != *studyBy {
				continue
			}
			w := world{trips: trips, perTrip: 3, luck: .5, bite: .1, speeds: ones(2),
				lures: ones(6), stick: .3, run: follow[by]}
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
			name := fmt.Sprintf("trips %d, speed follows the %s", trips, by)
			ratios, _, bias := coverage(name, w) // a rate has no truth here but its own days'
			ratios.hold(t, name+": intervals of ratios", .93, 1)
			if mean, err := meanOf(bias); math.Abs(mean) > math.Log(1.05)+2*err {
				t.Errorf("%s: bias x%.3f, error %.3f", name, math.Exp(mean), err)
			}
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
