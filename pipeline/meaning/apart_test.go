package meaning

import "testing"

// TestApart holds that a code which a text says is of what was not trolled is one of its heading's.
func TestApart(t *testing.T) {
	l := readLegend([]string{"Jig/bait fish: POS = NT (not trolled), no part of the count.",
		"All fish: RES = K (kept)"})
	if got := l.apart["pos"]["nt"]; got != "not trolled" || len(l.apart) != 1 {
		t.Errorf("codes of what was not trolled: %v", l.apart)
	}
}
