package meaning

import (
	"fmt"
	"testing"
)

// TestOnceAnOuting holds that the rows of a day are one trip where what stands once a day is blank on the later ones,
// and that nothing is said of days on which it stands twice.
func TestOnceAnOuting(t *testing.T) {
	for again, want := range map[string]int{"": 8, "31": 0} {
		rows := "Date|Start|End|Lines|Knots|Fuel"
		for i := range 7 {
			rows += fmt.Sprintf("\n2026-05-%02d|06:00|08:00|5|8|%d", 3+i, 30+i)
			if i%2 == 1 {
				rows += fmt.Sprintf("\n2026-05-%02d|15:00|17:00|5|8|", 3+i)
			}
		}
		rows += "\n2026-05-10|06:00|08:00|5|8|33\n2026-05-10|15:00|17:00|5|8|" + again
		if p := planOf(t, "log.csv", rows); len(p.Trips) != want {
			t.Errorf("with %q on the last: the trips of rows are %v", again, p.Trips)
		} else if want > 0 && (p.Trips[3] == "" || p.Trips[3] != p.Trips[4]) {
			t.Errorf("%v: not one trip a day", p.Trips)
		}
	}
}
