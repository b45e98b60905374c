package words

import "testing"

func TestTally(t *testing.T) {
	for text, want := range map[string]int{"x": 1, "xxx": 3, "x x": 2, "|||| |": 5, "✓✓": 2, "": 0, "xo": 0, "-": 0,
		"11": 0, " x": 0, "box": 0} {
		if _, n, ok := Tally(text); n != want || ok != (want > 0) {
			t.Errorf("%q: %d %t, want %d", text, n, ok, want)
		}
	}
}
