package normalise

import "testing"

// TestAway counts the bites that a column of those that got away tells in words, of those that its row counts, and
// keeps a clock time with am among those of twelve hours that do not say theirs, on the second day of two.
func TestAway(t *testing.T) {
	const text = "Date|Spot|In|Out|Rods|Kts|Hits|Away|Fish|Inches\n" +
		"2025-06-07|corner|6:20|8:00|4|7|0|||\n||8:20|11:20|3|7|3||bft / dodo / dodo|38 / 30 / 26\n" +
		"||11:55|2:05|4|7|0|||\n2025-06-14|bank|6:10|8:30|4|11|3||bft / yt / yft|47 / - / 37\n" +
		"||9:05|12:05|4|9|1|1 off||\n2025-06-21|bank|6:40|8:40|3|7|2|1 miss|yft|30\n||9:00|10:10|3|7|0|||\n" +
		"2025-07-12|ridge|7:00|8:30|5|11|1|1 off||\n||8:40|10:40|4|7|0|||\n" +
		"7/19-20 overnite|ridge|4:15pm|7:25pm|4|7.5|2||yt / bft rel|29 / 45\n" +
		"||5:40am|9:10am|4|7|3|1 miss, off dodo|yft|26\n2025-08-02|bank|6:15|8:20|5|8|1|1 miss||\n" +
		"||8:35|10:05|4|6|1||yft|27\n"
	got := log{text: text}.read(t)
	for row, want := range map[int][3]string{3: {"", "", "42900"}, 5: {"", "1", "32700"}, 6: {"1", "", "24000"},
		10: {"", "", "58500"}, 11: {"1", "1", "106800"}, 12: {"1", "", "22500"}} {
		v := got[row-1].values
		if v["missed_n"] != want[0] || v["lost_n"] != want[1] || v["start_s"] != want[2] {
			t.Errorf("row %d: %v %v, expected %q missed, %q lost, from %s", row, v, got[row-1].problems, want[0],
				want[1], want[2])
		}
	}
}
