package estimate

import (
	"strings"
	"testing"
)

// TestCurvedIsSaid: NMFS bluefin classes give straight / curved 0.959 (from memory):
// 1/0.959 = 1.0428, to the power 3.0382 of the relation 1.1356. Shortfin mako has a
// published conversion, so that nothing is left to say.
func TestCurvedIsSaid(t *testing.T) {
	c := mustDefault(t)
	es := c.Weigh(Fish{Species: "PBF", LengthCM: 200, LengthKind: "curved", GirthCM: 145}, nil)
	if len(es) != 1 || !hasNote(es[0], "some 4 % longer") || !hasNote(es[0], "some 4 % too high") ||
		!hasNote(es[0], "from memory") {
		t.Errorf("%+v", es)
	}
	es = c.Weigh(Fish{Species: "YFT", LengthCM: 120, LengthKind: "curved"}, nil)
	if !hasNote(es[0], "some 13 % too high") {
		t.Errorf("%q", es[0].Notes)
	}
	es = c.Weigh(Fish{Species: "SMA", LengthCM: 200, LengthKind: "curved"}, nil)
	if len(es) == 0 || hasNote(es[0], "taken as straight") {
		t.Errorf("%+v", es)
	}
	if n := c.curvedNote(Fish{Species: "SMA", LengthCM: 200, LengthKind: "CFL"}, 200, 1); len(n) != 1 ||
		!strings.Contains(n[0], "on SMA it is some 4 % longer") {
		t.Error(n)
	}
}

// TestCompare: 120 x 85 cm gives 29.999 kg by the girth rule and 32.85 kg by
// YFT-WCPO (1.986475e-5 x 120^2.990779): 8.7 % less. The Atlantic relation gives
// 33.16, the Indian 36.24, the Indian longline one 1.13 x 9.4007e-6 x
// 120^3.126843987 = 33.69 and the eastern Pacific one is from memory: 10 % apart.
func TestCompare(t *testing.T) {
	c := mustDefault(t)
	got := Compare(c.Weigh(Fish{Species: "YFT", Ocean: "pacific", LengthCM: 120, LengthKind: "FL", GirthCM: 85}, nil))
	if len(got) != 2 || !strings.Contains(got[0], "9 % less than length alone (YFT-WCPO)") ||
		!strings.Contains(got[1], "The 4 published relations") ||
		!strings.Contains(got[1], "up to 10 % apart") ||
		!strings.Contains(got[1], "YFT-WCPO gives the least, YFT-IND the most") {
		t.Errorf("%q", got)
	}
	if got := Compare(c.Weigh(Fish{Species: "BFT", LengthCM: 200, LengthKind: "FL"}, nil)); len(got) != 1 ||
		!strings.Contains(got[0], "16 % apart") {
		t.Errorf("curves for bluefin: %q", got)
	}
	if got := Compare(nil); len(got) != 0 {
		t.Errorf("%q", got)
	}
}

func TestChoice(t *testing.T) {
	c := mustDefault(t)
	for _, tt := range []struct{ species, ocean, stock, want, why string }{
		{"YFT", "", "", "YFT-WCPO", "no ocean is named"},
		{"YFT", "atlantic", "", "YFT-ATL", "the default for the Atlantic"},
		{"YFT", "atlantic", "yft-ind", "YFT-IND", "asked for"},
		{"DOL", "north atlantic", "", "DOL-PANAMA", "there is none for the North Atlantic"},
		{"PBF", "", "", "PBF-NWPAC", "only one for the species"},
		{"yft", "pacific", "", "YFT-WCPO", "default for the Pacific"},
	} {
		r, why, ok := c.Choice(Fish{Species: tt.species, Ocean: tt.ocean, Stock: tt.stock,
			LengthCM: 100, LengthKind: "FL"})
		if !ok || r.ID != tt.want || !strings.Contains(why, tt.why) {
			t.Errorf("%+v: %s, %q, %v", tt, r.ID, why, ok)
		}
	}
	if _, _, ok := c.Choice(Fish{Species: "WHM", LengthCM: 170}); ok {
		t.Error("a relation from memory was chosen")
	}
	if c.HasStock("YFT", "YFT-EPO") || c.HasStock("YFT", "BET-ATL") || !c.HasStock("yft", " the Atlantic ") {
		t.Error("stocks")
	}
	if got := strings.Join(c.Stocks("KGM"), " "); got != "KGM-BRAZIL" {
		t.Error(got)
	}
}
