package unit

import (
	"strings"
	"time"
)

// Date is a day of the calendar, counted from 1970-01-01.
type Date int32

// The years a log may hold, both included: a date outside them is a slip of the pen.
const (
	FirstYear = 1950
	LastYear  = 2100
)

// secondsPerDay is the length of a civil day without leap seconds.
const secondsPerDay = 86400

// DateOf is the date of a year, month and day; as in time.Date, 31 February is 3 March.
func DateOf(y int, m time.Month, d int) Date {
	return Date(time.Date(y, m, d, 0, 0, 0, 0, time.UTC).Unix() / secondsPerDay)
}

// Time is midnight of the date in UTC.
func (d Date) Time() time.Time { return time.Unix(int64(d)*secondsPerDay, 0).UTC() }

// Civil returns the year, month and day.
func (d Date) Civil() (y int, m time.Month, day int) { return d.Time().Date() }

// String writes the date as 2006-01-02.
func (d Date) String() string { return d.Time().Format(time.DateOnly) }

// Order is the order of day and month in a file's dates.
type Order int

// The orders.
const (
	OrderUnknown Order = iota
	DayFirst
	MonthFirst
)

// String names the order.
func (o Order) String() string {
	switch o {
	case DayFirst:
		return "day first"
	case MonthFirst:
		return "month first"
	}
	return "unknown"
}

// OrderOf tells which order one cell proves: "25/06/2026" day first, "06/25/2026" month
// first. ISO dates, month names, dotted dates (3.4.2026 is day first everywhere it is
// written: common practice, no source) and text that is no possible date prove nothing; of
// "Wed 8/7/2024" the weekday does.
// A clock time may follow the date.
func OrderOf(text string) Order {
	s := strings.TrimSpace(text)
	if len(s) > maxMoment {
		return OrderUnknown
	}
	s = plainSpaces(s)
	if order := orderOfDate(s); order != OrderUnknown {
		return order
	}
	for i := 1; i < len(s)-1; i++ {
		if date, _, ok := splitAt(s, i); ok {
			if order := orderOfDate(date); order != OrderUnknown {
				return order
			}
		}
	}
	return OrderUnknown
}

// orderOfDate is OrderOf for a date alone.
func orderOfDate(s string) Order {
	var p dateParts
	if !p.scan(s) || !p.swappable() {
		return OrderUnknown
	}
	day, month := p.civil(DayFirst), p.civil(MonthFirst)
	switch {
	case day.possible() && !month.possible():
		return DayFirst
	case month.possible() && !day.possible():
		return MonthFirst
	case p.day && day.possible():
		return p.byWeekday(day, month)
	}
	return OrderUnknown
}

// byWeekday is the order in which a date is of the weekday that stands beside it, unknown
// where both are or neither is.
func (p *dateParts) byWeekday(day, month civil) Order {
	on := func(c civil) bool {
		d, err := c.date()
		return err == nil && d.Time().Weekday() == p.weekday
	}
	switch a, b := on(day), on(month); {
	case a && !b:
		return DayFirst
	case b && !a:
		return MonthFirst
	}
	return OrderUnknown
}

// ParseDate reads a date: 2026-06-25, 2026/06/25, 20260625, 25/06/2026, 25-06-26,
// 25.6.2026, 25 Jun 2026, June 25, 2026, 25-Jun-26, and the same with a weekday in front
// (which is not checked). Months may be English, German, French, Spanish or Portuguese.
// A year of two digits is 1970 to 2069; it is never the first number.
//
// Errors: ErrNotDate, ErrAmbiguousDate (only where both readings are possible and differ),
// ErrDateOrder, ErrNoSuchDay, ErrYear.
func ParseDate(text string, order Order) (Date, error) {
	s := strings.TrimSpace(text)
	if c, ok := isoCivil(s); ok {
		return c.date()
	}
	var p dateParts
	if len(s) > maxMoment || !p.scan(s) {
		return 0, ErrNotDate
	}
	if !p.swappable() {
		return p.civil(DayFirst).date()
	}
	return p.swapped(order)
}

// swapped reads a date whose first two numbers may stand either way round.
func (p *dateParts) swapped(order Order) (Date, error) {
	day, month := p.civil(DayFirst), p.civil(MonthFirst)
	given, other := day, month
	if order == MonthFirst {
		given, other = month, day
	}
	switch {
	case given.month > 12 && other.possible() && order != OrderUnknown:
		return 0, ErrDateOrder
	case order != OrderUnknown || other == given:
		return given.date()
	case day.possible() && month.possible():
		return 0, ErrAmbiguousDate
	case month.possible():
		return month.date()
	}
	return day.date()
}

// civil is a year, month and day that may not exist.
type civil struct{ year, month, day int }

// possible reports whether the day exists in a year that a log may hold.
func (c civil) possible() bool {
	_, err := c.date()
	return err == nil
}

// date is the day, or ErrNoSuchDay or ErrYear.
func (c civil) date() (Date, error) {
	if c.month < 1 || c.month > 12 || c.day < 1 || c.day > daysIn(c.year, c.month) {
		return 0, ErrNoSuchDay
	}
	if c.year < FirstYear || c.year > LastYear {
		return 0, ErrYear
	}
	return DateOf(c.year, time.Month(c.month), c.day), nil
}

// daysIn is the length of a month by the Gregorian rule.
func daysIn(year, month int) int {
	switch month {
	case 4, 6, 9, 11:
		return 30
	case 2:
		if year%4 == 0 && (year%100 != 0 || year%400 == 0) {
			return 29
		}
		return 28
	}
	return 31
}

// isoCivil reads exactly 2026-06-25.
func isoCivil(s string) (civil, bool) {
	if len(s) != len(time.DateOnly) || s[4] != '-' || s[7] != '-' {
		return civil{}, false
	}
	y, ny := leadingInt(s[:4])
	m, nm := leadingInt(s[5:7])
	d, nd := leadingInt(s[8:])
	return civil{y, m, d}, ny == 4 && nm == 2 && nd == 2
}
