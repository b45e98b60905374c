package meaning

import (
	"strings"
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

// TestWeekendsBeside holds that days of the week are days of the weekend that stands beside them, once for its rows,
// over the end of a month too, and that a name which is no day of it makes none of them.
func TestWeekendsBeside(t *testing.T) {
	const head = "Season 2024|||||\n\nWeekend|Day|Lines in|Lines out|Rods|Bites\n"
	for want, rows := range map[string]string{
		"2024-05-11 2024-05-12 18-19 May 2024-06-01 2024-06-02": "11-12 May|Sat|06:10|08:00|4|1\n" +
			"|Sun|08:30|10:00|5|0\n18-19 May|||||blown out\n1-2 Jun|Sat|06:00|09:00|4|2\n|Sun|06:00|09:00|4|2\n",
		"2024-08-31 2024-09-01 2024-09-14": "31 Aug-1 Sep|Sat|06:10|08:00|4|1\n|Sun|08:30|10:00|5|0\n" +
			"14-15 Sep|Sat|06:00|09:00|4|2\n",
		"": "11-12 May|Sat|06:10|08:00|4|1\n|Mon|08:30|10:00|5|0\n18-19 May|Sun|06:00|09:00|4|2\n",
	} {
		got := ""
		for _, u := range inferred(t, "w.xlsx", nil, "Log", head+rows).Data() {
			if b := u.Plan.Find("date"); b != nil {
				got = strings.Join(column(u.b.rows, b.Index), " ")
			}
		}
		if got != want {
			t.Errorf("days %q, expected %q", got, want)
		}
	}
}
