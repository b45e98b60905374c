package meaning

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"wakeledger/pipeline/plan"
)

const (
	numberedRuns = "No.|Date|Lines in|Lines out|Knots|Lines\n1|3/6/26|06:00|08:00|8|4\n2||08:30|10:00|9|4\n" +
		"3|14/6/26|06:10|09:00|9|5\n4||09:20|11:00|7|5\n5|15/6/26|07:00|11:30|12|5\n6||11:40|13:00|12|5"
	onceADay = "No.|Date|Lines in|Lines out|Knots|Lines\n1|3/6/26|06:00|08:00|8|4\n2|4/6/26|08:30|10:00|9|4\n" +
		"3|14/6/26|06:10|09:00|9|5\n4|16/6/26|09:20|11:00|7|5\n5|20/6/26|07:00|11:30|12|5\n" +
		"6|20/6/26|13:40|15:00|12|5\n" +
		"7|23/6/26|07:00|11:30|12|5\n8|25/6/26|07:00|11:30|12|5"
)

// TestRowNumbers holds that numbers of rows are no trips where a day has several rows, and are asked about
// where only a day has.
func TestRowNumbers(t *testing.T) {
	if p := planOf(t, "", numberedRuns); p.Binds("trip") || !p.Binds("date") {
		t.Errorf("rows numbered: %s", summary(p))
	}
	asked := func(text string) bool {
		return slices.ContainsFunc(inferred(t, "log", nil, "", text).Open(), func(o Open) bool {
			return o.Heading == "No." && o.Taken == "trip" && slices.Contains(o.Others, "")
		})
	}
	outings := "No|Date|Lines in|Lines out|Knots|Lines\n"
	for n := 1; n <= 8; n++ {
		row := fmt.Sprintf("%d|%d/6/26|06:00|08:00|8|%d\n", n, 3*n, 4+n%2)
		outings += row + strings.ReplaceAll(strings.ReplaceAll(row, "08:00", "11:00"), "06:00", "09:00")
	}
	if p := planOf(t, "", strings.TrimSpace(outings)); !p.Binds("trip") {
		t.Errorf("each outing's number on both of its rows: %s", summary(p))
	}
	if !asked(onceADay) {
		t.Error("two rows of a day with numbers of their own: not asked about")
	}
	if one := onceADay[:len(onceADay)-len("\n7|23/6/26|07:00|11:30|12|5\n8|25/6/26|07:00|11:30|12|5")]; asked(
		one[:len(one)-len("\n6|20/6/26|13:40|15:00|12|5")]) {
		t.Error("a number a day: asked about")
	}
}

// TestRowNumbersBesideKeys holds that the number of a row joins no table where another column, or the place in the
// trip, does.
func TestRowNumbersBesideKeys(t *testing.T) {
	trips := "No.|Sheet no|Date|Lines in|Lines up|Lines|Knots\n1|412|3/6/26|06:00|08:00|4|7\n" +
		"2|413|5/6/26|06:00|09:00|4|7\n3|414|9/6/26|06:00|08:30|4|8\n4|417|12/6/26|07:00|10:00|4|8"
	fish := "No.|Sheet no|Fish|Length cm|Result\n1|412|Wahoo|120|kept\n2|412|Wahoo|110|kept\n3|414|Bigeye|90|kept\n" +
		"4|417|Wahoo|99|let go"
	headingOf := func(l *Log, i int, name string) string {
		if b := l.Data()[i].Plan.Find(name); b != nil {
			return b.Heading
		}
		return ""
	}
	l := inferred(t, "log", nil, "Trips", trips, "Fish", fish)
	if a, b := headingOf(l, 0, "leg"), headingOf(l, 1, "leg"); a != "Sheet no" || b != "Sheet no" {
		t.Errorf("stretches are known by %q and %q, expected the number of the sheet", a, b)
	}
	runs := "No.|Trip|Date|Lines in|Lines up|Lines|Knots\n1|1|3/6/26|06:00|08:00|4|7\n2||3/6/26|08:30|09:00|4|7\n" +
		"3|2|9/6/26|06:00|08:30|4|8\n4||9/6/26|09:00|10:00|4|8\n5|3|12/6/26|07:00|10:00|4|8"
	bites := "No.|Trip|Run|Fish|Length cm|Result\n1|1|1|Wahoo|120|kept\n2|1|2|Wahoo|110|kept\n3|2|1|Bigeye|90|kept\n" +
		"4|2|2|Wahoo|99|let go\n5|3|1|Wahoo|99|let go"
	l = inferred(t, "log", nil, "Runs", runs, "Bites", bites)
	if leg := headingOf(l, 0, "leg"); leg != "" {
		t.Errorf("stretches are known by %q, and bites name their place in the trip", leg)
	}
}

// TestWeekdaysAreNoFish holds that a fuel book with the day of the week is no list of fish: some are fish's codes.
func TestWeekdaysAreNoFish(t *testing.T) {
	p := planOf(t, "Fuel", "Date|Day|Litres|Paid\n2026-06-05|Fri|120|300\n2026-06-06|Sat|90|210\n"+
		"2026-06-12|Fri|80|190\n2026-06-21|Sun|75|180")
	if p != nil && p.Binds("species") {
		t.Errorf("the day of the week is a fish: %s", summary(p))
	}
}

// TestNewestRowFirst holds that numbers that count the rows down, the newest first, are no counts of fish and no hours.
func TestNewestRowFirst(t *testing.T) {
	for _, text := range []string{
		"No|Date|Fish|Length cm\n3|2026-06-21|Wahoo|110\n2|2026-06-12|Bigeye|90\n1|2026-06-05|Wahoo|120",
		"No|Date|Fish|Length cm\n6|2026-06-21|Wahoo|110\n5|2026-06-12|Bigeye|90\n4|2026-06-05|Wahoo|120\n" +
			"3|2026-06-04|Wahoo|110\n2|2026-06-03|Bigeye|90\n1|2026-06-02|Wahoo|120",
	} {
		if p := planOf(t, "Fish", text); p.Binds("count") {
			t.Errorf("numbers of rows are counts: %s", summary(p))
		}
	}
	runs := "Trip|Date|Lines in|Lines up|Lines|Knots\n3|9/6/26|06:00|08:30|4|8\n3|9/6/26|09:00|10:30|4|8\n" +
		"2|5/6/26|06:00|09:00|4|7\n2|5/6/26|10:00|11:00|4|7\n1|3/6/26|06:00|08:00|4|7"
	if p := planOf(t, "", strings.ReplaceAll(runs, "Trip|", "Saída|")); !p.Binds("trip") {
		t.Errorf("trips from the last to the first: %s", summary(p))
	}
}

// TestStrikesBesideFish holds that a table named for strikes and one named for fish, under much the same headings, are
// read each for itself.
func TestStrikesBesideFish(t *testing.T) {
	l := inferred(t, "log", nil,
		"Strikes", "Trip|Date|Time|Line|Outcome|Species\nT1|2026-07-04|07:40|port|landed|wahoo\n"+
			"T1|2026-07-04|08:05|port|missed|\nT2|2026-07-11|10:10|port|lost|wahoo",
		"Fish", "Trip|Date|Time|Line|Species|Fork length|Kept or released\n"+
			"T1|2026-07-04|08:10|port|wahoo|110 cm|kept\n"+
			"T2|2026-07-11|21:20|port|mahi|90 cm|released")
	if a, b := l.Data()[0].Plan.Kind, l.Data()[1].Plan.Kind; a != plan.Strikes || b != plan.Fish {
		t.Errorf("read as %s and %s", a, b)
	}
}
