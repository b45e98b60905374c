package proof

import (
	"slices"
	"testing"
)

// TestSheetHasAnotherDay holds that a sheet whose day is not that of its name, as that of the others is, is asked
// about, and names that tell no day are not.
func TestSheetHasAnotherDay(t *testing.T) {
	page := func(day string) string {
		return "Date|" + day + "\nWhere|Banks\n\nSETS\nSet|In|Up|Rods|Knots\n1|06:00|08:00|4|7\n2|09:00|11:00|4|7"
	}
	for _, c := range []struct {
		names, days [4]string
		want        bool
	}{
		{[4]string{"Jun 3", "Jun 7", "Jun 12", "Jun 20"},
			[4]string{"2026-06-03", "2026-06-07", "2026-06-12", "2026-06-12"}, true},
		{[4]string{"3 juin", "7 juin", "12 juin", "20 juin"},
			[4]string{"2026-06-03", "2026-06-07", "2026-06-12", "2026-06-20"}, false},
		{[4]string{"Jun 3", "Jun 7", "Reef", "Jun 20"},
			[4]string{"2026-06-03", "2026-06-07", "2026-06-12", "2026-06-20"}, false},
		{[4]string{"Jun 3", "Jun 7", "Jul 12", "Jul 20"},
			[4]string{"2026-06-03", "2026-06-07", "2026-06-12", "2026-06-20"}, false},
	} {
		var sheets []string
		for i, name := range c.names {
			sheets = append(sheets, name, page(c.days[i]))
		}
		if got := slices.Contains(kinds(asked(t, inferred(t, sheets...))), "sheet day"); got != c.want {
			t.Errorf("%v with %v: asked %t", c.names, c.days, got)
		}
	}
}
