package proof

import "testing"

// TestOtherHours holds which remarks tell of time that was fished in another way, and how much.
func TestOtherHours(t *testing.T) {
	for text, want := range map[string]float64{
		"chunked 45 min on the edge": 2700, "1,5 h a fondo": 5400, "palangrotte 1 h": 3600, "30 min Pilken": 1800,
		"bottom fishing after, 2 h": 0, "luego 1 h a fondo": 0, "trolled 2 h against the sea": 0,
		"stopped 30 min to clear weed": 1800, "engine trouble, lost an hour": 3600,
		"fight of 40 min": 0, "jigged 20 min here and 30 min there": 0, "drifting, 12.5 kn of wind": 0,
	} {
		if got := otherHours(text); got != want {
			t.Errorf("%q: %v s, expected %v", text, got, want)
		}
	}
}

// TestOtherwiseByTheClock holds which remarks tell of another way of fishing by the clock.
func TestOtherwiseByTheClock(t *testing.T) {
	for text, want := range map[string]bool{
		"bottom fished from 11": true, "a fondo desde las 10:30": true, "au fond à partir de 9h30": true,
		"trolled till 10, then bottom": false, "bottom fish for dinner": false, "jigged 20 min": false,
		"trolled from 7 to 11": false, "birds from 9:30": false, "bottom at 90 m": false,
	} {
		if got := otherwiseIn(text); got != want {
			t.Errorf("%q: %t, expected %t", text, got, want)
		}
	}
}
