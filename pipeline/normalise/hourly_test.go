package normalise_test

import "testing"

// TestHourColumns holds that columns of hours are added up where the log says what a blank cell and a
// mark in them mean.
func TestHourColumns(t *testing.T) {
	const note = "hour columns: bites in that hour; . = no bite; empty = not trolling\n"
	const rows = "Date,5am,6am,7am,Hooked,Knots\n2026-05-02,.,2,,1,7\n2026-05-09,,xx,1,0,8\n"
	got := readText(t, "log.csv", note+rows)
	expect(t, "hours", got.field("duration_s", 3, 4), 7200.0, 7200.0)
	expect(t, "bites", got.field("strikes_n", 3, 4), int64(2), int64(3))
	for _, e := range readText(t, "log.csv", rows).entries {
		if e["duration_s"] != nil {
			t.Errorf("hours without a word on them: %v", e)
		}
	}
}

// TestHourRows holds that rows that are hours, as the log says, have one each, but for those whose lines were up; and
// that a column may say what part of the hour was trolled.
func TestHourRows(t *testing.T) {
	got := readText(t, "log.csv", "one row per hour trolled\nDate,Hour from,Knots,Bites,Remarks\n"+
		"2026-05-02,5 am,7,1,\n"+
		"2026-05-02,6 am,,,\"lines up, moved spots\"\n2026-05-02,7 am,8,0,flat calm\n")
	expect(t, "hours", got.field("duration_s", 3, 5), 3600.0, 3600.0)
	if e, ok := got.entries[place{4, 0}]; ok {
		t.Errorf("an hour with the lines up: %v", e)
	}
	got = readText(t, "log.csv", "Date,Hour no.,Part of the hour trolled,Knots,Bites\n2026-05-02,1,all,7,1\n"+
		"2026-05-02,2,1/2,7,0\n2026-05-09,1,3/4,8,2\n")
	expect(t, "parts", got.field("duration_s", 2, 3, 4), 3600.0, 1800.0, 2700.0)
}

// TestUntilNext holds that rows hold until the next one where the log says so, and that one of lines up ends the one
// above it and is none.
func TestUntilNext(t *testing.T) {
	const rows = "Date,Time,What,Knots,Bites\n2026-05-02,06:00,start,7,1\n2026-05-02,07:00,turned,8,0\n" +
		"2026-05-02,09:00,all up,,\n2026-05-09,06:30,start,7,2\n2026-05-09,08:00,all up,,\n"
	got := readText(t, "log.csv", "each row holds from its time until the next row\n"+rows)
	expect(t, "ends", got.field("end_s", 3, 4, 6), int64(7*3600), int64(9*3600), int64(8*3600))
	expect(t, "bites", got.field("strikes_n", 3, 4, 6), int64(1), int64(0), int64(2))
	if len(got.entries) != 3 {
		t.Errorf("entries: %v", got.entries)
	}
}

// TestLineHoursOfFew holds that line-hours which are no whole number of lines times hours are so where the hours were
// rounded to a tenth, and are set aside elsewhere.
func TestLineHoursOfFew(t *testing.T) {
	got := readText(t, "log.csv", "Date,Hours trolled,Rod hours,Knots,Bites\n"+
		"2026-05-02,2,8,7,1\n2026-05-09,1.2,8.75,7,0\n"+
		"2026-05-16,2,9,7,0\n")
	expect(t, "lines", got.field("lines_out", 2, 3, 4), int64(4), int64(7), nil)
	if len(got.problems) != 1 || got.problems[0].Pos.Row != 4 {
		t.Errorf("set aside: %v", got.problems)
	}
}
