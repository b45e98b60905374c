package normalise_test

import "testing"

// TestBitesOfTwoStretches holds that counts behind the columns of two stretches are of neither, but where their speeds
// are of one class, and that a row with one stretch keeps them.
func TestBitesOfTwoStretches(t *testing.T) {
	got := readText(t, "log.csv", "Date,AM hours,AM lines,AM knots,PM hours,PM lines,PM knots,Bites,Landed\n"+
		"2026-05-02,3,4,8,2,4,14,5,2\n2026-05-09,3,4,8.5,1.5,4,9,3,1\n2026-05-16,2,5,7,,,,4,1\n"+
		"2026-05-23,2,5,7,1,4,13,0,0\n")
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
		"2026-05-02,06:00,08:00,4,3,1,mahi 70 cm; wahoo pulled hook; missed\n"+
		"2026-05-09,06:00,08:00,4,1,,mahi pulled hook\n"+
		"2026-05-16,06:00,08:00,4,1,1,mahi 64 cm; wahoo pulled hook\n")
	expect(t, "lost", got.field("lost_n", 2, 3, 4), int64(1), int64(1), nil)
	expect(t, "missed", got.field("missed_n", 2, 3, 4), int64(1), nil, nil)
}

// TestFatesOfTwoStretches holds that what became of the bites of two stretches is of the first that have bites, that a
// row says so, and that more than the bites of both are a slip.
func TestFatesOfTwoStretches(t *testing.T) {
	got := readText(t, "log.csv", "Date,In,Out,Lines,Knots,Bites,In,Out,Lines,Knots,Bites,Kept,Freed,Dropped\n"+
		"2026-05-02,06:00,08:00,5,7,0,09:00,11:00,5,7,3,1,1,1\n2026-05-09,06:00,08:00,4,7,1,09:00,10:00,5,7,2,2,,\n"+
		"2026-05-16,06:00,08:00,5,7,2,09:00,10:00,4,12,2,1,1,1\n2026-05-23,06:00,08:00,5,7,1,,,,,,1,,\n"+
		"2026-05-24,06:00,08:00,5,7,1,09:00,10:00,5,7,1,1,,2\n")
	expect(t, "kept", got.field("landed_n", 2, 3, 4, 5), int64(0), int64(1), int64(1), int64(1))
	expect(t, "dropped", got.field("lost_n", 2, 4), int64(0), int64(0))
	of := map[int64]int64{}
	for _, s := range got.sides {
		of[s.Row] = s.Values["landed_n"].Int*10 + s.Values["lost_n"].Int
	}
	if of[2] != 11 || of[3] != 10 || of[4] != 1 {
		t.Errorf("of the second stretches: %v", of)
	}
	if len(got.problems) != 2 || len(got.doubts) != 1 {
		t.Errorf("problems %v, doubts %v", got.problems, got.doubts)
	}
}

// TestFatesLeftOfStretches holds that what became of bites is parted among the stretches right of it too, and that a
// row of which only a later stretch was fished is read.
func TestFatesLeftOfStretches(t *testing.T) {
	got := readText(t, "log.csv", "Date,Hooked,Landed,1st hours,1st knots,1st bites,2nd hours,2nd knots,2nd bites\n"+
		"2026-05-02,3,2,2,7,2,1,7,2\n2026-05-09,2,1,1,7,1,2,7.5,3\n")
	expect(t, "landed", got.field("landed_n", 2, 3), int64(2), int64(1))
	expect(t, "hooked", got.field("hooked_n", 2, 3), int64(2), int64(1))
	got = readText(t, "log.csv", "Date,Hooked,\"Stretches (lines, time, speed, bites)\"\n"+
		"2026-05-02,5,4 lines / 2 h 30 min / 7 kn / 2 bites ; 3 lines / 1 h / 12 kn / 4 bites\n"+
		"2026-05-09,0,4 lines / 1 h 15 min / 7 kn / no bites\n")
	expect(t, "hours", got.field("duration_s", 2, 3), 9000.0, 4500.0)
	expect(t, "bites", got.field("strikes_n", 2, 3), int64(2), int64(0))
	expect(t, "hooked of the first", got.field("hooked_n", 2, 3), int64(2), int64(0))
}

// TestHoursOfNothing holds that a stretch of no hours whose row speaks of live bait is none, that one whose row says
// that its hours were not kept is there without any, and that one that says nothing of them is set aside.
func TestHoursOfNothing(t *testing.T) {
	got := readText(t, "log.csv", "Outing,Day,Hours trolled,Rods,Knots,Remarks\n1,2026-05-02,4.5,5,8,\n"+
		"2,2026-05-09,0,,,Live bait only today\n3,2026-05-16,,5,8,Forgot the hours\n4,2026-05-23,,5,8,Windy\n"+
		"5,2026-05-30,6,4,7,\n6,2026-06-06,3.5,4,7,\n")
	expect(t, "speeds", got.field("speed_kn", 2, 3, 4, 5, 6), 8.0, nil, 8.0, nil, 7.0)
	if len(got.problems) != 1 || got.problems[0].Pos.Row != 5 {
		t.Errorf("set aside: %v", got.problems)
	}
}

// TestSeveralClocks holds that three figures are clock times beside cells that have two times of four each.
func TestSeveralClocks(t *testing.T) {
	got := readText(t, "log.csv", "Date,Gear in,Gear out,Lines,Bites\n2026-05-02,640,1115,5,1\n"+
		"2026-05-09,715,1120,5,2\n2026-05-16,0630 / 1200,1010 / 1430,5,0\n2026-05-23,655,1240,5,4\n"+
		"2026-05-30,705,1155,4,2\n")
	expect(t, "starts", got.field("start_s", 2, 3, 5), int64(6*3600+40*60), int64(7*3600+15*60), int64(6*3600+55*60))
}

// TestSpeedOfOneBite holds that a remark tells the speed of the one bite that a row counts, where it says that it is
// the bite's and the row has no speed; never of several bites.
func TestSpeedOfOneBite(t *testing.T) {
	got := readText(t, "log.csv", "Date,In,Out,Lines,Knots,Bites,Landed,Remarks\n"+
		"2026-05-02,06:00,10:00,4,7,2,1,calm\n2026-05-09,06:10,10:00,4,,1,1,log dead; bite at 9.2 kn by the phone\n"+
		"2026-05-16,06:00,09:00,4,,2,1,bite at 9 kn\n2026-05-23,06:00,09:00,4,,1,1,home at 9 kn\n"+
		"2026-05-30,06:00,09:00,4,7,1,1,bite at 9 kn\n")
	expect(t, "speeds of bites", got.field("strike_speed_kn", 2, 3, 4, 5, 6), nil, 9.2, nil, nil, nil)
}
