package normalise

import (
	"strings"
	"testing"
)

// TestTrolledFor holds that a remark tells the clock time that a stretch lacks by its hours of trolling, what lay
// between two stretches where it tells both, and that a fish taken in another way is none whose weight is asked about.
func TestTrolledFor(t *testing.T) {
	rows := log{
		text: "Date|Lines in|Lines up|Rods (always 5 before July)|Knots|Bites|Landed|Fish|Notes\n" +
			"6/3/2026|6:00 AM|11:00 AM||7|2|1|mahi 30 in|\n" +
			"6/9/2026|7:15 AM|||7|3|2|2 mahi|forgot to write it, was 6.5 hrs trolling\n" +
			"6/16/2026|4:10 PM|9:40 AM||7|1|1|mahi 24 in, tuna 40 in 68 lb on the chunk|" +
			"trolled 4:10-8:00 pm and 5:20-9:40 am, chunked in between\n" +
			"7/3/2026|7:15 AM||6|7|3|2|2 mahi|was 6.5 hrs getting home\n" +
			"7/9/2026|6:00 AM|11:00 AM|4|7|0|0||"}.read(t)
	for i, want := range []struct{ end, stopped, rods string }{{"39600", "", "5"}, {"49500", "", "5"},
		{"121200", "33600", "5"}, {"", "", "6"}, {"39600", "", "4"}} {
		v := rows[i].values
		if v["end_s"] != want.end || v["stopped_s"] != want.stopped || v["lines_out"] != want.rods {
			t.Errorf("row %d: up at %s, %s off, %s rods, expected %+v", i, v["end_s"], v["stopped_s"],
				v["lines_out"], want)
		}
		for _, p := range rows[i].problems {
			if strings.Contains(p.Reason, "weight") {
				t.Errorf("row %d: %s", i, p.Reason)
			}
		}
	}
}
