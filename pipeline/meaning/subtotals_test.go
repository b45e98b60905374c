package meaning

import (
	"strings"
	"testing"
)

// TestSubtotals holds that rows of figures alone which are the sums of each day are totals, and that rows of figures
// among which one is no sum are none.
func TestSubtotals(t *testing.T) {
	const log = "Date|In|Out|Hours|Rods|Bites|Landed\n3/6/26|6:10|8:30|2.33|4|2|1\n" +
		"|9:00|11:30|2.5|4|1|1\n|||4.83||3|2\n" +
		"4/6/26|6:30|12:15|5.75|4|0|0\n|||5.75||0|0\n5/6/26|7:00|10:30|3.5|5|2|2\n|10:45|13:30|2.75|5|1|0\n" +
		"|||6.25||3|2\n|||16.83||6|4"
	for text, want := range map[string][2]int{
		log: {5, 4}, strings.NewReplacer("|||5.75||0|0", "|||1.5||0|0").Replace(log): {9, 0},
	} {
		b := inferred(t, "log", nil, "Log", text).Data()[0].Block
		if got := [2]int{len(b.Rows), len(b.Totals)}; got != want {
			t.Errorf("%s\n%d rows and totals, expected %d", text, got, want)
		}
	}
}
