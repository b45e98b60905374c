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

// TestSumsWithoutLabel holds that a last row without a day or a word is the sum of the rows above it, where it is so
// for its hours and its counts, and that one which is not is a row.
func TestSumsWithoutLabel(t *testing.T) {
	const log = "Trip|Date|Hrs trolled|Rods|Short|Pulled|Kept\n1|2025-06-01|5.5|6|1|0|1\n2|2025-06-08|6|6|0|1|0\n" +
		"3|2025-06-15|4.25|4|0|0|0\n4|2025-06-22|7|6|2|1|2\n"
	for last, want := range map[string]int{"||22.75||3|2|3": 1, "||2.5|6|1|0|0": 0, "||22.75||||3": 1} {
		b := inferred(t, "log", nil, "Log", log+last).Data()[0].Block
		if got := len(b.Totals); got != want {
			t.Errorf("%s: %d totals, expected %d", last, got, want)
		}
	}
}
