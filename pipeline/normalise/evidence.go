package normalise

import (
	"errors"
	"strconv"

	"wakeledger/pipeline/plan"
	"wakeledger/pipeline/sheet"
	"wakeledger/pipeline/unit"
)

// Evidence is what a file as a whole says on what one cell leaves open: the
// order of day and month, the decimal mark, and the unit system. What the user
// settles by a flag stands above it.
type Evidence struct {
	dayFirst, monthFirst bool
	beside               neighbours
	comma, point         bool
	us, metric           bool
	cells                map[string]*ownUnits // by column

	// Rest reads the rest of the file and observes each of its rows. It is called
	// at most once, for the first cell that the evidence so far leaves open.
	Rest func() error
	done bool
}

// ownUnits are the numbers of a column: those with a unit of their own, by its system, and those
// without.
type ownUnits struct{ us, metric, bare int }

// oddOne is from how many bare numbers on one with a unit says nothing of the others: "17 lb"
// among numbers without a unit is as likely the only one in pounds.
const oddOne = 9

// Headings takes the units of a sheet's headings, and a date above its table, as
// evidence.
func (e *Evidence) Headings(l *plan.Block) {
	for _, b := range l.Bindings {
		e.system(b.Column, b.Unit)
	}
	for _, g := range l.Given {
		if g.Column.Parse == "date" {
			e.order(g.Text)
		}
	}
}

func (e *Evidence) order(cell string) {
	o := unit.OrderOf(cell)
	if o == unit.OrderUnknown {
		o = unit.DayMonthOrder(cell)
	}
	e.dayFirst = e.dayFirst || o == unit.DayFirst
	e.monthFirst = e.monthFirst || o == unit.MonthFirst
}

// Observe takes the cells of one row as evidence.
func (e *Evidence) Observe(l *plan.Block, row *sheet.Row) {
	for _, b := range l.Bindings {
		if b.Index >= len(row.Cells) || row.Cells[b.Index] == "" {
			continue
		}
		cell := row.Cells[b.Index]
		switch b.Column.Parse {
		case "date", "moment":
			if parts := clockBehind.FindStringSubmatch(cell); parts != nil {
				e.order(parts[1])
			}
			e.order(cell)
			e.ofMonth(cell, l)
			if b.Column.Parse == "date" {
				e.beside.take(l, cell)
			}
		case "quantity":
			m := unit.MarkOf(cell)
			e.comma = e.comma || m == unit.MarkComma
			e.point = e.point || m == unit.MarkPoint
			if q, err := unit.ParseQuantity(cell, b.Column.Dimension, b.Column.Unit, m); err == nil {
				e.own(b.Column, q)
			}
		}
	}
}

// ofMonth tells the order of day and month of a date in a sheet that is named by its month.
func (e *Evidence) ofMonth(cell string, l *plan.Block) {
	month, _, ok := unit.MonthIn(l.Name)
	if !ok || unit.OrderOf(cell) != unit.OrderUnknown {
		return
	}
	in := func(o unit.Order) bool {
		if d, err := unit.ParseDayMonth(cell, o); err == nil {
			return d.Month == month
		}
		d, err := unit.ParseDate(cell, o)
		if err != nil {
			return false
		}
		_, m, _ := d.Civil()
		return m == month
	}
	day, mon := in(unit.DayFirst), in(unit.MonthFirst)
	e.dayFirst = e.dayFirst || day && !mon
	e.monthFirst = e.monthFirst || mon && !day
}

func (e *Evidence) system(c *plan.Column, u unit.Unit) {
	us, metric := systemOf(c, u)
	e.us, e.metric = e.us || us, e.metric || metric
}

// own takes a cell's unit, or that it has none.
func (e *Evidence) own(c *plan.Column, q unit.Quantity) {
	if !c.HasUnit || c.US == c.Metric {
		return
	}
	if e.cells == nil {
		e.cells = map[string]*ownUnits{}
	}
	n := e.cells[c.Name]
	if n == nil {
		n = &ownUnits{}
		e.cells[c.Name] = n
	}
	us, metric := systemOf(c, q.Unit)
	switch {
	case !q.Stated:
		n.bare++
	case us:
		n.us++
	case metric:
		n.metric++
	}
}

func systemOf(c *plan.Column, u unit.Unit) (us, metric bool) {
	if u == "" || !c.HasUnit || c.US == c.Metric {
		return false, false
	}
	switch u {
	case unit.Inch, unit.Foot, unit.Pound, unit.Ounce, unit.Yard, unit.Fahrenheit:
		return true, false
	case unit.Centimetre, unit.Millimetre, unit.Metre, unit.Kilogram, unit.Gram, unit.Celsius:
		return false, true
	}
	return false, false
}

// complete reads the rest of the file, once.
func (e *Evidence) complete() error {
	if e.done || e.Rest == nil {
		return nil
	}
	e.done = true
	return e.Rest()
}

// Order is the file's order of day and month, unknown where its cells disagree
// or say nothing.
func (e *Evidence) Order() unit.Order {
	switch {
	case e.dayFirst && !e.monthFirst:
		return unit.DayFirst
	case e.monthFirst && !e.dayFirst:
		return unit.MonthFirst
	case e.monthFirst:
		return unit.OrderUnknown
	}
	return e.beside.order()
}

// neighbours are the dates that can be read in one way alone, held against those beside them
// that can be read in two: the rows of a log follow each other.
type neighbours struct {
	of         *plan.Block
	last       unit.Date // read in one way alone
	known      bool
	waiting    []string // since then, or from the start
	day, month int      // dates that are near their neighbours with the day first, with the month
}

// A date stands beside another that is at most nearDays from it where the other way of reading it
// is more than farDays off (common practice, no source: few boats lie idle that long in season).
const nearDays, farDays = 21, 60

// mostWaiting bounds the dates that wait for one that can be read in one way alone.
const mostWaiting = 20

func (n *neighbours) take(l *plan.Block, cell string) {
	if n.of != l {
		n.of, n.known, n.waiting = l, false, nil
	}
	d, err := unit.ParseDate(cell, unit.OrderUnknown)
	switch serial, number := strconv.ParseFloat(cell, 64); {
	case number == nil:
		m, err := unit.FromSerial(serial, false)
		if err != nil || !m.HasDate {
			return
		}
		d = m.Date
	case errors.Is(err, unit.ErrAmbiguousDate):
		if n.known {
			n.vote(cell, n.last)
		}
		if len(n.waiting) < mostWaiting {
			n.waiting = append(n.waiting, cell)
		}
		return
	case err != nil:
		return
	}
	for _, w := range n.waiting {
		n.vote(w, d)
	}
	n.last, n.known, n.waiting = d, true, nil
}

// vote holds a date that can be read in two ways against one beside it.
func (n *neighbours) vote(cell string, beside unit.Date) {
	off := func(o unit.Order) unit.Date {
		d, err := unit.ParseDate(cell, o)
		if err != nil {
			return farDays
		}
		return max(d-beside, beside-d)
	}
	switch day, month := off(unit.DayFirst), off(unit.MonthFirst); {
	case day <= nearDays && month > farDays:
		n.day++
	case month <= nearDays && day > farDays:
		n.month++
	}
}

func (n *neighbours) order() unit.Order {
	switch {
	case n.day > 0 && n.month == 0:
		return unit.DayFirst
	case n.month > 0 && n.day == 0:
		return unit.MonthFirst
	}
	return unit.OrderUnknown
}

// Mark is the file's decimal mark.
func (e *Evidence) Mark() unit.Mark {
	switch {
	case e.comma && !e.point:
		return unit.MarkComma
	case e.point && !e.comma:
		return unit.MarkPoint
	}
	return unit.MarkUnknown
}

// System is the file's unit system: "us", "metric" or "" where it says neither
// or both.
func (e *Evidence) System() string {
	us, metric := e.us, e.metric
	for _, n := range e.cells {
		if n.bare < oddOne*(n.us+n.metric) {
			us, metric = us || n.us > 0, metric || n.metric > 0
		}
	}
	switch {
	case us && !metric:
		return "us"
	case metric && !us:
		return "metric"
	}
	return ""
}

// retry runs parse again with the whole file's evidence where the first answer
// was that the cell is ambiguous.
func retry[T any](e *Evidence, parse func() (T, error)) (T, error) {
	v, err := parse()
	if (errors.Is(err, unit.ErrAmbiguousDate) || errors.Is(err, unit.ErrAmbiguousMark)) && !e.done {
		if err := e.complete(); err != nil {
			return v, err
		}
		return parse()
	}
	return v, err
}
