package phrase

import (
	"slices"
	"testing"
)

// TestAlways holds that a saying for the whole season tells which fish are let go, and that what was done once, or
// never, is none.
func TestAlways(t *testing.T) {
	for text, want := range map[string][]string{
		"Sailfish always released. Everything else kept unless noted.": {"Sailfish"},
		"All white marlin released":                                    {"white marlin"},
		"Marlines siempre liberados":                                   {"Marlines"},
		"voiliers toujours relâchés; bonites gardées":                  {"voiliers"},
		"Segelfische immer zurückgesetzt, außer im Turnier":            {"Segelfische"},
		"Los marlines y las agujas siempre liberados":                  {"marlines", "agujas"},
		"Released fish":              nil,
		"Marlin not always released": nil,
		"All 3 sails let go":         nil,
		"we had all of them up and the big sail was released": nil,
		"wahoo always kept": nil,
	} {
		if got := AlwaysReleased(text); !slices.Equal(got, want) {
			t.Errorf("%q: %q, expected %q", text, got, want)
		}
	}
	for text, want := range map[string]bool{
		"Sailfish always released. Everything else kept unless noted.": true,
		"Alle behalten, außer es steht in den Bemerkungen":             true,
		"todo guardado salvo que se diga":                              true,
		"not kept unless noted":                                        false,
		"all kept":                                                     false,
		"lines up unless noted":                                        false,
	} {
		if KeptUnlessTold(text) != want {
			t.Errorf("%q: expected %v", text, want)
		}
	}
}

// TestUsualIn holds what a heading says is usual in its cells.
func TestUsualIn(t *testing.T) {
	for heading, want := range map[string]struct {
		n     int
		early bool
	}{"Rods (was always 5 before July)": {5, true}, "Lines, usually 4": {4, false}, "Rods (always 4 or 5)": {},
		"Rods 5": {}, "Cañas (siempre 4 hasta julio)": {4, true}, "Lines (unless noted)": {}} {
		n, early, ok := UsualIn(heading)
		if n != want.n || early != want.early || ok != (want.n > 0) {
			t.Errorf("%s: %d, %t, %t", heading, n, early, ok)
		}
	}
}
