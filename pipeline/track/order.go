package track

import (
	"errors"
	"io"
	"slices"
	"time"

	"wakeledger/pipeline/record"
	"wakeledger/pipeline/unit"
)

// Days are the days that a table's dates may mean, each once and in order.
type Days struct {
	DayFirst, MonthFirst []unit.Date
	Headings             []string // of the table
	Text                 string   // a date as it is written
}

// settle finds the order of day and month of a table whose beginning does not tell
// it: by all of its dates, by a night that it runs through, else as Options.Order
// says. It returns the days where neither of the first two tells.
func (o Options) settle(p part, s *shape) (*Days, error) {
	d, order, err := daysOf(p, *s)
	if err != nil {
		return nil, err
	}
	if s.order = order; order != unit.OrderUnknown {
		return nil, nil
	}
	if o.Order != nil {
		s.order = o.Order(p.name, d)
	}
	return &d, nil
}

// Unsure tells whether a file holds a table of which nothing in it tells the order
// of day and month.
func Unsure(file string) bool {
	unsure := false
	_ = Each(file, Options{}, func(record.Problem) error { return nil }, func(f File) error {
		unsure = unsure || f.Days != nil
		return nil
	})
	return unsure
}

// daysOf reads a table's dates.
func daysOf(p part, s shape) (d Days, order unit.Order, err error) {
	b, closePart, err := p.open()
	if err != nil {
		return d, 0, err
	}
	defer closePart()
	t, err := newTable(b, s, record.Pos{}, nil, nil)
	if err != nil {
		return d, 0, err
	}
	column := s.at[isDate]
	if column < 0 {
		column = s.at[isStamp]
	}
	d.Headings = s.names
	days := [2]map[unit.Date]bool{{}, {}}
	var before [2]int64
	for {
		line, err := t.lines.next()
		if errors.Is(err, io.EOF) {
			break
		}
		if err != nil {
			return d, 0, err
		}
		cells, whole := fields(t.cells, line, s.sep)
		t.cells = cells
		if !whole || t.lines.long || len(cells) <= column {
			continue
		}
		if proved := unit.OrderOf(string(cells[column])); proved != unit.OrderUnknown {
			return d, proved, nil
		}
		if d.Text == "" {
			d.Text = string(cells[column])
		}
		var now [2]int64
		for i, order := range []unit.Order{unit.DayFirst, unit.MonthFirst} {
			f, column, _ := s.fix(cells, order)
			if column != "" {
				continue
			}
			days[i][f.stamp.Date] = true
			now[i] = f.at
		}
		if order := through(before, now); order != unit.OrderUnknown {
			return d, order, nil
		}
		before = now
	}
	d.DayFirst, d.MonthFirst = inOrder(days[0]), inOrder(days[1])
	return d, unit.OrderUnknown, nil
}

// through tells the order by two fixes on either side of midnight: by one they are
// minutes apart and by the other days.
func through(before, now [2]int64) unit.Order {
	if before[0] == 0 || before[1] == 0 || now[0] == 0 || now[1] == 0 {
		return unit.OrderUnknown
	}
	near, far := (10 * time.Minute).Milliseconds(), (36 * time.Hour).Milliseconds()
	day, month := abs(now[0]-before[0]), abs(now[1]-before[1])
	switch {
	case day <= near && month > far:
		return unit.DayFirst
	case month <= near && day > far:
		return unit.MonthFirst
	}
	return unit.OrderUnknown
}

func inOrder(days map[unit.Date]bool) []unit.Date {
	var all []unit.Date
	for d := range days {
		all = append(all, d)
	}
	slices.Sort(all)
	return all
}
