package normalise_test

import "testing"

// TestOnward holds that lines of words among the rows say how the boat trolls from there on: until the next one says
// otherwise, but for a row that says something else of itself, and not where they are of the day above them.
func TestOnward(t *testing.T) {
	got := readText(t, "log.csv", "Date,In,Up,Bites,Remarks\n"+
		"2021: five rods and 7 knots,,,,\n2021-07-04,06:00,08:00,2,\n2021-07-05,06:00,08:00,1,just 3 rods today\n"+
		"Six rods now. New bracket,,,,\n2021-07-12,06:00,08:00,0,\n"+
		"2022 - a bit slower,,,,\n2022-07-03,06:00,08:00,1,\nTwo rods less now,,,,\n2022-07-09,06:00,08:00,4,\n")
	expect(t, "lines", got.field("lines_out", 3, 4, 6, 8, 10), int64(5), int64(3), int64(6), int64(6), int64(4))
	expect(t, "speeds", got.field("speed_kn", 3, 4, 6, 8, 10), 7.0, 7.0, 7.0, nil, nil)

	got = readText(t, "log.csv", "Date,In,Up,Bites,Remarks\n2021-07-04,06:00,08:00,2,\n5 rods at 7 knots,,,,\n"+
		"2021-07-05,06:00,08:00,1,\n6 rods at 8 knots,,,,\n2021-07-12,06:00,08:00,0,\n5 rods at 7 knots,,,,\n"+
		"2021-07-19,06:00,08:00,1,\n")
	expect(t, "below its day", got.field("lines_out", 4, 6), nil, nil)
}
