package evidence

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"gonum.org/v1/gonum/stat/distuv"

	"wakeledger/queries/stats"
)

func poisson(r *rand.Rand, mean float64) int64 {
	return int64(distuv.Poisson{Lambda: mean, Src: r}.Rand())
}

// question is an open one at a rate of 0.2 and trips of 24 line-hours.
func question(phi, paired float64) Question {
	q := Question{Factor: "lure", ByLeg: true, A: "a", B: "b", Ratio: 1.5, Rate: .2, Phi: phi, PairedPhi: paired, TripHours: 24, Settable: true}
	q.plan()
	return q
}

// Seasons of as many paired days as the plan asks for tell a true ratio of 1.5
// four times in five, however the trips differ.
func TestPairedDaysReachTheirPower(t *testing.T) {
	q := question(3, 1)
	r := seeded(7)
	luck := distuv.Gamma{Alpha: 1.5, Beta: 1.5, Src: r}
	told := 0
	const seasons = 1000
	for range seasons {
		f := Factor{Name: "lure", Levels: []string{"a", "b"}}
		for trip := range q.PairedTrips {
			mean := q.Rate * luck.Rand() * q.TripHours / 2
			f.Cells = append(f.Cells, Cell{int64(trip), 0, "a", q.TripHours / 2, poisson(r, mean)}, Cell{int64(trip), 0, "b", q.TripHours / 2, poisson(r, 1.5*mean)})
		}
		c := Compare(f)
		if l := c.Levels[1-c.Reference]; l.Ratio.P < Alpha {
			told++
		}
	}
	if share := float64(told) / seasons; share < .76 || share > .86 {
		t.Errorf("%d paired trips tell the ratio in %.3f of the seasons, want 0.8", q.PairedTrips, share)
	} else {
		t.Logf("%d paired trips: %.3f", q.PairedTrips, share)
	}
	near(t, "chance after as many trips", q.Chance(q.PairedTrips), Power, .02)
}

// Seasons in which each setting has trips of its own tell it as often, at the
// dispersion that the trips have: 1 + mean/shape.
func TestTripsApartReachTheirPower(t *testing.T) {
	const shape = 4.
	q := question(1+.25*24/shape, 1) // the mean of both settings' counts is at 0.25 strikes an hour
	r := seeded(8)
	luck := distuv.Gamma{Alpha: shape, Beta: shape, Src: r}
	told := 0
	const seasons = 1000
	for range seasons {
		var x [2]int64
		var cells []stats.Cell
		for trip := range q.ApartTrips {
			side := trip % 2
			n := poisson(r, q.Rate*[]float64{1, 1.5}[side]*luck.Rand()*q.TripHours)
			x[side] += n
			cells = append(cells, stats.Cell{Trip: string(rune(trip)), Level: string(rune('a' + side)), Count: stats.Count{Events: n, Effort: q.TripHours}})
		}
		effort := float64(q.ApartTrips) / 2 * q.TripHours
		ratio, _ := stats.QuasiRatio(stats.Count{Events: x[1], Effort: effort}, stats.Count{Events: x[0], Effort: effort}, Confidence, stats.Dispersion(cells).Phi)
		if ratio.P < Alpha {
			told++
		}
	}
	if share := float64(told) / seasons; share < .73 || share > .87 {
		t.Errorf("%d trips tell the ratio in %.3f of the seasons, want 0.8", q.ApartTrips, share)
	}
}

func TestNext(t *testing.T) {
	c := Compare(Factor{Name: "lure", ByLeg: true, Levels: []string{"a", "b", "c"}, Cells: []Cell{
		{1, 1, "a", 30, 6}, {1, 1, "b", 20, 9}, {2, 2, "a", 30, 4}, {2, 2, "c", 25, 2},
	}})
	f := Find([]Comparison{c})[0]
	q, ok := Next(c, f, 2)
	if !ok || q.A != "a" || q.B != "b" || q.Had != [2]float64{60, 20} || q.TripHours != 52.5 {
		t.Errorf("%v, %+v", ok, q)
	}
	near(t, "line-hours", q.Apart.Effort, 2.801585*2.801585*1.5/.2/(math.Ln2*math.Ln2), 1e-5)
	if q.Paired.Effort <= q.Apart.Effort || q.Paired.Effort > 6*q.Apart.Effort {
		t.Errorf("paired %v, apart %v at the same dispersion", q.Paired.Effort, q.Apart.Effort)
	}
	f.Verdict = Settled
	if _, ok := Next(c, f, 2); ok {
		t.Error("a settled finding is open")
	}
	f.Verdict, f.Better, f.Other = Leaning, "c", "a"
	if q, _ := Next(c, f, 2); q.A != "c" || q.B != "a" || q.Had != [2]float64{25, 60} {
		t.Errorf("leaning: %+v", q)
	}
	c.Factor, f.Better = "month", ""
	if _, ok := Next(c, f, 2); ok {
		t.Error("months that no trip shares can be planned")
	}
}

// Over any four trips each setting comes first, and is to port, twice, and each
// of the two questions' orders meets each of the other's.
func TestPlanIsBalanced(t *testing.T) {
	boat := question(2, 1)
	boat.Factor, boat.ByLeg, boat.A, boat.B = "speed-band", false, "fast", "slow"
	days := Plan([]Question{question(2, 1), boat}, 8, word)
	met := map[[2]string]int{}
	for i, d := range days {
		met[[2]string{d.First, d.Port}]++
		if d.Trip != i+1 || d.First == d.Second || d.Port == d.Starb || d.BoatChance <= 0 || i > 0 && d.BoatChance <= days[i-1].BoatChance {
			t.Errorf("%+v", d)
		}
	}
	for pair, n := range met {
		if n != 2 {
			t.Errorf("%v on %d of 8 trips", pair, n)
		}
	}
	if len(met) != 4 || Plan(nil, 5, word) != nil {
		t.Errorf("%v", met)
	}
	leaning := question(9, 9)
	leaning.Leaning, leaning.A = true, "the leaning one"
	if d := Plan([]Question{question(2, 1), leaning}, 1, word)[0]; d.Port != "the leaning one" || d.First != "" {
		t.Errorf("%+v", d)
	}
}

func TestGaps(t *testing.T) {
	var legs []GapLeg
	for i := range 120 {
		g := GapLeg{Gap: float64(i%4) * 4, Hours: 1.5} // 0, 4, 8, 12 m
		g.Tangle = g.Gap < 5 && i%12 < 4 || i == 2
		legs = append(legs, g)
	}
	levels, supported := Gaps(legs)
	if supported != 5 {
		t.Errorf("supported %v, want 5", supported)
	}
	n := int64(0)
	for _, l := range levels {
		n += l.Legs
	}
	if n != 120 || levels[0].Legs != 60 || levels[0].Tangles != 20 {
		t.Errorf("%+v", levels)
	}
	if _, supported := Gaps(legs[:9]); !math.IsNaN(supported) {
		t.Errorf("nine legs support %v m", supported)
	}
	if levels, supported := Gaps(nil); len(levels) != len(GapEdges()) || !math.IsNaN(supported) {
		t.Error("no legs support something")
	}
}

// Tangles without regard to gaps support a gap in at most one season in twenty.
func TestGapsByLuck(t *testing.T) {
	r := seeded(9)
	found := 0
	const seasons = 1000
	for range seasons {
		var legs []GapLeg
		for range 150 {
			legs = append(legs, GapLeg{Gap: 35 * r.Float64(), Hours: .5 + r.ExpFloat64(), Tangle: r.Float64() < .1})
		}
		if _, supported := Gaps(legs); !math.IsNaN(supported) {
			found++
		}
	}
	if share := float64(found) / seasons; share > .05 {
		t.Errorf("%.3f of the seasons support a gap by luck", share)
	}
}

// Weights by hand: R, wilcox.test(c(80,83,189,104,145,138,191,164,73,146),
// c(115,88,90,74,121)) has the exact two-sided p 0.254412254412 (Hollander and
// Wolfe's permeability example in R's manual); alone in its factor, Holm leaves it.
func TestCompareSizes(t *testing.T) {
	a := []float64{80, 83, 189, 104, 145, 138, 191, 164, 73, 146}
	b := []float64{115, 88, 90, 74, 121}
	got := CompareSizes([]string{"a", "b", "c", NotLogged}, [][]float64{a, b, {100, 101, 99}, {1, 2, 3, 4, 5, 6}})
	if !got[0].Reference || got[1].Test.Method != stats.MethodRankExact || got[2].Tested || got[3].Tested {
		t.Errorf("%+v", got)
	}
	near(t, "p", got[1].P, .254412254412, 1e-9)
	near(t, "median", got[1].Median.Median, 90, 0)
	if got[1].Median.Interval.Known() || !got[0].Median.Interval.Known() {
		t.Error("an interval of the median from 5 weights, or none from 10")
	}
	for i := range got {
		if slices.Contains([]int{0, 2, 3}, i) && got[i].Why == "" {
			t.Errorf("%s: no reason", got[i].Level)
		}
	}
}
