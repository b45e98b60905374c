package estimate

import (
	"encoding/csv"
	"math"
	"os"
	"strconv"
	"strings"
	"testing"
)

func near(got, want, relative float64) bool { return math.Abs(got-want) <= relative*math.Abs(want) }

// TestPublishedValues compares the relations with values of other origin; each
// row of testdata/checks.csv names its source. Rows of agency model output hold to
// its printed digits, weighed fish (of record size, so heavier than average) to
// 30 %. Rows with coefficients of their own check the arithmetic only: that
// relation is not in the catalogue.
func TestPublishedValues(t *testing.T) {
	c := mustDefault(t)
	byID := map[string]Relation{}
	for _, r := range c.Relations() {
		byID[r.ID] = r
	}
	published, species := 0, map[string]bool{}
	for i, row := range readChecks(t) {
		line := i + 2
		r, ok := byID[row["relation"]]
		if row["relation"] == "" {
			r = Relation{ID: "SWO", Species: "SWO", A: number(t, row["a"]), B: number(t, row["b"]),
				LengthKind: LowerJaw, WeightState: Round}
		} else if !ok {
			t.Fatalf("checks.csv row %d: no relation %q", line, row["relation"])
		}
		f := Fish{Species: r.Species, LengthCM: number(t, row["length_cm"]), LengthKind: row["length_kind"]}
		e, reason := c.byRelation(f, r)
		if reason != "" {
			t.Fatalf("checks.csv row %d: %s: %s", line, r.ID, reason)
		}
		if want, tol := number(t, row["weight_kg"]), number(t, row["tolerance"]); !near(e.WeightKG, want, tol) {
			t.Errorf("checks.csv row %d: %s at %g cm gives %.6g kg, want %g within %g (%s)", line, r.ID, f.LengthCM,
				e.WeightKG, want, tol, row["source"])
		}
		if !strings.Contains(row["source"], "arithmetic") && !strings.Contains(row["source"], "computed") {
			published++
			species[r.Species] = true
		}
	}
	if published < 40 || len(species) < 12 {
		t.Errorf("%d published values over %d species, want 40 over 12", published, len(species))
	}
}

func readChecks(t *testing.T) []map[string]string {
	t.Helper()
	f, err := os.Open("testdata/checks.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	var out []map[string]string
	for _, rec := range rows[1:] {
		m := map[string]string{}
		for i, column := range rows[0] {
			m[column] = rec[i]
		}
		if m["source"] == "" {
			t.Fatalf("a check without a source: %v", rec)
		}
		out = append(out, m)
	}
	return out
}

func number(t *testing.T, s string) float64 {
	t.Helper()
	v, err := strconv.ParseFloat(s, 64)
	if err != nil {
		t.Fatal(err)
	}
	return v
}

// TestPublishedFactors: ICCAT SCRS factors of 2006 for bluefin (in the French
// orders of 2010 and 2014), the IOTC's for yellowfin, Hsu et al. 2000 for Pacific
// bluefin: 100 kg in the state gives the round weight beside it.
func TestPublishedFactors(t *testing.T) {
	c := mustDefault(t)
	tests := []struct {
		species, ocean, state string
		want                  float64
	}{
		{"BFT", "", "gilled-gutted", 116}, {"BFT", "north atlantic", "G&G", 116},
		{"BFT", "mediterranean", "gilled and gutted", 113},
		{"BFT", "mediterranean", "dressed", 125}, {"YFT", "pacific", "gilled-gutted", 113},
		{"PBF", "pacific", "gutted", 111.2},
		{"SBF", "", "gilled-gutted", 115}, {"SWO", "", "gilled-gutted", 114}, {"BFT", "", "whole", 100},
	}
	for _, tt := range tests {
		es := c.Weigh(Fish{Species: tt.species, Ocean: tt.ocean, ScaleKG: 100, WeightState: tt.state}, nil)
		if len(es) != 1 || !near(es[0].WeightKG, tt.want, 1e-12) {
			t.Errorf("100 kg %s %s %s: %+v, want %g kg", tt.species, tt.ocean, tt.state, es, tt.want)
		}
	}
}

// TestPublishedConversions works the printed formulae by hand.
func TestPublishedConversions(t *testing.T) {
	c := mustDefault(t)
	tests := []struct {
		species, from, to string
		cm, want          float64
	}{
		{"SWO", "EFL", "LJFL", 150, 8.00884 + 1.07064*150}, // NOAA, in IOTC-2014-WPB12-DATA: 168.605
		{"SWO", "LJFL", "EFL", 168.60484, 150},             // the same, solved back
		{"BUM", "LJFL", "EFL", 300, 0.9039*300 - 7.248},    // IOTC: 263.922
		{"BLM", "LJFL", "EFL", 300, 264.4927},              // IOTC: 0.8972 x 300 - 4.6673
		{"SFA", "LJFL", "EFL", 200, 173.1975},              // mean of two: 0.8845 x 200 - 3.7025
		{"YFT", "CFL", "FL", 120, 120},                     // IOTC: the same
		{"BET", "TL", "FL", 100, 89.3506},                  // 0.95648 x 100 - 6.2974
		{"SMA", "TL", "FL", 200, 0.9286*200 - 1.7101},      // Kohler et al. 1996: 184.0099
		{"SMA", "total length", "fork length", 100, 91.1499},
		{"SMA", "PCL", "FL", 100, 110.766},
		{"WAH", "TL", "FL", 152.4, (152.4 - 2.452) / 1.016}, {"DOL", "TL", "FL", 100, 82.3},
		{"KGM", "FL", "TL", 100, 113.9}, {"AMB", "TL", "FL", 100, 86.227},
		{"SMA", "CFL", "FL", 200, 192.627},                       // 0.968 x 200 - 0.973
		{"ALB", "PCKL", "FL", 60, (60 + 0.6174) / 0.7016},        // IOTC: 86.399
		{"KGM", "FL", "LJFL", 100, 100},                          // the same straight length
		{"SFA", "EFL", "FL", 173.1975, 200},                      // a billfish's fork length is from the lower jaw
		{"YFT", "pectoral to keel", "FL", 100, 132.843},          // 1.2211 x 100 + 10.733
		{"BFT", "PFCFL", "CFL", 20 * 2.54, 27 * 2.54},            // 50 CFR 635.20(b): 20 in is 27 in
		{"SWO", "TL", "TL", 100, 100}, {"SBF", "", "FL", 90, 90}, // nothing to do
	}
	for _, tt := range tests {
		m, ok := c.toKind(Fish{Species: tt.species, LengthCM: tt.cm, LengthKind: tt.from}, lengthKind(tt.to))
		if !ok || !near(m.cm, tt.want, 1e-9) {
			t.Errorf("%s %s %g cm to %s: %.6f %v, want %.6f", tt.species, tt.from, tt.cm, tt.to, m.cm, ok, tt.want)
		}
	}
	for _, tt := range []struct{ species, from, to string }{{"PBF", "CFL", "FL"}, {"BFT", "CFL", "FL"},
		{"BFT", "PFCFL", "FL"}, {"MLS", "LJFL", "EFL"}, {"ZZZ", "TL", "FL"},
		{"ALB", "PCL", "FL"}, {"BET", "PCL", "FL"}, {"YFT", "PCL", "FL"}, // a pre-caudal length is not the IOTC's PCL
		{"YFT", "dorsal", "FL"}} {
		if m, ok := c.toKind(Fish{Species: tt.species, LengthCM: 100, LengthKind: tt.from}, tt.to); ok {
			t.Errorf("%s %s to %s: %+v, but no conversion is published", tt.species, tt.from, tt.to, m)
		}
	}
}

// TestPowerConversion: y = 2.0759 x^1.1513, the IOTC's yellowfin form, there and back.
func TestPowerConversion(t *testing.T) {
	v := Conversion{Form: "power", C: 2.0759, M: 1.1513}
	y, ok := v.forward(30)
	if want := 2.0759 * math.Exp(1.1513*math.Log(30)); !ok || !near(y, want, 1e-12) {
		t.Errorf("forward %g %v, want %g", y, ok, want)
	}
	if x, ok := v.inverse(y); !ok || !near(x, 30, 1e-12) {
		t.Errorf("inverse %g %v, want 30", x, ok)
	}
	if _, ok := (Conversion{Form: "linear", C: -20, M: 1}).forward(10); ok {
		t.Error("a negative length was given out")
	}
}

// TestGirthRule: L G^2 / 800 in pounds and inches, by hand.
// 59 x 38: 59 x 1444 / 800 = 106.495 lb; 29 x 15: 6525 / 800 = 8.15625 lb;
// 83 x 42: 146412 / 800 = 183.015 lb (the length and girth of a row of the chart
// printed with Ault and Luo 2013); 74 x 55: 223850 / 800 = 279.8125 lb.
func TestGirthRule(t *testing.T) {
	for _, tt := range []struct{ l, g, lb float64 }{{59, 38, 106.495}, {29, 15, 8.15625}, {83, 42, 183.015},
		{74, 55, 279.8125}, {60, 40, 120}} {
		if got := LengthGirthKG(tt.l*2.54, tt.g*2.54) / 0.45359237; !near(got, tt.lb, 1e-12) {
			t.Errorf("%g x %g in: %.6f lb, want %g", tt.l, tt.g, got, tt.lb)
		}
	}
	// 800 x 2.54^3 / 0.45359237 = 28901.83360007 (exact factors).
	if got := 100 * 100 * 100 / LengthGirthKG(100, 100); !near(got, 28901.83360007, 1e-12) {
		t.Errorf("divisor %.8f", got)
	}
	nan, inf := math.NaN(), math.Inf(1)
	for _, p := range [][2]float64{{0, 50}, {50, 0}, {-1, 50}, {50, -1}, {nan, 50},
		{50, nan}, {inf, 50}, {1e200, 1e200}} {
		if got := LengthGirthKG(p[0], p[1]); got != 0 {
			t.Errorf("LengthGirthKG(%g, %g) = %g, want 0", p[0], p[1], got)
		}
	}
}
