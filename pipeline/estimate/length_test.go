package estimate

import (
	"strings"
	"testing"
)

func TestChoiceByOcean(t *testing.T) {
	c := mustDefault(t)
	tests := []struct{ species, ocean, stock, kind, want string }{
		{"YFT", "", "", "FL", "YFT-WCPO"}, {"YFT", "pacific", "", "FL", "YFT-WCPO"},
		{"YFT", "Eastern Pacific Ocean", "", "FL", "YFT-WCPO"},
		{"YFT", "north atlantic", "", "FL", "YFT-ATL"}, {"YFT", "indian", "", "FL", "YFT-IND"},
		{"YFT", "", "yft-ind", "FL", "YFT-IND"},
		{"YFT", "pacific", "the Atlantic", "FL", "YFT-ATL"}, {"YFT", "", "YFT-EPO", "FL", "YFT-WCPO"},
		{"ALB", "south-pacific", "", "FL", "ALB-SPAC"}, {"ALB", "eastern pacific", "", "FL", "ALB-NPAC-Q3"},
		{"ALB", "pacific", "", "FL", "ALB-NPAC-Q3"},
		{"ALB", "mediterranean", "", "FL", "ALB-MED"}, {"ALB", "atlantic", "", "FL", "ALB-NATL"},
		{"MLS", "eastern pacific", "", "LJFL", "MLS-BAJA"}, {"MLS", "south pacific", "", "LJFL", "MLS-NZ"},
		{"MLS", "north pacific", "", "EFL", "MLS-TAIWAN"},
		{"MLS", "north pacific", "", "LJFL", "MLS-NZ"}, {"BFT", "mediterranean", "", "SFL", "BFT-EAST"},
		{"BFT", "western atlantic", "", "SFL", "BFT-WEST"},
		{"BFT", "north atlantic", "", "SFL", "BFT-EAST"}, {"ALB", "western atlantic", "", "FL", "ALB-NATL"},
		{"WAH", "", "", "TL", "WAH-BRAZIL"},
		{"SWO", "atlantic", "", "LJFL", "SWO-ATL"}, {"SWO", "pacific", "", "LJFL", "SWO-NPAC"},
		{"BUM", "atlantic", "", "LJFL", "BUM-ATL-F"},
	}
	for _, tt := range tests {
		es := c.Weigh(Fish{Species: tt.species, Ocean: tt.ocean, Stock: tt.stock, LengthCM: 100, LengthKind: tt.kind},
			nil)
		if len(es) == 0 || es[0].Relation != tt.want {
			t.Errorf("%s in %q, stock %q, %s: %s, want %s first", tt.species, tt.ocean, tt.stock,
				tt.kind, methods(es), tt.want)
		}
	}
}

func TestChoiceNotes(t *testing.T) {
	c := mustDefault(t)
	if es := c.Weigh(Fish{Species: "YFT", LengthCM: 100, LengthKind: "FL"}, nil); !hasNote(es[0], "No ocean is named") {
		t.Errorf("%q", es[0].Notes)
	}
	if es := c.Weigh(Fish{Species: "DOL", Ocean: "north atlantic", LengthCM: 100, LengthKind: "FL"},
		nil); !hasNote(es[0], "No relation for the North Atlantic") {
		t.Errorf("%q", es[0].Notes)
	}
	if es := c.Weigh(Fish{Species: "PBF", Ocean: "pacific", LengthCM: 100, LengthKind: "FL"},
		nil); hasNote(es[0], "ocean") {
		t.Errorf("%q", es[0].Notes)
	}
}

// TestNoConversionIsSaid: a curved length of Atlantic bluefin has no published
// conversion, so no relation is used and the reason is said once.
func TestNoConversionIsSaid(t *testing.T) {
	c := mustDefault(t)
	f := Fish{Species: "BFT", LengthCM: 200, LengthKind: "CFL", GirthCM: 150}
	es := c.Weigh(f, nil)
	if methods(es) != LengthAndGirth || !hasNote(es[0], "BFT-EAST, ") ||
		!hasNote(es[0], "no published conversion from curved fork length") {
		t.Errorf("%+v", es)
	}
	f.GirthCM = 0
	if es := c.Weigh(f, nil); len(es) != 0 {
		t.Errorf("%+v", es)
	}
	if why := c.Unused(f, nil); len(why) != 1 {
		t.Errorf("%q", why)
	}
}

// TestUnusedWithoutKind: the reason names the kind that an unlogged length was
// taken as.
func TestUnusedWithoutKind(t *testing.T) {
	why := mustDefault(t).Unused(Fish{Species: "BON", LengthCM: 40}, nil)
	if len(why) != 1 || !strings.Contains(why[0], "BON-BLACKSEA, because it takes total length, and no published "+
		"conversion from straight fork length") {
		t.Errorf("%q", why)
	}
}

// TestOneSexAlone: a relation of one sex answers for no fish by itself, unless its stock
// is named.
func TestOneSexAlone(t *testing.T) {
	c := &Catalogue{relations: []Relation{{ID: "ZZZ-M", Species: "ZZZ", Sex: "male", Stock: "males",
		Ocean: "pacific", A: 1e-5, B: 3,
		LengthKind: ForkLength, WeightState: Round, Citation: "a study", Seen: SeenSource}}}
	f := Fish{Species: "ZZZ", LengthCM: 100, LengthKind: "FL"}
	if es := c.Weigh(f, nil); len(es) != 0 {
		t.Errorf("%+v", es)
	}
	if why := c.Unused(f, nil); len(why) != 1 || !strings.Contains(why[0], "(ZZZ-M)") {
		t.Errorf("%q", why)
	}
	f.Stock = "ZZZ-M"
	if es := c.Weigh(f, nil); methods(es) != "length ZZZ-M" {
		t.Errorf("%+v", es)
	}
}

func TestConversionIsNoted(t *testing.T) {
	es := mustDefault(t).Weigh(Fish{Species: "BUM", Ocean: "pacific", LengthCM: 300, LengthKind: "short"}, nil)
	if es[0].Relation != "BUM-IP" || !hasNote(es[0], "Lower-jaw fork length 300 cm was converted to eye-fork length "+
		"264 cm (IOTC") {
		t.Errorf("%+v", es[0])
	}
	back := mustDefault(t).Weigh(Fish{Species: "SWO", Ocean: "north pacific", LengthCM: 168.60484, LengthKind: "LJFL"},
		nil)
	if !hasNote(back[0], "solved the other way round") {
		t.Errorf("%q", back[0].Notes)
	}
}

// TestUnloggedKindOfBillfish: a marlin's length of no logged kind is taken from
// the lower jaw, not from the eye, which would weigh it half as much again.
func TestUnloggedKindOfBillfish(t *testing.T) {
	c := mustDefault(t)
	logged := c.Weigh(Fish{Species: "BUM", LengthCM: 300, LengthKind: "LJFL"}, nil)
	blank := c.Weigh(Fish{Species: "BUM", LengthCM: 300}, nil)
	if logged[0].WeightKG != blank[0].WeightKG || !hasNote(blank[0], "taken as lower-jaw fork length") {
		t.Errorf("%+v\n%+v", logged[0], blank[0])
	}
}

func TestRangeIsNoted(t *testing.T) {
	c := mustDefault(t)
	for _, tt := range []struct {
		cm   float64
		want bool
	}{{155, true}, {156, false}, {263, false}, {264, true}} {
		es := c.Weigh(Fish{Species: "MLS", Ocean: "eastern pacific", LengthCM: tt.cm, LengthKind: "LJFL"}, nil)
		if got := hasNote(es[0], "outside the lengths of the fish studied (156 cm to 263 cm)"); got != tt.want {
			t.Errorf("%g cm: noted %v", tt.cm, got)
		}
	}
	if got := outside(120, 130, 0, "fish"); got == nil || got.Words(cm) != "from 130 cm" {
		t.Error(got)
	}
	if got := outside(140, 0, 130, "fish"); got == nil || got.Words(cm) != "up to 130 cm" {
		t.Error(got)
	}
	if got := outside(130, 130, 0, "fish"); got != nil {
		t.Error(got)
	}
}

// TestMemoryComesLast: coefficients from memory stand last and say so, and a
// species that has no others gets no weight from length.
func TestMemoryComesLast(t *testing.T) {
	c := mustDefault(t)
	es := c.Weigh(Fish{Species: "YFT", Ocean: "eastern pacific", LengthCM: 120, LengthKind: "FL"}, nil)
	if last := es[len(es)-1]; last.Relation != "YFT-EPO" || !hasNote(last, "from memory and were not checked") {
		t.Error(methods(es))
	}
	for _, sp := range []string{"WHM"} {
		if es := c.Weigh(Fish{Species: sp, LengthCM: 120}, nil); len(es) != 0 {
			t.Errorf("%s: %s", sp, methods(es))
		}
		if why := c.Unused(Fish{Species: sp, LengthCM: 120}, nil); len(why) != 1 ||
			!strings.Contains(why[0], "from memory") {
			t.Errorf("%s: %q", sp, why)
		}
	}
}

// TestResidualSpread: a relation with a published spread carries an interval.
func TestResidualSpread(t *testing.T) {
	c, err := load(t, goodRelation, "")
	if err != nil {
		t.Fatal(err)
	}
	es := c.Weigh(Fish{Species: "ZZZ", LengthCM: 100, LengthKind: "FL"}, nil)
	lo, hi := interval(10, 0.1, 100, 98)
	if len(es) != 1 || !es[0].HasInterval || !near(es[0].LoKG, lo, 1e-12) || !near(es[0].HiKG, hi, 1e-12) ||
		!hasNote(es[0], "published residual spread (0.100") {
		t.Errorf("%+v", es)
	}
}

// TestRelationWithoutFactor: a relation for gutted weight without a published
// factor is not used.
func TestRelationWithoutFactor(t *testing.T) {
	c, err := load(t, strings.Replace(goodRelation, ",round,", ",dressed,", 1), "")
	if err != nil {
		t.Fatal(err)
	}
	f := Fish{Species: "ZZZ", LengthCM: 100, LengthKind: "FL"}
	if es := c.Weigh(f, nil); len(es) != 0 {
		t.Errorf("%+v", es)
	}
	if why := c.Unused(f, nil); len(why) != 1 || !strings.Contains(why[0], "X-1, because it gives dressed weight") {
		t.Errorf("%q", why)
	}
}

// TestPlausibleCondition: K = 10^5 W / L^3 of every checked relation at the middle
// of its lengths lies where tunas, billfish and mackerels do (0.3 to 2.6).
func TestPlausibleCondition(t *testing.T) {
	c := mustDefault(t)
	for _, r := range c.Relations() {
		l := (r.MinCM + r.MaxCM) / 2
		if r.MinCM == 0 || r.MaxCM == 0 {
			l = 60
		}
		e, reason := c.byRelation(Fish{Species: r.Species, LengthCM: l, LengthKind: r.LengthKind}, r)
		if k := 1e5 * e.WeightKG / (l * l * l); reason != "" || k < 0.3 || k > 2.6 {
			t.Errorf("%s at %g cm: %.1f kg, K %.2f %s", r.ID, l, e.WeightKG, k, reason)
		}
	}
}
