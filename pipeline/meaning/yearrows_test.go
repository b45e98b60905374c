package meaning

import (
	"fmt"
	"testing"

	"wakeledger/pipeline/plan"
)

// TestYearRows holds that a year in a row of its own is that of the days under it, and that one under its days, or
// beside other cells, says nothing.
func TestYearRows(t *testing.T) {
	const head, tail = "Day|In|Up|Lines|Knots\n", "|06:10|09:40|5|7\n"
	for _, c := range []struct{ text, third, last string }{
		{head + "2022||||\n14/6" + tail + "15/6" + tail + "season 2023||||\n3/7" + tail + "18/7" + tail, "14/6/2022",
			"18/7/2023"},
		{head + "2022||||\n14 Jun" + tail + "15 Jun" + tail + "2023||||\n3 Jul" + tail + "18 Jul" + tail, "14 Jun 2022",
			"18 Jul 2023"},
		{head + "|2022|||\nSat 14.6." + tail + "15.6." + tail + "|2023|||\n3.7." + tail +
			"18.7." + tail, "", "18.7.2023"},
		{head + "14/6" + tail + "15/6" + tail + "2022||||\n3/7" + tail + "18/7" + tail + "2023||||\n", "", ""},
	} {
		p := planOf(t, "log", c.text)
		if p == nil || p.Find("date") == nil {
			t.Errorf("%q: %s", c.text, summary(p))
			continue
		}
		at := p.Find("date").Index
		cell := func(row int64) string { return p.Cells[plan.Cell{Row: row, Index: at}] }
		if third, last := cell(3), cell(7); c.third != "" && third != c.third || last != c.last {
			t.Errorf("%q: %q and %q, expected %q and %q", c.text, third, last, c.third, c.last)
		}
	}
}

// TestAboveTheYears holds that days above the first year in a row of its own are of no season that the years below say.
func TestAboveTheYears(t *testing.T) {
	const tail = "|06:10|09:40|5|7\n"
	for year, want := range map[string]bool{"2023||||\n": true, "": false} {
		p := planOf(t, "log", "Day|In|Up|Lines|Knots\n14 Jun"+tail+"15 Jun"+tail+year+"3 Jul 2023"+tail+
			"18 Jul 2023"+tail)
		if unsaid := p.Years.From == 0; unsaid != want {
			t.Errorf("%q: days above are of %v", year, p.Years)
		}
	}
}

// TestYearTitles holds that a year above days that say theirs, with a remark or none, is a heading, and gives a day
// among them its year; and that one above days of another year, or beside a fish, is not.
func TestYearTitles(t *testing.T) {
	const rows = "Day|In|Up|Lines|Knots|Notes\n2022|||||%s\n2022-05-03|06:10|09:40|5|7|\nSun 12/6|06:10|09:40|5|7|\n" +
		"2022-07-09|06:10|09:40|5|7|\n%s|||||\n2023-06-03|06:10|09:40|5|7|\n2023-06-05|06:10|09:40|5|7|"
	for _, c := range []struct {
		remark, second string
		want           int
	}{
		{"", "2023", 2}, {"from now on the clock times too", "2023", 2}, {"", "2024", 0},
		{"lost a wahoo at the boat", "2023", 1}, {"about 40 days", "2023", 1},
	} {
		p := planOf(t, "log", fmt.Sprintf(rows, c.remark, c.second))
		at := p.Find("date").Index
		day := p.Cells[plan.Cell{Row: 4, Index: at}]
		if len(p.Drop) != c.want || (day == "Sun 12/6/2022") != (c.want > 1) {
			t.Errorf("%q and %s: %d headings, expected %d; the day is %q", c.remark, c.second, len(p.Drop), c.want, day)
		}
	}
}

func TestWithYear(t *testing.T) {
	for day, want := range map[string]string{"8/3": "8/3/2024", "3.8.": "3.8.2024",
		"3 Aug": "3 Aug 2024", "31/2": "31/2",
		"the third": "the third", "Sat 3/8": "Sat 3/8/2024"} {
		if got := withYear(day, "2024"); got != want {
			t.Errorf("%q: %q, expected %q", day, got, want)
		}
	}
}

// TestMonthRows holds that a month in a row of its own, above days that say theirs, is none of a table's rows.
func TestMonthRows(t *testing.T) {
	l := inferred(t, "log", nil, "", "No.|Date|In|Out|Lines\nJUNE "+
		"2026\n1|3/6/26|06:00|08:00|4\n2|14/6/26|06:10|09:00|5\n"+
		"JULY 2026\n3|2/7/26|06:00|08:00|4\n4|20/7/26|06:10|09:00|5")
	if n := len(l.Data()[0].Block.Rows); n != 4 {
		t.Errorf("%d rows, expected 4", n)
	}
}
