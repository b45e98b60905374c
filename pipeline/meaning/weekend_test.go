package meaning

import (
	"testing"

	"wakeledger/pipeline/plan"
	"wakeledger/pipeline/unit"
)

// weekends are two tables of one hand, each under the days of its weekend, with a remark under the last.
const weekends = "Cruise 2024|||||\n\nBay, 3 & 4 August 2024|||||\nDay|Lines in|Lines out|Rods|Kn|Bites\n" +
	"Sat|06:10|08:00|4|6|1\n|08:30|10:00|5|7|0\nSun|06:00|09:00|4|6.5|2\n\n" +
	"Holiday, 31 August - 2 September 2024 (long)|||||\nDay|Lines in|Lines out|Rods|Speed|Bites\n" +
	"Sat|06:15|08:10|4|7|0\nMon|06:00|08:00|4|8|3\n\nLaid up after that, 5 Sept.|||||\n"

// TestWeekend holds that days of the week are days of the title above their table, and that a speed whose heading
// changes from one table to the next is a speed in both.
func TestWeekend(t *testing.T) {
	l := inferred(t, "weekends.xlsx", nil, "Log", weekends)
	days, paces := map[string]bool{}, 0
	for _, u := range l.Data() {
		if u.Plan.Kind != plan.Legs && u.Plan.Kind != plan.Flat {
			continue
		}
		if u.Plan.Binds("speed_kn") {
			paces++
		}
		if b := u.Plan.Find("date"); b != nil {
			for _, r := range u.Block.Rows {
				days[cellText(r, b.Index)] = true
			}
		}
	}
	for _, want := range []string{"2024-08-03", "2024-08-04", "2024-08-31", "2024-09-02"} {
		if !days[want] {
			t.Errorf("no row of %s: %v", want, days)
		}
	}
	if paces != 2 {
		t.Errorf("%d tables have a speed, expected two", paces)
	}
}

// TestDaysWithin holds which days a title names, and that a span longer than a week, days without a year and numbers of
// other things are none.
func TestDaysWithin(t *testing.T) {
	for title, want := range map[string]string{
		"Bay, 3 & 4 August 2024":                   "2024-08-03 2024-08-04",
		"Easter, Cove 18-21 April 2025":            "2025-04-18 2025-04-21",
		"Pointe, du 1 au 4 mai 2025 (pont)":        "2025-05-01 2025-05-04",
		"Holiday 31 August - 2 September 2024":     "2024-08-31 2024-09-02",
		"Cove 30 December 2024 to 1 January 2025.": "2024-12-30 2025-01-01",
		"Season 1-9 May 2025":                      "",
		"Cove, 3-4 May":                            "",
		"Lures 3-4 in use from May 2025":           "",
	} {
		got := ""
		if from, to, ok := daysWithin(title); ok {
			got = from.String() + " " + to.String()
		}
		if got != want {
			t.Errorf("%q: %q, want %q", title, got, want)
		}
	}
}

// TestWeekendElsewhere holds that names of days that are not among those of the title are left as they are.
func TestWeekendElsewhere(t *testing.T) {
	names := []string{"Sat", "Tue"}
	if by := weekdaysOf(names, unit.DateOf(2024, 8, 3), unit.DateOf(2024, 8, 4)); by != nil {
		t.Errorf("days %v", by)
	}
}
