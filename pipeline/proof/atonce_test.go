package proof

import (
	"slices"
	"testing"
)

// TestAtOnce holds that two tables with stretches at the same time of one day are asked about, and that a stretch that
// both have alike is not where one of them alone counts its bites.
func TestAtOnce(t *testing.T) {
	const head = "Date|Start|Stop|Rods|Knots|Bites\n"
	l := inferred(t, "Mine", head+"2026-06-03|06:00|08:00|4|8|2\n2026-06-04|06:00|08:00|4|8|1",
		"His", head+"2026-06-03|07:00|09:00|4|8|2\n2026-06-07|06:00|08:00|4|8|1")
	for _, c := range []struct {
		what       string
		to, counts int64
		want       bool
	}{{"overlap", 8, 3, true}, {"the same, both counted", 7, 3, true}, {"the same, counted once", 7, 0, false}} {
		one := Stats{Stretches: 2, Hours: 4, Strikes: 3, ByCount: 3, spans: map[string][]span{"3": {{6, 7, 2, "", ""}}}}
		other := Stats{Stretches: 2, Hours: 4, Strikes: int(c.counts), ByCount: int(c.counts),
			spans: map[string][]span{"3": {{6, c.to, 2, "", ""}}, "7": {{6, 7, 3, "", ""}}}}
		if got := slices.Contains(kinds(asked(t, l, one, other)), "at once"); got != c.want {
			t.Errorf("%s: asked %t", c.what, got)
		}
	}
}
