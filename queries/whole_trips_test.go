package queries_test

import (
	"slices"
	"testing"

	"wakeledger/pipeline"
	"wakeledger/queries"
)

// TestCountsOfWholeTrips: a row that counts the bites of a trip and a list of bites tell the
// same ones; what the row has over is added. Of the second trip the list misses one.
func TestCountsOfWholeTrips(t *testing.T) {
	dir := t.TempDir()
	s := open(t, pipeline.Config{Boat: "Tern"})
	load(t, s,
		writeText(t, dir, "outings.csv", "Trip,Date,Crew,Bites,Fish to the "+
			"boat\n1,2026-05-02,Ann,2,1\n2,2026-05-09,Bo,3,1\n3,2026-05-16,Ann,0,0\n"),
		writeText(t, dir, "stretches.csv", "Trip,Date,Lines in,Lines up,Knots,Lines\n1,2026-05-02,06:00,08:00,8,4\n"+
			"1,2026-05-02,08:30,10:00,7,4\n2,2026-05-09,06:30,09:30,8,5\n3,2026-05-16,06:00,09:00,8,4\n"),
		writeText(t, dir, "bites.csv", "Trip,Date,Time,What became of "+
			"it,Fish\n1,2026-05-02,07:10,boated,yellowfin\n1,2026-05-02,09:05,missed,\n"+
			"2,2026-05-09,08:00,boated,wahoo\n2,2026-05-09,08:40,lost,\n"))
	want := map[string][2]int64{"1": {2, 1}, "2": {3, 1}, "3": {0, 0}} // strikes, landed
	trips := answer(t, s, queries.AskTrips)
	for _, x := range trips {
		if got := [2]int64{x.Strikes, x.Landed}; got != want[x.Trip] {
			t.Errorf("trip %s: %v strikes and landed, expected %v", x.Trip, got, want[x.Trip])
		}
	}
	if len(trips) != len(want) {
		t.Errorf("%d trips, expected %d", len(trips), len(want))
	}
}

// TestRowOfSeveralStretches: the stretches of one row are of one trip, however long the boat lay between them; those
// of two rows are of two.
func TestRowOfSeveralStretches(t *testing.T) {
	s := open(t, pipeline.Config{Boat: "Tern"})
	load(t, s, writeText(t, t.TempDir(), "log.csv", "Date,AM in,AM up,AM rods,PM in,PM up,PM rods\n"+
		"2026-05-02,5:30,8:00,5,4:15,7:30,6\n2026-05-03,6:00,9:30,5,1:15,3:30,6\n2026-05-09,6:00,8:30,5,,,\n"+
		"2026-05-09,,,,5:00,7:00,6\n"))
	trips := answer(t, s, queries.AskTrips)
	var legs []int64
	for _, x := range trips {
		legs = append(legs, int64(x.Legs))
	}
	if !slices.Equal(legs, []int64{2, 2, 1, 1}) {
		t.Errorf("stretches of the trips: %v", legs)
	}
}
