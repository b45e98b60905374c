package phrase

import (
	"fmt"
	"strings"
	"testing"
)

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

// TestPartOfAList holds that a number kept or let go behind the fish of a list is of these fish.
func TestPartOfAList(t *testing.T) {
	for text, want := range map[string]string{
		"3 yft, kept 2":                      "1 yft released, 2 yft landed",
		"3 mahi (kept 1)":                    "2 mahi released, 1 mahi landed",
		"5 albies, released 3":               "2 albies , 3 albies released",
		"3 yft - kept two, let one go":       "1 yft released, 2 yft landed",
		"3 yft, kept two, lost one":          "1 yft lost, 2 yft landed",
		"2 wahoo, 1 mahi, released 1":        "2 wahoo , 1 mahi released",
		"2 mahi and 3 albies, kept 3":        "2 mahi , 1 albies , 2 albies released",
		"1 yft kept, 2 released":             "1 yft landed, 2  released",
		"3 skipjack, 2 wahoo landed":         "3 skipjack , 2 wahoo landed",
		"3 albacore, 1 small mahi, 1 let go": "3 albacore , 1 mahi , 1  released",
	} {
		var got []string
		for _, f := range FishList(text, Defaults{}) {
			got = append(got, fmt.Sprint(f.N, " ", f.Name, " ", f.Fate))
		}
		if s := strings.Join(got, ", "); s != want {
			t.Errorf("%q: %q, expected %q", text, s, want)
		}
	}
}
