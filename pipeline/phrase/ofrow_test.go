package phrase

import (
	"fmt"
	"testing"
)

// TestLinesOfRow holds what a remark says of the lines of its own row, and whether it says nothing else.
func TestLinesOfRow(t *testing.T) {
	for text, want := range map[string]string{
		"5 rods today": "5 true true", "only 3 lines, short crew": "3 true true", "fished 3 rods": "3 true true",
		"6 rods after 10": "6 false true", "4 rods, then 6 rods": "6 false true",
		"2 rods bent at once":                            "0 false false",
		"One line short today, the reel is on the bench": "4 true true", "two rods down, broken reel": "3 true true",
		"too sloppy for more than two lines": "2 true true", "no more than 3 lines": "3 true true",
		"left the center line in the holder, so four": "4 true true", "missed one, so 3": "0 false false",
		"took three in for the last 2 hours, weed": "2 false true", "took one in": "0 false false",
		"two lines tangled": "0 false false", "bite on 3 rods": "0 false false", "": "0 false false",
	} {
		n, sure, ok := LinesOfRow(text, 5)
		if got := fmt.Sprint(n, sure, ok); got != want {
			t.Errorf("%q: %s, expected %s", text, got, want)
		}
	}
}

// TestStopped holds the minutes of stops that are told without clock times, and that those of a fish are none.
func TestStopped(t *testing.T) {
	for text, want := range map[string]float64{
		"stopped 40 min to clear weed": 40, "lunch 1 h, calm": 60, "marlin came off after 25 min": 0,
		"lost an ahi 20 min in": 0, "ran 40 min": 0,
	} {
		if got := Stopped(text); got != want {
			t.Errorf("%q: %g minutes, expected %g", text, got, want)
		}
	}
}

// TestStanding holds which texts above a table say how the boat trolls all season.
func TestStanding(t *testing.T) {
	for text, want := range map[string]bool{
		"Season 2025 (pulling 6, 8 kn)": true, "5 rods, 8 knots": true, "Trolling at 7.5 kn": true,
		"Top speed 22 kn": false, "Lines in 0630": false, "2 lines lost": false, "Trolled 6 h at 8 kn": false,
		"28 ft, trolling at 8 kn": false, "Season 2025": false, "One line each time": false,
		"bluefin 62 in on 5 rods": false,
	} {
		if got := Standing(text); got != want {
			t.Errorf("%q: %t, expected %t", text, got, want)
		}
	}
}

// TestDottedSpan holds that clock times with points are a span with blanks about their dash too.
func TestDottedSpan(t *testing.T) {
	for text, want := range map[string]int{"06.00 - 09.15": 1, "10.15-11.45": 1, "4.50 - 3.20": 0} {
		if got := Stretches(text); len(got) != want {
			t.Errorf("%q: %v, expected %d", text, got, want)
		}
	}
}

// TestPaceBehindSpan holds that a range right behind a span of clock times is its speed.
func TestPaceBehindSpan(t *testing.T) {
	for text, want := range map[string]string{
		"06:00-12:20 at 12-13": "1 12 13", "07:00-11:40 @ 10-11": "1 10 11",
	} {
		all := Stretches(text)
		if got := fmt.Sprint(len(all), all[0].SpeedLo, all[0].SpeedHi); got != want {
			t.Errorf("%q: %s, expected %s", text, got, want)
		}
	}
}
