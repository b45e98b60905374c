package proof

import (
	"slices"
	"testing"

	"wakeledger/pipeline/layout"
)

// TestLooseClocks holds that clock times beside the tables are asked about where a log has bites and no stretch.
func TestLooseClocks(t *testing.T) {
	for _, c := range []struct {
		stretches int
		texts     []string
		want      bool
	}{{0, []string{"0635", "0845", "0535"}, true}, {1, []string{"0635", "0845", "0535"}, false},
		{0, []string{"Gear in water", "calm", "Pete"}, false}} {
		l := inferred(t, "Bites", "Date|Time|Species|Outcome\n2026-06-03|08:09|wahoo|landed\n"+
			"2026-06-04|09:10|wahoo|lost")
		for i, text := range c.texts {
			l.Sheets[0].Notes = append(l.Sheets[0].Notes, layout.Note{Row: 20 + i, Text: text})
		}
		qs := asked(t, l, Stats{Strikes: 2, Listed: 2, Stretches: c.stretches})
		got := slices.ContainsFunc(qs, func(q Question) bool { return q.About == "clock times" })
		if got != c.want {
			t.Errorf("%v beside %d stretches: asked %t, expected %t", c.texts, c.stretches, got, c.want)
		}
	}
}
