package estimate

import (
	"math"
	"slices"
	"strings"
	"testing"
)

func hasNote(e Estimate, part string) bool {
	return slices.ContainsFunc(e.Notes, func(n string) bool { return strings.Contains(n, part) })
}

func methods(es []Estimate) string {
	var out []string
	for _, e := range es {
		name := e.Method
		if e.Relation != "" {
			name += " " + e.Relation
		}
		out = append(out, name)
	}
	return strings.Join(out, ", ")
}

func TestOrderOfMethods(t *testing.T) {
	c := mustDefault(t)
	own := FitOwn(pairs("PBF", 50, 51, 52, 53, 54))
	f := Fish{Species: "PBF", Ocean: "pacific", LengthCM: 188, LengthKind: "FL", GirthCM: 140,
		ScaleKG: 127, WeightState: "round"}
	const tail = ", own coefficient, length and girth, length PBF-NWPAC, length PBF-TAIWAN"
	if got := methods(c.Weigh(f, own)); got != "dock scale"+tail {
		t.Error(got)
	}
	f.Certified = true
	if got := methods(c.Weigh(f, own)); got != "certified scale"+tail {
		t.Error(got)
	}
	f.ScaleKG, f.GirthCM = 0, 0
	if got := methods(c.Weigh(f, own)); got != "length PBF-NWPAC, length PBF-TAIWAN" {
		t.Error(got)
	}
}

// TestTapeOnly is the case of a released fish, 74 in by 55 in, ocean not set:
// 279.8125 lb by the rule; 1.7117e-5 x 187.96^3.0382 kg by Kai 2007.
func TestTapeOnly(t *testing.T) {
	es := mustDefault(t).Weigh(Fish{Species: "pbf", LengthCM: 74 * 2.54, GirthCM: 55 * 2.54}, nil)
	if got := methods(es); got != "length and girth, length PBF-NWPAC, length PBF-TAIWAN" {
		t.Fatal(got)
	}
	want := []float64{279.8125 * 0.45359237, 1.7117e-5 * math.Pow(187.96, 3.0382),
		1.112 * 2.3058e-5 * math.Pow(187.96, 2.9342)}
	for i, e := range es {
		if !near(e.WeightKG, want[i], 1e-9) || e.HasInterval || e.LoKG != 0 || e.HiKG != 0 || e.Source == "" {
			t.Errorf("%+v, want %g kg without an interval", e, want[i])
		}
		if !hasNote(e, "No interval") || !hasNote(e, "length kind is not logged") {
			t.Errorf("%s %s: %q", e.Method, e.Relation, e.Notes)
		}
	}
	if !strings.Contains(es[1].Source, "Kai 2007") {
		t.Error(es[1].Source)
	}
}

func TestNothingFromNothing(t *testing.T) {
	c := mustDefault(t)
	own := FitOwn(pairs("PBF", 50, 51, 52, 53, 54))
	nan, inf := math.NaN(), math.Inf(1)
	for _, v := range []float64{0, -3, nan, inf, -inf} {
		f := Fish{Species: "PBF", LengthCM: v, GirthCM: v, ScaleKG: v}
		if es := c.Weigh(f, own); len(es) != 0 {
			t.Errorf("measures of %g gave %s", v, methods(es))
		}
	}
	if es := c.Weigh(Fish{Species: "PBF", GirthCM: 100}, own); len(es) != 0 {
		t.Errorf("girth alone gave %s", methods(es))
	}
	for _, e := range c.Weigh(Fish{Species: "PBF", LengthCM: 1e300, GirthCM: 1e300}, own) {
		if math.IsInf(e.WeightKG, 0) || math.IsNaN(e.WeightKG) {
			t.Errorf("%+v", e)
		}
	}
}

func TestSpeciesNotSettled(t *testing.T) {
	es := mustDefault(t).Weigh(Fish{LengthCM: 188, GirthCM: 140, ScaleKG: 120}, nil)
	if got := methods(es); got != "dock scale, length and girth" {
		t.Error(got)
	}
	c := mustDefault(t)
	if why := c.Unused(Fish{Species: "GBA", LengthCM: 100}, nil); len(why) != 1 ||
		!strings.Contains(why[0], "No published relation of length and weight for GBA") {
		t.Error(why)
	}
}

// TestWeightStates: without a published factor a scale gives no round weight, and
// that is said; a factor for gilled and gutted fish serves a gutted one, and that
// is said too.
func TestWeightStates(t *testing.T) {
	c := mustDefault(t)
	f := Fish{Species: "PBF", LengthCM: 150, LengthKind: "FL", ScaleKG: 60, WeightState: "dressed"}
	es := c.Weigh(f, nil)
	if es[0].Method != LengthAlone || !hasNote(es[0], "no published factor turns that into round weight") {
		t.Errorf("%+v", es[0])
	}
	if es := c.Weigh(Fish{Species: "YFT", ScaleKG: 60, WeightState: "filleted"}, nil); len(es) != 0 {
		t.Errorf("filleted gave %s", methods(es))
	}
	bled := c.Weigh(Fish{Species: "YFT", ScaleKG: 60, WeightState: "bled"}, nil)
	if len(bled) != 1 || bled[0].WeightKG != 60 || !hasNote(bled[0], "stands as read, a little low") ||
		hasNote(bled[0], "factor is an average") {
		t.Errorf("%+v", bled)
	}
	gutted := c.Weigh(Fish{Species: "YFT", ScaleKG: 100, WeightState: "gutted", Certified: true}, nil)
	if len(gutted) != 1 || !near(gutted[0].WeightKG, 113, 1e-12) ||
		!hasNote(gutted[0], "gills were left in") || gutted[0].HasInterval {
		t.Errorf("%+v", gutted)
	}
	blank := c.Weigh(Fish{Species: "YFT", ScaleKG: 100}, nil)
	if blank[0].WeightKG != 100 || !hasNote(blank[0], "taken as whole") {
		t.Errorf("%+v", blank)
	}
}

func TestPairOf(t *testing.T) {
	c := mustDefault(t)
	p, ok := c.PairOf(Fish{Species: "bft", LengthCM: 200, LengthKind: "CFL", GirthCM: 150, ScaleKG: 100,
		WeightState: "gilled-gutted"})
	if !ok || p.Species != "BFT" || !near(p.ScaleKG, 116, 1e-12) || p.LengthKind != "CFL" || p.GirthCM != 150 {
		t.Errorf("%+v %v", p, ok)
	}
	if p, ok := c.PairOf(Fish{Species: "BFT", LengthCM: 200, GirthCM: 150, ScaleKG: 90, WeightState: "bled"}); !ok ||
		p.ScaleKG != 90 {
		t.Errorf("bled: %+v %v", p, ok)
	}
	for _, f := range []Fish{{}, {Species: "BFT", LengthCM: 200, GirthCM: 150},
		{Species: "BFT", LengthCM: 200, GirthCM: 150, ScaleKG: 90, WeightState: "filleted"},
		{LengthCM: 200, GirthCM: 150, ScaleKG: 90}} {
		if p, ok := c.PairOf(f); ok {
			t.Errorf("%+v gave %+v", f, p)
		}
	}
}

func TestGirthNotes(t *testing.T) {
	c := mustDefault(t)
	thin := c.Weigh(Fish{LengthCM: 200, LengthKind: "FL", GirthCM: 50}, nil)
	if !hasNote(thin[0], "check both tapes") {
		t.Errorf("%q", thin[0].Notes)
	}
	curved := c.Weigh(Fish{Species: "PBF", LengthCM: 200, LengthKind: "CFL", GirthCM: 140}, nil)
	if curved[0].Method != LengthAndGirth || !near(curved[0].WeightKG, LengthGirthKG(200, 140), 1e-12) ||
		!hasNote(curved[0], "followed the body") {
		t.Errorf("%+v", curved[0])
	}
	total := c.Weigh(Fish{Species: "SMA", LengthCM: 200, LengthKind: "TL", GirthCM: 140}, nil)
	if !near(total[0].WeightKG, LengthGirthKG(184.0099, 140), 1e-9) ||
		!hasNote(total[0], "Total length 200 cm was converted to straight fork length 184 cm (Kohler") {
		t.Errorf("%+v", total[0])
	}
	if es := c.Weigh(Fish{Species: "PBF", LengthCM: 215, LengthKind: "TL", GirthCM: 140}, nil); len(es) != 0 {
		t.Errorf("no conversion is published, yet %s", methods(es))
	}
	if why := c.Unused(Fish{Species: "PBF", LengthCM: 215, LengthKind: "TL", GirthCM: 140}, nil); len(why) != 2 {
		t.Errorf("%q", why)
	}
}

func TestOwnOutsideItsRange(t *testing.T) {
	own := FitOwn(pairs("PBF", 50, 51, 52, 53, 54))
	es := mustDefault(t).Weigh(Fish{Species: "PBF", LengthCM: 150, GirthCM: 110}, own)
	if es[0].Method != OwnCoefficient || !hasNote(es[0], "150 cm is outside the lengths of the boat's own fish (100 "+
		"cm to 100 cm)") {
		t.Errorf("%+v", es[0])
	}
}
