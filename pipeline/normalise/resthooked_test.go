package normalise_test

import "testing"

// TestRestHooked holds that bites that were neither missed nor brought to the boat were hooked where a log counts
// those that were missed and no others.
func TestRestHooked(t *testing.T) {
	got := readText(t, "log.csv", "Date,Hours,Lines,Speed (kn),Bites,Missed,Landed\n2026-06-03,4,5,7,4,2,1\n"+
		"2026-06-04,3.5,4,7,1,,1\n2026-06-05,4,5,6.5,2,,1\n2026-06-06,5,5,6.5,2,1,1\n")
	expect(t, "hooked", got.field("hooked_n", 2, 3, 4, 5), int64(2), int64(1), int64(2), int64(1))
}
