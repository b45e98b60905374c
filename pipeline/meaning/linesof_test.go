package meaning

import (
	"testing"

	"wakeledger/pipeline/plan"
)

// TestLinesOf holds that a table of lures with their own hours is of the lines of the trips' stretches where it has
// their hours together, and is no such where the trips were longer; and that a crew is no number of lines.
func TestLinesOf(t *testing.T) {
	const lures = "Trip no|Position|Lure|In|Out\n1|short port|squid|06:00|08:00\n1|short port|feather|08:00|10:00\n" +
		"1|long stbd|diver|06:00|09:30\n2|short port|squid|06:00|09:00\n2|long stbd|diver|06:00|07:00\n" +
		"3|short port|squid|05:30|09:30"
	for up, want := range map[string]plan.Kind{"10:00": plan.Lines, "13:00": plan.Flat} {
		trips := "Trip no|Date|Lines in|Lines up|Speed (kn)|Crew\n1|2026-06-01|06:00|" + up + "|7|4\n" +
			"2|2026-06-03|06:00|09:00|8.5|3\n3|2026-06-05|05:30|09:30|7|2"
		for _, u := range inferred(t, "log", nil, "Trips", trips, "Lures used", lures).Data() {
			switch {
			case u.Plan.Name == "Lures used" && u.Plan.Kind != want:
				t.Errorf("up at %s: %s, expected %s", up, u.Plan.Kind, want)
			case u.Plan.Name == "Trips" && u.Plan.Binds("lines_out"):
				t.Error("the crew is no number of lines")
			}
		}
	}
}
