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
	l.takeYears()
}

// NoYear is what was made of a log's days where nothing in it says their year.
type NoYear struct {
	First []string     // the first few of these days, as written: next year's log begins with others
	Fit   []unit.Years // what they may be of, the last first: the first is taken
	Named bool         // weekdays stand beside them, and tell which years fit
}

// Bounds of the years that days without one may be of: weekdays come again within eleven years.
const (
	yearsBack = 11
	mostYears = 4
	firstDays = 3
)

// takeYears takes the days of a log that nowhere says a year for those of the last that fits: on the weekdays that
// stand beside them, and not after today. Proof asks whether it is that one.
func (l *Log) takeYears() {
	var all []unit.DayMonth
	var of []*Understood
	no, crosses := &NoYear{}, false
	for _, u := range l.Data() {
		b := u.Plan.Find("date")
		if b == nil || b.Column.Parse != "date" {
			continue
		}
		if u.Plan.Years != (unit.Years{}) || len(u.Block.Years) > 0 {
			return
		}
		var before time.Month
		for i, d := range u.b.daysOf(b.Index) {
			text := cellOf(u.b.rows[i], b.Index)
			switch {
			case d == 0:
				continue
			case !yearless(text):
				return // a day with its year
			}
			_, month, day := d.Civil()
			at := unit.DayMonth{Day: day, Month: month}
			if named, err := unit.ParseDayMonth(text, unit.OrderUnknown); err == nil && named.HasWeekday {
				at, no.Named = named, true
			}
			crosses = crosses || before >= time.October && month <= time.March
			before = month
			all = append(all, at)
			if len(no.First) < firstDays {
				no.First = append(no.First, text)
			}
		}
		of = append(of, u)
	}
	if len(all) == 0 || l.lexicon.Today == 0 {
		return
	}
	this := l.lexicon.Today.Time().Year()
	for last := this; last > this-yearsBack && len(no.Fit) < mostYears; last-- {
		years := unit.Years{From: last, To: last}
		if crosses {
			years.From--
		}
		if !slices.ContainsFunc(all, func(d unit.DayMonth) bool {
			date, ok := years.Date(d)
			return !ok || date > l.lexicon.Today
		}) {
			no.Fit = append(no.Fit, years)
		}
	}
	if len(no.Fit) == 0 {
		return
	}
	for _, u := range of {
		u.Plan.Years = no.Fit[0]
	}
	l.NoYear = no
}

// OfYears has the days that nowhere have a year be of others than were taken.
func (l *Log) OfYears(years unit.Years) {
	if l.NoYear == nil {
		return
	}
	for _, u := range l.Data() {
		if u.Plan.Years == l.NoYear.Fit[0] {
			u.Plan.Years = years
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
