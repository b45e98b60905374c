package proof

import (
	"slices"
	"testing"
)

// TestOnlyTrips asks about a log of which only the days of trips were used, with columns beside them that were not
// understood, and about none that tells hours, or has nothing else.
func TestOnlyTrips(t *testing.T) {
	const days = "2026-06-03|05:15|14:30|o K58 W|calm\n2026-06-05|05:30|14:00|K64 x x|\n2026-06-07|06:00|13:00|o|calm"
	for _, c := range []struct {
		head string
		want bool
	}{{"Date|Left|Home|Shorthand|Crew", true}, {"Date|Left|Home|Wind|Remarks", false}} {
		l := inferred(t, "log", c.head+"\n"+days)
		qs := asked(t, l)
		if got := slices.ContainsFunc(qs, func(q Question) bool { return q.Kind == "only trips" }); got != c.want {
			t.Errorf("%s: asked are %v", c.head, kinds(qs))
		}
		hours := asked(t, l, Stats{Stretches: 3, Hours: 12})
		if slices.ContainsFunc(hours, func(q Question) bool { return q.Kind == "only trips" }) {
			t.Errorf("%s: asked of a log with hours: %v", c.head, kinds(hours))
		}
	}
}
