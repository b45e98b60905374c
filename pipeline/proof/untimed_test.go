package proof

import (
	"slices"
	"testing"
)

// TestUntimed holds that a trip with bites and without hours is asked about beside those with hours, and one that is
// told on two rows, one of them with its hours, is not.
func TestUntimed(t *testing.T) {
	const head = "Date|Hours|Lines|Bites|Landed\n2026-06-03|3|4|2|1\n2026-06-04|5|4|1|1\n"
	for rows, want := range map[string]bool{"2026-06-05||4|2|0": true, "2026-06-05||||": false,
		"2026-06-04||4|2|0": false} {
		s := Stats{Stretches: 2, Hours: 8, Strikes: 5, Days: map[string]bool{"1": true, "2": true},
			Untimed: []Worked{{Row: 4, Day: "3"}}}
		if rows[:10] == "2026-06-04" {
			s.Untimed[0].Day = "2"
		}
		got := slices.Contains(kinds(asked(t, inferred(t, "Runs", head+rows), s)), "no hours")
		if got != want {
			t.Errorf("%s: asked %t, expected %t", rows, got, want)
		}
	}
}
