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

// TestPlannedTrips holds that the stretches of a table of plans are asked about.
func TestPlannedTrips(t *testing.T) {
	const rows = "Date|Start|Stop|Rods|Knots\n2026-06-03|06:00|08:00|4|8\n2026-06-04|06:00|08:00|4|8"
	for sheet, want := range map[string]bool{"Planned trips": true, "Trips": false} {
		qs := asked(t, inferred(t, sheet, rows), Stats{Stretches: 2, Hours: 4, Worked: []Worked{{2, "3"}, {3, "4"}}})
		if got := slices.Contains(kinds(qs), "planned"); got != want {
			t.Errorf("%s: asked %t: %v", sheet, got, kinds(qs))
		}
	}
}

// TestStruckOut holds that rows which are struck through are asked about.
func TestStruckOut(t *testing.T) {
	l := inferred(t, "Trips", "Date|Start|Stop|Rods|Knots\n2026-06-03|06:00|08:00|4|8\n2026-06-04|06:00|08:00|4|8")
	for _, want := range []bool{false, true} {
		l.Blocks[0].Block.Rows[1].Struck = want
		if got := slices.Contains(kinds(asked(t, l, Stats{Stretches: 2, Hours: 4})), "struck"); got != want {
			t.Errorf("a row struck through %t: asked %t", want, got)
		}
	}
}
