package meaning

import (
	"testing"

	"wakeledger/pipeline/plan"
)

// ticket is a sheet of one trip: its form, its stretches and its bites.
func ticket(number, left, home, days string) string {
	return "TRIP TICKET||" + number + "|||\nLeft||" + left + "|||\nHome||" + home + "|||\nCrew||Ray|||\n|||||\n" +
		"TROLL|||||\nDay|Lines in|Lines up|Rods|Kts|Where\n" + days + "|||||\nACTION|||||\n" +
		"Day|Time|No.|Fish|What came of it|Inches\n" +
		"Sat|15:10|2|wahoo|boxed|40, 44.5\n|15:30|1||knockdown|\nSun|06:10|1|mahi|pulled hook|\n|||||\n" +
		"REMARKS||Belt squeals|||\n"
}

// TestWeekdays holds that names of days of the week are the days between which a ticket says the trip was, that those
// outside of them are none, and that the number of a ticket copied to other days is no trip of both.
func TestWeekdays(t *testing.T) {
	const rows = "Sat|14:00|16:00|6|7|edge\nSun|05:00|07:00|6|7|edge\n|07:10|09:00|5|6|lump\n"
	l := inferred(t, "tickets.xlsx", nil, "01", ticket("4", "2026-06-06", "2026-06-07", rows),
		"02", ticket("5", "2026-06-13", "2026-06-14", rows), "03", ticket("5", "2026-06-20", "2026-06-21", rows),
		"04", ticket("6", "2026-06-24", "2026-06-24", rows),
		"05", ticket("7", "07/04/2026 08:00", "07/05/2026 14:00", rows))
	days, names := 0, map[string]bool{}
	for _, u := range l.Data() {
		if u.Plan.Kind != plan.Legs && u.Plan.Kind != plan.Strikes {
			continue
		}
		b := u.Plan.Find("date")
		if want := u.Plan.Name != "04"; (b != nil && b.By != nil) != want {
			t.Errorf("%s: days of the week %v, expected %v: %s", u.Plan.Name, !want, want, summary(u.Plan))
		}
		if u.Plan.Name == "01" && b != nil && b.By["sun"] == "2026-06-07" && b.By["sat"] == "2026-06-06" {
			days++
		}
		if u.Plan.Name == "05" && b != nil && (b.By["sun"] != "2026-07-05" || b.By["sat"] != "2026-07-04") {
			t.Errorf("05: the days of the week are %v", b.By)
		}
		for _, g := range u.Plan.Given {
			if g.Column.Name == "trip" {
				names[g.Text] = true
			}
		}
	}
	if days != 2 {
		t.Errorf("%d tables of the first ticket have its days, expected two", days)
	}
	if len(names) != 5 || !names["4"] || names["5"] {
		t.Errorf("trips %v: expected one for each ticket", names)
	}
}
