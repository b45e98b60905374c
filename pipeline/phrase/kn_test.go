package phrase

import "testing"

// TestSpeedOfBite takes the speed that a bracket behind a bite says for that at the bite, and not what the boat did
// otherwise.
func TestSpeedOfBite(t *testing.T) {
	for text, want := range map[string]float64{
		"blackfin 24in box (6.8 kts on the gps when he ate)": 6.8,
		"wahoo 40 lb, I was at 9 kts when it hit":            9,
		"wahoo 51in 31.5# dock scale (had bumped to 8.4)":    0,
		"wahoo 51in (22 kts home)":                           0,
	} {
		if fish := FishList(text, Defaults{}); len(fish) != 1 || fish[0].Kn != want {
			t.Errorf("%s: %+v", text, fish)
		}
	}
}
