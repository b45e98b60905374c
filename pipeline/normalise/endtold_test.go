package normalise_test

import (
	"strings"
	"testing"

	"wakeledger/pipeline/record"
)

// TestEndTold holds that an end that is blank is taken from a remark that says when the lines came up, in figures and
// in words, and not from one that tells of another time.
func TestEndTold(t *testing.T) {
	got := readText(t, "log.csv", "Date,In,Up,Lines,Knots,Bites,Remarks\n2026-07-04,06:00,08:00,4,8,2,\n"+
		"2026-07-05,10:15,,4,8,1,brought the rods in at quarter past three\n"+
		"2026-07-06,06:00,,4,8,1,forgot the watch. Lines up around 1430\n"+
		"2026-07-07,06:00,,4,8,1,home at 4 pm\n2026-07-08,06:00,,4,8,1,bite stopped at 10:30\n"+
		"2026-07-09,06:00,09:00,4,8,1,lines up at 9:30\n2026-07-10,06:30,09:00,4,8,3,\n")
	expect(t, "ends", got.field("end_s", 2, 3, 4, 5, 6, 7), int64(8*3600), int64(15*3600+900), int64(14*3600+1800), nil,
		nil, int64(9*3600))
}

// TestEndToldForRowsUnder holds that a row of the same stretch has the end that the remark above tells.
func TestEndToldForRowsUnder(t *testing.T) {
	got := readText(t, "log.csv", "Date,Rod,In,Up,Lines,Knots,Bites,Boated,Remarks\n"+
		"2026-07-04,all,06:00,08:00,4,8,2,1,\n"+
		",center,,,,,2,1,\n2026-07-05,all,06:15,,4,8,1,1,brought the rods in at quarter past ten\n,long,,,,,1,1,\n"+
		"2026-07-06,all,06:00,09:00,4,8,0,0,\n")
	expect(t, "ends", got.field("end_s", 3, 4, 5), int64(8*3600), int64(10*3600+900), int64(10*3600+900))
}

// TestStoppedLinesUp holds that a stop is taken off where the remark says that the lines were up meanwhile.
func TestStoppedLinesUp(t *testing.T) {
	got := readText(t, "log.csv", "Date,In,Up,Lines,Knots,Bites,Remarks\n2026-07-04,06:00,10:00,4,8,2,\n"+
		"2026-07-05,06:00,10:00,4,8,1,\"stopped 40 min with all rods up, for a swim\"\n"+
		"2026-07-06,06:00,10:00,4,8,1,stopped 40 min to clear weed\n2026-07-07,06:00,10:00,4,8,1,\n")
	expect(t, "taken off", got.field("stopped_s", 2, 3, 4), nil, 2400.0, nil)
	got = readText(t, "log.csv", "Date,In,Up,Lines,Knots,Bites,Remarks\n2026-07-04,06:00,08:00,4,8,2,\n"+
		"2026-07-05,06:00,08:00,4,8,1,\"stopped 60 min with all rods up, for a swim\"\n"+
		"2026-07-05,09:00,11:00,4,8,1,\n2026-07-07,06:00,10:00,4,8,1,\n")
	expect(t, "between two rows", got.field("stopped_s", 3), nil)
}

// TestBitesNotCounted holds that a row that says that nobody counted its bites is asked about, and one with a number of
// them, or a remark of other things that were not written, is not.
func TestBitesNotCounted(t *testing.T) {
	got := readText(t, "log.csv", "Date,In,Up,Lines,Bites,Hooked,Remarks\n2026-07-04,06:00,10:00,4,2,1,\n"+
		"2026-07-05,06:00,10:00,4,,2,\"plenty of knocks, lost count\"\n"+
		"2026-07-06,06:00,10:00,4,,1,\"many short bites without a hook-up, we did not write them down\"\n"+
		"2026-07-07,06:00,10:00,4,3,1,\"one more knock, did not count it\"\n"+
		"2026-07-08,06:00,10:00,4,,1,wind not noted\n2026-07-09,06:00,10:00,4,1,1,\n")
	var rows []int
	for _, p := range got.problems {
		if strings.HasPrefix(p.Reason, record.NotCounted) {
			rows = append(rows, p.Pos.Row)
		}
	}
	if len(rows) != 2 || rows[0] != 3 || rows[1] != 4 {
		t.Errorf("asked about rows %v: %v", rows, got.problems)
	}
}
