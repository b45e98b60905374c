package stats

import (
	"math"
	"testing"
)

// Six bands worked by hand with R 4.2.2; the posterior by qgamma.
func TestShrinkSixBands(t *testing.T) {
	s, ok := Shrink(counts([]int64{0, 3, 18, 44, 12, 1}, []float64{1.5, 7, 22.5, 30, 16, 2.25}), .95)
	if !ok {
		t.Fatal("not ok")
	}
	near(t, "mean", s.Mean, 0.9842271293, 1e-9)
	near(t, "variance", s.Variance, 0.0881818700, 1e-9)
	near(t, "alpha", s.Alpha, 10.9852857724, 1e-9)
	near(t, "beta", s.Beta, 11.1613320188, 1e-9)
	weights := []float64{.118470947, .385434284, .668422747, .728839387, .589072730, .167768570}
	rates := []float64{0.867624808838, 0.770058372258, 0.861085525560, 1.335848066028, 0.846250314842, 0.893668559964}
	for i := range rates {
		near(t, "weight", s.Levels[i].Weight, weights[i], 1e-8)
		near(t, "rate", s.Levels[i].Rate, rates[i], 1e-10)
	}
	nearInterval(t, "band 1", s.Levels[0].Interval, Interval{0.432878557550, 1.45097301792}, 1e-10)
	nearInterval(t, "band 4", s.Levels[3].Interval, Interval{1.006302709939, 1.711354342}, 1e-9)
}

func TestShrinkFiveBands(t *testing.T) {
	s, _ := Shrink(counts([]int64{2, 9, 21, 6, 1}, []float64{6.5, 14.25, 18, 9.75, 3.5}), .95)
	near(t, "variance", s.Variance, 0.0341849446, 1e-8)
	for i, want := range []float64{0.648908147068, 0.703370430432, 0.937784104795, 0.708582473135, 0.686122914888} {
		near(t, "rate", s.Levels[i].Rate, want, 1e-10)
	}
}

// Levels no further apart than chance would put them share the mean 20/50.
func TestShrinkHomogeneous(t *testing.T) {
	s, _ := Shrink(counts([]int64{4, 5, 6, 5}, []float64{10, 12, 15, 13}), .95)
	_, pooled, _ := Poisson(20, 50, .95)
	if s.Variance != 0 || !math.IsInf(s.Alpha, 1) {
		t.Errorf("%+v", s)
	}
	for _, l := range s.Levels {
		near(t, "rate", l.Rate, .4, 1e-14)
		nearInterval(t, "interval", l.Interval, pooled, 0)
	}
}

// A level with half an hour and one strike does not lead.
func TestShrinkLittleEffortDoesNotLead(t *testing.T) {
	s, _ := Shrink([]Count{{1, .5}, {30, 60}, {5, 60}, {12, 60}}, .95)
	if s.Levels[0].Raw <= s.Levels[1].Raw || s.Levels[0].Rate >= s.Levels[1].Rate {
		t.Errorf("raw %v and %v, shrunk %v and %v", s.Levels[0].Raw, s.Levels[1].Raw,
			s.Levels[0].Rate, s.Levels[1].Rate)
	}
}

func TestShrinkEdges(t *testing.T) {
	s, ok := Shrink([]Count{{0, 5}, {0, 2}, {3, 0}}, .95)
	if !ok || s.Mean != 0 || s.Skipped != 1 || s.Levels[0].Rate != 0 || !math.IsNaN(s.Levels[2].Rate) {
		t.Errorf("%+v", s)
	}
	near(t, "upper of nothing", s.Levels[0].Interval.Hi, 3.688879454/7, 1e-9)
	one, ok := Shrink([]Count{{7, 2}}, .95)
	if !ok || one.Levels[0].Rate != 3.5 || one.Variance != 0 {
		t.Errorf("one level: %+v", one)
	}
	for _, levels := range [][]Count{nil, {{3, 0}}, {{3, math.Inf(1)}}} {
		if s, ok := Shrink(levels, .95); ok || !math.IsNaN(s.Mean) {
			t.Errorf("%v: %+v", levels, s)
		}
	}
	if _, ok := Shrink([]Count{{1, 1}, {2, 1}}, 0); ok {
		t.Error("conf 0 accepted")
	}
}

// 200 random sets against spdep's EBest and R's qgamma (testdata/strata.R).
func TestShrinkRandom(t *testing.T) {
	var f struct {
		EB []struct {
			X              []int64
			T              []float64
			Mean, Variance float64
			Est, Lo, Hi    []num
		}
	}
	loadOracle(t, "strata.json", &f)
	wantCases(t, len(f.EB))
	spread := 0
	for i, c := range f.EB {
		s, _ := Shrink(counts(c.X, c.T), .95)
		near(t, caseName("mean", i), s.Mean, c.Mean, oracleTol)
		near(t, caseName("variance", i), s.Variance, c.Variance, oracleTol)
		for j, l := range s.Levels {
			near(t, caseName("rate", i), l.Rate, float64(c.Est[j]), oracleTol)
			if c.Variance > 0 {
				nearInterval(t, caseName("interval", i), l.Interval, Interval{float64(c.Lo[j]), float64(c.Hi[j])},
					oracleTol)
			}
		}
		if c.Variance > 0 {
			spread++
		}
	}
	if spread < 50 {
		t.Errorf("only %d data sets vary", spread)
	}
}
