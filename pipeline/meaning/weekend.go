package meaning

import (
	"fmt"
	"slices"
	"strings"

	"wakeledger/pipeline/layout"
	"wakeledger/pipeline/unit"
	"wakeledger/pipeline/words"
)

// weekend makes days of the names of days of the week in a table whose title names the days of an outing: Sat and Sun
// under "Bay, 3 & 4 May 2025". It returns what a user should be told of it.
func weekend(b *layout.Block) string {
	if b.Shape != layout.Table || b.Open || hasDays(b) {
		return ""
	}
	from, to, ok := daysAbove(b.Above)
	if !ok {
		return ""
	}
	for _, l := range b.Labels {
		var names []string
		for _, r := range b.Rows {
			text := cellText(r, l.Col)
			if _, ok := words.Weekday(text); text != "" && (ok || !loneText(&r)) {
				names = append(names, text)
			}
		}
		by := weekdaysOf(names, from, to)
		if by == nil {
			continue
		}
		for _, r := range b.Rows {
			if day, ok := by[strings.ToLower(cellText(r, l.Col))]; ok {
				r.Cells[l.Col].Look, r.Cells[l.Col].Text = layout.Date, day
			}
		}
		return fmt.Sprintf("%s: days of the week, of the days in the title above them", l.Text)
	}
	return ""
}

// weekendsBeside makes days of the names of days of the week beside the days of a weekend, which stand once for the
// rows under them: 11-12 May, and Sun. It returns what a user should be told of it.
func weekendsBeside(b *layout.Block, years unit.Years) string {
	if b.Shape != layout.Table || b.Open || years == (unit.Years{}) {
		return ""
	}
	for _, s := range b.Labels {
		spans := spansUnder(b, s.Col, years)
		for _, l := range b.Labels {
			days := daysNamed(b, l.Col, spans)
			if days == nil {
				continue
			}
			for i, day := range days {
				if day == "" { // a weekend ashore
					day = cellText(b.Rows[i], s.Col)
				}
				if r := &b.Rows[i]; day != "" && l.Col < len(r.Cells) && !loneText(r) {
					r.Cells[l.Col].Look, r.Cells[l.Col].Text = layout.Date, day
				}
			}
			return fmt.Sprintf("%s: days of the week, of the days under %s", l.Text, s.Text)
		}
	}
	return ""
}

// spansUnder is the first and the last day of each row by a column of them; nil where it has other cells too.
func spansUnder(b *layout.Block, col int, years unit.Years) [][2]unit.Date {
	spans, told := make([][2]unit.Date, len(b.Rows)), 0
	for i := range b.Rows {
		from, to, ok := spanWithin(cellText(b.Rows[i], col), years)
		switch text := cellText(b.Rows[i], col); {
		case ok:
			told++
			spans[i] = [2]unit.Date{from, to}
		case text == "" && i > 0:
			spans[i] = spans[i-1]
		case !loneText(&b.Rows[i]):
			return nil
		}
	}
	if told < 2 {
		return nil
	}
	return spans
}

// daysNamed are the days of rows whose cells name days of the week within their span; nil where the column is another
// one.
func daysNamed(b *layout.Block, col int, spans [][2]unit.Date) []string {
	var out []string
	named := 0
	for i, span := range spans {
		text := cellText(b.Rows[i], col)
		by := weekdaysOf([]string{text}, span[0], span[1])
		switch {
		case by != nil && by[strings.ToLower(text)] != "":
			named++
		case text != "" && !loneText(&b.Rows[i]):
			return nil
		}
		out = append(out, by[strings.ToLower(text)])
	}
	if named < 2 {
		return nil
	}
	return out
}

// spanWithin reads 4-5 May and 31 Aug-1 Sep, with their year or in one of the years.
func spanWithin(text string, years unit.Years) (from, to unit.Date, ok bool) {
	if from, to, ok = firstAndLast(text); ok {
		return from, to, true
	}
	first, n, one := unit.DaySpan(text)
	last := first
	if !one {
		first, last, _ = strings.Cut(andOrTo.Replace(strings.Replace(text, "-", " - ", 1)), "|")
	}
	a, err := unit.ParseDayMonth(strings.TrimSpace(first), unit.OrderUnknown)
	z, errLast := unit.ParseDayMonth(strings.TrimSpace(last), unit.OrderUnknown)
	from, okFrom := years.Date(a)
	to, okTo := years.Date(z)
	if one {
		to += unit.Date(n) - 1
	}
	return from, to, err == nil && errLast == nil && okFrom && okTo && from < to && to-from < longestOuting
}

// hasDays tells a table in which some cell is a day.
func hasDays(b *layout.Block) bool {
	return slices.ContainsFunc(b.Rows, func(r layout.Row) bool {
		return slices.ContainsFunc(r.Cells, func(c layout.Cell) bool { return c.Look == layout.Date })
	})
}

// daysAbove is the first and the last day that titles above a table say, the nearest first; ok is false where none
// says them, or two say others.
func daysAbove(above []string) (from, to unit.Date, ok bool) {
	for _, text := range above {
		first, last, found := daysWithin(text)
		if found && ok && (first != from || last != to) {
			return 0, 0, false
		}
		if found {
			from, to, ok = first, last, true
		}
	}
	return from, to, ok
}

// wordsOfDays is how many words the first and the last of some days take at the most: 31 May 2025 to 1 June 2025.
const wordsOfDays = 7

// daysWithin is the first and the last of some days that a title names with their year, of a week at the most.
func daysWithin(title string) (from, to unit.Date, ok bool) {
	w := strings.Fields(title)
	for n := min(wordsOfDays, len(w)); n >= 1; n-- {
		for i := 0; i+n <= len(w); i++ {
			from, to, ok = firstAndLast(strings.Trim(strings.Join(w[i:i+n], " "), " ,;:()-–—."))
			if ok {
				return from, to, true
			}
		}
	}
	return 0, 0, false
}

// firstAndLast reads 3-4 May 2025, and 31 May - 1 June 2025, whose year is that of both.
func firstAndLast(text string) (from, to unit.Date, ok bool) {
	if first, days, span := unit.DaySpan(text); span {
		m, err := unit.ParseMoment(first, unit.OrderUnknown)
		return m.Date, m.Date + unit.Date(days) - 1, err == nil && m.HasDate && days <= longestOuting
	}
	left, right, parted := strings.Cut(andOrTo.Replace(text), "|")
	last, err := unit.ParseMoment(strings.TrimSpace(right), unit.OrderUnknown)
	if !parted || err != nil || !last.HasDate {
		return 0, 0, false
	}
	from, to = 0, last.Date
	if d, err := unit.ParseDayMonth(strings.TrimSpace(left), unit.OrderUnknown); err == nil {
		from = unit.DateOf(to.Time().Year(), d.Month, d.Day)
	} else if m, err := unit.ParseMoment(strings.TrimSpace(left), unit.OrderUnknown); err == nil && m.HasDate {
		from = m.Date
	}
	return from, to, from != 0 && from < to && to-from < longestOuting
}

// andOrTo marks where the first of some days ends and the last begins.
var andOrTo = strings.NewReplacer(" - ", "|", " – ", "|", " — ", "|", "–", "|", " & ", "|", " to ", "|", " and ", "|",
	" y ", "|", " al ", "|", " au ", "|", " et ", "|", " e ", "|", " a ", "|", " und ", "|", " bis ", "|")
