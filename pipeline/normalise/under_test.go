package normalise

import "testing"

// TestFishUnderADay holds that what stands behind a fish's name on a row under its day's counts is what became of it,
// and that rows under a day that was not trolled are of that day.
func TestFishUnderADay(t *testing.T) {
	rows := log{
		text: "Date|Hours|Rods|Knots|Bites|Lost|Kept|Tagged|Fish|Notes\n2026-06-03|5|4|7|3|1|1|1|wahoo|\n" +
			"||||||||striped marlin tagged|\n||||||||dorado lost at the boat|\n" +
			"2026-06-05|4|4|7|1||1||wahoo|\n2026-06-07||||||||snapper|live baits at anchor, no lures out\n" +
			"||||||||snapper|let one go as well\n2026-06-09|4|4|7|1||1||wahoo|\n||||||||wahoo|"}.read(t)
	for i, want := range []Skip{NotASkip, NotASkip, NotASkip, NotASkip, Elsewise, Elsewise, NotASkip, NotASkip} {
		if rows[i].skip != want {
			t.Errorf("row %d: %q, expected %q: %v", i, rows[i].skip, want, rows[i])
		}
	}
	for i, want := range []string{"", "released", "lost"} {
		if got := rows[i].values["outcome"]; got != want {
			t.Errorf("row %d: %q, expected %q", i, got, want)
		}
	}
	if got := rows[1].values["species_logged"]; got != "striped marlin" {
		t.Errorf("the fish is %q", got)
	}
}
