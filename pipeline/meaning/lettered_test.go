package meaning

import (
	"testing"

	"wakeledger/pipeline/plan"
)

// TestLettered holds that 4a and 4b of one day are stretches of trip 4, in the table of strikes too, and
// that letters which are not parts of a day stay trips.
func TestLettered(t *testing.T) {
	const heads, hits = "Trip|Date|Start|End|Lines|Knots", "Trip|Date|Time|Species|Result"
	strikes := hits +
		"\n2|2026-05-09|06:40|wahoo|landed\n3b|2026-05-16|10:10|tuna|lost\n3a|2026-05-16|06:10|tuna|missed"
	for _, c := range []struct {
		what, rows, want string
	}{
		{"parts",
			"\n2|2026-05-09|06:00|09:00|5|8\n3a|2026-05-16|06:00|09:00|5|8\n3b|2026-05-16|09:30|11:00|2|9\n" +
				"4|2026-05-23|06:00|09:00|5|8", "3"},
		{"the day written once",
			"\n2|2026-05-09|06:00|09:00|5|8\n3a|2026-05-16|06:00|09:00|5|8\n3b||09:30|11:00|2|9\n" +
				"4|2026-05-23|06:00|09:00|5|8", "3"},
		{"two days",
			"\n2|2026-05-09|06:00|09:00|5|8\n3a|2026-05-16|06:00|09:00|5|8\n3b|2026-05-17|09:30|11:00|2|9\n" +
				"4|2026-05-23|06:00|09:00|5|8", "3b"},
		{"a bare number beside",
			"\n2|2026-05-09|06:00|09:00|5|8\n3|2026-05-16|06:00|09:00|5|8\n3b|2026-05-16|09:30|11:00|2|9\n" +
				"4|2026-05-23|06:00|09:00|5|8", "3b"},
	} {
		l := inferred(t, "log.csv", nil, "Outings", heads+c.rows, "Hits", strikes)
		for _, u := range l.Data() {
			trip := u.Plan.Find("trip")
			if trip == nil {
				t.Fatalf("%s: %q has no trip", c.what, u.Plan.Name)
			}
			got := "3b"
			if trip.By != nil {
				got = trip.By["3b"]
			}
			if got != c.want {
				t.Errorf("%s: 3b of %q is of trip %q, expected %q", c.what, u.Plan.Name, got, c.want)
			}
			if leg := u.Plan.Find("leg"); u.Plan.Parts && u.Plan.Kind == plan.Strikes &&
				(leg == nil || leg.By["3b"] != "3b") {
				t.Errorf("%s: 3b names no stretch of its trip", c.what)
			}
		}
		l.OwnTrips()
		for _, u := range l.Data() {
			if u.Plan.Parts || u.Plan.Find("trip").By != nil || u.Plan.Binds("leg") && u.Plan.Find("leg").By != nil {
				t.Errorf("%s: letters are still parts in %q", c.what, u.Plan.Name)
			}
		}
	}
}
