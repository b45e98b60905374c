package phrase

import (
	"fmt"
	"strings"
	"testing"
)

// TestSeveralWeights holds that figures behind a name, under a heading of weights alone, are a fish each.
func TestSeveralWeights(t *testing.T) {
	for text, want := range map[string]string{
		"mahi 10 12":             "mahi 4.5 mahi 5.4",
		"aku 11? 11?, ono 26 21": "aku 5.0? aku 5.0? ono 11.8 ono 9.5",
		"2 ono 21 38":            "ono 9.5 ono 17.2",
		"ahi 65":                 "ahi 29.5",
		"hook 12 14":             "",
	} {
		var got []string
		for _, f := range FishList(text, Defaults{WeightUnit: "lb", Scaled: true}) {
			s := fmt.Sprintf("%s %.1f", f.Name, f.Kg)
			if f.Guess {
				s += "?"
			}
			got = append(got, s)
		}
		if s := strings.Join(got, " "); s != want {
			t.Errorf("%q: %s, expected %s", text, s, want)
		}
	}
	if fish := FishList("wahoo 51 29", Defaults{WeightUnit: "lb", LengthUnit: "in"}); len(fish) != 1 {
		t.Errorf("a length and a weight: %v", fish)
	}
}
