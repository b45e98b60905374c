package meaning

import (
	"fmt"
	"strings"
	"testing"

	"wakeledger/pipeline/plan"
	"wakeledger/pipeline/unit"
)

const legHeads = "Date|Start|End|Lines|Knots|Notes"

// TestOvernight holds that words of a night out make one trip of two days, and that days of a
// contest, or days alone, do not.
func TestOvernight(t *testing.T) {
	for _, c := range []struct {
		what, first, second string
		want                int // rows with a name
	}{
		{"day 2", "", "day 2", 2},
		{"said on the first day", "overnighter, still out", "", 2},
		{"in Spanish", "noche a bordo", "", 2},
		{"two days", "", "", 0},
		{"a contest", "club tournament", "day 2", 0},
	} {
		rows := legHeads + "\n2026-05-09|06:00|09:00|5|8|\n2026-05-16|06:00|09:00|5|8|" + c.first +
			"\n2026-05-17|06:00|09:00|4|8|" + c.second + "\n2026-05-23|06:00|09:00|5|8|calm"
		p := inferred(t, "log.csv", nil, "Log", rows).Blocks[0].Plan
		if len(p.Trips) != c.want {
			t.Errorf("%s: the trips of rows are %v, expected %d", c.what, p.Trips, c.want)
		}
		if c.want == 2 && (p.Trips[3] != p.Trips[4] || !strings.Contains(p.Trips[3], "2026-05-16")) {
			t.Errorf("%s: %v is not one trip", c.what, p.Trips)
		}
	}
	p := inferred(t, "log.csv", nil, "Log", legHeads+"\n2026-05-01|06:00|09:00|5|8|\n2026-05-02|06:00|09:00|5|8|day "+
		"2\n2026-05-09|06:00|09:00|5|8|").Blocks[0].Plan
	short := inferred(t, "log 2026.csv", nil, "Log", legHeads+"\n5/9|06:00|09:00|5|8|\n6/4|06:00|09:00|4|8|\n"+
		"6/5|06:00|09:00|4|8|second day\n6/16|06:00|09:00|5|8|").Blocks[0].Plan
	if len(short.Trips) != 2 {
		t.Errorf("of days without a year, the month first, the trips are %v", short.Trips)
	}
	if len(p.Trips) > 0 {
		t.Errorf("the second of the month is taken for a second day: %v", p.Trips)
	}
}

// TestNightAmongEvents holds that a log of events is one trip over a night that its words or the boat's leaving and
// coming home tell of, and two where the boat was home in between.
func TestNightAmongEvents(t *testing.T) {
	const heads = "Date|Time|Event|Lines|Knots\n2026-05-09|06:10|lines in|5|8\n|09:00|lines up||\n" +
		"2026-05-16|06:00|lines in|5|8\n|10:00|lines up||\n"
	for what, c := range map[string]struct {
		first, second string
		one           bool
	}{
		"words":           {"|19:00|anchored up, slept on the boat, overnighter||\n", "", true},
		"none":            {"|19:00|Sundowners||\n", "", false},
		"home in between": {"|19:00|back at the slip, overnighter next week||\n", "", false},
		"left again": {"|19:00|overnight bag packed, overnighter||\n",
			"2026-05-17|05:00|cleared the breakwater||\n", false},
	} {
		rest := "2026-05-17|06:00|lines in|4|8\n|10:00|lines up||\n"
		if c.second != "" {
			rest = strings.TrimPrefix(rest, "2026-05-17")
		}
		p := inferred(t, "log.csv", nil, "Log", heads+c.first+c.second+rest+
			"2026-05-23|06:00|lines in|5|8\n|09:00|lines up||").Blocks[0].Plan
		if p.Kind != plan.Events || (len(p.Trips) > 0) != c.one {
			t.Errorf("%s: %s with the trips of rows %v", what, p.Kind, p.Trips)
		}
	}
	const left = "Date|Time|Event|Lines|Knots\n2026-05-16|05:00|%s||\n|06:00|lines in|5|8\n|10:00|lines up||\n" +
		"2026-05-17|06:00|lines in|4|8\n|10:00|lines up||\n|15:00|back at the dock||\n" +
		"2026-05-23|05:10|%[1]s||\n|06:00|lines in|5|8\n|09:00|lines up||\n|13:00|back at the dock||"
	for words, want := range map[string]bool{"cleared the jetty": true, "Left the pier": true, "Coffee": false} {
		if p := inferred(t, "log.csv", nil, "Log", fmt.Sprintf(left, words)).Blocks[0].Plan; p.Outings != want {
			t.Errorf("%s: outings are %v", words, p.Outings)
		}
	}
}

// TestTwoClients holds that a day written twice beside two clients is two trips, where day and
// client stand once an outing.
func TestTwoClients(t *testing.T) {
	rows := "Date|Client|Start|End|Lines|Knots"
	for i, client := range []string{"Ansa", "Bo", "Cleo"} {
		rows += fmt.Sprintf("\n2026-05-%02d|%s|06:00|08:00|5|8\n||09:00|11:00|5|8", 3+i, client)
	}
	for _, second := range []string{"Egon (pm)", "Dagny"} {
		p := inferred(t, "log.csv", nil, "Log", rows+"\n2026-05-10|Dagny|06:00|09:00|5|8\n2026-05-10|"+second+
			"|12:30|16:00|5|8").Blocks[0].Plan
		if two := second != "Dagny"; (len(p.Trips) == 2 && p.Trips[8] != p.Trips[9]) != two {
			t.Errorf("Dagny and %s: the trips of rows are %v", second, p.Trips)
		}
	}
}

// TestStretchesOfADay holds that letters of a day's stretches are no clients: nearly every day has some.
func TestStretchesOfADay(t *testing.T) {
	rows := "Date|Str|In|Out|Lines|Knots"
	for i := range 5 {
		rows += fmt.Sprintf("\n2026-05-%02d|A|06:00|08:00|5|8\n2026-05-%02d|B|09:00|11:00|4|7", 3+i, 3+i)
	}
	p := inferred(t, "log.csv", nil, "Log", rows+"\n2026-05-10|A|06:00|09:00|5|8\n|B|12:30|16:00|5|8").Blocks[0].Plan
	if len(p.Trips) > 0 {
		t.Errorf("the trips of rows are %v", p.Trips)
	}
}

// TestSlips holds that a day out of order is mended where another year puts it in order, and that
// days in order, and days in no order at all, stay.
func TestSlips(t *testing.T) {
	day := func(text string) unit.Date {
		d, err := unit.ParseDate(text, unit.DayFirst)
		if err != nil {
			t.Fatal(err)
		}
		return d
	}
	for _, c := range []struct{ days, want string }{
		{"2023-12-02 2023-12-16 2023-12-27 2023-01-07 2024-01-14 2024-02-06", "3=2024-01-07"},
		{"2022-07-10 2022-07-12 2021-07-14 2021-07-14 2022-07-17 2022-07-20", "2=2022-07-14 3=2022-07-14"},
		{"2023-11-20 2023-12-02 2023-12-16 2023-12-27 2023-01-07", "4=2024-01-07"},
		{"2022-07-10 2023-01-02 2023-07-14 2024-07-17", ""},
		{"2022-09-10 2021-07-12 2022-05-14 2021-08-17 2022-01-20", ""},
		{"2021-07-10 2022-07-12 2022-07-14 2022-07-17", ""}, // a year earlier may be true of the first
	} {
		var days []unit.Date
		for _, text := range strings.Fields(c.days) {
			days = append(days, day(text))
		}
		got := ""
		mended := slips(days)
		for i := range days {
			if to, ok := mended[i]; ok {
				got = strings.TrimSpace(fmt.Sprintf("%s %d=%s", got, i, to))
			}
		}
		if got != c.want {
			t.Errorf("%s: mended are %q, expected %q", c.days, got, c.want)
		}
	}
}

// TestYearOfNeighbours holds that a day without a year takes that of the days beside it.
func TestYearOfNeighbours(t *testing.T) {
	rows := legHeads + "\n2025-12-20|06:00|09:00|5|8|\n2025-12-27|06:00|09:00|5|8|\nSat 10 " +
		"Jan|06:00|09:00|5|8|\n2026-01-17|06:00|09:00|5|8|"
	p := inferred(t, "log.csv", nil, "Log", rows).Blocks[0].Plan
	if got := p.Cells[plan.Cell{Row: 4, Index: 0}]; got != "2026-01-10" {
		t.Errorf("Sat 10 Jan is read as %q", got)
	}
}

// TestClients holds that a name that comes again on later days, with others between, names no trip.
func TestClients(t *testing.T) {
	rows := "Date|Trip|Start|End|Lines|Knots"
	for i, name := range []string{"family", "Bo", "family", "friends", "Bo", "friends"} {
		rows += fmt.Sprintf("\n2026-05-%02d|%s|06:00|08:00|5|8", 3+3*i, name)
	}
	if p := inferred(t, "log.csv", nil, "Log", rows).Blocks[0].Plan; p.Binds("trip") {
		t.Error("the name of a client is that of a trip")
	}
	rows = strings.NewReplacer("family", "A-1", "Bo", "A-2", "friends",
		"A-3").Replace(
		"Date|Trip|Start|End|Lines|Knots\n2026-05-03|family|06:00|08:00|5|8\n2026-05-04|family|06:00|08:00|5|8\n" +
			"2026-05-09|Bo|06:00|08:00|5|8\n2026-05-12|friends|06:00|08:00|5|8")
	if p := inferred(t, "log.csv", nil, "Log", rows).Blocks[0].Plan; !p.Binds("trip") {
		t.Error("a trip of two days has lost its name")
	}
}

// TestLeftAndBack holds that a log of events in which the boat comes home the day after it left is known
// by its outings, and that an anchorage at noon makes no second trip.
func TestLeftAndBack(t *testing.T) {
	const a = "Date|Time|Event\n2026-05-03|06:00|left dock\n2026-05-03|07:00|lines in\n2026-05-03|09:00|lines " +
		"up\n2026-05-03|12:00|back at dock\n"
	night := "2026-05-09|06:00|left dock\n2026-05-09|07:00|lines in\n2026-05-09|19:00|lines " +
		"up\n2026-05-10|07:00|lines in\n2026-05-10|08:00|lines up\n2026-05-10|12:00|back at dock"
	noon := "2026-05-09|06:00|left dock\n2026-05-09|07:00|lines in\n2026-05-09|10:00|lines " +
		"up\n2026-05-09|10:30|anchored\n2026-05-09|12:00|anchor up\n" +
		"2026-05-09|12:10|lines in\n2026-05-09|15:00|lines up\n2026-05-09|16:00|back at dock"
	for rows, want := range map[string]bool{night: true, noon: false} {
		if p := inferred(t, "log.csv", nil, "Log", a+rows).Blocks[0].Plan; p.Kind != plan.Events || p.Outings != want {
			t.Errorf("read as %s, by its outings %v, expected %v:\n%s", p.Kind, p.Outings, want, rows)
		}
	}
}

// TestNumberedTrips holds that days without a number beside trips that have one were not gone, and
// that a table without numbers for several of its rows says nothing of the kind.
func TestNumberedTrips(t *testing.T) {
	const rows = "Trip|Date|Left|Back\n1|2026-05-03|06:00|14:00\n2|2026-05-04|06:00|14:00\n" +
		"3|2026-05-05|06:00|14:00\n4|2026-05-06|06:00|14:00\n5|2026-05-07|06:00|14:00"
	for more, want := range map[string]bool{"": false, "\n|2026-05-08|10:45|12:02": true,
		"\n|2026-05-08|10:45|12:02\n|2026-05-09|10:45|12:02\n|2026-05-10|10:45|12:02": false} {
		if p := planOf(t, "", rows+more); p.Kind != plan.Trips || p.Numbered != want {
			t.Errorf("%q: %s, numbered %v, expected %v", more, p.Kind, p.Numbered, want)
		}
	}
}

// TestYearOnce holds that days without a year follow the first, which has one, and that days that do
// not follow it are left alone.
func TestYearOnce(t *testing.T) {
	const rows = "Date|Start|End|Lines\n%s|06:00|08:00|4\n13 April|06:00|08:00|4\n20 April|06:00|08:00|4\n5 " +
		"May|06:00|08:00|4\n19 May|06:00|08:00|4"
	with := planOf(t, "", fmt.Sprintf(rows, "6 April 2024"))
	if got := with.Cells[plan.Cell{Row: 5, Index: 0}]; got != "2024-05-05" {
		t.Errorf("5 May is read as %q", got)
	}
	if back := planOf(t, "", fmt.Sprintf(rows, "6 December 2024")); len(back.Cells) > 0 {
		t.Errorf("days that do not follow the first have years: %v", back.Cells)
	}
}
