package layout

import (
	"fmt"
	"strings"
	"testing"
)

// TestCopies holds that a sheet that says the same as another one is a copy: a long one whatever its name, a short one
// by its name alone.
func TestCopies(t *testing.T) {
	long := "Date|In|Out|Lines\n"
	for i := range 9 {
		long += fmt.Sprintf("2026-06-%02d|06:00|%02d:30|4\n", i+1, 8+i%3)
	}
	form := "Launched|05:00\nBeached|11:00\nCrew|Jo\nWind|calm\nLines in|06:00\nUp|10:00\nRods|4\nKnots|7\nBites|0"
	short := "In|Out|Lines\n06:00|08:00|4\n09:00|11:00|4"
	for _, c := range []struct {
		name, of, text, other string
		copied                bool
	}{
		{"Log (2)", "Log", short, short, true}, {"Copia de Log", "Log", short, short, true},
		{"log copy", "Log", short, short, true}, {"13 Jun", "12 Jun", short, short, false},
		{"2027", "2026", long, long, true}, {"Log (2)", "Log", long, strings.Replace(long, "06:00", "06:10", 1), false},
		{"13 Jun", "12 Jun", form, form, false}, {"12 Jun (2)", "12 Jun", form, form, true},
		{"Log 2", "Logbook", short, short, false}, {"Log fish", "Log", short, short, false},
	} {
		a, b := take(t, c.other), take(t, c.text)
		a.Grid.Info.Name, b.Grid.Info.Name = c.of, c.name
		own, copies := Copies([]*Sheet{a, b})
		if got := len(copies) == 1 && copies[0].Sheet == b && copies[0].Of == a && len(own) == 1; got != c.copied {
			t.Errorf("%q and %q: %d copies, %d of their own", c.of, c.name, len(copies), len(own))
		}
	}
}
