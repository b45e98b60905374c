package meaning

import (
	"testing"
)

// TestFilledDown holds that a column with a setting's blanks filled from the row above is taken in its
// place, and that one which differs anywhere, or fills nothing, is not.
func TestFilledDown(t *testing.T) {
	const heads = "Date|Start|End|Lines|Knots|Strikes|held"
	for _, c := range []struct{ what, last, want string }{
		{"filled", "7.5", "held"},
		{"other figures", "6", "Knots"},
	} {
		rows := heads +
			"\n2026-05-09|06:00|07:00|5|8|1|8\n2026-05-09|07:00|08:00|5||0|8\n2026-05-09|08:00|09:00|5|6.5|0|6.5\n" +
			"2026-05-16|06:00|07:00|5|7|1|7\n2026-05-16|07:00|08:00|5||0|7\n2026-05-16|08:00|09:00|5||2|7\n" +
			"2026-05-23|06:00|08:00|5|7.5|0|" + c.last
		b := inferred(t, "log.csv", nil, "Log", rows).Blocks[0].Plan.Find("speed_kn")
		if b == nil || b.Heading != c.want {
			t.Errorf("%s: the speed is read from %+v, expected %q", c.what, b, c.want)
		}
	}
}

// TestHeld holds that blanks are as above where the log says so, of what it names alone.
func TestHeld(t *testing.T) {
	const rows = "Date|Start|End|Lines|Knots|Bites\n2026-05-09|06:00|07:00|5|8|1\n2026-05-09|07:00|08:00|||0\n" +
		"2026-05-09|08:00|09:00|4||0\n2026-05-16|06:00|07:00|5|7|1"
	for said, want := range map[string][2]bool{
		"Empty Lines or Knots: same as the row above.":             {true, true},
		"A new row when something changed. Blank knots = as above": {false, true},
		"blank = no change": {true, true}, "casella vuota = come sopra": {true, true},
		"Lines written only where it changed": {true, false}, "Knots nur wenn geändert": {false, true},
		"Same knots until a new one shows": {false, true}, "Knots: vazio = igual à de cima": {false, true},
		"Solo cambiamos señuelos": {}, "Blank bites: none. Weather as before.": {}, "Blank means not written down": {},
	} {
		p := inferred(t, "log.xlsx", nil, "Log", rows, "Notes", said).Blocks[0].Plan
		if got := [2]bool{p.Find("lines_out").Carried, p.Find("speed_kn").Carried}; got != want {
			t.Errorf("%q: lines and knots carried %v, expected %v", said, got, want)
		}
	}
}
