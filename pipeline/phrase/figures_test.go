package phrase

import (
	"slices"
	"testing"
)

// TestFigures holds which cells hold several counts.
func TestFigures(t *testing.T) {
	for text, want := range map[string][]int{
		"3-2-1": {3, 2, 1}, "3/2": {3, 2}, "2 for 3": nil, "3 – 0": {3, 0},
		"4": {4}, "2 mahi": nil, "": nil, "7.5": nil,
	} {
		if got := Figures(text); !slices.Equal(got, want) {
			t.Errorf("%q: %v, expected %v", text, got, want)
		}
	}
}
