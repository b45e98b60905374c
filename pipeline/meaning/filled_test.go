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
		rows := heads + "\n2026-05-09|06:00|07:00|5|8|1|8\n2026-05-09|07:00|08:00|5||0|8\n2026-05-09|08:00|09:00|5|6.5|0|6.5\n" +
			"2026-05-16|06:00|07:00|5|7|1|7\n2026-05-16|07:00|08:00|5||0|7\n2026-05-16|08:00|09:00|5||2|7\n2026-05-23|06:00|08:00|5|7.5|0|" + c.last
		b := inferred(t, "log.csv", nil, "Log", rows).Blocks[0].Plan.Find("speed_kn")
		if b == nil || b.Heading != c.want {
			t.Errorf("%s: the speed is read from %+v, expected %q", c.what, b, c.want)
		}
	}
}
