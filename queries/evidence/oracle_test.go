package evidence

import (
	"encoding/json"
	"fmt"
	"math"
	"os"
	"slices"
	"testing"

	"wakeledger/queries/stats"
)

// oracleTol is how near the random data sets must come to R, relatively.
const oracleTol = 1e-6

// num reads a number, or "NaN", "Inf" and "-Inf", which JSON has no word for.
type num float64

func (v *num) UnmarshalJSON(b []byte) error {
	switch string(b) {
	case `"NaN"`:
		*v = num(math.NaN())
	case `"Inf"`:
		*v = num(math.Inf(1))
	case `"-Inf"`:
		*v = num(math.Inf(-1))
	default:
		return json.Unmarshal(b, (*float64)(v))
	}
	return nil
}

// oracle reads the data sets that a script in testdata made, and fails where
// the file was cut short.
func oracle[T any](t *testing.T, file string) []T {
	t.Helper()
	b, err := os.ReadFile("testdata/" + file)
	if err != nil {
		t.Fatal(err)
	}
	var cases []T
	if err := json.Unmarshal(b, &cases); err != nil {
		t.Fatalf("%s: %v", file, err)
	}
	if len(cases) < 200 {
		t.Fatalf("%s has %d data sets, want 200", file, len(cases))
	}
	return cases
}

// agrees fails unless got is want to oracleTol; NaN is met by NaN only, and
// infinity by itself.
func agrees(t *testing.T, what string, got float64, want num) {
	t.Helper()
	w := float64(want)
	switch {
	case math.IsNaN(w) && math.IsNaN(got), got == w:
	case math.Abs(got-w) <= oracleTol*math.Abs(w) && !math.IsInf(w, 0):
	default:
		t.Errorf("%s = %.12g, want %.12g", what, got, w)
	}
}

type dispersionCase struct {
	Trip, Leg, Level, X []int64
	T                   []float64
	LevelPhi            struct {
		Pooled num
		Level  []int64
		Phi    []num
	} `json:"level_phi"`
	WithinTrips num `json:"within_trips"`
	WithinLegs  num `json:"within_legs"`
}

func (c dispersionCase) cells() []Cell {
	var cells []Cell
	for i := range c.Trip {
		cells = append(cells, Cell{Trip: c.Trip[i], Leg: c.Leg[i], Level: fmt.Sprint(c.Level[i]), LineHours: c.T[i], Strikes: c.X[i]})
	}
	return cells
}

// R: residual covariance of a Poisson regression on the levels.
func TestOracleLevelPhi(t *testing.T) {
	for i, c := range oracle[dispersionCase](t, "dispersion.json") {
		cells := tripCells(c.cells())
		pooled := stats.Dispersion(cells).Phi
		agrees(t, fmt.Sprint(i, " pooled"), pooled, c.LevelPhi.Pooled)
		if math.IsNaN(pooled) {
			pooled = 1
		}
		phi := levelPhi(cells, math.Max(1, pooled))
		for j, level := range c.LevelPhi.Level {
			agrees(t, fmt.Sprint(i, " level ", level), phi[fmt.Sprint(level)], c.LevelPhi.Phi[j])
		}
	}
}

// R: Poisson regression on strata and levels.
func TestOracleWithinPhi(t *testing.T) {
	for i, c := range oracle[dispersionCase](t, "dispersion.json") {
		agrees(t, fmt.Sprint(i, " trips"), withinPhi(strata(c.cells(), false)), c.WithinTrips)
		agrees(t, fmt.Sprint(i, " legs"), withinPhi(strata(c.cells(), true)), c.WithinLegs)
	}
}

// R: the sandwich variance of the estimating function.
func TestOracleRatioOf(t *testing.T) {
	for i, c := range oracle[struct {
		Trip, A, B         []int64
		TA, TB             []float64
		Strata             int
		Est, SE, Lo, Hi, P num
	}](t, "ratio.json") {
		var pairs []pair
		for j := range c.Trip {
			pairs = append(pairs, pair{c.Trip[j], stats.Stratum{A: stats.Count{Events: c.A[j], Effort: c.TA[j]}, B: stats.Count{Events: c.B[j], Effort: c.TB[j]}}})
		}
		r, ok := ratioOf(pairs, true)
		if ok != (c.Strata > 0) || r.Strata != c.Strata {
			t.Errorf("%d: %v, %d strata, want %d", i, ok, r.Strata, c.Strata)
		}
		agrees(t, fmt.Sprint(i, " ratio"), r.Ratio, c.Est)
		agrees(t, fmt.Sprint(i, " error"), r.LogSE, c.SE)
		agrees(t, fmt.Sprint(i, " lower"), r.Interval.Lo, c.Lo)
		agrees(t, fmt.Sprint(i, " upper"), r.Interval.Hi, c.Hi)
		agrees(t, fmt.Sprint(i, " p"), r.P, c.P)
	}
}

type adjustCase struct {
	Trip, X    []int64
	T          []float64
	F1, F2, F3 string // a letter a row; "-" for not logged
	Want       struct {
		Entered []string
		Trips   int
		Strikes int64
		Phi     num
		Rows    []adjustRow
	}
}

type adjustRow struct {
	Factor, Level    string
	X                int64
	T                num
	Reference        int
	Rate, RLo, RHi   num
	Ratio, Lo, Hi, P num
}

func (c adjustCase) season() Season {
	s := Season{Factors: []string{"f1", "f2", "f3"}}
	for i := range c.Trip {
		r := Row{Trip: c.Trip[i], LineHours: c.T[i], Strikes: c.X[i]}
		for _, f := range []string{c.F1, c.F2, c.F3} {
			level := f[i : i+1]
			if level == "-" {
				level = NotLogged
			}
			r.Levels = append(r.Levels, level)
		}
		s.Rows = append(s.Rows, r)
	}
	return s
}

// R: the rule again, Poisson regression, and rates and errors from its fit.
func TestOracleAdjust(t *testing.T) {
	for i, c := range oracle[adjustCase](t, "adjust.json") {
		a, err := Adjust(c.season(), word)
		if err != nil {
			t.Fatal(err)
		}
		if !slices.Equal(a.Entered, c.Want.Entered) || a.Trips != c.Want.Trips || a.Strikes != c.Want.Strikes || len(a.Levels) != len(c.Want.Rows) {
			t.Errorf("%d: entered %v, %d trips, %d strikes, %d levels; want %+v", i, a.Entered, a.Trips, a.Strikes, len(a.Levels), c.Want)
			continue
		}
		agrees(t, fmt.Sprint(i, " phi"), a.Phi, c.Want.Phi)
		for _, want := range c.Want.Rows {
			at := slices.IndexFunc(a.Levels, func(l AdjustedLevel) bool { return l.Factor == want.Factor && l.Level == want.Level })
			if at < 0 {
				t.Errorf("%d: no %s %s", i, want.Factor, want.Level)
				continue
			}
			sameAdjusted(t, fmt.Sprint(i, " ", want.Factor, " ", want.Level), a.Levels[at], want)
		}
	}
}

func sameAdjusted(t *testing.T, what string, got AdjustedLevel, want adjustRow) {
	t.Helper()
	if got.Reference != (want.Reference == 1) || got.Count.Events != want.X {
		t.Errorf("%s: reference %v, %d strikes; want %+v", what, got.Reference, got.Count.Events, want)
	}
	agrees(t, what+" hours", got.Count.Effort, want.T)
	agrees(t, what+" rate", got.Rate, want.Rate)
	agrees(t, what+" rate's lower", got.Interval.Lo, want.RLo)
	agrees(t, what+" rate's upper", got.Interval.Hi, want.RHi)
	if got.Told == math.IsNaN(float64(want.Ratio)) {
		t.Errorf("%s: told %v, want ratio %v", what, got.Told, want.Ratio)
	}
	if got.Told {
		agrees(t, what+" ratio", got.Ratio.Ratio, want.Ratio)
		agrees(t, what+" lower", got.Ratio.Interval.Lo, want.Lo)
		agrees(t, what+" upper", got.Ratio.Interval.Hi, want.Hi)
		agrees(t, what+" p", got.Ratio.P, want.P)
	}
}

// R: wilcox.test, p.adjust, median.
func TestOracleCompareSizes(t *testing.T) {
	for i, c := range oracle[struct {
		Levels    []string
		Weights   [][]float64
		Reference int
		Rows      []struct {
			Median, MLo, MHi, P, Shift, Lo, Hi num
			Exact                              int
		}
	}](t, "sizes.json") {
		for j, l := range CompareSizes(c.Levels, c.Weights) {
			want, what := c.Rows[j], fmt.Sprint(i, " ", l.Level)
			if l.Reference != (j == c.Reference) || l.Tested == math.IsNaN(float64(want.P)) || l.N != len(c.Weights[j]) {
				t.Errorf("%s: %+v, want %+v", what, l, want)
			}
			agrees(t, what+" median", l.Median.Median, want.Median)
			agrees(t, what+" median's lower", l.Median.Interval.Lo, want.MLo)
			agrees(t, what+" median's upper", l.Median.Interval.Hi, want.MHi)
			agrees(t, what+" p", l.P, want.P)
			if l.Tested {
				agrees(t, what+" shift", l.Test.Shift, want.Shift)
			}
			if want.Exact == 1 {
				agrees(t, what+" lower", l.Test.ShiftInterval.Lo, want.Lo)
				agrees(t, what+" upper", l.Test.ShiftInterval.Hi, want.Hi)
			}
		}
	}
}
