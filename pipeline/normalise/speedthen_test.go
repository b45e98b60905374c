package normalise

import "testing"

// TestSpeedThen holds which words tell the speed at a bite alone.
func TestSpeedThen(t *testing.T) {
	for text, want := range map[string]bool{"wahoo, doing 8 then": true, "bite (doing 7-7.5 kn then): came off": true,
		"bite on the left (doing 4,5 kn then): wahoo, kept": true, "doing 8 kn then slowed to 6": false,
		"now doing 8 kn": false} {
		if got := speedThen.MatchString(text); got != want {
			t.Errorf("%q: %t, expected %t", text, got, want)
		}
	}
}
