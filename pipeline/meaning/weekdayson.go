package meaning

import (
	"slices"
	"strings"

	"wakeledger/pipeline/plan"
	"wakeledger/pipeline/unit"
	"wakeledger/pipeline/words"
)

// weekdaysOn gives the rows of a sheet whose day stands once, above its tables, the days that a column of weekdays
// says:
// Sat is the day on which the boat left, and Sun the next. Its strikes are of the days of the stretches that they name.
func (l *Log) weekdaysOn() {
	for _, u := range l.Data() {
		p := u.Plan
		if p.Kind != plan.Legs && p.Kind != plan.Flat || !p.Gives("date") || p.Binds("date") {
			continue
		}
		at, by := u.weekdayColumn()
		if by == nil {
			continue
		}
		first, _ := u.given()
		heading := u.byDay(at, l.lexicon.named("date", "date"), by)
		u.b.note("%s: the days of the week are those from the day on which the boat left", heading)
		if leg := p.Find("leg"); leg != nil {
			l.strikesOfStretches(u, leg, at, first, by)
		}
	}
}

// given is the day that stands once for all rows.
func (u *Understood) given() (unit.Date, bool) {
	for _, g := range u.Plan.Given {
		if g.Column.Name == "date" && (statesDay(g.Text) || dayNumbered(g.Text)) {
			return dayIn(g.Text, unit.OrderOf(g.Text))
		}
	}
	return 0, false
}

// dayNumbered tells a workbook's number of a day.
func dayNumbered(text string) bool {
	v, ok := number(text)
	return ok && v >= 20000 && v < 80000
}

// weekdayColumn is the column without a meaning in which each row names a day of the week, no earlier than that of the
// row above, and the day that each name stands for; nil where there is none.
func (u *Understood) weekdayColumn() (int, map[string]string) {
	first, ok := u.given()
	if !ok {
		return 0, nil
	}
	for _, x := range u.Plan.Unknown {
		if by := weekdaysFrom(first, column(u.b.rows, x.Index)); by != nil {
			return x.Index, by
		}
	}
	return 0, nil
}

// weekdaysFrom gives each name of a day of the week its day from the first day on; nil where a cell names none,
// they go back, or begin later than the day after the boat left.
func weekdaysFrom(first unit.Date, cells []string) map[string]string {
	by, last := map[string]string{}, 0
	for _, c := range cells {
		d, ok := words.Weekday(c)
		if !ok {
			return nil
		}
		after := (int(d) - int(first.Time().Weekday()) + 7) % 7
		if after < last || len(by) == 0 && after > 1 {
			return nil
		}
		by[strings.ToLower(c)], last = (first + unit.Date(after)).String(), after
	}
	if len(by) == 0 {
		return nil
	}
	return by
}

// byDay has a column's cells say their rows' days, in place of the day that stood once. It returns its heading.
func (u *Understood) byDay(index int, date *plan.Column, by map[string]string) string {
	p, heading := u.Plan, ""
	for _, x := range p.Unknown {
		if x.Index == index {
			heading = x.Heading
		}
	}
	if b := p.Find("leg"); heading == "" && b != nil {
		heading = b.Heading
	}
	p.Given = slices.DeleteFunc(p.Given, func(g plan.Given) bool { return g.Column.Name == "date" })
	p.Unknown = slices.DeleteFunc(p.Unknown, func(x plan.Unknown) bool { return x.Index == index })
	p.Bindings = append(p.Bindings, plan.Binding{Index: index, Heading: heading, Column: date, By: by})
	return heading
}

// strikesOfStretches gives strikes of the same sheet and day, which name a stretch, that stretch's day.
func (l *Log) strikesOfStretches(of *Understood, leg *plan.Binding, at int, first unit.Date,
	by map[string]string) {
	days := map[string]string{}
	for _, row := range of.b.rows {
		if name, day := strings.ToLower(cellOf(row, leg.Index)), by[strings.ToLower(cellOf(row, at))]; name != "" {
			if days[name] != "" && days[name] != day {
				return
			}
			days[name] = day
		}
	}
	for _, u := range l.Data() {
		ref := u.Plan.Find("leg")
		if u.Block.Grid != of.Block.Grid || u.Plan.Kind != plan.Strikes && u.Plan.Kind != plan.Fish || ref == nil ||
			!u.Plan.Gives("date") {
			continue
		}
		own := map[string]string{}
		for _, name := range column(u.b.rows, ref.Index) {
			if own[strings.ToLower(name)] = days[strings.ToLower(name)]; own[strings.ToLower(name)] == "" {
				own[strings.ToLower(name)] = first.String() // of no stretch: on the drift
			}
		}
		u.byDay(ref.Index, l.lexicon.named("date", "date"), own)
	}
}
