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
		out[i].strikes, out[i].boated, out[i].hours = out[i].strikes+t.Strikes, out[i].boated+t.Landed+
			t.Released, out[i].hours+t.LineHours
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

// daysPart is every day out; its levels are the months, in order.
func (s *season) daysPart() (out part[page.DayMark]) {
	days := outings(s.Trips)
	if len(days) < 2 {
		if len(s.Trips) < 2 {
			out.less = aloneOnPage
		} else {
			out.less = "the season by day, because the trips have no dates"
		}
		return out
	}
	strikes := int64(0)
	for _, d := range days {
		name := s.tagged(d.day.Format("Jan 2006"))
		if n := len(out.levels); n == 0 || out.levels[n-1].Name != name {
			out.levels, strikes = append(out.levels, page.Level{Name: name, Ink: s.ink}), 0
		}
		at := len(out.levels) - 1
		strikes += d.strikes
		out.levels[at].Counts = page.Plural(strikes, "strike", "strikes")
		out.marks = append(out.marks, page.DayMark{Month: at, Day: d.day.Day(), Strikes: d.strikes,
			Boated: d.boated, Hours: d.hours})
		out.rows = append(out.rows, page.Row{Cells: []page.Cell{page.Words(d.day.Format(time.DateOnly)),
			page.Whole(d.strikes), page.Whole(d.boated), page.Value(d.hours)}})
	}
	out.sentence = daysSentence(days)
	return out
}

// daysFrame is the words around the calendar.
func daysFrame(sentence string, keys ...page.Key) page.Frame {
	return page.Frame{
		Label: "A row a month, a column a day: strikes up, line-hours down. " + sentence +
			" The table below holds the figures.",
		Axis: "day of the month", Counts: "strikes",
		Keys: append(keys, page.Key{Mark: page.MarkEffort, Words: "down: line-hours"}),
	}
}

// daysPicture is the calendar of the season.
func (s *season) daysPicture() (section page.Section, less string, err error) {
	section = page.Section{ID: "days", Heading: "The season by day"}
	p := s.daysPart()
	if p.less != "" {
		return section, p.less, nil
	}
	section.Sentences = []string{p.sentence}
	section.Chart, err = page.Calendar(daysFrame(p.sentence,
		page.Key{Mark: page.MarkBoated, Words: "up: fish to the boat"},
		page.Key{Mark: page.MarkStruck, Words: "other strikes"}), p.levels, p.marks)
	section.Table = daysTable(p.rows)
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
	return fmt.Sprintf("Best fortnight: %s to %s, %s on %s. %s", best[0].day.Format(from),
		last.Format("2 January 2006"),
		page.Plural(n, "strike", "strikes"), page.Plural(int64(len(best)), "day", "days"), out)
}

func daysTable(rows []page.Row) *page.Table {
	return &page.Table{Caption: "every day out", Columns: []page.Column{{Head: "Date", Kind: page.Token},
		{Head: "Strikes", Kind: page.Measure},
		{Head: "Landed or released", Kind: page.Measure},
		{Head: "Line-hours", Unit: "h", Kind: page.Measure, Decimals: 1}}, Rows: rows}
}
