package evidence

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"wakeledger/queries/stats"
)

// worked is an invented table of eight trips by three bands.
func worked() []Cell {
	strikes := [][]int64{{0, 3, 1}, {1, 6, 2}, {0, 1, 0}, {2, 9, 3}, {0, 2, 1}, {1, 4, 0}, {3, 7, 2}, {0, 1, 1}}
	hours := [][]float64{{4, 10, 6}, {3, 12, 5.5}, {6, 6, 2}, {2.5, 9, 4}, {5, 7, 3.5}, {4, 8, 5}, {6, 10, 4.5}, {3, 5, 6}}
	var cells []Cell
	for trip := range strikes {
		for band, name := range []string{"A", "B", "C"} {
			cells = append(cells, Cell{Trip: int64(trip + 1), Level: name, LineHours: hours[trip][band], Strikes: strikes[trip][band]})
		}
	}
	return cells
}

func near(t *testing.T, what string, got, want, tolerance float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tolerance*math.Max(1, math.Abs(want))) {
		t.Errorf("%s: %v, want %v", what, got, want)
	}
}

// R: glm(x ~ trip + band + offset(log(t)), poisson) on the worked table gives log
// ratios B .6912023412 and C .1885294284 on 14 degrees of freedom; Pearson's X2 over
// them must be what the regression of package stats has.
func TestWithinAgainstRegression(t *testing.T) {
	table := tableOf(strata(worked(), false))
	table.fit()
	near(t, "B over A", math.Log(table.level[1]/table.level[0]), .6912023412, 1e-7)
	near(t, "C over A", math.Log(table.level[2]/table.level[0]), .1885294284, 1e-7)
	var d stats.RegressionData
	var trips, bands []string
	for _, c := range worked() {
		d.Events, d.Effort = append(d.Events, c.Strikes), append(d.Effort, c.LineHours)
		trips, bands = append(trips, fmt.Sprint(c.Trip)), append(bands, c.Level)
	}
	d.Columns = slices.Concat(stats.Treatment("trip", trips, "1"), stats.Treatment("band", bands, "A"))
	fit, err := stats.PoissonRegression(d)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "dispersion", withinPhi(strata(worked(), false)), fit.Phi, 1e-6)
}

// Levels that no trip joins are two comparisons, worked by hand. In each of the
// four trips six strikes fall 4 and 2 where an even split of 3 and 3 is expected, so
// that X2 is 4 * 2/3, on one degree of freedom a trip less one for b over a and one
// for d over c. Level e, which took nothing where a and b did, adds to neither.
func TestWithinLevelsApart(t *testing.T) {
	var cells []Cell
	for i, x := range [][2]int64{{4, 2}, {2, 4}, {4, 2}, {2, 4}} {
		names := [][2]string{{"a", "b"}, {"c", "d"}}[i/2]
		cells = append(cells, Cell{int64(i), 0, names[0], 5, x[0]}, Cell{int64(i), 0, names[1], 5, x[1]})
	}
	cells = append(cells, Cell{0, 0, "e", 5, 0}, Cell{9, 0, "e", 5, 7})
	near(t, "dispersion", withinPhi(strata(cells, false)), 8./3/2, 1e-9)
}

// The British doctors' table (Doll and Hill; printed in many texts of
// epidemiology): ratio 1.424682017, 1.154703101 to 1.757784185 by Greenland and
// Robins' variance, five strata standing for trips, too few to widen.
func TestRatioOfBritishDoctors(t *testing.T) {
	deaths := [][2]int64{{32, 2}, {104, 12}, {206, 28}, {186, 28}, {102, 31}}
	years := [][2]float64{{52407, 18790}, {43248, 10673}, {28612, 5710}, {12663, 2585}, {5317, 1462}}
	f := Factor{Name: "smoking", Levels: []string{"smokers", "others"}}
	for i := range deaths {
		for j, name := range f.Levels {
			f.Cells = append(f.Cells, Cell{Trip: int64(i + 1), Level: name, LineHours: years[i][j], Strikes: deaths[i][j]})
		}
	}
	c := Compare(f)
	l := c.Levels[1] // smokers have the most effort, so the others are compared with them
	near(t, "ratio", 1/l.Ratio.Ratio, 1.424682017, 1e-9)
	near(t, "lower", 1/l.Ratio.Interval.Hi, 1.154703101, 1e-9)
	near(t, "upper", 1/l.Ratio.Interval.Lo, 1.757784185, 1e-9)
	if c.Widened || c.Reference != 0 || l.Ratio.Strata != 5 {
		t.Errorf("%+v", c)
	}
}

func TestCompareSaysWhyNot(t *testing.T) {
	f := Factor{Name: "x", Levels: []string{"a", "b", "c", NotLogged}, Cells: []Cell{
		{1, 0, "a", 20, 5}, {1, 0, "b", 5, 0}, {2, 0, "c", 9, 4}, {2, 0, NotLogged, 3, 1},
	}}
	c := Compare(f)
	want := []string{whyReference, whyOneSide, whyNoTrip, "not a level: the log does not say"}
	for i, l := range c.Levels {
		if l.Why != want[i] {
			t.Errorf("%s: %q, want %q", l.Level, l.Why, want[i])
		}
		if l.Told != (i == 1) || i != 1 && !math.IsNaN(l.P) {
			t.Errorf("%s: told %v, p %v", l.Level, l.Told, l.P)
		}
	}
	near(t, "a level of one trip is not thin at 3 strikes", Enough(c.Season), 3*37/10., 1e-12)
	if !c.Levels[1].Thin || c.Levels[0].Thin {
		t.Error("little effort is not told from enough")
	}
	if empty := Compare(Factor{Name: "x"}); empty.Reference != -1 || len(empty.Levels) != 0 {
		t.Errorf("nothing: %+v", empty)
	}
}

// Where every trip has the same effort at a level and nothing else varies, the
// level's own dispersion is Pearson's: 1 + c*mean. A level of one trip changes nothing.
func TestLevelPhiEvenEffort(t *testing.T) {
	var cells []stats.Cell
	for i, x := range []int64{0, 9, 2, 14, 1, 0, 7, 3, 0, 12} {
		cells = append(cells, stats.Cell{Trip: fmt.Sprint(i), Level: "a", Count: stats.Count{Events: x, Effort: 4}})
	}
	pearson := stats.Dispersion(cells).Phi
	near(t, "phi", levelPhi(cells, 1)["a"], pearson, 1e-9)
	once := append(slices.Clone(cells), stats.Cell{Trip: "0", Level: "b", Count: stats.Count{Events: 40, Effort: 4}})
	near(t, "phi beside a level of one trip", levelPhi(once, 1)["a"], pearson, 1e-9)
	if got := levelPhi(cells, 99)["a"]; got != 99 {
		t.Errorf("%v, want no less than the pooled", got)
	}
	if got := levelPhi([]stats.Cell{{Trip: "1", Level: "a", Count: stats.Count{Effort: 3}}}, math.NaN())["a"]; !(got == 1 || math.IsNaN(got)) {
		t.Errorf("a level without events: %v", got)
	}
}
