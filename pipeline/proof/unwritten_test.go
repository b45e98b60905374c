package proof

import (
	"slices"
	"testing"
)

// TestUnwritten holds that totals rest on a question where the log says which bites nobody wrote down.
func TestUnwritten(t *testing.T) {
	const rows = "\n\nDate|In|Up|Lines|Knots|Bites\n2026-06-03|06:00|09:00|4|7|2\n2026-06-04|06:00|09:00|4|7|1"
	for text, want := range map[string]string{"Misses are not counted.": "strikes", "Trolled each day.": ""} {
		got := ""
		for _, q := range asked(t, inferred(t, "Runs", text+rows), Stats{Stretches: 2, Hours: 6, Strikes: 3}) {
			if q.Kind == "unwritten" && slices.Contains(q.Effect, "strikes") {
				got = "strikes"
			}
		}
		if got != want {
			t.Errorf("%q: %q asked about, expected %q", text, got, want)
		}
	}
}
