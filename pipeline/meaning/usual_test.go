package meaning

import (
	"fmt"
	"testing"
)

// TestUsualOfASheet holds that what a sheet says is usual holds for its own stretches, and that one which says
// nothing takes what all the others say, and neither where they differ.
func TestUsualOfASheet(t *testing.T) {
	rows := "Date|In|Up|Bites\n2026-0%[1]d-03|06:00|08:00|2\n2026-0%[1]d-04|06:30|09:00|1\n2026-0%[1]d-09|07:00|09:00|0"
	for _, c := range []struct {
		above [3]string
		want  string
	}{
		{[3]string{"Normalmente 5 canas, 7 nudos", "Siempre 4 cañas", ""}, "[5 7 kn] [4 7 kn] [7 kn]"},
		{[3]string{"Normalmente 5 cañas", "", ""}, "[5] [5] [5]"},
		{[3]string{"usually 6 lines", "usually 6 lines", ""}, "[6] [6] [6]"},
		{[3]string{"usually 6 lines", "usually 4 lines", ""}, "[6] [4] []"},
	} {
		var sheets []string
		for i, text := range c.above {
			if text != "" {
				text += "\n\n"
			}
			sheets = append(sheets, fmt.Sprint("Page ", i+1), text+fmt.Sprintf(rows, i+5))
		}
		got := ""
		for i, u := range inferred(t, "log", nil, sheets...).Data() {
			var given []string
			for _, name := range []string{"lines_out", "speed_kn"} {
				for _, g := range u.Plan.Given {
					if g.Column.Name == name {
						given = append(given, g.Text)
					}
				}
			}
			if i > 0 {
				got += " "
			}
			got += fmt.Sprint(given)
		}
		if got != c.want {
			t.Errorf("%q: %s, expected %s", c.above, got, c.want)
		}
	}
}
