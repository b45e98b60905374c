package normalise

import (
	"fmt"
	"testing"

	"wakeledger/pipeline/record"
)

// TestTurned holds what a remark changes of its row: the speed or the lines of all of it, or of its time from a clock
// time on, and that what others did, the wind and the run home change nothing.
func TestTurned(t *testing.T) {
	for remark, want := range map[string]string{
		"slower today: 6 kn":                             "1 stretch at 6 kn",
		"ran them at 9 kn":                               "1 stretch at 9 kn",
		"ran home at 12 kn":                              "1 stretch at 7 kn",
		"wind 12 kn after 10:00":                         "1 stretch at 7 kn",
		"other boats had 3 each at 9 kn":                 "1 stretch at 7 kn",
		"speed 9 kn after 10:00 (bites all before that)": "2 stretches, bites at 7 kn",
		"sped up to 9 kn at 10:00":                       "2 stretches, bites at no kn",
		"down to 3 lines at 10:00":                       "2 stretches, bites at 7 kn",
		"pulled one line at 10:00, 4 left":               "2 stretches, bites at 7 kn",
		"speed 9 kn after 19:00":                         "1 stretch at 7 kn, aside",
		"mostly 9 kn":                                    "1 stretch at 7 kn, aside",
	} {
		row := log{text: "pulling 5 lines at 7 kn unless noted\n\nDate|Lines in|Lines out|Bites|Boated|Remarks\n" +
			"2026-05-01|07:00|12:00|2|1|" + remark + "\n2026-05-02|07:00|12:00|1|1|\n" +
			"2026-05-03|07:00|12:00|0|0|"}.read(t)[0]
		got := fmt.Sprintf("1 stretch at %s kn", row.values["speed_kn"])
		if row.sides > 0 {
			speed := row.values["speed_kn"]
			if speed == "" {
				speed = "no"
			}
			got = fmt.Sprintf("%d stretches, bites at %s kn", row.sides, speed)
		} else if row.told(record.OfSettings) {
			got += ", aside"
		}
		if got != want {
			t.Errorf("%q: %s, expected %s: %v %v", remark, got, want, row.values, row.problems)
		}
	}
}
