package proof

import (
	"testing"

	"wakeledger/pipeline/entry"
)

// TestStaggeredLines holds that a line that goes in while another is out is asked about, for the boat's hours have
// that time twice, and that lines which go in together, or one behind the other, are not.
func TestStaggeredLines(t *testing.T) {
	row := func(line string, from, to int64) Row {
		return Row{Values: map[string]entry.Value{"start_s": entry.OfInt(from * 3600), "end_s": entry.OfInt(to * 3600),
			"line": entry.OfText(line)}}
	}
	for _, c := range []struct {
		rows []Row
		want int
	}{
		{[]Row{row("port", 6, 10), row("centre", 6, 8), row("bow", 6, 10)}, 0},
		{[]Row{row("port", 6, 8), row("centre", 8, 10)}, 0},
		{[]Row{row("port", 6, 10), row("centre", 6, 8), row("centre", 8, 10)}, 1},
	} {
		s := Stats{spans: map[string][]span{}, Days: map[string]bool{}}
		for i, r := range c.rows {
			r.Num = int64(i + 2)
			s.effort(r, "2026-06-03")
		}
		if got := len(s.Staggered); got != c.want {
			t.Errorf("%v: %d, expected %d", c.rows, got, c.want)
		}
	}
}
