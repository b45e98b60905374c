package normalise

import "testing"

// TestHoursAgain holds that hours which each bite of a stretch repeats are counted on its first row, and that a row
// of other hours or lines, or of another day, is a stretch of its own.
func TestHoursAgain(t *testing.T) {
	rows := log{text: "Date|Hours|Lines|Speed kn|Species|Result|Length in|Port\n" +
		"2026-06-03|6.5|4|8|Wahoo|landed|40|Home\n" +
		"2026-06-03|6.5|4|8|Wahoo|lost|\n2026-06-03|6.5|4|8|Dorado|landed|30\n2026-06-03|2|4|8|Dorado|lost|\n" +
		"2026-06-04|5|4|8|Wahoo|landed|44\n2026-06-04|5|4|8|Wahoo|lost|\n2026-06-05|5|4|8|Wahoo|lost|\n" +
		"2026-06-06|7|3|8|||\n2026-06-07|4|5|8|Wahoo|lost|\n2026-06-07|4|5|8|Wahoo|lost|\n" +
		"2026-06-08|3|4|9|||\n2026-06-08|3|4|7|Wahoo|lost|"}.read(t)
	for i, want := range []string{"23400", "", "", "7200", "18000", "", "18000", "25200", "14400", "",
		"10800", "10800"} {
		v := rows[i].values
		if v["duration_s"] != want || (v["lines_out"] == "") != (want == "") || (v["speed_kn"] == "") != (want == "") {
			t.Errorf("row %d: %q s with %q lines at %q kn, expected %q s", i+2, v["duration_s"], v["lines_out"],
				v["speed_kn"], want)
		}
	}
}
