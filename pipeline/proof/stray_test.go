package proof

import (
	"slices"
	"strings"
	"testing"
)

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

// TestBesideForms holds that figures beside a form are asked about where nothing was made of them.
func TestBesideForms(t *testing.T) {
	for text, want := range map[string]bool{
		"Date|2026-06-03\nStart|06:00|3|4|5\nEnd|09:00|7|8|9\nRods|4|11\nKnots|8|12\nBites|2": true,
		"Date|2026-06-03\nStart|06:00\nEnd|09:00\nRods|4\nKnots|8\nBites|2":                   false,
	} {
		l := inferred(t, "Day", text)
		got := slices.ContainsFunc(asked(t, l), func(q Question) bool {
			return strings.Contains(q.Text, "Beside the labels")
		})
		if got != want {
			t.Errorf("%q: asked %t", text, got)
		}
	}
}
