package normalise_test

import "testing"

// TestUnderDays holds that the bites of rows under a day are counted once, that the word in the place of the day's line
// is no line, and that they have the speed of its stretches, or that which their remark tells.
func TestUnderDays(t *testing.T) {
	got := readText(t, "log.csv", "Date,Rod,Trolled,Out,Kn,Hits,On,Boated,Notes\n"+
		"2026-03-02,ALL,06:00-09:00,4,7,3,2,1,\n,port long,,,,2,2,1,\n,stinger,,,,1,,,\n"+
		"2026-03-05,ALL,\"06:00-09:30, 10:00-11:00\",4,7,2,1,1,\n,stinger,,,,2,1,1,\n"+
		"2026-03-09,ALL,06:00-08:00,4,7,0,0,0,\n"+
		"2026-03-12,ALL,05:30-09:00,5,,3,1,1,one of an unknown rod\n,port long,,,,1,1,1,came at 9 kn\n")
	expect(t, "bites", got.field("strikes_n", 2, 3, 4, 5, 6, 8, 9), int64(0), int64(2), int64(1), int64(0), int64(2),
		int64(2), int64(1))
	expect(t, "lines", got.field("line", 2, 3, 7), nil, "port long", nil)
	expect(t, "speeds", got.field("speed_kn", 6), 7.0)
	expect(t, "speed of a bite", got.field("strike_speed_kn", 9), 9.0)
}

// TestListWithThoseLost holds that a list of measures with an item for each fish of the row, also for those that got
// away, is dealt to those at the boat.
func TestListWithThoseLost(t *testing.T) {
	got := readText(t, "log.csv", "Date,In,Up,Lines,Bites,Hooked,Boated,Fish,FL cm\n"+
		"2026-06-03,06:00,08:00,4,2,2,1,wahoo lost / mahi,? / 84\n2026-06-04,06:00,08:00,4,1,1,1,mahi,75\n"+
		"2026-06-05,06:00,08:00,4,2,2,2,mahi / wahoo,80 / 118\n")
	var lengths []any
	for _, fish := range got.sides {
		lengths = append(lengths, fish.Values["length_cm"].Real)
	}
	expect(t, "lengths", lengths, 84.0, 75.0, 80.0, 118.0)
	if len(got.problems) > 0 {
		t.Errorf("set aside: %v", got.problems)
	}
}
