package normalise_test

import "testing"

// TestAllSeason holds that what stands beside a label above the table for all season is taken on each row.
func TestAllSeason(t *testing.T) {
	got := readText(t, "log.csv", "\"Lines: 3, all season\",,,\n,,,\nDate,Hours trolling,Speed (kn),Bites\n"+
		"2026-06-03,4,7,1\n2026-06-04,3.5,7,0\n2026-06-05,4,6.5,2\n")
	expect(t, "lines", got.field("lines_out", 4, 5, 6), int64(3), int64(3), int64(3))
}
