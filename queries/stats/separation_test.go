package stats

import (
	"math"
	"slices"
	"strconv"
	"testing"
)

// 200 random designs, most of them short of events, against a linear program
// (testdata/separation.py). What is left must converge.
func TestSeparatedRandom(t *testing.T) {
	var cases []struct {
		A, B []int
		X    []float64
		Y    []int64
		Rows []int
	}
	loadOracle(t, "separation.json", &cases)
	wantCases(t, len(cases))
	some, none := 0, 0
	for i, c := range cases {
		var a, b []string
		for j := range c.A {
			a, b = append(a, strconv.Itoa(c.A[j])), append(b, strconv.Itoa(c.B[j]))
		}
		columns := slices.Concat(Treatment("a", a, "0"), Treatment("b", b, "0"), []Column{{"x", c.X}})
		f, err := PoissonRegression(RegressionData{Events: c.Y, Effort: ones(len(c.Y)), Columns: columns})
		if err != nil {
			t.Fatal(err)
		}
		if !slices.Equal(f.Separated, c.Rows) {
			t.Errorf("case %d: separated %v, want %v", i, f.Separated, c.Rows)
		}
		if f.Rows > 0 && !f.Converged {
			t.Errorf("case %d did not converge", i)
		}
		if len(c.Rows) > 0 {
			some++
		} else {
			none++
		}
	}
	if some < 40 || none < 40 {
		t.Errorf("%d separated, %d not: one side is hardly tried", some, none)
	}
}

// A trip without strikes and a level without strikes run off; the rest is as
// if they were not there (R's glm gives the same coefficients beside its -33).
func TestRegressionRunsOff(t *testing.T) {
	events, hours, band, trip := tripBands()
	events = append(events, 0, 0, 0, 0, 0)
	hours = append(hours, 5, 8, 4, 7, 3)
	band = append(band, "A", "B", "C", "D", "D")
	trip = append(trip, "9", "9", "9", "1", "2")
	columns := append(Treatment("band", band, "A"), Treatment("trip", trip, "1")...)
	f := fitOK(t, RegressionData{Events: events, Effort: hours, Columns: columns, Clusters: trip})
	near(t, "B", coef(t, f, "band=B").Estimate, 0.691202341157, 1e-9)
	near(t, "B s.e.", coef(t, f, "band=B").SE, 0.420327540142, 1e-7)
	near(t, "trip 8", coef(t, f, "trip=8").Estimate, -0.259477089882, 1e-9)
	for _, name := range []string{"band=D", "trip=9"} {
		c := coef(t, f, name)
		if c.Status != RunsOff || !math.IsInf(c.Estimate, -1) || !math.IsNaN(c.SE) {
			t.Errorf("%+v", c)
		}
		if r, ok := f.RateRatio(name, ModelSE, .95); ok || r.Ratio != 0 || r.Interval.Known() {
			t.Errorf("%+v %v", r, ok)
		}
	}
	if !slices.Equal(f.Separated, []int{24, 25, 26, 27, 28}) || f.Rows != 24 || f.Clusters != 8 {
		t.Errorf("separated %v, rows %d, clusters %d", f.Separated, f.Rows, f.Clusters)
	}
	wantWarning(t, f.Warnings, WarnRunsOff, true)
	rate, _, ok := f.StandardisedRate(map[string]float64{"band=B": 0, "band=C": 0, "band=D": 0}, ModelSE, .95)
	near(t, "standardised A", rate, 0.232218119614, 1e-9)
	if _, _, bad := f.StandardisedRate(map[string]float64{"band=D": 1}, ModelSE, .95); !ok || bad {
		t.Error("a level without events has a standardised rate")
	}
}

// With a reference that has no events its fellows run off the other way.
func TestRegressionReferenceRunsOff(t *testing.T) {
	level := []string{"none", "none", "b", "b", "c", "c"}
	f := fitOK(t, RegressionData{Events: []int64{0, 0, 3, 5, 2, 9}, Effort: ones(6), Columns: Treatment("x", level, "none")})
	for name, side := range map[string]int{Intercept: -1, "x=b": 1, "x=c": 1} {
		if c := coef(t, f, name); c.Status != RunsOff || !math.IsInf(c.Estimate, side) {
			t.Errorf("%+v", c)
		}
	}
}

// Separation by two columns together that neither shows alone: rows 0 and 1
// have no events and are the only ones with x above the line x = z.
func TestRegressionJointSeparation(t *testing.T) {
	x := Column{"x", []float64{3, 4, 1, 2, 3, 4, 5}}
	z := Column{"z", []float64{1, 3, 1, 2, 3, 4, 5}}
	f := fitOK(t, RegressionData{Events: []int64{0, 0, 4, 0, 3, 6, 2}, Effort: ones(7), Columns: []Column{x, z}})
	if !slices.Equal(f.Separated, []int{0, 1}) {
		t.Errorf("separated %v", f.Separated)
	}
	if c := coef(t, f, "x"); !math.IsInf(c.Estimate, -1) {
		t.Errorf("%+v", c)
	}
	if c := coef(t, f, "z"); !math.IsInf(c.Estimate, 1) {
		t.Errorf("%+v", c)
	}
	if c := coef(t, f, Intercept); c.Status != Fitted {
		t.Errorf("%+v", c)
	}
	// One event at row 0 and nothing is separated any more.
	g := fitOK(t, RegressionData{Events: []int64{1, 0, 4, 0, 3, 6, 2}, Effort: ones(7), Columns: []Column{x, z}})
	if g.Separated != nil || coef(t, g, "x").Status != Fitted {
		t.Errorf("separated %v", g.Separated)
	}
}
