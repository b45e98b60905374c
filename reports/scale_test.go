package reports

import (
	"bytes"
	"fmt"
	"math"
	"strings"
	"testing"
	"time"

	"wakeledger/pipeline/estimate"
	"wakeledger/queries"
)

// scaleFish is a fish of a length and girth whose scale read ratio times the girth
// rule's inverse: the tape reads ratio of the scale.
func scaleFish(i int, cm, ratio float64) queries.ScaleFish {
	girth := 0.72 * cm
	tape := estimate.LengthGirthKG(cm, girth)
	f := queries.ScaleFish{
		Date: p(fmt.Sprintf("2026-%02d-11", 5+i%4)), Species: p("PBF"), Name: p("Pacific bluefin tuna"),
		LengthCM: p(cm), LengthKind: p("FL"), GirthCM: p(girth),
		ScaleKG: tape / ratio, RoundKG: p(tape / ratio), WeightState: p("round"),
		Scale: p("dock scale"), GirthKG: p(tape),
		LengthKG: p(1.7117e-5 * math.Pow(cm, 3.0382)), Relation: p("PBF-NWPAC"), File: "fish.csv", Row: int64(i + 2),
	}
	return f
}

// demoScale is an invented season of 12 fish on a scale: the tape reads 2 % light,
// give or take 3 %.
func demoScale() ScaleInput {
	in := ScaleInput{Title: "Tape and scale 2026", Boats: []string{"Grey Heron"}, Units: "metric",
		Generated: time.Date(2026, 11, 2, 18, 30, 0, 0, time.UTC)}
	for i, e := range []float64{0.98, 0.96, 1.00, 0.97, 0.99, 0.95, 0.98, 1.01, 0.97, 0.99, 0.98, 1.00} {
		in.Fish = append(in.Fish, scaleFish(i, 110+8*float64(i), e))
	}
	var pairs []estimate.Pair
	for _, f := range in.Fish {
		pairs = append(pairs, estimate.Pair{Species: "PBF", LengthCM: *f.LengthCM, GirthCM: *f.GirthCM,
			ScaleKG: *f.RoundKG, LengthKind: "FL"})
	}
	for i, w := range estimate.PredictEach(pairs) {
		in.Fish[i].OwnKG = p(w)
	}
	in.Checks, in.Own = queries.CheckScale(in.Fish), estimate.FitOwn(pairs)
	return in
}

func writtenScale(t *testing.T, in ScaleInput) string {
	t.Helper()
	var buf bytes.Buffer
	if err := Scale(&buf, in); err != nil {
		t.Fatal(err)
	}
	return buf.String()
}

func TestScaleReport(t *testing.T) {
	html := writtenScale(t, demoScale())
	if html != writtenScale(t, demoScale()) {
		t.Error("two reports of one season differ")
	}
	last := -1
	for _, id := range []string{"verdict", "differences", "own", "misses", "condition", "fish",
		"methods-compared", "methods"} {
		at := strings.Index(html, `<section id="`+id+`"`)
		if at <= last {
			t.Errorf("section %s is missing or out of order", id)
		}
		last = at
	}
	if got := strings.Count(html, `class="chart"`); got != 2 {
		t.Errorf("%d charts, want 2", got)
	}
	// Geometric mean of the ratios: exp(mean ln) = 0.98152, t interval on 11 degrees of
	// freedom 0.97045 to 0.99272, computed apart with R 4.2.2.
	for _, want := range []string{"Your tape, by the girth rule, has read 1.8 % light (0.7 to 3.0) on 12 fish",
		"rule of thumb", "estimate", "12 compared with the tape"} {
		if !strings.Contains(html, want) {
			t.Errorf("%q is not in the report", want)
		}
	}
}

func TestVerdictWords(t *testing.T) {
	r := &scaleReport{units: unitSets["metric"]}
	ratio := func(v, lo, hi float64) queries.ScaleCheck {
		return queries.ScaleCheck{N: 17, Ratio: &v, RatioLo: &lo, RatioHi: &hi, MedianAbsKG: p(3.0)}
	}
	for _, tt := range []struct {
		c    queries.ScaleCheck
		want string
	}{
		{ratio(0.979, 0.968, 0.990), "Your tape has read 2.1 % light (1.0 to 3.2) on 17 fish; half of the fish " +
			"within 3.0 kg."},
		{ratio(1.05, 1.02, 1.08),
			"Your tape has read 5.0 % heavy (2.0 to 8.0) on 17 fish; half of the fish within 3.0 kg."},
		{ratio(0.99, 0.97, 1.01), "matches the scale on average: 1.0 % light on 17 fish (3.0 % light to 1.0 % heavy)"},
		{queries.ScaleCheck{N: 1, Ratio: p(0.9), MedianAbsKG: p(1.0)}, "has read 10.0 % light on one fish."},
		{queries.ScaleCheck{}, "was compared with a scale on 0 fish: too few"},
	} {
		if got := r.verdict(tt.c, "Your tape"); !strings.Contains(got, tt.want) {
			t.Errorf("%q, want %q in it", got, tt.want)
		}
	}
}

// TestExplain: a unit slip, a girth out of line, an odd condition, a length outside
// the relation's range, a curved tape and a converted weight are each named.
func TestExplain(t *testing.T) {
	in := demoScale()
	r := &scaleReport{ScaleInput: in, units: unitSets["metric"], used: in.Fish}
	c := r.tape()
	base := in.Fish[6]
	change := func(by func(*queries.ScaleFish)) string {
		f := base
		f.Row = 99
		by(&f)
		return r.explain(f, c)
	}
	for _, tt := range []struct{ got, want string }{
		{change(func(f *queries.ScaleFish) {}), "an ordinary miss"},
		{change(func(f *queries.ScaleFish) { f.RoundKG = p(*f.RoundKG / 0.45359237) }),
			"a likely unit slip: the scale weight looks like lb entered as kg"},
		{change(func(f *queries.ScaleFish) { f.RoundKG = p(*f.RoundKG * 0.45359237) }),
			"the scale weight looks like kg entered as lb"},
		{change(func(f *queries.ScaleFish) { f.GirthCM = p(*f.GirthCM * 0.85); f.GirthKG = p(*f.GirthKG * 0.7225) }),
			"the girth is 0.61 of the length where the others of its kind are at 0.72"},
		{change(func(f *queries.ScaleFish) { f.LengthKG = p(*f.RoundKG * 1.3) }),
			"an odd condition: on the scale it is 77 %"},
		{change(func(f *queries.ScaleFish) { f.RelationHiCM = p(100.0) }),
			"outside the lengths of the fish studied for PBF-NWPAC"},
		{change(func(f *queries.ScaleFish) { f.LengthKind = p("CFL") }), "some 4 % heavy"},
		{change(func(f *queries.ScaleFish) { f.WeightState = nil }), "whole on the scale is not logged"},
		{change(func(f *queries.ScaleFish) { f.WeightState = p("gutted") }), "converted from gutted"},
	} {
		if !strings.Contains(tt.got, tt.want) {
			t.Errorf("%q, want %q in it", tt.got, tt.want)
		}
	}
}

// TestWorst: the five largest by per cent, either way, ranked.
func TestWorst(t *testing.T) {
	in := demoScale()
	r := &scaleReport{ScaleInput: in, units: unitSets["metric"], used: in.Fish}
	got := r.worst(queries.ByGirth)
	if len(got) != 5 || got[5] != 1 || got[1] != 2 {
		t.Errorf("%v", got)
	}
}

func TestScaleReportEdges(t *testing.T) {
	empty := writtenScale(t, ScaleInput{Title: "nothing", Units: "us"})
	for _, want := range []string{"No fish of this season has both a tape and a scale", "Five fish of a species"} {
		if !strings.Contains(empty, want) {
			t.Errorf("%q is not in an empty report", want)
		}
	}
	if err := Scale(&bytes.Buffer{}, ScaleInput{Units: "stone"}); err == nil {
		t.Error("units that do not exist were taken")
	}
	if err := Scale(failing{}, demoScale()); err == nil {
		t.Error("a failing writer went unnoticed")
	}
	one := ScaleInput{Units: "us", Fish: demoScale().Fish[:1]}
	one.Fish[0].OwnKG = nil
	one.Checks = queries.CheckScale(one.Fish)
	if html := writtenScale(t, one); !strings.Contains(html, "% light on one fish") {
		t.Error("one fish is not said to be one")
	}
	left := ScaleInput{Units: "metric", Fish: []queries.ScaleFish{{ScaleKG: 20, WeightState: p("bled"),
		LeftOut: p("the fish was not whole")}}}
	if html := writtenScale(t, left); !strings.Contains(html, "1 fish was left out: the fish was not whole") {
		t.Error("the fish left out are not said")
	}
}

func TestScaleReportEscapes(t *testing.T) {
	bad := `</script><script>alert(1)</script>"'`
	in := demoScale()
	in.Title, in.Boats = bad, []string{bad}
	f := &in.Fish[0]
	f.Name, f.LengthKind, f.WeightState, f.Relation, f.File, f.LeftOut = &bad, &bad, &bad, &bad, bad, &bad
	in.Fish[1].Name, in.Fish[1].Date = &bad, &bad
	if html := writtenScale(t, in); strings.Contains(html, "<script>alert") || strings.Contains(html, bad) {
		t.Error("text from a log is in the page unescaped")
	}
}

func TestScaleReportUnits(t *testing.T) {
	in := demoScale()
	in.Units = "us"
	html := writtenScale(t, in)
	if !strings.Contains(html, "round weight on the scale, lb") ||
		strings.Contains(html, "half of the fish within 1.5 kg") {
		t.Error("not in pounds")
	}
}
