package pipeline

import (
	"context"
	"testing"
)

// loadedAs loads one log of a text and gives its trips, hours, line-hours, strikes and fish with a measure.
func loadedAs(t *testing.T, text string) (got [5]float64) {
	t.Helper()
	ctx := context.Background()
	s := season(t)
	if _, err := s.Load(ctx, written(t, "log.csv", text)); err != nil {
		t.Fatal(err)
	}
	if err := s.Derive(ctx); err != nil {
		t.Fatal(err)
	}
	for i, query := range []string{"SELECT count(*) FROM trip", "SELECT sum(hours) FROM leg",
		"SELECT sum(hours * lines_out) FROM leg", "SELECT count(*) FROM strike",
		"SELECT count(*) FROM fish WHERE length_cm > 0"} {
		got[i] = totalOf(t, s, query)
	}
	return got
}

// A day's hours on each row of its bites count once; a stop that the remark of one row tells is taken off, and a bite
// on another tackle is left out.
func TestHoursOnEveryRow(t *testing.T) {
	const head, day = "Day,Lines in,Lines up,Rods,Knots,Bite at,Lure,Fish,What happened,Length cm,Remarks\n",
		"2026-06-03,06:00,12:00,4,8,"
	got := loadedAs(t, head+day+"07:10,red jet,wahoo,boated,120,calm\n"+
		day+"08:30,blue feather,,missed,,lines up 9:00 to 10:00 to drop bottom\n"+
		day+",bottom rig,snapper,boated,44,\n"+day+"11:15,red jet,dorado,lost,,\n"+
		"2026-06-04,06:00,09:00,4,7,06:40,red jet,wahoo,boated,98,\n2026-06-05,06:00,09:00,4,7,,,,nothing,,\n")
	if want := [5]float64{3, 11, 44, 4, 2}; got != want {
		t.Errorf("trips, hours, line-hours, strikes, fish: %v, expected %v", got, want)
	}
}

// The end of a stretch past midnight is "30" where clocks have no colon.
func TestEndPastMidnight(t *testing.T) {
	got := loadedAs(t, "Date,Lines in,Lines up,Rods,Knots,Bites\n2026-06-03,1630,1845,4,7,2\n"+
		"2026-06-03,2315,30,4,5,1\n2026-06-05,0600,0930,4,7,0\n2026-06-06,0545,0915,4,7,1\n")
	if want := [5]float64{3, 10.5, 42, 4, 0}; got != want {
		t.Errorf("trips, hours, line-hours, strikes, fish: %v, expected %v", got, want)
	}
}

// A fish of a list that says its day alone is one that a trip of that day counted, also where the boat was out twice.
func TestFishOfADayWithTwoTrips(t *testing.T) {
	got := loadedAs(t, "Trip,Date,Hours,Rods,Knots,Bites,Boated,Lost\n1,2026-06-03,3,4,7,2,1,1\n"+
		"2,2026-06-04,2,4,7,1,0,0\n3,2026-06-04,4,4,6,3,2,0\n4,2026-06-09,5,4,7,2,1,1\n\n"+
		"Date,Species,Length cm,Kg\n2026-06-03,bonito,42,1.1\n2026-06-04,bonito,44,\n2026-06-04,dorado,71,3.2\n"+
		"2026-06-09,bonito,40,1.0\n")
	if want := [5]float64{4, 14, 56, 8, 4}; got != want {
		t.Errorf("trips, hours, line-hours, strikes, fish: %v, expected %v", got, want)
	}
}

// Lines that were changed at a time, with a comma before what they were then.
func TestLinesChangedAt(t *testing.T) {
	got := loadedAs(t, "Date,In,Up,Lines,Knots,Bites\n2026-06-03,06:00,12:00,5,7,2\n2026-06-09,06:00,12:00,5,7,2\n"+
		"2026-06-10,06:00,12:00,5,7,2\n2026-06-04,06:00,12:00,\"5, then 3 from 10:00\",7,2\n"+
		"2026-06-11,06:00,12:00,5,7,2\n")
	if want := [5]float64{5, 30, 146, 10, 0}; got != want {
		t.Errorf("trips, hours, line-hours, strikes, fish: %v, expected %v", got, want)
	}
}

// Rows of bites name only the lines that were struck, as other stretches show: where a stretch does not say how many
// were out, nobody knows. Rows that name every line tell it.
func TestLinesOnlyStruckAreNamed(t *testing.T) {
	const head, bites = "Trip,Date,Lines in,Lines up,Rods,Knots,Bite at,Rod,Fish,What happened,Length cm\n",
		"1,2026-06-03,06:00,08:00,4,8,07:10,port,wahoo,boated,120\n" +
			"1,2026-06-03,06:00,08:00,4,8,07:30,centre,,missed,\n" +
			"2,2026-06-05,06:00,09:00,5,7,06:40,port,dorado,boated,80\n"
	got := loadedAs(t, head+bites+"3,2026-06-09,06:00,09:00,,7,06:20,port,dorado,boated,71\n"+
		"3,2026-06-09,06:00,09:00,,7,08:20,centre,dorado,lost,\n")
	if want := [5]float64{3, 8, 23, 5, 3}; got != want {
		t.Errorf("trips, hours, line-hours, strikes, fish: %v, expected %v", got, want)
	}
}

// A remark tells how many lines were out that day, and one of a line more than usual tells no number.
func TestOneLineMore(t *testing.T) {
	const head = "\"Normally 4 rods, 7 kn\"\n\nDate,Lines in the water,Bites,Remarks\n2026-06-03,06:00-08:00,1,\n" +
		"2026-06-05,06:00-07:00 / 08:00-10:00,0,calm\n2026-06-07,06:00-09:00,2,\""
	for remark, want := range map[string]float64{"6 rods all day": 38, "1 rod more aft, 5 rods": 35,
		"1 rod more aft": 32} {
		got := loadedAs(t, head+remark+"\"\n")
		if want := [5]float64{3, 8, want, 3, 0}; got != want {
			t.Errorf("%s: trips, hours, line-hours, strikes, fish: %v, expected %v", remark, got, want)
		}
	}
}

// A stretch whose bites came on more lures than lines were out had lures changed: the number written holds. A fish
// that only looked is no bite, also on a stretch's first row, nor is one from the shore.
func TestLuresChangedOnAStretch(t *testing.T) {
	got := loadedAs(t, "Trip,Date,Lines in,Lines up,Rods,Knots,Bite at,Fish,What happened,Length cm,Lure,Remarks\n"+
		"1,2026-06-03,06:00,08:00,2,8,06:10,wahoo,boated,120,red jet,\n,,,,,,06:40,dorado,lost,,green plug,\n"+
		",,,,,,07:30,tuna,boated,66,blue feather,\n2,2026-06-05,06:00,09:00,4,7,06:40,sailfish,just looked,,red jet,\n"+
		",,,,,,07:30,sailfish,\"siguió y no comió, followed only\",,teaser,\n,,,,,,08:10,dorado,solo tocó,,red jet,\n"+
		",2026-06-07,,,,,,snapper,let go,31,,\"day off, from the rocks\"\n")
	if want := [5]float64{2, 5, 16, 4, 2}; got != want {
		t.Errorf("trips, hours, line-hours, strikes, fish: %v, expected %v", got, want)
	}
}
