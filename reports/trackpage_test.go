package reports

import "testing"

func TestPositionsInWords(t *testing.T) {
	for want, p := range map[string][2]float64{"36°29.9′ S 176°12.0′ E": {-36.4983, 176.2},
		"0°00.0′ N 179°59.9′ W": {0, 180.0017}, "33°00.0′ N 118°00.0′ W": {32.99999, -117.99999}} {
		if got := position(p[0], p[1]); got != want {
			t.Errorf("%v: %q, want %q", p, got, want)
		}
	}
}
