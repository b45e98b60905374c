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
		"2026-06-09|half a day|5|7|wahoo|lost\n2026-06-10|4|5|7|mahi|landed"}.read(t)[8:]
	for i, want := range []string{"12600", "23400", "10800", "14400", "11700", "", "", "14400"} {
		if got := rows[i].values["duration_s"]; got != want {
			t.Errorf("row %d: %q s, expected %q", i, got, want)
		}
		if aside := len(rows[i].problems) > 0; aside != (want == "") {
			t.Errorf("row %d: set aside %v: %v", i, aside, rows[i].problems)
		}
	}
}
