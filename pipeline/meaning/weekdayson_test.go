package meaning

import (
	"testing"

	"wakeledger/pipeline/layout"
)

// TestWeekdaysOn holds that the stretches of a sheet for one outing of several days are of the days of the week that
// they say, and its bites of those of their stretches.
func TestWeekdaysOn(t *testing.T) {
	const outing = "TRIP %|\nLeft|2026-06-0#|04:10\n\nLeg|Weekday|In|Up|Lines|Knots\n1|Fri|06:10|09:00|4|7\n" +
		"2|Sat|06:20|10:40|5|7.5\n3|Sat|11:00|12:40|5|7\n\nBites|\nLeg|Time|Fish|Fate|cm\n" +
		"1|06:50|wahoo|lost|\n2|07:40|bonito|landed|61\ndrift|02:00|mako|let go|\n3|11:30|wahoo|landed|99\n"
	text := func(n, day string) string {
		out := []byte{}
		for _, c := range []byte(outing) {
			switch c {
			case '%':
				out = append(out, n...)
			case '#':
				out = append(out, day...)
			default:
				out = append(out, c)
			}
		}
		return string(out)
	}
	l := inferred(t, "log", nil, "A", text("1", "5"), "B", text("2", "4"))
	found := 0
	for _, u := range l.Data() {
		date := u.Plan.Find("date")
		if u.Block.Shape == layout.Form || date == nil {
			continue
		}
		found++
		want := map[string]string{"fri": "2026-06-05", "sat": "2026-06-06"}
		if u.Plan.Find("start_s") == nil {
			want = map[string]string{"1": "2026-06-05", "2": "2026-06-06", "3": "2026-06-06"}
		}
		for name, day := range want {
			if date.By[name] != day {
				t.Errorf("%s: %s is %q, expected %s", u.Plan.Name, name, date.By[name], day)
			}
		}
		if trip := map[string]string{"A": "1", "B": "2"}[u.Plan.Name]; !givesTrip(u, trip) {
			t.Errorf("%s: trip %s is not given", u.Plan.Name, trip)
		}
	}
	if found != 4 {
		t.Errorf("%d tables with days, expected 4", found)
	}
	if by := weekdaysFrom(20609, []string{"Sat", "Fri"}); by != nil { // 2026-06-05
		t.Errorf("days that go back: %v", by)
	}
}

func givesTrip(u *Understood, number string) bool {
	for _, g := range u.Plan.Given {
		if g.Column.Name == "trip" && g.Text == number {
			return true
		}
	}
	return false
}

// TestNobodyTrolled holds that the fish of a sheet whose stretches say that nobody trolled were not trolled.
func TestNobodyTrolled(t *testing.T) {
	const bites = "\nFish|\nTime|Fish|Fate|cm\n06:50|wahoo|lost|\n07:40|bonito|landed|61\n08:10|bonito|landed|58\n"
	const head = "Left|2026-06-05|04:10\n\nStretch|In|Up|Lines|Knots|Remarks\n"
	l := inferred(t, "log", nil, "A", head+"1|06:10|09:00|4|7|\n2|09:20|10:40|5|7.5|\n"+bites,
		"B", head+"|||||did not troll\n"+bites)
	for _, u := range l.Data() {
		if u.Plan.Find("outcome") != nil && (len(u.Plan.Apart) == 3) != (u.Plan.Name == "B") {
			t.Errorf("%s: %d bites were not trolled", u.Plan.Name, len(u.Plan.Apart))
		}
	}
}
