package meaning

import (
	"slices"
	"strings"
	"time"

	"wakeledger/pipeline/layout"
	"wakeledger/pipeline/plan"
	"wakeledger/pipeline/unit"
	"wakeledger/pipeline/words"
)

// longestOuting is over how many days the names of the days of the week tell one day each.
const longestOuting = 7

// weekdays takes a column of names of days of the week, "Sat" and "Sun" below it, for the days that the form of its
// sheet says the trip was from and to.
func (l *Log) weekdays() {
	for _, u := range l.Data() {
		p := u.Plan
		if u.Block.Shape == layout.Form || p.Binds("date") ||
			p.Kind != plan.Legs && p.Kind != plan.Strikes && p.Kind != plan.Flat {
			continue
		}
		for _, label := range u.Block.Labels {
			by, from, to := l.weekdaysIn(p.Sheet, column(u.b.rows, label.Col))
			if by == nil {
				continue
			}
			heading := headingOf(label)
			p.Bindings = slices.DeleteFunc(slices.Clone(p.Bindings),
				func(b plan.Binding) bool { return b.Index == label.Col })
			p.Unknown = slices.DeleteFunc(slices.Clone(p.Unknown),
				func(x plan.Unknown) bool { return x.Index == label.Col })
			p.Bindings = append(p.Bindings, plan.Binding{Index: label.Col, Heading: heading,
				Column: l.lexicon.named("date", "date"), By: by, Carried: true})
			u.b.note("%s: days of the week, from %s to %s as the sheet's form says", heading, from, to)
			break
		}
	}
}

// weekdaysIn are the days of cells by the forms of their sheet, in the one order of day and month in which the days of
// the week are those of the forms.
func (l *Log) weekdaysIn(sheet int, cells []string) (by map[string]string, from, to unit.Date) {
	for _, order := range []unit.Order{unit.MonthFirst, unit.DayFirst} {
		first, last := l.outingOfSheet(sheet, order)
		if first == 0 || last-first >= longestOuting {
			continue
		}
		days := weekdaysOf(cells, first, last)
		if by != nil && days != nil && first != from {
			return nil, 0, 0
		}
		if days != nil {
			by, from, to = days, first, last
		}
	}
	return by, from, to
}

// outingOfSheet is the first and the last day that the forms of a sheet name; 0 where they name none.
func (l *Log) outingOfSheet(sheet int, order unit.Order) (from, to unit.Date) {
	for _, f := range l.Blocks {
		if f.Block.Shape != layout.Form || f.Plan.Sheet != sheet {
			continue
		}
		for _, r := range f.Block.Rows {
			for _, c := range r.Cells {
				day, ok := dayIn(c.Text, order)
				if number := c.Look == layout.Number || c.Look == layout.Duration; !ok || number || yearless(c.Text) {
					continue
				}
				if from == 0 || day < from {
					from = day
				}
				to = max(to, day)
			}
		}
	}
	return from, to
}

// copied tells the name of a trip that the form of another sheet has too, of days apart from these: it came with the
// sheet that was copied.
func (l *Log) copied(form *Understood, name string) bool {
	from, to := l.outingOfSheet(form.Plan.Sheet, unit.OrderUnknown)
	return from != 0 && slices.ContainsFunc(l.Blocks, func(o *Understood) bool {
		trip := o.Plan.Find("trip")
		if o.Block.Shape != layout.Form || o.Plan.Sheet == form.Plan.Sheet || trip == nil ||
			o.text(trip.Index) != name {
			return false
		}
		first, last := l.outingOfSheet(o.Plan.Sheet, unit.OrderUnknown)
		return first != 0 && (last+1 < from || to+1 < first)
	})
}

// weekdaysOf are the days of cells that name days of the week, by cell in lower case; nil where one of them is not
// within the days, or where other cells are no titles of rows below the table, as REMARKS is.
func weekdaysOf(cells []string, from, to unit.Date) map[string]string {
	by, titles := map[string]string{}, 0
	for _, c := range cells {
		name, ok := words.Weekday(words.Fold(strings.Trim(c, ". ")))
		if !ok && len(c) > longestCode && wordOnly(c) {
			titles++
			continue
		}
		if !ok {
			return nil
		}
		day, found := dayNamed(name, from, to)
		if !found {
			return nil
		}
		by[strings.ToLower(c)] = day.String()
	}
	if len(by) == 0 || titles > mostTitles {
		return nil
	}
	return by
}

// mostTitles is how many rows with a title of their own may stand below a table: notes, what was caught at night.
const mostTitles = 3

// dayNamed is the one day of a name within days.
func dayNamed(name time.Weekday, from, to unit.Date) (unit.Date, bool) {
	for day := from; day <= to; day++ {
		if day.Time().Weekday() == name {
			return day, true
		}
	}
	return 0, false
}
