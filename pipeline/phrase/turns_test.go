package phrase

import (
	"fmt"
	"testing"
)

// TestTurns holds what a remark says of speed and lines in place of what is usual, five lines here.
func TestTurns(t *testing.T) {
	for text, want := range map[string]string{
		"down to 3 lines at 10:00; flat calm":             "10h 3 lines",
		"3 lines left after 10:00 AM":                     "10h 3 lines",
		"pulled one line at 10:00, 4 left":                "10h 4 lines",
		"put one more line out at 10:00":                  "10h 6 lines",
		"took one line in at 10:00":                       "10h 4 lines",
		"slowed to 5 kn at 10:00 (bites all before that)": "10h 5 kn, bites before",
		"9 kn after 10:00, all bites later":               "10h 9 kn, bites after",
		"at 10:00 changed to 9 kn":                        "10h 9 kn",
		"slowed to 4.5 at 10:05, both strikes after that": "10h 4.5 kn, bites after",
		"sped up to 9 at 10":                              "10h 9 kn",
		"pulled back to 6 kn at 10, rough":                "10h 6 kn",
		"slowed to 6 for the last hour":                   "6 kn, unsure",
		"slowed to 6 at 10 fathoms":                       "6 kn, unsure",
		"slower today: 6 kn":                              "6 kn",
		"trolled 9.5 knots this time":                     "9.5 kn",
		"9 kn for a while":                                "9 kn, unsure",
		"ran home at 12 kn":                               "",
		"current pushing 3 kn north":                      "",
		"heard of 2 bites at 9 kn further south":          "",
		"no lines in from 9:00 to 9:30":                   "",
		"wahoo hit at 9 kn":                               "",
	} {
		got := ""
		for _, x := range Turns(text, 5) {
			if x.At != nil {
				got += fmt.Sprintf("%dh ", x.At.Seconds/3600)
			}
			if x.Lines > 0 {
				got += fmt.Sprintf("%d lines", x.Lines)
			}
			if x.Speed > 0 {
				got += fmt.Sprintf("%g kn", x.Speed)
			}
			for said, is := range map[string]bool{", bites before": x.Before, ", bites after": x.After,
				", unsure": x.Unsure} {
				if is {
					got += said
				}
			}
		}
		if got != want {
			t.Errorf("%q: %s, expected %s", text, got, want)
		}
	}
}

// TestUncounted holds the bites, missed or lost, which a remark says that the counts do not have.
func TestUncounted(t *testing.T) {
	for text, want := range map[string]int{
		"plus missed one, not counted":                               1,
		"two hits that did not stick - not in my numbers. flat calm": 2,
		"also rod went off once but nobody there (not in the count)": 1,
		"missed one":                     0,
		"2 bonito for bait, not counted": 0,
		"missed one, in the count":       0,
	} {
		n := 0
		for _, b := range Uncounted(text) {
			n += max(b.N, 1)
		}
		if n != want {
			t.Errorf("%q: %d bites, expected %d", text, n, want)
		}
	}
}
