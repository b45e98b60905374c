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

// TestLinesOfHours: the lures of a row that has a column for each place, and hours without a clock, ran for these
// hours, once; where the row's number of lines cannot be read the lures that it names are its lines.
func TestLinesOfHours(t *testing.T) {
	const uncounted = "Date,Hours,Short rigger,Long rigger,Shotgun,Strikes\n"
	const counted = "Date,Hours,Lines,Short rigger,Long rigger,Shotgun,Strikes\n"
	for name, c := range map[string]struct {
		text             string
		hours, lineHours float64
	}{
		"counted": {counted + "2026-06-01,4,3,green plug,blue plug,red skirt,2\n" +
			"2026-06-03,5,2,green plug,,red skirt,1\n", 9, 22},
		"not counted": {uncounted + "2026-06-01,4,green plug,blue plug,red skirt,2\n" +
			"2026-06-03,5,green plug,,red skirt,1\n", 9, 22},
		"unreadable": {counted + "2026-06-01,4,4-5,green plug,blue plug,red skirt,2\n" +
			"2026-06-03,5,2,green plug,,red skirt,1\n", 9, 22},
		"two stretches of a day": {counted + "2026-06-01,4,3,green plug,blue plug,red skirt,2\n" +
			"2026-06-01,1,2,,blue plug,red skirt,1\n2026-06-03,5,2,green plug,,red skirt,1\n", 10, 24},
	} {
		t.Run(name, func(t *testing.T) {
			s := open(t, pipeline.Config{Boat: "Tern", Zone: "America/Halifax"})
			load(t, s, writeText(t, t.TempDir(), "season.csv", c.text))
			trips := answer(t, s, queries.AskTrips)
			hours, lineHours := 0.0, 0.0
			for _, trip := range trips {
				hours, lineHours = hours+trip.BoatHours, lineHours+trip.LineHours
			}
			if len(trips) != 2 || hours != c.hours || lineHours != c.lineHours {
				t.Errorf("%d trips, %v hours, %v line-hours: expected 2, %v, %v", len(trips), hours, lineHours,
					c.hours, c.lineHours)
			}
		})
	}
}

// TestHoursOfEachLure: lures that were changed meanwhile, each with its own hours, are lines of the trip's one stretch:
// the boat's hours have none of them twice.
func TestHoursOfEachLure(t *testing.T) {
	const trips = "Trip no,Date,Lines in,Lines up,Speed (kn),Crew\n1,2026-06-01,06:00,10:00,7,4\n" +
		"2,2026-06-03,06:00,09:00,8.5,3\n3,2026-06-05,05:30,09:30,7,2\n4,2026-06-08,,,,3\n"
	const lures = "Trip no,Position,Lure,In,Out\n1,short port,squid,06:00,08:00\n1,short port,feather,08:00,10:00\n" +
		"1,long stbd,diver,06:00,09:30\n2,short port,squid,06:00,09:00\n2,long stbd,diver,06:00,07:00\n" +
		"2,long stbd,diver,07:00,09:00\n3,short port,squid,05:30,09:30\n"
	const bites = "Trip no,Time,Position,Lure,Result,Species\n1,07:10,short port,squid,Missed,\n" +
		"1,08:40,short port,feather,Boated,wahoo\n2,06:30,long stbd,diver,Lost,\n" +
		"3,07:00,short port,squid,Boated,dorado\n"
	dir, s := t.TempDir(), open(t, pipeline.Config{Boat: "Tern", Zone: "America/Halifax"})
	load(t, s, writeText(t, dir, "trips.csv", trips), writeText(t, dir, "lures.csv", lures),
		writeText(t, dir, "bites.csv", bites))
	hours, lineHours, strikes := 0.0, 0.0, 0
	for _, trip := range answer(t, s, queries.AskTrips) {
		hours, lineHours, strikes = hours+trip.BoatHours, lineHours+trip.LineHours, strikes+int(trip.Strikes)
	}
	if hours != 11 || lineHours != 17.5 || strikes != 4 {
		t.Errorf("%v hours, %v line-hours, %d strikes: expected 11, 17.5 and 4", hours, lineHours, strikes)
	}
}
