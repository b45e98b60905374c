package words

import (
	"slices"
	"testing"
)

// TestLures holds that a cell names several lures where each part is the name of one, and not its colour or weight.
func TestLures(t *testing.T) {
	for text, want := range map[string][]string{
		"green plug":                   {"green plug"},
		"green plug, cedar plug; bird": {"green plug", "cedar plug", "bird"},
		"2 cedar plugs, jet x2":        {"cedar plugs", "cedar plugs", "jet", "jet"},
		"purple, green/black, pink":    {"purple", "green/black", "pink"},
		"red feather + blue diver":     {"red feather", "blue diver"},
		"diver, black":                 nil,
		"blue skirt; pink/white":       {"blue skirt", "pink/white"},
		"diver, 6 oz":                  nil,
		"":                             nil,
		"4":                            nil,
		"all the same ones as on the day before, more or less": nil,
	} {
		if got := Lures(text); !slices.Equal(got, want) {
			t.Errorf("%q: %q, expected %q", text, got, want)
		}
	}
	for cell, want := range map[string]bool{"unk": true, "?": true, "not sure": true, "-": false, "": false,
		"green plug": false} {
		if SomeLure(cell) != want {
			t.Errorf("%q: some lure %v, expected %v", cell, !want, want)
		}
	}
	for heading, want := range map[string]bool{"Lures out": true, "Spread": true, "Lures in the water": true,
		"Lure": false, "Lures used": false} {
		if OutThere(heading) != want {
			t.Errorf("%q: %v, expected %v", heading, !want, want)
		}
	}
}

// TestBarOfAHarbour holds that a boat that turned at the bar has caught none.
func TestBarOfAHarbour(t *testing.T) {
	for text, want := range map[string]bool{"turned at the bar": false, "un bar": true} {
		toks := Scan(text)
		if _, _, ok := FishAt(toks, len(toks)-1); ok != want {
			t.Errorf("%q: a fish %v, expected %v", text, ok, want)
		}
	}
}
