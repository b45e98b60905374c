package meaning

import (
	"math"
	"slices"
	"strconv"
	"strings"
	"time"

	"wakeledger/pipeline/layout"
	"wakeledger/pipeline/plan"
	"wakeledger/pipeline/unit"
)

// nearDays is how many days an outing at either end of a log may be from its only neighbour, where
// its year is a slip.
const nearDays = 60

// slips are days that stand out of order and would be in order in another year, as after New
// Year, by index. Days are rising but for a few slips; 0 is none.
func slips(days []unit.Date) map[int]unit.Date {
	var at []int // where another day begins
	last := unit.Date(0)
	for i, d := range days {
		if d != 0 && d != last {
			at, last = append(at, i), d
		}
	}
	if len(at) < 4 {
		return nil
	}
	out := map[int]unit.Date{}
	for k, i := range at {
		lo, hi := unit.Date(math.MinInt32), unit.Date(math.MaxInt32)
		if k > 0 {
			lo = days[at[k-1]]
		}
		if k+1 < len(at) {
			hi = days[at[k+1]]
		}
		switch {
		case k == 0:
			lo = hi - nearDays
		case k+1 == len(at):
			hi = lo + nearDays
		}
		d := days[i]
		if lo > hi || d >= lo && d <= hi || k == 0 && d < lo || k+1 == len(at) && d > hi {
			continue
		}
		y, m, n := d.Civil()
		for _, by := range []int{1, -1, 10, -10, 2, -2} {
			if to := unit.DateOf(y+by, m, n); to >= lo && to <= hi {
				out[i] = to
				break
			}
		}
	}
	if len(out) > 1+len(at)/10 {
		return nil
	}
	for i, d := range out { // the same slip on the rows beside it
		for k := i + 1; k < len(days) && (days[k] == days[i] || days[k] == 0); k++ {
			if days[k] != 0 {
				out[k] = d
			}
		}
	}
	fixed := slices.Clone(days)
	for i, d := range out {
		fixed[i] = d
	}
	if breaks(fixed) > len(at)/10 {
		return nil
	}
	return out
}

// wrongYears mends the year of a day that stands between days of another year.
func (x *builder) wrongYears() {
	date := x.plan.Find("date")
	if date == nil || date.Column.Parse != "date" {
		return
	}
	days := x.daysOf(date.Index)
	var without []int
	for i := range days {
		if yearless(cellOf(x.rows[i], date.Index)) {
			without = append(without, i)
			days[i] = 0
		}
	}
	for i, to := range slips(days) {
		x.redate(i, date, to)
		x.note("%s in row %d: %s stands among days of another year: read as %s", date.Heading,
			x.block.Rows[i].Num, days[i], to)
		days[i] = to
	}
	if 3*len(without) > len(days) {
		x.yearOnce(date, days, without) // else no year is what this log does
		return
	}
	for _, i := range without {
		if to, ok := x.yearOf(i, date, days); ok {
			x.redate(i, date, to)
			x.note("%s in row %d: %s has no year, and its place among the others says %s", date.Heading,
				x.block.Rows[i].Num, cellOf(x.rows[i], date.Index), to)
		}
	}
}

// mostApart is the longest time between two outings of a log whose days follow one another.
const mostApart = 120

// yearOnce dates the days of a log that writes the year with its first day alone, where the
// others follow it in order.
func (x *builder) yearOnce(date *plan.Binding, days []unit.Date, without []int) {
	if days[0] == 0 || x.plan.Years != (unit.Years{}) {
		return
	}
	to, astray := map[int]unit.Date{}, 0
	last := days[0]
	for i := range days {
		if days[i] != 0 {
			if days[i] < last {
				return
			}
			last = days[i]
			continue
		}
		if !slices.Contains(without, i) {
			continue
		}
		d, err := unit.ParseDayMonth(cellOf(x.rows[i], date.Index), unit.OrderUnknown)
		if err != nil {
			return
		}
		y, _, _ := last.Civil()
		day := unit.DateOf(y, d.Month, d.Day)
		if day < last {
			day = unit.DateOf(y+1, d.Month, d.Day)
		}
		if day-last > mostApart {
			astray++
			continue
		}
		to[i], last = day, day
	}
	if 10*astray > len(to) {
		return
	}
	for i, day := range to {
		x.redate(i, date, day)
	}
	x.note("%s: the year stands with the first day alone, and the others follow it", date.Heading)
}

// redate gives a row another day than the one that its cell says.
func (x *builder) redate(row int, date *plan.Binding, to unit.Date) {
	x.say(row, date.Index, to.String())
}

// yearOf is the day of a cell without a year that lies between the days above and below it.
func (x *builder) yearOf(row int, date *plan.Binding, days []unit.Date) (to unit.Date, ok bool) {
	lo, hi := unit.Date(0), unit.Date(0)
	for i := row - 1; i >= 0 && lo == 0; i-- {
		lo = days[i]
	}
	for i := row + 1; i < len(days) && hi == 0; i++ {
		hi = days[i]
	}
	switch {
	case lo == 0 && hi == 0:
		return 0, false
	case lo == 0:
		lo = hi - nearDays
	case hi == 0:
		hi = lo + nearDays
	}
	d, err := unit.ParseDayMonth(cellOf(x.rows[row], date.Index), unit.OrderUnknown)
	if err != nil || hi < lo || hi-lo > 300 {
		return 0, false
	}
	for y, _, _ := lo.Civil(); ; y++ {
		to = unit.DateOf(y, d.Month, d.Day)
		if to > hi {
			return 0, false
		}
		if to >= lo && (!d.HasWeekday || to.Time().Weekday() == d.Weekday) {
			return to, true
		}
	}
}

// wrongSheetYears does the same for tables that have their day from their sheet, where each
// sheet is a day.
func (l *Log) wrongSheetYears() {
	var sheets []int
	text := map[int]string{}
	for _, u := range l.Data() {
		for _, g := range u.Plan.Given {
			if g.Column.Name == "date" && !g.Default && text[u.Plan.Sheet] == "" {
				text[u.Plan.Sheet] = g.Text
				sheets = append(sheets, u.Plan.Sheet)
			}
		}
		if u.Block.Shape == layout.Form && len(u.b.rows) == 1 {
			if b := u.Plan.Find("date"); b != nil && text[u.Plan.Sheet] == "" && u.text(b.Index) != "" {
				text[u.Plan.Sheet] = u.text(b.Index)
				sheets = append(sheets, u.Plan.Sheet)
			}
		}
	}
	slices.Sort(sheets)
	order := unit.OrderUnknown
	for _, s := range sheets {
		if order == unit.OrderUnknown {
			order = unit.OrderOf(text[s])
		}
	}
	var days []unit.Date
	for _, s := range sheets {
		d, _ := dayIn(text[s], order)
		if yearless(text[s]) {
			d = 0
		}
		days = append(days, d)
	}
	for i, to := range slips(days) {
		for _, u := range l.Data() {
			if u.Plan.Sheet == sheets[i] {
				u.redate(text[sheets[i]], to)
			}
		}
	}
}

// sheetNames gives sheets without a day that of their name, where other sheets are named after
// the month and day that stand in them: "5-4" beside "5-11".
func (l *Log) sheetNames() {
	type named struct {
		name string
		day  unit.Date
	}
	var all []named // in the order of the sheets
	at := map[int]int{}
	for _, u := range l.Blocks {
		n, ok := at[u.Plan.Sheet]
		if !ok {
			n = len(all)
			at[u.Plan.Sheet] = n
			all = append(all, named{name: u.Plan.Name})
		}
		if b := u.Plan.Find("date"); b != nil && u.Block.Shape == layout.Form {
			all[n].day, _ = dayIn(u.text(b.Index), unit.OrderOf(u.text(b.Index)))
		} else if b != nil {
			return
		}
	}
	for _, order := range []unit.Order{unit.MonthFirst, unit.DayFirst} {
		same, other, without := 0, 0, 0
		for _, s := range all {
			m, d, ok := twoNumbers(s.name, order)
			_, month, day := s.day.Civil()
			switch {
			case !ok:
			case s.day == 0:
				without++
			case int(month) == m && day == d:
				same++
			default:
				other++
			}
		}
		if same < 3 || other > same/3 || without == 0 || without > same/3 {
			continue
		}
		for _, u := range l.Blocks {
			n := at[u.Plan.Sheet]
			m, d, ok := twoNumbers(all[n].name, order)
			if !ok || all[n].day != 0 {
				continue
			}
			lo := unit.Date(0)
			for k := n - 1; k >= 0 && lo == 0; k-- {
				lo = all[k].day
			}
			if lo == 0 && n+1 < len(all) {
				lo = all[n+1].day - 300
			}
			y, _, _ := lo.Civil()
			if unit.DateOf(y, time.Month(m), d) < lo {
				y++
			}
			u.b.give("sheet name", l.lexicon.named("date", "date"), unit.DateOf(y, time.Month(m), d).String(), false)
		}
		return
	}
}

// twoNumbers are the month and the day of a name such as 5-4 or 05.04.
func twoNumbers(name string, order unit.Order) (month, day int, ok bool) {
	parts := strings.FieldsFunc(name, func(r rune) bool { return strings.ContainsRune("-._ /", r) })
	if len(parts) != 2 {
		return 0, 0, false
	}
	a, errA := strconv.Atoi(parts[0])
	b, errB := strconv.Atoi(parts[1])
	if order == unit.DayFirst {
		a, b = b, a
	}
	return a, b, errA == nil && errB == nil && a >= 1 && a <= 12 && b >= 1 && b <= 31
}

// redate gives a block another day than the one that its sheet says.
func (u *Understood) redate(text string, to unit.Date) {
	p := u.Plan
	for k := range p.Given {
		if g := &p.Given[k]; g.Column.Name == "date" && g.Text == text {
			u.b.note("%s: %s stands among days of another year: read as %s", g.Heading, text, to)
			g.Text = to.String()
		}
	}
	if b := p.Find("date"); b != nil && u.Block.Shape == layout.Form && len(u.b.rows) == 1 && u.text(b.Index) == text {
		u.b.note("%s: %s stands among days of another year: read as %s", b.Heading, text, to)
		p.Cells = map[plan.Cell]string{{Row: int64(u.Block.Rows[0].Num), Index: b.Index}: to.String()}
	}
}
