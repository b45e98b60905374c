package normalise_test

import "testing"

// TestBitesOfTwoStretches holds that counts behind the columns of two stretches are of neither, but where their speeds
// are of one class, and that a row with one stretch keeps them.
func TestBitesOfTwoStretches(t *testing.T) {
	got := readText(t, "log.csv", "Date,AM hours,AM lines,AM knots,PM hours,PM lines,PM knots,Bites,Landed\n"+
		"2026-05-02,3,4,8,2,4,14,5,2\n2026-05-09,3,4,8.5,1.5,4,9,3,1\n2026-05-16,2,5,7,,,,4,1\n2026-05-23,2,5,7,1,4,13,0,0\n")
	expect(t, "hours", got.field("duration_s", 2, 3, 4, 5), nil, nil, 7200.0, 7200.0)
	expect(t, "speeds", got.field("speed_kn", 2, 3, 4, 5), nil, 8.5, 7.0, 7.0)
	expect(t, "bites", got.field("strikes_n", 2, 3, 4, 5), int64(5), int64(3), int64(4), int64(0))
	got = readText(t, "log.csv", "Date,Bites,Landed,AM hours,AM lines,AM knots,PM hours,PM lines,PM knots\n"+
		"2026-05-02,5,2,3,4,8,2,4,14\n2026-05-16,4,1,2,5,7,,,\n")
	expect(t, "speeds right of the bites", got.field("speed_kn", 2, 3), nil, 7.0)
}

// TestFatesInWordsBesideCounts holds that bites that a list says were lost or missed are counted beside those boated,
// where there is room for them.
func TestFatesInWordsBesideCounts(t *testing.T) {
	got := readText(t, "log.csv", "Date,In,Out,Lines,Bites,Boated,Fish\n"+
		"2026-05-02,06:00,08:00,4,3,1,mahi 70 cm; wahoo pulled hook; missed\n2026-05-09,06:00,08:00,4,1,,mahi pulled hook\n"+
		"2026-05-16,06:00,08:00,4,1,1,mahi 64 cm; wahoo pulled hook\n")
	expect(t, "lost", got.field("lost_n", 2, 3, 4), int64(1), int64(1), nil)
	expect(t, "missed", got.field("missed_n", 2, 3, 4), int64(1), nil, nil)
}

// TestFatesOfTwoStretches holds that what became of the bites of two stretches is of the first that have bites, that a
// row says so, and that more than the bites of both are a slip.
func TestFatesOfTwoStretches(t *testing.T) {
	got := readText(t, "log.csv", "Date,In,Out,Knots,Bites,In,Out,Knots,Bites,Boated,Freed,Dropped\n"+
		"2026-05-02,06:00,08:00,7,0,09:00,11:00,7,3,1,1,1\n2026-05-09,06:00,08:00,7,1,09:00,10:00,7,2,2,,\n"+
		"2026-05-16,06:00,08:00,7,2,09:00,10:00,12,2,1,1,1\n2026-05-23,06:00,08:00,7,1,09:00,10:00,7,1,3,,\n")
	expect(t, "boated", got.field("landed_n", 2, 3, 4), int64(0), int64(1), int64(1))
	expect(t, "dropped", got.field("lost_n", 2, 4), int64(0), int64(0))
}
