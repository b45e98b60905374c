package unit

import (
	"strings"
	"time"
)

// DayMonth is a date as a log has it whose year stands elsewhere: 3-Jul, Sat 6 Dec,
// 7/12, 7/12(Sat).
type DayMonth struct {
	Day        int
	Month      time.Month
	Weekday    time.Weekday // where HasWeekday
	HasWeekday bool
}

// In is the date in a year. It reports false where that year has no such day, or has it on
// another day of the week than is stated.
func (d DayMonth) In(year int) (Date, bool) {
	date, err := civil{year, int(d.Month), d.Day}.date()
	return date, err == nil && (!d.HasWeekday || date.Time().Weekday() == d.Weekday)
}

// ParseDayMonth reads a date without a year: a day and a month by name, or the two as
// numbers with a slash between. A weekday may stand before or behind it.
//
// Errors: ErrNotDate, ErrAmbiguousDate (7/8 under no order), ErrDateOrder, ErrNoSuchDay.
func ParseDayMonth(text string, order Order) (DayMonth, error) {
	p, ok := dayMonthParts(text)
	if !ok {
		return DayMonth{}, ErrNotDate
	}
	d := DayMonth{Day: p.num[0], Month: time.Month(p.named), Weekday: p.weekday, HasWeekday: p.day}
	if p.named > 0 {
		return d, d.possible()
	}
	day, month := d, d
	day.Month, month.Month = time.Month(p.num[1]), time.Month(p.num[0])
	month.Day = p.num[1]
	given, other := day, month
	if order == MonthFirst {
		given, other = month, day
	}
	switch {
	case given.possible() == nil && (order != OrderUnknown || other.possible() != nil || given == other):
		return given, nil
	case given.possible() == nil:
		return DayMonth{}, ErrAmbiguousDate
	case other.possible() == nil && order != OrderUnknown:
		return DayMonth{}, ErrDateOrder
	}
	return other, other.possible()
}

// DayMonthOrder is the order that a day and month in numbers prove: 7/13 month first.
func DayMonthOrder(text string) Order {
	p, ok := dayMonthParts(text)
	switch {
	case !ok || p.named > 0 || p.num[0] > 31 || p.num[1] > 31:
	case p.num[0] > 12 && p.num[1] >= 1 && p.num[1] <= 12:
		return DayFirst
	case p.num[1] > 12 && p.num[0] >= 1 && p.num[0] <= 12:
		return MonthFirst
	}
	return OrderUnknown
}

// dayMonthParts takes a text apart that may be a day and a month.
func dayMonthParts(text string) (p dateParts, ok bool) {
	s := strings.TrimSpace(text)
	if n := len(s); n > 1 && s[n-1] == '.' && !isDigit(s[n-2]) {
		s = s[:n-1] // 2 sept.
	}
	if len(s) > maxMoment || !p.parts(plainSpaces(s)) {
		return p, false
	}
	if p.named > 0 {
		return p, p.n == 1 && p.digits[0] <= 2
	}
	return p, p.n == 2 && p.sep[0] == '/' && p.digits[0] <= 2 && p.digits[1] <= 2
}

// possible is ErrNoSuchDay where no year has the day; 29 February some have.
func (d DayMonth) possible() error {
	const leap = 2024
	if d.Month < 1 || d.Month > 12 || d.Day < 1 || d.Day > daysIn(leap, int(d.Month)) {
		return ErrNoSuchDay
	}
	return nil
}
