package meaning

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"wakeledger/pipeline/layout"
	"wakeledger/pipeline/plan"
	"wakeledger/pipeline/unit"
	"wakeledger/pipeline/words"
)

// daysOf are the days that the cells of a column say, row for row, 0 where a cell says none. Days
// without a year are of one year. Where nothing tells the order of day and month, it is the one in
// which the days rise more often.
func (x *builder) daysOf(index int) []unit.Date {
	days := x.daysWritten(index)
	for i := range days {
		if text, ok := x.plan.Days[plan.Cell{Row: int64(x.block.Rows[i].Num), Index: index}]; ok {
			days[i], _ = dayIn(text, unit.DayFirst)
		}
	}
	return days
}

// daysWritten are those that the cells hold.
func (x *builder) daysWritten(index int) []unit.Date {
	order := unit.OrderUnknown
	for _, row := range x.rows {
		cell := cellOf(row, index)
		if order = unit.OrderOf(cell); order == unit.OrderUnknown {
			order = unit.DayMonthOrder(cell)
		}
		if order != unit.OrderUnknown {
			break
		}
	}
	if order != unit.OrderUnknown {
		return daysIn(x.rows, index, order)
	}
	a, b := daysIn(x.rows, index, unit.DayFirst), daysIn(x.rows, index, unit.MonthFirst)
	if breaks(b) < breaks(a) {
		return b
	}
	return a
}

func daysIn(rows [][]string, index int, order unit.Order) []unit.Date {
	out := make([]unit.Date, len(rows))
	for i, row := range rows {
		out[i], _ = dayIn(cellOf(row, index), order)
	}
	return out
}

// dayIn is the day that a text says: a workbook's serial, a date with its year, or one without,
// which is then of the year 2000.
func dayIn(text string, order unit.Order) (unit.Date, bool) {
	if v, err := strconv.ParseFloat(text, 64); err == nil {
		return unit.DateOf(1899, 12, 30) + unit.Date(v), v >= 20000 && v < 80000
	}
	if m, err := unit.ParseMoment(text, order); err == nil && m.HasDate {
		return m.Date, true
	}
	if d, err := unit.ParseDayMonth(text, order); err == nil {
		return unit.DateOf(yearlessYear, d.Month, d.Day), true
	}
	if first, _, ok := unit.DaySpan(text); ok {
		return dayIn(first, order)
	}
	return 0, false
}

// breaks is how often days go back.
func breaks(days []unit.Date) int {
	n, last := 0, unit.Date(0)
	for _, d := range days {
		if d == 0 {
			continue
		}
		if last != 0 && d < last {
			n++
		}
		last = d
	}
	return n
}

// overnights names the trips that last over a night as their words say: "overnighter, still out"
// on the first day, "day 2" on the next. Days of a contest begin and end at the dock.
func (x *builder) overnights() {
	p := x.plan
	date := p.Find("date")
	if date == nil || date.Column.Parse != "date" || p.Binds("trip") || p.Gives("trip") || p.Outings ||
		p.Kind != plan.Flat && p.Kind != plan.Legs && p.Kind != plan.Events {
		return
	}
	days := x.daysOf(date.Index)
	for i := range days {
		blank := cellOf(x.rows[i], date.Index) == ""
		if i > 0 && days[i] == 0 && (date.Carried || blank && len(strings.Join(x.rows[i], "")) > 0) {
			days[i] = days[i-1]
		}
	}
	said := func(day unit.Date, kind string) bool {
		for i, row := range x.rows {
			if days[i] == day && slices.ContainsFunc(row,
				func(c string) bool { return c != "" && words.Night(c, kind) }) {
				return true
			}
		}
		return slices.ContainsFunc(x.block.Beside, func(n layout.Note) bool {
			return x.dayUnder(n, days) == day && words.Night(n.Text, kind)
		})
	}
	nights := 0
	for i := 1; i < len(days); i++ {
		day := days[i]
		if day == 0 || days[i-1] != day-1 || said(day, "contest") || said(day-1, "contest") {
			continue
		}
		_, _, nth := day.Civil()
		_, worded := p.Days[plan.Cell{Row: int64(x.block.Rows[i].Num), Index: date.Index}]
		if !(said(day, "second") && (nth > 3 || worded)) && !said(day-1, "over") || x.atDock(days, i) {
			continue // "day 2" on the second of a month may be its date
		}
		nights++
		first := i - 1
		for first > 0 && days[first-1] == days[i-1] {
			first--
		}
		name := "overnight " + cellOf(x.rows[first], date.Index)
		if had := p.Trips[int64(x.block.Rows[first].Num)]; had != "" {
			name = had
		} else if d := days[first]; d > unit.DateOf(yearlessYear, 12, 31) {
			name = "overnight " + d.String()
		}
		for k := first; k < len(days) && (days[k] == day-1 || days[k] == day); k++ {
			x.ofTrip(k, name)
		}
	}
	if nights > 0 {
		x.note("%s: %s a trip goes on the next day, as its words say: one trip each", date.Heading,
			often(nights))
	}
}

// dayUnder is the day of the row that stands right under a line that is none of the block's rows; 0 where none does.
func (x *builder) dayUnder(n layout.Note, days []unit.Date) unit.Date {
	for i, row := range x.block.Rows {
		if row.Num > n.Row {
			return days[i]
		}
	}
	return 0
}

// atDock tells a log of events in which the boat came home before the row with which a day begins, or left
// on that day before the lines went in.
func (x *builder) atDock(days []unit.Date, first int) bool {
	event := x.plan.Find("event")
	if event == nil {
		return false
	}
	of := func(row int) words.Event { return words.EntryOf(cellOf(x.rows[row], event.Index)).Event }
	for i := first - 1; i >= 0 && days[i] == days[first-1]; i-- {
		if of(i) == words.EventHome {
			return true
		}
	}
	for i := first; i < len(days) && days[i] == days[first]; i++ {
		switch of(i) {
		case words.EventLeave, words.EventClear:
			return true
		case words.EventIn, words.EventOut:
			return false
		}
	}
	return false
}

// ofTrip names the trip of a row.
func (x *builder) ofTrip(row int, name string) {
	if x.plan.Trips == nil {
		x.plan.Trips = map[int64]string{}
	}
	x.plan.Trips[int64(x.block.Rows[row].Num)] = name
}

// fewFirsts is the least number of outings of several rows that show that a day is written once
// an outing.
const fewFirsts = 3

// distinctDays are the different days among those of rows.
func (x *builder) distinctDays(days []unit.Date) map[unit.Date]bool {
	all := map[unit.Date]bool{}
	for _, d := range days {
		if d != 0 {
			all[d] = true
		}
	}
	return all
}

// twoClients parts the trips of a day that is written twice, each time with another client, in a
// table that else writes day and client once, on the first row of an outing.
func (x *builder) twoClients() {
	p := x.plan
	date := p.Find("date")
	if date == nil || p.Binds("trip") || p.Gives("trip") || p.Outings || p.Trips != nil ||
		p.Kind != plan.Flat && p.Kind != plan.Legs {
		return
	}
	days := x.daysOf(date.Index)
	for _, index := range x.firstsOnly(date.Index) {
		twice := 0
		name := map[int]string{}
		last := -1 // the row on which the day stands
		for i, d := range days {
			if d == 0 {
				continue
			}
			if last >= 0 && d == days[last] && !strings.EqualFold(cellOf(x.rows[i], index),
				cellOf(x.rows[last], index)) && cellOf(x.rows[i], index) != "" {
				twice++
				if name[last] == "" {
					name[last] = fmt.Sprint(d, " ", cellOf(x.rows[last], index))
				}
				name[i] = fmt.Sprint(d, " ", cellOf(x.rows[i], index))
			}
			last = i
		}
		if seen := len(x.distinctDays(days)); twice == 0 || 2*twice > seen {
			continue // where most days are, what stands beside them names no outing: stretch A, stretch B
		}
		of := ""
		for i, d := range days {
			if d != 0 {
				of = name[i]
			}
			if of != "" {
				x.ofTrip(i, of)
			}
		}
		x.note("%s: written twice for %d days, each time beside another name: two trips each", date.Heading, twice)
		return
	}
}

// ofOuting are meanings of words that an outing has one of.
var ofOuting = []string{"captain", "anglers", "angler", "boat", "port", "notes"}

// firstsOnly are the columns of words that are filled where the day is, and not on the rows
// under it, where several outings have such rows.
func (x *builder) firstsOnly(date int) []int {
	var out []int
	heads, under := 0, 0
	for i, row := range x.rows {
		if cellOf(row, date) != "" {
			heads++
			if i+1 < len(x.rows) && cellOf(x.rows[i+1], date) == "" {
				under++
			}
		}
	}
	if under < fewFirsts {
		return nil
	}
	for _, l := range x.block.Labels {
		first, rest := 0, 0
		for _, row := range x.rows {
			text := cellOf(row, l.Col)
			switch {
			case text == "" || !hasLetter(text):
			case cellOf(row, date) != "":
				first++
			default:
				rest++
			}
		}
		stretch := slices.ContainsFunc(x.plan.Bindings, func(b plan.Binding) bool {
			return b.Index == l.Col && !slices.Contains(ofOuting, b.Column.Name)
		}) || slices.ContainsFunc(slices.Concat(x.plan.Spread, x.plan.Rods, x.plan.Catch), func(u plan.Unknown) bool {
			return u.Index == l.Col
		})
		if l.Col != date && 10*first >= 8*heads && rest == 0 && !stretch {
			out = append(out, l.Col)
		}
	}
	return out
}

// clients takes the name of a trip for that of a client or a kind of trip, where it comes again
// on a later day with other names between: "honeymooners" of April and of July.
func (l *Log) clients() {
	of := map[string][]unit.Date{}
	var all []*Understood
	for _, u := range l.Data() {
		if n := u.namedTrips(of); n {
			all = append(all, u)
		}
	}
	again := 0
	for name, days := range of {
		if between(of, name, slices.Min(days), slices.Max(days)) {
			again++
		}
	}
	if again < 2 || 5*again < len(of) {
		return
	}
	for _, u := range all {
		p := u.Plan
		p.Given = slices.DeleteFunc(p.Given, func(g plan.Given) bool { return g.Column.Name == "trip" })
		for _, b := range p.Bindings {
			if b.Column.Name == "trip" {
				p.Unknown = append(p.Unknown, plan.Unknown{Index: b.Index, Heading: b.Heading, Aside: "people"})
			}
		}
		p.Bindings = slices.DeleteFunc(p.Bindings, func(b plan.Binding) bool { return b.Column.Name == "trip" })
		u.b.note("the name of the trip comes again on other days: taken for the client's, and each day for a trip")
		u.b.twoClients()
	}
}

// namedTrips adds the days of each name of a trip that a block has in words, and reports whether
// there are any.
func (u *Understood) namedTrips(of map[string][]unit.Date) bool {
	p, found := u.Plan, false
	add := func(name string, day unit.Date) {
		if found = found || hasLetter(name) && name != ""; hasLetter(name) && day != 0 {
			of[strings.ToLower(name)] = append(of[strings.ToLower(name)], day)
		}
	}
	trip, date := p.Find("trip"), p.Find("date")
	if trip != nil && date != nil && date.Column.Parse == "date" {
		days := u.b.daysOf(date.Index)
		for i, row := range u.b.rows {
			add(cellOf(row, trip.Index), days[i])
		}
		return found
	}
	name, day := "", ""
	for _, g := range p.Given {
		switch g.Column.Name {
		case "trip":
			name = g.Text
		case "date":
			day = g.Text
		}
	}
	if name != "" && day != "" {
		d, _ := dayIn(day, unit.OrderOf(day))
		add(name, d)
	}
	return found
}

// between reports whether another name has a day between two of a name.
func between(of map[string][]unit.Date, name string, lo, hi unit.Date) bool {
	for other, days := range of {
		if other != name && slices.ContainsFunc(days, func(d unit.Date) bool { return d > lo && d < hi }) {
			return true
		}
	}
	return false
}

// codedAshore tells the trips that a code of the log's own legend says were not gone.
func (u *Understood) codedAshore(l *legend) {
	if u.Plan.Kind != plan.Trips {
		return
	}
	for _, x := range u.Plan.Unknown {
		codes := l.codesOn(x.Heading)
		for _, r := range u.Block.Rows {
			if x.Index >= len(r.Cells) || !words.NotGone(codes[strings.ToLower(r.Cells[x.Index].Text)]) {
				continue
			}
			if u.Plan.Ashore == nil {
				u.Plan.Ashore = map[int64]bool{}
			}
			u.Plan.Ashore[int64(r.Num)] = true
		}
	}
}
