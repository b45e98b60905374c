package normalise

import "testing"

// TestStopsAside holds that a stop which a remark tells beside clock times is set aside, and what was taken off already
// is not.
func TestStopsAside(t *testing.T) {
	for said, want := range map[string]int{"stopped 40 min to clear weed": 1, "lines up 0630-0700 for weed": 0, "": 0} {
		row := (log{text: "Date|Start|End|Lines|Bites|Remarks\n2026-06-03|06:00|08:00|4|1|" + said}).last(t)
		if len(row.problems) != want {
			t.Errorf("%q: %v, expected %d", said, row.problems, want)
		}
	}
}

// TestNotMissed holds that the bites that were not missed were hooked, where a row counts both and nothing else
// between.
func TestNotMissed(t *testing.T) {
	for counts, want := range map[string]string{"4|1|1": "3", "4||1": "", "2|2|1": ""} {
		row := (log{text: "Date|Start|End|Lines|Hits|Missed|Boxed\n2026-06-03|06:00|08:00|4|1|0|1\n" +
			"2026-06-04|06:00|08:00|4|" + counts}).last(t)
		if got := row.values["hooked_n"]; got != want {
			t.Errorf("%s: %q hooked, expected %q", counts, got, want)
		}
	}
}

// TestStayedHome holds that a row of dashes is no trip, and that the lure's column may say so.
func TestStayedHome(t *testing.T) {
	for row, want := range map[string]Skip{"-|-|-|-|blew 30": NotGone, "-|-|-|stayed home, blew 30|": NotGone,
		"4|5|1|green|calm": NotASkip} {
		got := (log{text: "Date|Hours|Lines|Bites|Lure|Sea\n2026-06-03|6|5|2|black|calm\n" +
			"2026-06-04|6|5|0||lumpy\n2026-06-05|" + row}).last(t)
		if got.skip != want || len(got.problems) > 0 {
			t.Errorf("%s: %v %v, expected %v", row, got.skip, got.problems, want)
		}
	}
}

// TestFishOfNoTrolling holds that fish in rows below a day on which nobody trolled are not of the trolling.
func TestFishOfNoTrolling(t *testing.T) {
	for said, want := range map[string]Skip{"drifting for fluke. No trolling": Elsewise, "calm": NotASkip} {
		rows := (log{text: "Trip|Date|In|Out|Hits|Fish|Result|Remarks\n1|2025-06-01|06:15|08:45|1|||\n" +
			"1|||||Mahi|Kept|\n2|2025-06-02|06:15|08:45|1|||\n2|||||Mahi|Kept|\n" +
			"3|2025-06-03||||||" + said + "\n3|||||Fluke|Kept|"}).read(t)
		if got := rows[len(rows)-1].skip; got != want {
			t.Errorf("%s: %v, expected %v", said, got, want)
		}
	}
}

// TestGuessNoted holds that a weight beside a remark that says only "guess" is of no scale, in a table and in a log of
// events.
func TestGuessNoted(t *testing.T) {
	for said, want := range map[string]bool{"guess": false, "scales": true, "big one": true} {
		row := (log{text: "date|in|out|rods|fish|fate|kg|note\n2026-01-11|6:11|8:15|4|albo|kept|7.3|scales\n" +
			"2026-01-18|6:20|9:30|4|marlin|released|75|" + said}).last(t)
		if got := row.values["scale_kg"] != ""; got != want {
			t.Errorf("%s: a weight of a scale %t, expected %t", said, got, want)
		}
	}
}

// TestDashedDay holds that a dash parts month and day in a column of days as a stroke does.
func TestDashedDay(t *testing.T) {
	rows := (log{text: "Date|In|Out|Lines|Bites\n2026-06-13|06:00|08:00|4|1\n6/20|06:00|08:00|4|1\n" +
		"6-27|06:00|08:00|4|1"}).read(t)
	if got := rows[2].values["date"]; got != "2026-06-27" {
		t.Errorf("6-27 is %q, expected 2026-06-27", got)
	}
}
