package meaning

import (
	"strings"
	"testing"
)

// TestScore holds that cells of three or four figures, none more than the one before it, are taken for a day's bites,
// hooked, landed and let go, which is asked about, and that days, positions and figures that rise are not.
func TestScore(t *testing.T) {
	const log = "Day|In|Out|Rods|%h|Notes\n2025-06-01|06:00|11:00|5|%1|calm\n2025-06-02|06:30|12:00|5|%2|\n" +
		"2025-06-03|06:15|11:30|4|%3|\n2025-06-04|06:20|12:10|4|%4|"
	for _, c := range []struct {
		heading, cells string
		figures        int
	}{{"Score", "2:1:1:0 7:3:2:1 0:0:0:0 5:3:2:1", 4}, {"Tally", "2/1/1 7/3/2 0/0/0 5/3/2", 3},
		{"Score", "2:1:1:0 1:3:2:1 0:0:0:0 5:3:2:1", 0}, {"Lat", "36-12-10 36-20-11 36-18-09 36-19-01", 0},
		{"Score", "0:0:0 0:0:0 0:0:0 0:0:0", 0}, {"Bites/hooked/landed", "2/1/1 7/3/2 0/0/0 5/3/2", 0}} {
		x := strings.Fields(c.cells)
		l := inferred(t, "log", nil, "Log",
			strings.NewReplacer("%h", c.heading, "%1", x[0], "%2", x[1], "%3", x[2], "%4", x[3]).Replace(log))
		got := 0
		if l.Score != nil {
			got = l.Score.Figures
		}
		if p := l.Data()[0].Plan; got != c.figures || got > 0 && !(p.Binds("strikes_n") && p.Binds("landed_n")) {
			t.Errorf("%s %s: %d figures, expected %d: %s", c.heading, c.cells, got, c.figures, summary(p))
		}
	}
}
