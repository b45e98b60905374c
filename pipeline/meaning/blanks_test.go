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
