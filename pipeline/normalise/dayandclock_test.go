package normalise

import "testing"

// TestDayAndClock holds that a day without its year and a clock time behind it, in one cell, are read as both, in the
// order that other cells show.
func TestDayAndClock(t *testing.T) {
	rows := log{name: "2025", text: "left dock|back|hrs trolled|rods|kts|bites\nFri 6/6 11pm|Sat 6/7 2pm|8|5|7.5|7\n" +
		"Fri 6/20 23:00|Sat 6/21 5pm|6.5|6|7|5\n" +
		"Fri 8/1 9 pm|Sat 8/2 17:30|6|6|7|2\nFri 9/5 10pm|Sat 9/6 5pm|6|6|7|2"}.read(t)
	for i, want := range []string{"82800", "82800", "75600", "79200"} {
		if got := rows[i].values["depart_s"]; got != want {
			t.Errorf("row %d left at %q s, expected %q: %v", i+1, got, want, rows[i].problems)
		}
	}
	for i, want := range []string{"2025-06-06", "2025-06-20", "2025-08-01"} {
		if got := rows[i].values["date"]; got != want {
			t.Errorf("row %d left on %q, expected %q", i+1, got, want)
		}
	}
}

// TestSummedHours holds that hours joined by plus signs are their sum, and that what is parted otherwise is not.
func TestSummedHours(t *testing.T) {
	for cell, want := range map[string]string{"3+2.5": "19800", "2 + 1 + 1": "14400", "3/2.5": "", "20+8": ""} {
		rows := log{text: "Date|Hours|Lines|Knots|Bites\n2026-06-03|4|4|7|1\n2026-06-04|5|4|7|0\n" +
			"2026-06-05|6.5|4|7|2\n2026-06-06|" + cell + "|4|7|2"}.read(t)
		if got := rows[3].values["duration_s"]; got != want {
			t.Errorf("%q: %q s, expected %q: %v", cell, got, want, rows[3].problems)
		}
	}
}
