package unit

import (
	"fmt"
	"strings"
)

// Moment is what a cell says of a time: a date, a clock time, or both.
type Moment struct {
	Date    Date
	HasDate bool
	Seconds int // since midnight of Date; 86400 for 24:00, up to 172800 (48 h) from a spreadsheet's hours
	HasTime bool
	Offset  *int // seconds east of UTC, where the cell states it
}

// String writes the moment so that [ParseMoment] reads it back (hours past 24 apart):
// 2006-01-02, 22:30:00 or 2006-01-02 22:30:00+02:00.
func (m Moment) String() string {
	var b strings.Builder
	if m.HasDate {
		b.WriteString(m.Date.String())
	}
	if m.HasDate && m.HasTime {
		b.WriteByte(' ')
	}
	if m.HasTime {
		fmt.Fprintf(&b, "%02d:%02d:%02d", m.Seconds/3600, m.Seconds/60%60, m.Seconds%60)
	}
	if m.Offset != nil {
		sign, off := '+', *m.Offset/60
		if off < 0 {
			sign, off = '-', -off
		}
		fmt.Fprintf(&b, "%c%02d:%02d", sign, off/60, off%60)
	}
	return b.String()
}

// ParseMoment reads a cell that holds a date as in [ParseDate], a clock time, or both with
// a space, comma or T between. Clock times: 22:30, 22:30:15, 7:05 am, 7am, 2230, 0730,
// 22h30, 22.30, 24:00, noon, midnight (the start of the day); three or four bare digits
// are HHMM. A fraction of a second is rounded. An offset from UTC may follow: Z, UTC,
// +02:00, and after an ISO date -07:00 (elsewhere that is more likely a second time).
//
// Errors: ErrNotMoment and those of ParseDate.
func ParseMoment(text string, order Order) (Moment, error) {
	s := strings.TrimSpace(text)
	if len(s) > len("2006-01-02") && isSplit(s, len("2006-01-02")) {
		if iso, ok := isoCivil(s[:len("2006-01-02")]); ok {
			return isoMoment(iso, s[len("2006-01-02")+1:])
		}
	}
	if c, ok := parseClock(s, false); ok {
		return c.moment(), nil
	}
	if len(s) > maxMoment {
		return Moment{}, ErrNotMoment
	}
	if strings.IndexByte(s, ':') >= 0 { // never a date alone
		return splitMoment(s, order, ErrNotDate)
	}
	if twoDays(s) {
		return Moment{}, ErrNotMoment
	}
	d, err := ParseDate(s, order)
	if err == nil {
		return Moment{Date: d, HasDate: true}, nil
	}
	if _, _, several := DaySpan(s); several {
		return Moment{}, ErrNotMoment // the 2024 of Aug 24-25, 2024 is no clock time
	}
	return splitMoment(s, order, err)
}

// isoMoment joins an ISO date and the text of a clock time.
func isoMoment(iso civil, rest string) (Moment, error) {
	d, err := iso.date()
	if err != nil {
		return Moment{}, err
	}
	c, ok := parseClock(strings.TrimSpace(rest), true)
	if !ok {
		return Moment{}, ErrNotMoment
	}
	return c.on(d)
}

// splitMoment tries every place where a date and a clock time may meet. whole is what
// ParseDate said of the text; it is returned if it is more telling than "not a date".
func splitMoment(s string, order Order, whole error) (Moment, error) {
	if whole == ErrNotDate {
		whole = ErrNotMoment
	}
	s = plainSpaces(s)
	for i := 1; i < len(s)-1; i++ {
		date, c, ok := splitAt(s, i)
		if !ok {
			continue
		}
		d, err := ParseDate(date, order)
		if err == nil {
			return c.on(d)
		}
		if err != ErrNotDate {
			whole = err
		}
	}
	return Moment{}, whole
}

// splitAt divides s at index i into a clock time, on either side, and the text of a date.
func splitAt(s string, i int) (date string, c clock, ok bool) {
	if !isSplit(s, i) {
		return "", c, false
	}
	left, right := strings.TrimRight(s[:i], ", "), strings.TrimSpace(s[i+1:])
	if c, ok = parseClock(right, yearFirst(left)); ok {
		return left, c, true
	}
	c, ok = parseClock(left, false)
	return right, c, ok
}

// isSplit reports whether a date and a clock time may be divided at index i of s: a
// space, or a T between digits.
func isSplit(s string, i int) bool {
	switch s[i] {
	case ' ':
		return true
	case 'T', 't':
		return i+1 < len(s) && isDigit(s[i-1]) && isDigit(s[i+1])
	}
	return false
}

// yearFirst reports whether a date's text starts with a year of four digits.
func yearFirst(s string) bool { return digitRun(s) >= 4 }

// moment is the clock time without a date.
func (c clock) moment() Moment {
	m := Moment{Seconds: c.seconds, HasTime: true}
	if c.zoned {
		offset := c.offset
		m.Offset = &offset
	}
	return m
}

// on joins the clock time to its date. A time that was rounded up to midnight belongs to
// the next day; a stated 24:00 stays with its own.
func (c clock) on(d Date) (Moment, error) {
	m := c.moment()
	if c.rounded && c.seconds == secondsPerDay {
		d, m.Seconds = d+1, 0
	}
	if y, _, _ := d.Civil(); y > LastYear {
		return Moment{}, ErrYear
	}
	m.Date, m.HasDate = d, true
	return m, nil
}
