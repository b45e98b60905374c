package meaning

import (
	"fmt"
	"testing"

	"wakeledger/pipeline/plan"
)

// TestUntrolled holds that a table of strikes knows which of the stretches that it names were fished
// in another way, and that one fished in both is none.
func TestUntrolled(t *testing.T) {
	l := inferred(t, "log", nil, "legs",
		"tid|date|leg|st|et|nl|gr\n1|2026-06-03|a|06:00|08:00|4|tr\n1|2026-06-03|b|08:10|09:00|2|jg\n"+
			"2|2026-06-04|a|06:00|08:00|4|tr\n2|2026-06-04|b|08:10|11:00|4|tr\n3|2026-06-05|a|06:00|08:00|5|bt",
		"fish", "tid|leg|tm|sp|out|fl\n1|a|06:40|WAH|K|104\n1|b|08:20|WAH|K|99\n2|b|08:20|WAH|L|\n3|a|07:00|WAH|K|98")
	for _, u := range l.Data() {
		if u.Plan.Kind != plan.Strikes && u.Plan.Kind != plan.Fish {
			continue
		}
		for key, want := range map[string]bool{plan.Stretch("1", "b"): true, plan.Stretch("3", "A"): true,
			plan.Stretch("1", "a"): false, plan.Stretch("2", "b"): false} {
			if u.Plan.Elsewise[key] != want {
				t.Errorf("%q: %v, expected %v", key, !want, want)
			}
		}
		return
	}
	t.Errorf("no table of strikes in %s", summary(l.Data()[0].Plan))
}

// TestTitleOfTable holds that a title above a table of fish that says how else they were caught is of all
// of its rows, and that one which says what does not belong there is not.
func TestTitleOfTable(t *testing.T) {
	const sheet = "Date|In|Up|Lines|Knots\n2026-06-03|06:00|08:00|4|7\n2026-06-04|06:00|09:00|4|8\n" +
		"2026-06-05|06:00|09:30|5|8\n|\n%s\nDate|Species|How many|Heaviest kg\n2026-06-03|amberjack|2|8\n" +
		"2026-06-04|grouper|3|\n2026-06-05|grouper|1|9"
	for title, want := range map[string]int{"Other fishing (at anchor, live bait)": 3,
		"Fish, but no bottom fish": 0, "The troll's fish": 0,
		"Days with no trolling are not written down": 0, "Guests, never put the trolling rods out": 0} {
		apart := 0
		for _, u := range inferred(t, "log", nil, "June", fmt.Sprintf(sheet, title)).Data() {
			apart += len(u.Plan.Apart)
		}
		if apart != want {
			t.Errorf("%q: %d rows apart, expected %d", title, apart, want)
		}
	}
}

// TestTitledApart holds that strikes under a title that says that they were not trolled are apart
// from those above it.
func TestTitledApart(t *testing.T) {
	const rows = "Time|Outcome|Species|Length " +
		"cm\n06:40|landed|wahoo|110\n07:40|missed||\n08:10|lost|dorado|\n09:10|landed|dorado|80\n|\n%s|\n" +
		"|landed|amberjack|74\n|landed|amberjack|70"
	for title, want := range map[string]bool{"Other (stopped, on the jig)": true, "After lunch": false} {
		apart := 0
		for _, u := range inferred(t, "log", nil, "3 June 2026", fmt.Sprintf(rows, title)).Data() {
			apart += len(u.Plan.Apart)
		}
		if (apart == 2) != want {
			t.Errorf("%q: %d rows apart", title, apart)
		}
	}
}

// TestSheetSaid holds that the fish of a sheet are apart where the log says of it that they were not trolled,
// and that what it says of another sheet is of that one.
func TestSheetSaid(t *testing.T) {
	const legs = "Date|In|Up|Lines|Knots\n2026-06-03|06:00|08:00|4|7\n2026-06-04|06:00|09:00|4|8\n" +
		"2026-06-05|06:00|09:30|5|8"
	const fish = "Date|Species|How many|Heaviest kg\n2026-06-03|mahi mahi|2|8\n2026-06-04|grouper|3|\n" +
		"2026-06-05|grouper|1|9"
	for said, want := range map[string]int{"Reef fish: whatever came aboard while not trolling": 3,
		"Reef fish: one row a kind": 0, "Legs: one row a set, not counted when under 10 minutes": 0} {
		apart := 0
		for _, u := range inferred(t, "log", nil, "Read first", "My log\n|\n"+said, "Legs", legs, "Reef fish",
			fish).Data() {
			apart += len(u.Plan.Apart)
		}
		if apart != want {
			t.Errorf("%q: %d rows apart, expected %d", said, apart, want)
		}
	}
}

// TestDaysAshore holds that a trip of which no stretch is told is apart where its words say how else the day was
// spent, and neither such words beside stretches nor a trip without a stretch alone set one apart.
func TestDaysAshore(t *testing.T) {
	const trips = "Trip|Date|Left|Home|Remarks\n1|2026-06-03|05:00|12:00|calm\n2|2026-06-04|05:00|12:00|bottom " +
		"fishing after noon\n3|2026-06-05|05:00|11:00|%s\n4|2026-06-06|05:00|12:00|"
	const sets = "Trip|Start|End|Lines|Knots\n1|06:00|08:00|4|8\n2|06:00|08:00|4|8\n2|08:10|10:00|5|9\n" +
		"4|06:00|08:30|5|8"
	for remark, want := range map[string]int{"bottom fishing all day": 1, "swell too big, no lines went over": 1,
		"came home early": 0} {
		for _, u := range inferred(t, "log", nil, "Trips", fmt.Sprintf(trips, remark), "Sets", sets).Data() {
			if n := len(u.Plan.Apart); u.Plan.Kind == plan.Trips && n != want {
				t.Errorf("%q: %d rows apart, expected %d", remark, n, want)
			}
		}
	}
}

// TestOtherOutings holds that fish of a trip none of whose stretches was trolled are apart, and those of a trip that
// was trolled for a part are not.
func TestOtherOutings(t *testing.T) {
	l := inferred(t, "log", nil, "trips", "trip|date|how|start|end|rods\n1|2026-06-03|trolling|06:00|08:00|4\n"+
		"2|2026-06-04|bottom|06:10|09:00|\n3|2026-06-05|trolling|06:00|08:00|4\n3|2026-06-05|jigging|08:10|11:00|\n"+
		"4|2026-06-06|trolling|06:00|08:00|5",
		"fish", "trip|species|length cm|fate\n1|wahoo|110|kept\n02|snapper|44|kept\n2|snapper|41|let go\n"+
			"3|dorado|98|kept\n4|wahoo|120|kept")
	for _, u := range l.Data() {
		if u.Plan.Kind == plan.Fish || u.Plan.Kind == plan.Strikes {
			if p := u.Plan.Apart; len(p) != 2 || !p[3] || !p[4] {
				t.Errorf("rows apart: %v, expected those of trip 2", p)
			}
			return
		}
	}
	t.Error("no list of fish")
}

// TestHourlessOutings holds that fish of a trip are apart whose remark speaks of another way of fishing and that has no
// hours, and not those of one that has.
func TestHourlessOutings(t *testing.T) {
	l := inferred(t, "log", nil, "trips", "trip no|date|lines in|lines up|knots|comment\n1|2026-06-03|06:00|08:00|7|\n"+
		"2|2026-06-04||||Bottom fishing off the reef only, no lures\n3|2026-06-05|06:00|08:00|7|bottom fishing after\n"+
		"4|2026-06-06|06:00|08:00|8|",
		"fish", "trip no|species|length cm|fate\n1|wahoo|110|kept\n2|snapper|41|let go\n3|dorado|98|kept\n"+
			"4|wahoo|120|kept")
	for _, u := range l.Data() {
		if p := u.Plan; p.Kind == plan.Fish || p.Kind == plan.Strikes {
			if len(p.Apart) != 1 || !p.Apart[3] {
				t.Errorf("rows apart: %v, expected that of trip 2", p.Apart)
			}
			return
		}
	}
	t.Error("no list of fish")
}

// TestStayedInAbove holds that strikes under words that nothing was trolled that day are apart, on a sheet without
// stretches where another has them; in a log of strikes alone such words may be a rule of it.
func TestStayedInAbove(t *testing.T) {
	const sheet = "%s\n|\nTime|Fish|Outcome|Length cm\n08:10|grouper|landed|60\n08:25|grouper|landed|55\n" +
		"08:40|amberjack|landed|70"
	const trolled = "calm\n|\nStart|End|Lines|Knots\n06:00|09:00|4|7\n09:30|11:00|5|7\n11:30|12:30|5|7"
	for _, c := range []struct {
		above string
		other bool
		want  int
	}{{"Guests, never put the trolling rods out", true, 3}, {"Guests, flat calm", true, 0},
		{"Never put the trolling rods out before June", false, 0}} {
		sheets, apart := []string{"3 June 2026", fmt.Sprintf(sheet, c.above)}, 0
		if c.other {
			sheets = append(sheets, "4 June 2026", trolled)
		}
		for _, u := range inferred(t, "log", nil, sheets...).Data() {
			apart += len(u.Plan.Apart)
		}
		if apart != c.want {
			t.Errorf("%q: %d rows apart, expected %d", c.above, apart, c.want)
		}
	}
}
