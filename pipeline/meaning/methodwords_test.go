package meaning

import "testing"

// TestMethodWords holds that a word beside trolling is no trolling where its rows have neither speed nor lines, in
// the log's table of fish too, and that one with a speed, or of one row alone, is asked about.
func TestMethodWords(t *testing.T) {
	for what, c := range map[string]struct {
		row, again string
		want       bool
	}{
		"neither speed nor lines": {"|||", "|||", true},
		"a speed in one of them":  {"|||", "||6|", false},
		"one row":                 {"|||", "", false},
	} {
		rows := "Trip|Date|Start|End|Lines|Knots|How\n1|2026-06-03|06:00|08:00|4|7|Troll\n" +
			"1|2026-06-03|09:00|11:00" + c.row + "Reef\n2|2026-06-10|06:00|08:00|4|7|Troll\n" +
			"3|2026-06-17|06:00|08:00|5||Troll\n"
		if c.again != "" {
			rows += "4|2026-06-20|06:00|08:00" + c.again + "Reef\n"
		}
		l := inferred(t, "log", nil, "Days", rows+"5|2026-06-24|06:00|08:00|5|8|Troll", "Fish",
			"Trip|Time|Fish|Result|How\n1|06:40|wahoo|kept|Troll\n1||snapper|kept|Reef\n2|07:10|dorado|kept|Troll")
		for _, u := range l.Data() {
			m := u.Plan.Find("method")
			if m == nil {
				t.Errorf("%s: no method: %s", what, summary(u.Plan))
			} else if got := m.Codes["reef"] != ""; got != c.want {
				t.Errorf("%s: no trolling %v, expected %v: %s", what, got, c.want, summary(u.Plan))
			}
		}
	}
}

// TestTripsOfOtherWays holds that a trip of which all stretches were fished in another way is none, where the
// stretches have no names.
func TestTripsOfOtherWays(t *testing.T) {
	l := inferred(t, "log", nil, "Days", "Trip|Date|Start|End|Lines|Knots|Method\n1|2026-06-03|06:00|08:00|4|7|troll\n"+
		"2|2026-06-10|||||bottom\n3|2026-06-17|06:00|08:00|5|8|troll\n3|2026-06-17|||||bottom\n"+
		"4|2026-06-24|06:00|08:00|5|8|troll", "Costs", "Date|Trip|Fuel\n2026-06-03|1|40\n2026-06-10|2|30\n"+
		"2026-06-17|3|55\n2026-06-24|4|41")
	for _, u := range l.Data() {
		if u.Plan.Name == "Costs" && (len(u.Plan.Apart) != 1 || !u.Plan.Apart[3]) {
			t.Errorf("rows apart: %v, expected row 3 alone", u.Plan.Apart)
		}
	}
}
