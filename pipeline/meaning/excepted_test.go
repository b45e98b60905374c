package meaning

import (
	"fmt"
	"testing"
)

// TestExcepted holds that what a log says of one trip or day is parted from what is usual.
func TestExcepted(t *testing.T) {
	for text, want := range map[string]string{
		"Number of lines: 7, all season. Only on trip 2 (Wed 4 May) it was 6.":    "[{2 Wed 4 May 6}]",
		"We always pull 6 lines. Only on 2018-05-01 it was 5.":                    "[{ 2018-05-01 5}]",
		"8 kn, always, except trip 4 when we pulled 6,5 kn":                       "[{4  6,5}]",
		"Siempre 6 cañas, salvo el 4 de julio: eran 5":                            "[{ 4 de julio 5}]",
		"Where the number of lines is not given I forgot to write it, only that.": "[]",
		"Only fish that came to the boat are in here, no misses, no lost ones.":   "[]",
		"Usually 6 lines, but we had 5 fish on 3 days":                            "[]",
	} {
		if _, got := excepted(text); fmt.Sprint(got) != want {
			t.Errorf("%q: %v, not %s", text, got, want)
		}
	}
}
