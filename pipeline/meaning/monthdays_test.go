package meaning

import (
	"strings"
	"testing"
	"time"
)

// TestMonthOf holds which month the name of a sheet and the titles above a table tell.
func TestMonthOf(t *testing.T) {
	for _, c := range []struct {
		texts []string
		month time.Month
		year  int
	}{
		{[]string{"OCT 23"}, time.October, 2023},
		{[]string{"OCT 23", "Sorrel, log of October 2023"}, time.October, 2023},
		{[]string{"Julio", "Temporada 2026"}, time.July, 0},
		{[]string{"4 October", "log"}, 0, 0}, // a day
		{[]string{"Set"}, 0, 0},              // of lines
		{[]string{"set 2026"}, time.September, 2026},
		{[]string{"June", "July"}, 0, 0},
		{[]string{"Trips"}, 0, 0},
	} {
		if m, y := monthOf(c.texts); m != c.month || y != c.year {
			t.Errorf("%q: %v %d, expected %v %d", c.texts, m, y, c.month, c.year)
		}
	}
}

// TestDaysOfMonth reads a tab of a month whose days are numbers, and leaves other numbers alone.
func TestDaysOfMonth(t *testing.T) {
	const rows = "Start|End|Knots\n3|06:00|08:00|8\n4|06:00|08:00|8\n9|06:00|08:00|8"
	for _, c := range []struct{ name, head, want string }{
		{"OCT 23", "Day|", "legs: date start_s end_s speed_kn/kn"},
		{"OCT 23", "Trip|", "legs: trip start_s end_s speed_kn/kn"}, // numbers of trips
		{"Log", "Day|", "legs: trip start_s end_s speed_kn/kn"},
		{"OCT 23", "Day|Start|End|Knots\n3|06:00|08:00|8\n|09:00|11:00|8\n9|06:00|08:00|8\n|||\n" +
			"We were out on 2 days and brought 5 fish home\n", "legs: date start_s end_s speed_kn/kn"},
	} {
		text := c.head + rows
		if strings.Contains(c.head, "\n") {
			text = c.head
		}
		p := planOf(t, c.name, text)
		if got := summary(p); got != c.want {
			t.Errorf("%s in %q: %s, expected %s", c.head, c.name, got, c.want)
		}
	}
}

// TestSisterDays holds that days of a month that stand in no order are days where those of another month are, under the
// same headings.
func TestSisterDays(t *testing.T) {
	const head = "Day|Start|End|Knots\n"
	const june = head + "3|06:00|08:00|8\n4|06:00|08:00|8\n9|06:00|08:00|8"
	const july = head + "12|06:00|08:00|8\n5|06:00|08:00|8\n9|06:00|08:00|8"
	l := inferred(t, "log", nil, "June 2024", june, "July 2024", july)
	for _, u := range l.Data() {
		if b := u.Plan.Find("date"); b == nil || b.Index != 0 {
			t.Errorf("%s: %s", u.Plan.Name, summary(u.Plan))
		}
	}
}

// TestDayNumber reads the day of a month with its weekday or its ending.
func TestDayNumber(t *testing.T) {
	for text, want := range map[string]int{"4": 4, "4.": 4, "dim. 4": 4, "Sat 12th": 12, "sun 12 dawn": 12,
		"14 afternoon": 14, "31 mar.": 31, "": 0, "32": 0,
		"4 5": 0, "June": 0, "x4": 0} {
		if got := dayNumber(text); got != want {
			t.Errorf("%q: %d, expected %d", text, got, want)
		}
	}
}

// TestYearOfTheSameColumn holds that days without a year are of the season of the days beside them that have one.
func TestYearOfTheSameColumn(t *testing.T) {
	runs := "Data|Na água|Recolhidas|Canas|Nós\n24/5|06:00|08:00|4|7\n1/6|06:00|08:00|4|7\n7/6/25|06:00|08:00|4|7\n" +
		"13/9/25|06:00|08:00|4|7\n" +
		"14-15/9|06:00|08:00|4|7"
	if y := planOf(t, "", runs).Years; y.From != 2025 || y.To != 2025 {
		t.Errorf("years %v, expected 2025", y)
	}
	if y := planOf(t, "", strings.ReplaceAll(runs, "7/6/25", "7/6/23")).Years; y.From != 0 {
		t.Errorf("days of 2023 and 2025: years %v, expected none", y)
	}
}

// TestDaysOverACount reads the days of a month over the number of its trips, in words of one cell.
func TestDaysOverACount(t *testing.T) {
	const rows = "Day|Hours|Lines|Knots|Bites\n3|2|4|8|1\n\"|1|4|12|0\n4|2|4|8|0\n9|2|4|8|1\n11|2|4|8|0\n" +
		"|||||\nTotal|9|||2\n"
	const want = "flat: date duration_s/h lines_out speed_kn/kn strikes_n"
	for _, last := range []string{"trips: 4||||", "trips|4|||"} {
		if got := summary(planOf(t, "October 2025", rows+last)); got != want {
			t.Errorf("over %q: %s, expected %s", last, got, want)
		}
	}
}
