package meaning

import (
	"maps"
	"testing"
)

// TestBlanksSaid holds what texts say of blank cells.
func TestBlanksSaid(t *testing.T) {
	for text, want := range map[string]map[string]string{
		"empty under Fate = kept":                           {"fate": "kept"},
		"R = let go; blank means boated":                    {"": "boated"},
		"lost = came off. nothing in result: in the box.":   {"result": "in the box"},
		"vide = à bord":                                     {"": "à bord"},
		"en blanco = embarcado. S = se soltó":               {"": "embarcado"},
		"blank = day not fished":                            {},
		"nothing bit on these days: all lost to the wind":   {},
		"nothing = no fish":                                 {},
		"we left at six; the box was empty, two fish = one": {},
	} {
		if got := blanksIn(text); !maps.Equal(got, want) {
			t.Errorf("%q: %v, expected %v", text, got, want)
		}
	}
}

// TestGuessesBare holds which texts say that weights without a word for the scale are guesses.
func TestGuessesBare(t *testing.T) {
	for text, want := range map[string]bool{
		"kg: without the word scale = estimated":             true,
		"weighed = club scale; the rest are guesses":         true,
		"Weights are guesses unless it says scale":           true,
		"sin báscula = a ojo":                                true,
		"ohne Waage = geschätzt":                             true,
		"all weights off the club scale":                     false,
		"scale = dock scale":                                 false,
		"no scale aboard":                                    false,
		"the rest of the fleet is at the buoy, about 40 lbs": false,
		"others = mahi":                                      false,
	} {
		if got := guessesBare(text); got != want {
			t.Errorf("%q: %t, expected %t", text, got, want)
		}
	}
}

// TestScaleCodes holds that a short word behind a figure is what the log says it is, of weights without one too.
func TestScaleCodes(t *testing.T) {
	const rows = "Date|Time|Fish|Outcome|Lb\n2026-06-03|08:10|wahoo|landed|51.5 mb\n" +
		"2026-06-04|08:25|wahoo|landed|46\n" +
		"2026-06-05|08:40|tuna|landed|38.2 mb\n2026-06-06|08:40|tuna|landed|22.4 mb\n2026-06-07|08:40|tuna|landed|30 bf"
	p := planOf(t, "", `Weights: "mb" = club scale, "bf" = guessed from the bridge`+"\n\n"+rows)
	b := p.Find("scale_kg")
	if b == nil || b.Codes["51.5 mb"] != "51.5" || b.Codes["46"] != "~46" || b.Codes["30 bf"] != "~30" {
		t.Errorf("short words behind figures: %s %v", summary(p), b)
	}
}

// TestAlone holds what became of fish that are named and nothing more, where a log says it.
func TestAlone(t *testing.T) {
	for text, want := range map[string]string{
		"just the fish = in the box":                       "landed",
		"Pos = position. Only the name means let go":       "released",
		"solo el nombre = devuelto":                        "released",
		"just the fish we wanted: two wahoo":               "",
		"lines in / lines up = trolling. no word = a miss": "",
	} {
		if got := aloneIn(text); got != want {
			t.Errorf("%q: %q, want %q", text, got, want)
		}
	}
}
