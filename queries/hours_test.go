package queries_test

import (
	"math"
	"testing"

	"wakeledger/pipeline"
	"wakeledger/queries"
)

// TestHoursWithoutAnEnd: hours that a log writes down are as they are, in winter, in summer and on
// the night on which the clock is put back; a leg that has both its clock times on that night lasted
// an hour more than they say.
func TestHoursWithoutAnEnd(t *testing.T) {
	for _, c := range []struct {
		heads, night string
		want         float64
	}{
		{"Date,Start,Hours,Lines,Bites\n2026-01-10,06:00,2,4,1\n2026-07-10,06:00,2,4,1\n",
			"2026-10-31,22:00,5,4,1\n", 5},
		{"Date,Start,End,Lines,Bites\n2026-01-10,06:00,08:00,4,1\n2026-07-10,06:00,08:00,4,1\n",
			"2026-10-31,22:00,02:30,4,1\n", 5.5},
	} {
		dir := t.TempDir()
		s := open(t, pipeline.Config{Boat: "Tern", Zone: "America/Halifax"})
		load(t, s, writeText(t, dir, "season.csv", c.heads+c.night))
		trips := answer(t, s, queries.AskTrips)
		if len(trips) != 3 {
			t.Fatalf("%d trips, expected 3", len(trips))
		}
		for i, want := range []float64{2, 2, c.want} {
			if got := trips[i].BoatHours; math.Abs(got-want) > 1e-6 {
				t.Errorf("trip %d of %q: %v hours, expected %v", i+1, c.heads, got, want)
			}
		}
	}
}
