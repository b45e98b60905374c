package proof

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"wakeledger/pipeline/plan"
	"wakeledger/pipeline/record"
)

// TestRowsUnderDays holds that rows of lines under the row of a day are parts of what it counts where the counts agree,
// that a day that counts fewer is asked about, and all of them where one day alone has such rows.
func TestRowsUnderDays(t *testing.T) {
	const head = "Date|Rod|Trolled|Out|Kn|Hits|On|Boated|Notes\n"
	const days = "2026-03-02|ALL|06:00-09:00|4|7|3|2|1|\n|port long||||2|2|1|\n|stinger||||1|||\n" +
		"2026-03-05|ALL|06:00-09:30|4|7|2|1|1|\n|stinger||||2|1|1|\n2026-03-09|ALL|06:00-08:00|4|7|0|0|0|\n" +
		"2026-03-12|ALL|05:30-09:00|5|7|3|1|1|one of an unknown rod\n|port long||||2|1|1|\n" +
		"2026-03-15|ALL|05:30-09:00|5|7|2|0|0|\n|port long||||2|||\n"
	for _, c := range []struct {
		name, rows string
		kinds      []string
		rest       string // bites that the fourth day counts beyond its rows; "" where it is not known
	}{
		{"parts", days, nil, "1"},
		{"a day of fewer", days + "2026-03-20|ALL|05:30-09:00|5|7|1|1|0|\n|port long||||2|1||\n", []string{"under off"},
			"1"},
		{"one day", "2026-03-02|ALL|06:00-09:00|4|7|3|2|1|\n|port long||||3|2|1|\n" +
			"2026-03-05|ALL|06:00-09:30|4|7|2|1|1|\n",
			[]string{"under"}, ""},
		{"a first line", strings.ReplaceAll(days, "|ALL|", "|starboard long|"), nil, ""},
	} {
		l := inferred(t, "log", head+c.rows)
		got := kinds(asked(t, l))
		for _, kind := range []string{"under", "under off"} {
			if slices.Contains(got, kind) != slices.Contains(c.kinds, kind) {
				t.Errorf("%s: asked %v, expected %v", c.name, got, c.kinds)
			}
		}
		if rest := l.Data()[0].Plan.Rest[plan.Cell{Row: 8, Index: 5}]; rest != c.rest {
			t.Errorf("%s: %q bites of the fourth day are its own, expected %q", c.name, rest, c.rest)
		}
	}
}

// TestNotCounted holds that each of a few rows that say that nobody counted their bites is asked about with its number,
// and many of them at once.
func TestNotCounted(t *testing.T) {
	text := "Date|In|Up|Lines|Bites|Hooked|Remarks"
	var aside []record.Problem
	for row := 2; row < 8; row++ {
		text += fmt.Sprintf("\n2026-07-%02d|06:00|10:00|4||2|plenty of knocks, lost count", row)
		aside = append(aside, record.Problem{Pos: record.Pos{Row: row, Col: 5}, Column: "Bites",
			Reason: record.NotCounted})
	}
	text += "\n2026-08-01|06:00|10:00|4|3|2|\n2026-08-02|06:00|10:00|4|1|1|"
	for n, want := range map[int]int{1: 1, 3: 3, 6: 1} {
		got := 0
		for _, q := range asked(t, inferred(t, "log", text), Stats{Aside: aside[:n]}) {
			if q.Kind == "not counted" {
				got++
			}
			if q.Kind == "not counted" && (n <= mostCells) != (len(q.Options) == 1) {
				t.Errorf("%d rows: options %v", n, q.Options)
			}
		}
		if got != want {
			t.Errorf("%d rows: %d questions, expected %d", n, got, want)
		}
	}
}
