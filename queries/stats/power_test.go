package stats

import (
	"math"
	"math/rand/v2"
	"strconv"
	"testing"

	"gonum.org/v1/gonum/stat/distuv"
)

// By hand: rates 0.2 and 0.4, z = 1.959964 + 0.841621: 2.801585^2 * 7.5 / ln(2)^2.
func TestEffortToTellByHand(t *testing.T) {
	p, ok := EffortToTell(Contrast{Rate: .2, Ratio: 2, Phi: 1, Conf: .95, Power: .8})
	want := 2.801585 * 2.801585 * 7.5 / (math.Ln2 * math.Ln2)
	near(t, "effort", p.Effort, want, 1e-6)
	near(t, "events", p.Events[1], .4*want, 1e-6)
	if !ok {
		t.Error("not ok")
	}
	wide, _ := EffortToTell(Contrast{Rate: .2, Ratio: 2, Phi: 3, Conf: .95, Power: .8})
	near(t, "three times the dispersion", wide.Effort, 3*p.Effort, 1e-12)
	under, _ := EffortToTell(Contrast{Rate: .2, Ratio: 2, Phi: .5, Conf: .95, Power: .8})
	near(t, "dispersion below 1", under.Effort, p.Effort, 0)
	// Seen from the other setting it is the same question.
	back, _ := EffortToTell(Contrast{Rate: .4, Ratio: .5, Phi: 1, Conf: .95, Power: .8})
	near(t, "the other way", back.Effort, p.Effort, 1e-12)
}

func TestPowerOfInverts(t *testing.T) {
	for _, c := range []Contrast{{.2, 2, 1, .95, .8}, {.1, .6, 2.5, .9, .9}, {1, 1.3, 4, .99, .5}} {
		p, _ := EffortToTell(c)
		power, ok := PowerOf(c, p.Effort)
		near(t, "power", power, c.Power, 1e-9)
		if more, _ := PowerOf(c, 2*p.Effort); !ok || more <= power {
			t.Errorf("%+v: power %v, with twice the effort %v", c, power, more)
		}
	}
}

func TestEffortToTellNothing(t *testing.T) {
	nan := math.NaN()
	for _, c := range []Contrast{
		{0, 2, 1, .95, .8}, {nan, 2, 1, .95, .8}, {.2, 1, 1, .95, .8}, {.2, 0, 1, .95, .8}, {.2, math.Inf(1), 1, .95, .8},
		{.2, 2, nan, .95, .8}, {.2, 2, 1, 1, .8}, {.2, 2, 1, .95, 1}, {.2, 2, 1, .95, .02},
	} {
		if p, ok := EffortToTell(c); ok || !math.IsNaN(p.Effort) {
			t.Errorf("%+v: %+v", c, p)
		}
	}
	if _, ok := PowerOf(Contrast{.2, 2, 1, .95, .8}, 0); ok {
		t.Error("no effort accepted")
	}
}

// simulatedPower is the share of seasons in which the interval leaves out 1.
func simulatedPower(seasons int, season func() bool) float64 {
	told := 0
	for range seasons {
		if season() {
			told++
		}
	}
	return float64(told) / float64(seasons)
}

// Poisson seasons of the planned effort, judged by ExactRatio, reach the power
// planned; at a ratio of 1 the same test errs no more often than it may. With
// 4000 seasons the standard error is 0.006.
func TestPowerBySimulationPoisson(t *testing.T) {
	src := rand.NewPCG(1, 2014)
	for _, c := range []Contrast{{.2, 2, 1, .95, .8}, {.1, .5, 1, .95, .8}, {.3, 1.5, 1, .95, .9}} {
		p, _ := EffortToTell(c)
		run := func(ratio float64) float64 {
			first := distuv.Poisson{Lambda: c.Rate * p.Effort, Src: src}
			second := distuv.Poisson{Lambda: c.Rate * ratio * p.Effort, Src: src}
			return simulatedPower(4000, func() bool {
				r, ok := ExactRatio(Count{int64(second.Rand()), p.Effort}, Count{int64(first.Rand()), p.Effort}, c.Conf)
				return ok && !r.Interval.Contains(1)
			})
		}
		wantShare(t, c, "power", run(c.Ratio), c.Power-.035, c.Power+.02)
		wantShare(t, c, "error at a ratio of 1", run(1), .03, .055)
	}
}

// wantShare holds a simulated share to what is allowed.
func wantShare(t *testing.T, c Contrast, what string, got, lo, hi float64) {
	t.Helper()
	if got < lo || got > hi {
		t.Errorf("%+v: %s %.4f, want %.3f to %.3f", c, what, got, lo, hi)
	}
}

// clusteredSeason is a season of trips at each of two settings whose counts
// vary phi times as much as Poisson's (negative binomial with that variance).
func clusteredSeason(c Contrast, trips int, hours float64, src rand.Source) (cells []Cell, total [2]Count) {
	for i := range 2 * trips {
		mean := c.Rate * hours
		if i%2 == 1 {
			mean *= c.Ratio
		}
		luck := distuv.Gamma{Alpha: mean / (c.Phi - 1), Beta: 1 / (c.Phi - 1), Src: src}.Rand()
		x := Count{int64(distuv.Poisson{Lambda: luck, Src: src}.Rand()), hours}
		cells = append(cells, Cell{strconv.Itoa(i), strconv.Itoa(i % 2), x})
		total[i%2].Events += x.Events
		total[i%2].Effort += x.Effort
	}
	return cells, total
}

// Clustered seasons of the planned effort, 20 trips a setting, judged by
// QuasiRatio with the dispersion that the season itself shows, reach the power
// planned and err as they may; judged as if Poisson they err far too often. With
// 2000 seasons the standard error is 0.009.
func TestPowerBySimulationClustered(t *testing.T) {
	src := rand.NewPCG(2, 2014)
	const trips = 20
	for _, c := range []Contrast{{.2, 2, 2, .95, .8}, {.2, 2.5, 3, .95, .8}, {.5, 1.5, 2, .95, .8}} {
		p, _ := EffortToTell(c)
		run := func(c Contrast, widen bool) float64 {
			return simulatedPower(2000, func() bool {
				cells, total := clusteredSeason(c, trips, p.Effort/trips, src)
				phi := 1.0
				if widen {
					phi = Dispersion(cells).Phi
				}
				r, ok := QuasiRatio(total[1], total[0], c.Conf, phi)
				return ok && !r.Interval.Contains(1)
			})
		}
		same := c
		same.Ratio = 1
		wantShare(t, c, "power", run(c, true), c.Power-.035, c.Power+.035)
		wantShare(t, c, "error at a ratio of 1", run(same, true), .03, .06)
		wantShare(t, c, "error without widening", run(same, false), .12, .35)
	}
}
