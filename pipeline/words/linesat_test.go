package words

import "testing"

// TestLinesAt holds that lines counted by their place are added up, and that nothing else is.
func TestLinesAt(t *testing.T) {
	for text, want := range map[string]int{
		"2 long, 2 short, 1 shotgun": 5, "2 riggers + 2 flat": 4, "1 left & 1 right and 1 center": 3,
		"4": 0, "2 long": 0, "2 long, one short": 0, "2 wahoo, 1 short": 0, "4+2": 0, "": 0,
	} {
		n, ok := LinesAt(text)
		if ok != (want > 0) || ok && n != want {
			t.Errorf("%q: %d lines, %t; expected %d", text, n, ok, want)
		}
	}
}
