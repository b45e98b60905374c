package meaning

import (
	"slices"
	"strings"
	"time"

	"wakeledger/pipeline/plan"
	"wakeledger/pipeline/unit"
)

// years settles in which year dates without one are: what the sheet's name, the titles
// and the file's name state together, else the year of the log's other texts, else of its other dates.
func (l *Log) years() {
	for _, u := range l.Data() {
		p := u.Plan
		texts := append([]string{p.Name}, u.Block.Above...)
		if b := p.Find("date"); b != nil && b.Column.Parse == "date" {
			l.monthDays(u, b, texts)
		}
		if stated, ok := statedYears(append(texts, l.File)...); ok {
			if years, ok := p.Years.And(stated); ok {
				p.Years = years
			}
		}
		if p.Years == (unit.Years{}) {
			p.Years = l.otherYears()
		}
		if p.Years == (unit.Years{}) {
			p.Years = l.yearsOfDays(u)
		}
	}
}

// statedYears is what texts state together; ok is false where they contradict each other.
func statedYears(texts ...string) (years unit.Years, ok bool) {
	for _, text := range texts {
		if years, ok = years.And(unit.YearsIn(text)); !ok {
			return unit.Years{}, false
		}
	}
	return years, true
}

// monthDays takes whole numbers under a heading such as "Day" for days of the month
// that the sheet's name or title states.
func (l *Log) monthDays(u *Understood, b *plan.Binding, texts []string) {
	numbers, filled := 0, 0
	for _, c := range column(u.b.rows, b.Index) {
		filled++
		if v, ok := number(c); ok && v >= 1 && v <= 31 && v == float64(int(v)) && !strings.ContainsAny(c, "/-. ") {
			numbers++
		}
	}
	if filled == 0 || 4*numbers < 3*filled {
		return
	}
	for _, text := range texts {
		if month, years, ok := unit.MonthIn(text); ok {
			u.Plan.Month, u.Plan.Years = month, years
			u.b.note("%s: days of %s, as the sheet's name says", b.Heading, month)
			return
		}
	}
}

// otherYears is the one year, or two that follow each other, of the log's texts.
func (l *Log) otherYears() unit.Years {
	years, _ := statedYears(l.Texts...)
	return years
}

// yearsOfDays are the years of the days that the log writes whole, in this table or another: one, or the two of a
// season that crosses the new year.
func (l *Log) yearsOfDays(of *Understood) unit.Years {
	if len(of.Block.Years) > 0 {
		return unit.Years{} // each says the year of the days under it: those above the first are of another
	}
	if b := of.Plan.Find("date"); b == nil || b.Column.Parse != "date" {
		return unit.Years{}
	}
	var first, last unit.Date
	for _, u := range l.Data() {
		b := u.Plan.Find("date")
		if b == nil || b.Column.Parse != "date" {
			continue
		}
		for _, d := range u.b.daysOf(b.Index) {
			switch {
			case d == 0 || d.Time().Year() == yearlessYear:
			case first == 0:
				first, last = d, d
			default:
				first, last = min(first, d), max(last, d)
			}
		}
	}
	from, to := first.Time(), last.Time()
	years := unit.Years{From: from.Year(), To: to.Year()}
	crosses := years.To == years.From+1 && from.Month() >= time.July && to.Month() < time.July
	if first == 0 || years.To > years.From && !crosses {
		return unit.Years{} // several seasons: a day without a year may be of any
	}
	if b := of.Plan.Find("date"); slices.ContainsFunc(column(of.b.rows, b.Index), yearless) {
		of.b.note("%s: days without a year are of the season of the log's other days, %s to %s", b.Heading, first, last)
	}
	return years
}
