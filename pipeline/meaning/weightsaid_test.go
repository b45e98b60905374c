package meaning

import (
	"strings"
	"testing"
)

// TestBareWeights holds that bare numbers behind fish are weights where the log says the unit of its weights, and else
// are nothing; and that a log that says it of a scale has them from there.
func TestBareWeights(t *testing.T) {
	const rows = "Boat log||||||\nWeights are in kg from the port scale.||||||\n\nDate|In|Up|Lines|Knots|Bites|Fish\n" +
		"2026-05-09|06:00|09:00|5|8|2|mahi 7.4; wahoo 18.2\n2026-05-10|06:00|09:00|5|8|1|mahi 6\n" +
		"2026-05-11|06:00|09:00|5|8|1|wahoo 21.5\n2026-05-16|06:00|10:00|5|7|3|2 mahi; wahoo 16.4"
	for what, c := range map[string]struct {
		rows, said string
	}{
		"said":     {rows, "kg"},
		"not said": {strings.Replace(rows, "Weights are in kg from the port scale.", "Home port: the cove", 1), ""},
		"counts":   {strings.NewReplacer("7.4", "7", "18.2", "1", "21.5", "2", "16.4", "1").Replace(rows), ""},
		"units of their own": {strings.NewReplacer("7.4", "7.4 lb", "18.2", "18.2 lb", "21.5", "21.5 lb").Replace(rows),
			""},
	} {
		p := planOf(t, "", c.rows)
		got := "no list"
		for _, b := range p.Bindings {
			if b.Heading == "Fish" {
				got = b.Said
			}
			if b.Heading == "Fish" && what == "said" && !b.Scaled {
				t.Error("its weights are from no scale")
			}
		}
		if got != c.said {
			t.Errorf("%s: %q, want %q", what, got, c.said)
		}
	}
}
