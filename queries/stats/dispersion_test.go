package stats

import (
	"math"
	"strconv"
	"testing"
)

// Twelve trips at one level; X2 and p by R 4.2.2, glm(x ~ 1, poisson, offset = log(t)).
func TestDispersionOneLevel(t *testing.T) {
	x := []int64{0, 0, 1, 0, 3, 0, 0, 2, 5, 0, 1, 0}
	hours := []float64{2, 3, 4, 1.5, 6, 2, 3.5, 4, 7, 2, 3, 2.5}
	var cells []Cell
	for i := range x {
		cells = append(cells, Cell{strconv.Itoa(i), "all", Count{x[i], hours[i]}})
	}
	d := Dispersion(cells)
	near(t, "X2", d.X2, 10.45982143, 1e-9)
	near(t, "p", d.P, 0.48956056, 1e-7)
	near(t, "phi", d.Phi, 10.45982143/11, 1e-9)
	if d.DF != 11 || d.Trips != 12 || d.Levels != 1 || d.Cells != 12 || d.Skipped != 0 {
		t.Errorf("%+v", d)
	}
}

// By hand: one level, 2 and 8 events in an hour each, 5 expected: X2 = 9/5 twice
// on one degree of freedom.
func TestDispersionByHand(t *testing.T) {
	d := Dispersion([]Cell{{"a", "x", Count{2, 1}}, {"b", "x", Count{8, 1}}})
	near(t, "phi", d.Phi, 3.6, 1e-14)
	// The same with trip b logged in two legs, a level without events and a
	// cell without effort, none of which may change it.
	e := Dispersion([]Cell{
		{"a", "x", Count{2, 1}}, {"b", "x", Count{3, .25}}, {"b", "x", Count{5, .75}},
		{"a", "none", Count{0, 4}}, {"b", "none", Count{0, 9}}, {"c", "x", Count{1, 0}},
	})
	near(t, "phi", e.Phi, 3.6, 1e-14)
	if e.Skipped != 3 || e.Cells != 2 {
		t.Errorf("%+v", e)
	}
}

func TestDispersionNothing(t *testing.T) {
	for _, cells := range [][]Cell{nil, {{"a", "x", Count{3, 2}}}, {{"a", "x", Count{0, 2}}, {"b", "x", Count{0, 2}}}} {
		d := Dispersion(cells)
		if !math.IsNaN(d.Phi) || !math.IsNaN(d.P) || d.DF != 0 {
			t.Errorf("%v: %+v", cells, d)
		}
	}
}

// 200 random tables against Pearson's X2 of R's glm (testdata/counts.R), which
// sees the levels with events only.
func TestDispersionRandom(t *testing.T) {
	var f struct {
		Dispersion []struct {
			Trip, Level []int
			X           []int64
			T           []float64
			X2, P       float64
			DF          int
		}
	}
	loadOracle(t, "counts.json", &f)
	wantCases(t, len(f.Dispersion))
	for i, c := range f.Dispersion {
		var cells []Cell
		for j := range c.X {
			cells = append(cells, Cell{strconv.Itoa(c.Trip[j]), strconv.Itoa(c.Level[j]), Count{c.X[j], c.T[j]}})
		}
		d := Dispersion(cells)
		near(t, caseName("X2", i), d.X2, c.X2, oracleTol)
		near(t, caseName("p", i), d.P, c.P, oracleTol)
		if d.DF != c.DF {
			t.Errorf("case %d: df %d, want %d", i, d.DF, c.DF)
		}
	}
}
