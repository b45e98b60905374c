package proof

import (
	"slices"
	"testing"
)

// TestBlankBites holds that a row that counts fish and leaves its bites blank is asked about where the others count
// theirs, and one without fish, or with how many were hooked, is not.
func TestBlankBites(t *testing.T) {
	for last, want := range map[string]bool{"5|||9": true, "5||9|9": false, "5|9|9|9": false, "5|||": false} {
		text := "Date|Hours|Lines|Bites|Hooked|Landed"
		for _, day := range []string{"03", "04", "05", "06", "07", "08", "09", "10", "11"} {
			text += "\n2026-06-" + day + "|3|4|2|1|1"
		}
		s := Stats{Stretches: 10, Hours: 30, Strikes: 27, ByCount: 27}
		for row := range int64(10) {
			s.Worked = append(s.Worked, Worked{Row: row + 2})
		}
		got := asked(t, inferred(t, "Runs", text+"\n2026-06-12|3|"+last), s)
		if slices.Contains(kinds(got), "blank bites") != want {
			t.Errorf("%s: asked %v", last, kinds(got))
		}
	}
}
