package stats

import (
	"encoding/csv"
	"math"
	"os"
	"slices"
	"strconv"
	"strings"
	"testing"
)

// fitOK fits and fails the test where that cannot be.
func fitOK(t *testing.T, d RegressionData) *PoissonFit {
	t.Helper()
	f, err := PoissonRegression(d)
	if err != nil {
		t.Fatal(err)
	}
	if !f.Converged {
		t.Fatalf("did not converge: %+v", f.Coefficients)
	}
	return f
}

// coef finds a coefficient by name.
func coef(t *testing.T, f *PoissonFit, name string) Coefficient {
	t.Helper()
	for _, c := range f.Coefficients {
		if c.Name == name {
			return c
		}
	}
	t.Fatalf("no coefficient %q", name)
	return Coefficient{}
}

// doctorsData is britishDoctors a row per count; byAge adds age.
func doctorsData(byAge bool) RegressionData {
	var d RegressionData
	smoke := Column{Name: "s"}
	for i, s := range britishDoctors {
		d.Events = append(d.Events, s.A.Events, s.B.Events)
		d.Effort = append(d.Effort, s.A.Effort, s.B.Effort)
		smoke.Values = append(smoke.Values, 1, 0)
		d.Clusters = append(d.Clusters, strconv.Itoa(i), strconv.Itoa(i))
	}
	d.Columns = []Column{smoke}
	if byAge {
		d.Columns = append(d.Columns, Treatment("age", d.Clusters, "0")...)
	}
	return d
}

// The standard errors below are R's with control = list(epsilon = 1e-16). At
// its default, R stops with weights one step short of the estimate, and its
// standard errors (0.1073740439 for the first) differ from the seventh digit on.

// R 4.2.2 glm(d ~ s + factor(age) + offset(log(t)), poisson) and statsmodels
// 0.13.5 cov_type="cluster" by age.
func TestRegressionBritishDoctors(t *testing.T) {
	c := coef(t, fitOK(t, doctorsData(true)), "s")
	near(t, "coefficient", c.Estimate, 0.3545356373, 1e-9)
	near(t, "s.e.", c.SE, 0.107374118188672, 1e-10)
	near(t, "robust s.e.", c.RobustSE, 0.2301258428, 1e-9)
	c = coef(t, fitOK(t, doctorsData(false)), "s")
	near(t, "coefficient", c.Estimate, 0.5422211402, 1e-9)
	near(t, "robust s.e.", c.RobustSE, 0.2412738863, 1e-9)
}

// warpbreaks is R's data set of that name.
func warpbreaks() RegressionData {
	breaks := []int64{26, 30, 54, 25, 70, 52, 51, 26, 67, 18, 21, 29, 17, 12, 18, 35, 30, 36, 36, 21, 24, 18, 10, 43, 28, 15, 26,
		27, 14, 29, 19, 29, 31, 41, 20, 44, 42, 26, 19, 16, 39, 28, 21, 39, 29, 20, 21, 24, 17, 13, 15, 15, 16, 28}
	var wool, tension []string
	for i := range breaks {
		wool = append(wool, string("AB"[i/27]))
		tension = append(tension, string("LMH"[i/9%3]))
	}
	columns := append(Treatment("wool", wool, "A"), Treatment("tension", tension, "L")...)
	return RegressionData{Events: breaks, Effort: ones(len(breaks)), Columns: columns}
}

// glm(breaks ~ wool + tension, poisson), and quasipoisson.
func TestRegressionWarpbreaks(t *testing.T) {
	f := fitOK(t, warpbreaks())
	for name, want := range map[string][3]float64{
		Intercept:   {3.6919631450, 0.0454107943426, 0.0937435638999},
		"wool=B":    {-0.2059884426, 0.0515712427836, 0.1064608572317},
		"tension=M": {-0.3213204316, 0.0602659166952, 0.1244096672278},
		"tension=H": {-0.5184884965, 0.0639595193959, 0.1320345389304},
	} {
		c := coef(t, f, name)
		near(t, name, c.Estimate, want[0], 1e-9)
		near(t, name+" s.e.", c.SE, want[1], 1e-10)
		near(t, name+" quasi s.e.", c.QuasiSE, want[2], 1e-10)
		near(t, name+" robust s.e.", c.RobustSE, math.NaN(), 0)
	}
	near(t, "deviance", f.Deviance, 210.3918888, 1e-9)
	near(t, "dispersion", f.Phi, 4.261521884, 1e-9)
	if f.DF != 50 || len(f.Warnings) != 0 {
		t.Errorf("df %d, warnings %q", f.DF, f.Warnings)
	}
}

// readColumns reads a CSV file of testdata by column.
func readColumns(t *testing.T, file string) map[string][]string {
	t.Helper()
	in, err := os.Open("testdata/" + file)
	if err != nil {
		t.Fatal(err)
	}
	defer in.Close()
	rows, err := csv.NewReader(in).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	columns := map[string][]string{}
	for j, name := range rows[0] {
		for _, r := range rows[1:] {
			columns[name] = append(columns[name], r[j])
		}
	}
	return columns
}

func numbers(t *testing.T, text []string) []float64 {
	t.Helper()
	out := make([]float64, len(text))
	for i, s := range text {
		v, err := strconv.ParseFloat(s, 64)
		if err != nil {
			t.Fatal(err)
		}
		out[i] = v
	}
	return out
}

// eventsOf reads counts.
func eventsOf(t *testing.T, text []string) []int64 {
	t.Helper()
	out := make([]int64, len(text))
	for i, v := range numbers(t, text) {
		out[i] = int64(v)
	}
	return out
}

// MASS::ships, McCullagh and Nelder 1989 section 6.3.2; values by R 4.2.2 and
// statsmodels alike.
func TestRegressionShips(t *testing.T) {
	d := readColumns(t, "ships.csv")
	columns := Treatment("type", d["type"], "A")
	columns = append(columns, Treatment("year", d["year"], "60")...)
	columns = append(columns, Treatment("period", d["period"], "60")...)
	f := fitOK(t, RegressionData{Events: eventsOf(t, d["incidents"]), Effort: numbers(t, d["service"]), Columns: columns})
	for name, want := range map[string]float64{
		Intercept: -6.40590156105, "type=B": -0.54334430119, "type=C": -0.68740164716, "type=D": -0.07596142188,
		"type=E": 0.32557945622, "year=65": 0.69714042670, "year=70": 0.81842657720, "year=75": 0.45342663880,
		"period=75": 0.38446695821,
	} {
		near(t, name, coef(t, f, name).Estimate, want, 1e-8)
	}
	near(t, "s.e. intercept", coef(t, f, Intercept).SE, 0.217444106248, 1e-10)
	near(t, "s.e. period", coef(t, f, "period=75").SE, 0.118272162624, 1e-10)
	near(t, "deviance", f.Deviance, 38.6950515356, 1e-10)
	near(t, "X2", f.X2, 42.2752531143, 1e-8)
	near(t, "phi", f.Phi, 1.6910101246, 1e-8)
	near(t, "log likelihood", f.LogLik, -68.2807714296, 1e-10)
	if f.Rows != 34 || f.DF != 25 {
		t.Errorf("rows %d, df %d", f.Rows, f.DF)
	}
}

// MASS::Insurance with unordered factors, R 4.2.2.
func TestRegressionInsurance(t *testing.T) {
	d := readColumns(t, "insurance.csv")
	columns := Treatment("district", d["District"], "1")
	columns = append(columns, Treatment("group", d["Group"], "<1l")...)
	columns = append(columns, Treatment("age", d["Age"], "<25")...)
	f := fitOK(t, RegressionData{Events: eventsOf(t, d["Claims"]), Effort: numbers(t, d["Holders"]), Columns: columns})
	near(t, "intercept", coef(t, f, Intercept).Estimate, -1.82173991809, 1e-9)
	near(t, "district", coef(t, f, "district=4").Estimate, 0.23420532798, 1e-9)
	near(t, "group", coef(t, f, "group=>2l").Estimate, 0.56341234112, 1e-9)
	near(t, "age", coef(t, f, "age=>35").Estimate, -0.53667070639, 1e-9)
	near(t, "deviance", f.Deviance, 51.4200327491, 1e-9)
	near(t, "log likelihood", f.LogLik, -184.3707769992, 1e-10)
}

// tripBands is eight trips with three bands each.
func tripBands() (events []int64, hours []float64, band, trip []string) {
	events = []int64{0, 3, 1, 1, 6, 2, 0, 1, 0, 2, 9, 3, 0, 2, 1, 1, 4, 0, 3, 7, 2, 0, 1, 1}
	hours = []float64{4, 10, 6, 3, 12, 5.5, 6, 6, 2, 2.5, 9, 4, 5, 7, 3.5, 4, 8, 5, 6, 10, 4.5, 3, 5, 6}
	for i := range events {
		band = append(band, string("ABC"[i%3]))
		trip = append(trip, strconv.Itoa(i/3+1))
	}
	return events, hours, band, trip
}

// R 4.2.2 glm(x ~ band + trip, poisson, offset = log(h)), and the predictions
// with each band put on every row.
func TestRegressionTripsAndBands(t *testing.T) {
	events, hours, band, trip := tripBands()
	columns := append(Treatment("band", band, "A"), Treatment("trip", trip, "1")...)
	f := fitOK(t, RegressionData{Events: events, Effort: hours, Columns: columns, Clusters: trip})
	near(t, "B", coef(t, f, "band=B").Estimate, 0.691202341157, 1e-9)
	near(t, "B s.e.", coef(t, f, "band=B").SE, 0.420327540142, 1e-7)
	near(t, "C", coef(t, f, "band=C").Estimate, 0.188529428391, 1e-9)
	near(t, "C s.e.", coef(t, f, "band=C").SE, 0.496823150124, 1e-7)
	near(t, "deviance", f.Deviance, 7.84162480423, 1e-9)
	near(t, "log likelihood", f.LogLik, -28.02815887379, 1e-9)
	wantWarning(t, f.Warnings, WarnFewClusters, true)
	for level, want := range map[string]float64{"A": 0.232218119614, "B": 0.463533863102, "C": 0.280397020475} {
		set := map[string]float64{"band=B": 0, "band=C": 0}
		if level != "A" {
			set["band="+level] = 1
		}
		rate, iv, ok := f.StandardisedRate(set, ModelSE, .95)
		near(t, "standardised "+level, rate, want, 1e-9)
		if !ok || !iv.Contains(rate) || iv.Contains(0) {
			t.Errorf("%s: %v %v", level, iv, ok)
		}
	}
	r, ok := f.RateRatio("band=B", ModelSE, .95)
	near(t, "ratio", r.Ratio, math.Exp(0.691202341157), 1e-9)
	near(t, "p", r.P, 0.100085878236, 1e-6)
	near(t, "upper", r.Interval.Hi, math.Exp(0.691202341157+1.959963984540054*0.420327540142), 1e-7)
	if !ok || r.Method != MethodPoissonModel {
		t.Errorf("%+v", r)
	}
}

// A column that others add up to is left out, named, and changes nothing.
func TestRegressionAliased(t *testing.T) {
	d := doctorsData(true)
	plain := fitOK(t, d)
	sum := Column{"sum", make([]float64, 10)}
	for i := range sum.Values {
		sum.Values[i] = 3*d.Columns[0].Values[i] - 2*d.Columns[1].Values[i]
	}
	d.Columns = append(d.Columns, sum, Column{"zero", make([]float64, 10)})
	f := fitOK(t, d)
	near(t, "s", coef(t, f, "s").Estimate, coef(t, plain, "s").Estimate, 1e-12)
	c := coef(t, f, "sum")
	if c.Status != Aliased || !slices.Equal(c.With, []string{"s", "age=1"}) || !math.IsNaN(c.Estimate) {
		t.Errorf("%+v", c)
	}
	if c := coef(t, f, "zero"); c.Status != Aliased || len(c.With) != 0 {
		t.Errorf("%+v", c)
	}
	wantWarning(t, f.Warnings, WarnAliased, true)
	if f.DF != plain.DF {
		t.Errorf("df %d, want %d", f.DF, plain.DF)
	}
}

// Saturated by hand: two rows, two coefficients, ln 2 and ln(8/2 * 1/2).
func TestRegressionSaturatedByHand(t *testing.T) {
	d := RegressionData{Events: []int64{2, 8}, Effort: []float64{1, 2}, Columns: []Column{{"x", []float64{0, 1}}}, Clusters: []string{"a", "b"}}
	f := fitOK(t, d)
	near(t, "intercept", coef(t, f, Intercept).Estimate, math.Ln2, 1e-10)
	near(t, "x", coef(t, f, "x").Estimate, math.Ln2, 1e-10)
	near(t, "s.e.", coef(t, f, "x").SE, math.Sqrt(1./2+1./8), 1e-10)
	near(t, "phi", f.Phi, math.NaN(), 0)
	wantWarning(t, f.Warnings, WarnSaturated, true)
	for _, kind := range []SEKind{QuasiSE, RobustSE} {
		if r, ok := f.RateRatio("x", kind, .95); ok || r.Interval.Known() {
			t.Errorf("%v: %+v", kind, r)
		}
	}
}

func TestRegressionEdges(t *testing.T) {
	for name, d := range map[string]RegressionData{
		"no rows":   {},
		"no effort": {Events: []int64{1, 2}, Effort: []float64{0, math.NaN()}},
		"no events": {Events: []int64{0, 0}, Effort: []float64{2, 3}, Columns: []Column{{"x", []float64{1, 2}}}},
	} {
		f, err := PoissonRegression(d)
		if err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		if f.Converged || coef(t, f, Intercept).Status == Fitted {
			t.Errorf("%s: %+v", name, f)
		}
		if _, ok := f.RateRatio(Intercept, ModelSE, .95); ok {
			t.Errorf("%s: a ratio", name)
		}
		if _, _, ok := f.StandardisedRate(nil, ModelSE, .95); ok {
			t.Errorf("%s: a rate", name)
		}
	}
	one := fitOK(t, RegressionData{Events: []int64{7}, Effort: []float64{2}, Clusters: []string{"a"}})
	near(t, "one row", coef(t, one, Intercept).Estimate, math.Log(3.5), 1e-10)
	wantWarning(t, one.Warnings, WarnOneCluster, true)
	skip := fitOK(t, RegressionData{Events: []int64{7, 3}, Effort: []float64{2, 0}})
	if skip.NoEffort != 1 || skip.Rows != 1 {
		t.Errorf("%+v", skip)
	}
	if _, ok := skip.RateRatio("x", ModelSE, .95); ok {
		t.Error("a ratio of no such column")
	}
}

func TestRegressionMisfit(t *testing.T) {
	for want, d := range map[string]RegressionData{
		"efforts":        {Events: []int64{1}},
		"clusters":       {Events: []int64{1}, Effort: []float64{1}, Clusters: []string{}},
		"negative":       {Events: []int64{-1}, Effort: []float64{1}},
		"values of x":    {Events: []int64{1}, Effort: []float64{1}, Columns: []Column{{"x", nil}}},
		"x in row 0":     {Events: []int64{1}, Effort: []float64{1}, Columns: []Column{{"x", []float64{math.Inf(1)}}}},
		"y in row 1 is ": {Events: []int64{1, 1}, Effort: []float64{1, 1}, Columns: []Column{{"y", []float64{1, math.NaN()}}}},
	} {
		if _, err := PoissonRegression(d); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("error %v, want one with %q", err, want)
		}
	}
}

// 200 random fits against statsmodels (testdata/regression.py).
func TestRegressionRandom(t *testing.T) {
	var cases []struct {
		Trip, Band              []int
		Temp, Hours             []float64
		Y                       []int64
		Beta, SE, Quasi, Robust []float64
		Deviance, X2, LogLik    float64
	}
	loadOracle(t, "regression.json", &cases)
	wantCases(t, len(cases))
	for i, c := range cases {
		var band, trip []string
		for j := range c.Band {
			band, trip = append(band, strconv.Itoa(c.Band[j])), append(trip, strconv.Itoa(c.Trip[j]))
		}
		columns := append(Treatment("band", band, "0"), Column{"temp", c.Temp})
		f := fitOK(t, RegressionData{Events: c.Y, Effort: c.Hours, Columns: columns, Clusters: trip})
		near(t, caseName("deviance", i), f.Deviance, c.Deviance, oracleTol)
		near(t, caseName("X2", i), f.X2, c.X2, oracleTol)
		near(t, caseName("log likelihood", i), f.LogLik, c.LogLik, oracleTol)
		for j, got := range f.Coefficients {
			near(t, caseName(got.Name, i), got.Estimate, c.Beta[j], oracleTol)
			near(t, caseName(got.Name+" s.e.", i), got.SE, c.SE[j], oracleTol)
			near(t, caseName(got.Name+" quasi", i), got.QuasiSE, c.Quasi[j], oracleTol)
			near(t, caseName(got.Name+" robust", i), got.RobustSE, c.Robust[j], oracleTol)
		}
	}
}
