package reports

import (
	"strings"
	"testing"

	"wakeledger/queries"
)

// A current is said with its interval; without one, that there is none and why;
// and where the interval holds 0, that it may be none. Weak ones are not said.
func TestCurrentInWords(t *testing.T) {
	kn := func(v float64) *float64 { return &v }
	date := "2026-07-04"
	row := func(trip string, current float64, lo, hi *float64) queries.Current {
		return queries.Current{Trip: trip, Boat: "Tern", Date: &date, CourseDeg: 30, OutKn: 9 - current,
			BackKn: 9 + current, CurrentKn: current,
			CurrentLo: lo, CurrentHi: hi, SetDeg: 210, OutRuns: 2, BackRuns: 1}
	}
	s := &season{}
	s.Tracks.Currents = []queries.Current{row("A", .8, kn(.5), kn(1.1)), row("B", .8, nil, nil),
		row("C", .4, kn(-.2), kn(1)), row("D", .57, kn(.55), kn(.59)), row("E", .1, kn(0), kn(.2))}
	notes := s.currentNotes()
	for i, want := range []string{
		"4 July: 8.2 kn towards north-east and 9.8 kn towards south-west over the same ground (2 runs out, 1 back): " +
			"a current of about 0.8 kn setting south-west, if the throttle was the same both ways (95 %: 0.5 to " +
			"1.1 kn).",
		"setting south-west, if the throttle was the same both ways; how sure that is cannot be told, because no " +
			"trip ran there a second time.",
		"not told apart from none (95 %: 0.2 kn to the north-east to 1.0 kn to the south-west).",
		"a current of about 0.57 kn setting south-west, if the throttle was the same both ways (95 %: 0.55 to " +
			"0.59 kn).",
	} {
		if len(notes) != 4 || !strings.HasSuffix(notes[i], want) {
			t.Fatalf("%q, want the %d. to end with %q", notes, i+1, want)
		}
	}
}
