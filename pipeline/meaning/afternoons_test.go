package meaning

import "testing"

// TestAfternoons holds that strikes before the earliest lines are of the afternoon where the log's stretches end by a
// clock of twelve hours, and are left as they are where a clock past noon stands, or no line was in half a day later.
func TestAfternoons(t *testing.T) {
	const runs = "Date|Start|End|Lines|Knots\n2026-05-09|6:10|1:50|5|8\n2026-05-16|6:30|2:10|5|8\n" +
		"2026-05-17|6:00|12:10|4|8\n2026-05-23|6:40|2:30|5|8"
	const bites = "Date|Time|Species|Outcome\n2026-05-09|7:02|Wahoo|landed\n2026-05-09|1:15|Mahi|lost\n" +
		"2026-05-16|11:20|Wahoo|lost\n2026-05-23|"
	for last, want := range map[string]int{"2:05": 6 * 3600, "14:05": 0, "5:10": 0, "2:05 am": 0, "1:40 pm": 6 * 3600} {
		l := inferred(t, "log.xlsx", nil, "Runs", runs, "Bites", bites+last+"|Mahi|landed")
		if got := blockOf(l, "Bites").Plan.Early; got != want {
			t.Errorf("with a strike at %s those before %d are of the afternoon, expected %d", last, got, want)
		}
	}
}
