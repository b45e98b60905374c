package reports

import (
	"fmt"
	"slices"
	"time"

	"wakeledger/queries"
	"wakeledger/reports/page"
)

// outing is one day out, of all its trips.
type outing struct {
	day             time.Time
	strikes, boated int64
	hours           float64
}

// outings are the days of the trips in order; a trip without a date is on none.
func outings(trips []queries.Trip) []outing {
	var out []outing
	for _, t := range trips {
		at, err := time.Parse(time.DateOnly, text(t.Date))
		if err != nil {
			continue
		}
		i := slices.IndexFunc(out, func(o outing) bool { return o.day.Equal(at) })
		if i < 0 {
			i, out = len(out), append(out, outing{day: at})
		}
		out[i].strikes, out[i].boated, out[i].hours = out[i].strikes+t.Strikes, out[i].boated+t.Landed+t.Released, out[i].hours+t.LineHours
	}
	slices.SortFunc(out, func(a, b outing) int { return a.day.Compare(b.day) })
	return out
}

// spellDays is how long the best spell is looked for.
const spellDays = 14

// spell is the days within a fortnight that have the most strikes together; of equals
// the first.
func spell(days []outing) []outing {
	var best []outing
	most := int64(-1)
	for i, first := range days {
		n, j := int64(0), i
		for ; j < len(days) && days[j].day.Sub(first.day) < spellDays*24*time.Hour; j++ {
			n += days[j].strikes
		}
		if n > most {
			best, most = days[i:j], n
		}
	}
	return best
}

// daysPicture is the calendar of the season.
func (s *season) daysPicture() (page.Section, string, error) {
	section := page.Section{ID: "days", Heading: "The season by day"}
	days := outings(s.Trips)
	if len(days) < 2 {
		if len(s.Trips) < 2 {
			return section, "", nil
		}
		return section, "the season by day, because the trips have no dates", nil
	}
	var months []page.Level
	var marks []page.DayMark
	var sums []outing
	for _, d := range days {
		name := d.day.Format("Jan 2006")
		if len(months) == 0 || months[len(months)-1].Name != name {
			months, sums = append(months, page.Level{Name: name}), append(sums, outing{})
		}
		at := len(months) - 1
		sums[at].strikes += d.strikes
		months[at].Counts = page.Plural(sums[at].strikes, "strike", "strikes")
		marks = append(marks, page.DayMark{Month: at, Day: d.day.Day(), Strikes: d.strikes, Boated: d.boated, Hours: d.hours})
	}
	section.Sentences = []string{daysSentence(days)}
	chart, err := page.Calendar(page.Frame{
		Label: "A row a month, a column a day: strikes up, line-hours down. " + section.Sentences[0] + " The table below holds the figures.",
		Axis:  "day of the month", Counts: "strikes",
		Keys: []page.Key{{Mark: page.MarkBoated, Words: "up: fish to the boat"}, {Mark: page.MarkStruck, Words: "other strikes"}, {Mark: page.MarkEffort, Words: "down: line-hours"}},
	}, months, marks)
	section.Chart, section.Table = chart, daysTable(days)
	return section, "", err
}

// daysSentence is the best spell and the blank days.
func daysSentence(days []outing) string {
	blank, strikes := 0, int64(0)
	for _, d := range days {
		strikes += d.strikes
		if d.strikes == 0 {
			blank++
		}
	}
	out := fmt.Sprintf("%s out, %d without a strike.", page.Plural(int64(len(days)), "day", "days"), blank)
	best := spell(days)
	n, last := int64(0), best[len(best)-1].day
	for _, d := range best {
		n += d.strikes
	}
	if strikes == 0 || len(best) < 2 {
		return out
	}
	from := "2 January 2006"
	switch a := best[0].day; {
	case a.Year() == last.Year() && a.Month() == last.Month():
		from = "2"
	case a.Year() == last.Year():
		from = "2 January"
	}
	return fmt.Sprintf("Best fortnight: %s to %s, %s on %s. %s", best[0].day.Format(from), last.Format("2 January 2006"),
		page.Plural(n, "strike", "strikes"), page.Plural(int64(len(best)), "day", "days"), out)
}

func daysTable(days []outing) *page.Table {
	t := &page.Table{Caption: "every day out", Columns: []page.Column{{Head: "Date", Kind: page.Token}, {Head: "Strikes", Kind: page.Measure},
		{Head: "Landed or released", Kind: page.Measure}, {Head: "Line-hours", Unit: "h", Kind: page.Measure, Decimals: 1}}}
	for _, d := range days {
		t.Rows = append(t.Rows, page.Row{Cells: []page.Cell{page.Words(d.day.Format(time.DateOnly)), page.Whole(d.strikes), page.Whole(d.boated), page.Value(d.hours)}})
	}
	return t
}
