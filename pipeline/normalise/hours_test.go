package normalise

import (
	"fmt"
	"testing"
)

// TestHoursTold holds that two clock times, or a hedged number, under a heading of hours are its hours, and
// that what is neither is not.
func TestHoursTold(t *testing.T) {
	plain := ""
	for day := range 9 {
		plain += fmt.Sprintf("2026-05-%02d|3.5|4|7|wahoo|landed\n", day+1)
	}
	rows := log{text: "Date|Hours|Rods|Knots|Species|Result\n" + plain +
		"2026-06-04|6:40-1:10|5|7|mahi|lost\n2026-06-05|about 3|5|7|mahi|landed\n2026-06-06|unas 4|5|7|wahoo|landed\n" +
		"2026-06-07|1:15 - 4:30|5|7|wahoo|lost\n2026-06-08|07:00-02:00|5|7|wahoo|lost\n" +
		"2026-06-09|half a day|5|7|wahoo|lost\n2026-06-10|4|5|7|mahi|landed\n2026-06-11|7:30 to 2|5|7|mahi|landed\n" +
		"2026-06-12|7 to 1|5|7|mahi|landed\n2026-06-13|5-6:00|5|7|mahi|landed"}.read(t)[8:]
	for i, want := range []string{"12600", "23400", "10800", "14400", "11700", "", "", "14400", "23400", "21600", ""} {
		if got := rows[i].values["duration_s"]; got != want {
			t.Errorf("row %d: %q s, expected %q", i, got, want)
		}
		if aside := len(rows[i].problems) > 0; aside != (want == "") {
			t.Errorf("row %d: set aside %v: %v", i, aside, rows[i].problems)
		}
	}
}

// TestUnsaidLines holds that a stretch of which the row says that nobody knows how many lines were out is asked about,
// and that a day of which the month alone is known is kept without one.
func TestUnsaidLines(t *testing.T) {
	rows := log{text: "Date|Hours|Rods|Knots|Species|Result|Remarks\n2026-05-02|3.5|4|7|wahoo|landed|calm\n" +
		"2026-05-03|3.5|4|7|wahoo|landed|rough\n2026-05-09|3||7|mahi|lost|forgot how many out\n" +
		"2026-05-16|3||7|mahi|lost|forgot the bait\n2026-05-23|4|4|7|mahi|lost|\nsometime in june|5|4|7|mahi|lost|\n" +
		"2026-07-04|5|4|7|mahi|landed|\n"}.read(t)
	for i, want := range []int{0, 0, 1, 0, 0, 0, 0} {
		if len(rows[i].problems) != want {
			t.Errorf("row %d: set aside %v", i, rows[i].problems)
		}
	}
	if got := rows[5].values; got["date"] != "" || got["duration_s"] != "18000" {
		t.Errorf("a day in June: %v", got)
	}
}
