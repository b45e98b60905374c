package normalise_test

import (
	"strings"
	"testing"
)

// TestPastNight holds that lines which are out at midnight are up when the next day says so, and that lines which go
// in on the next day, or are not heard of for a night, leave those of the evening open.
func TestPastNight(t *testing.T) {
	const head = "Trip,Date,Time,Event,Lines,Speed kn\n4,2026-06-03,21:40,Lines in,5,7\n"
	for _, c := range []struct{ rows, told, aside string }{
		{"4,2026-06-04,00:20,Lines,4,\n4,2026-06-04,02:10,Lines up,,\n",
			"21:40-24:20 5 at 7 4; 24:20-26:10 4 at 7 4", ""},
		{"4,2026-06-04,06:10,Lines in,5,7\n4,2026-06-04,07:10,Lines up,,\n", "6:10-7:10 5 at 7 4", "2 "},
		{"4,2026-06-04,04:10,Lines up,,\n", "21:40-28:10 5 at 7 4", ""},
		{"4,2026-06-04,09:10,Lines up,,\n", "", "2 "},
		{"5,2026-06-04,00:20,Lines up,,\n", "", "2 "},
	} {
		told, aside := readEvents(t, "log.csv", head+c.rows)
		if got := strings.Join(told, "; "); got != c.told {
			t.Errorf("%q: %s; want %s", c.rows, got, c.told)
		}
		if got := strings.Join(aside, "; "); (got == "") != (c.aside == "") || !strings.HasPrefix(got, c.aside) {
			t.Errorf("%q: set aside %q; want %q", c.rows, got, c.aside)
		}
	}
}

// TestNightsDay holds that a stretch past midnight is of the day on which it began, whatever day its last row names.
func TestNightsDay(t *testing.T) {
	legs, _ := sidesOf(t, "log.csv", "Trip,Date,Time,Event,Lines,Speed kn\n4,2026-06-03,21:40,Lines in,5,7\n"+
		"4,2026-06-04,02:10,Lines up,,\n4,2026-06-04,10:00,Lines in,5,7\n4,2026-06-04,11:00,Lines up,,\n")
	if len(legs) != 2 || legs[0].Values["date"].Int+1 != legs[1].Values["date"].Int {
		t.Errorf("got %v", legs)
	}
}

// TestBiteWithItsRemark holds that a bite whose remark tells what became of it is one of its own, though one before it
// was told to be hooked and no more, and that a remark of a hooked fish tells its end.
func TestBiteWithItsRemark(t *testing.T) {
	told, aside := readEvents(t, "log.csv", "Trip,Date,Time,Event,Lines,Speed kn,Remark\n"+
		"4,2026-06-03,08:00,no fishing,,,\n4,2026-06-03,08:40,Lines in,5,7,\n"+
		"4,2026-06-03,09:05,strike,,,\"hooked, gone after 5 min\"\n4,2026-06-03,09:07,strike,,,missed (port)\n"+
		"4,2026-06-03,09:30,strike,,,\"hooked, off while we reefed\"\n"+
		"4,2026-06-03,09:50,strike,,,\"dorado kept, freezer\"\n4,2026-06-03,11:00,Lines up,,,\n")
	const want = "9:05 lost 4; 9:07 missed 4; 9:30 hooked 4; 9:50 landed 4 dorado; 8:40-11:00 5 at 7 4"
	if got := strings.Join(told, "; "); got != want || len(aside) > 0 {
		t.Errorf("%s; set aside %v; want %s", got, aside, want)
	}
}

// TestNorwegianEvents holds that a log of events in Norwegian is read.
func TestNorwegianEvents(t *testing.T) {
	told, aside := readEvents(t, "logg.csv", "Tur,Dato,Klokke,Hendelse,Antall liner,Fart knop,Art,Lengde cm,Utfall\n"+
		"1,2026-06-03,06:10,Avgang,,,,,\n1,2026-06-03,07:00,Liner ut,5,7,,,\n1,2026-06-03,08:00,Ny fart,,8,,,\n"+
		"1,2026-06-03,08:20,Napp,,,dorado,92,Gjenutsatt\n1,2026-06-03,08:50,Napp,,,,,Bommet\n"+
		"1,2026-06-03,09:30,Liner inn,0,,,,\n1,2026-06-03,10:10,Ankomst,,,,,\n")
	const want = "7:00-8:00 5 at 7 1; 8:20 released 1 dorado 92.0; 8:50 missed 1; 8:00-9:30 5 at 8 1"
	if got := strings.Join(told, "; "); got != want || len(aside) > 0 {
		t.Errorf("%s; set aside %v; want %s", got, aside, want)
	}
}
