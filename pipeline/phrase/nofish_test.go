package phrase

import "testing"

// TestNoFish holds that a fish behind a word that denies it is none of a list, and that others beside it are.
func TestNoFish(t *testing.T) {
	for text, want := range map[string]string{
		"Two mahi, no bluefin": "mahi", "no tuna today": "", "not a tuna": "", "almost a marlin": "",
		"no marlin around. One mahi 12 lb": "mahi", "1 wahoo but no ahi": "wahoo", "no ahi but one ono": "ono",
		"ni un atun, dos dorados": "dorados", "No 3 wahoo": "wahoo", "atum no corrico": "atum",
	} {
		got := ""
		for _, f := range FishList(text, Defaults{}) {
			got += f.Name
		}
		if got != want {
			t.Errorf("%q: %q, expected %q", text, got, want)
		}
	}
}
