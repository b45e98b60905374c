package unit

import (
	"slices"
	"strings"
)

// clock is a time of day, and perhaps its offset from UTC.
type clock struct {
	seconds int  // since midnight, up to 86400
	rounded bool // a fraction of a second was rounded up
	zoned   bool
	offset  int // seconds east of UTC, if zoned
}

// parseClock reads a whole text as a clock time. A minus offset is read only if the caller
// allows it: "22:30-07:00" without an ISO date is more likely two times.
func parseClock(s string, minus bool) (clock, bool) {
	if s == "" || !isDigit(s[0]) {
		return namedClock(s)
	}
	t, rest, ok := readHMS(s)
	if !ok {
		return clock{}, false
	}
	rest = strings.TrimLeftFunc(rest, isSpace)
	if half, n := meridiem(rest, t.bare); n > 0 {
		ok = t.hour >= 1 && t.hour <= 12
		t.hour = t.hour%12 + half
		rest = rest[n:]
	} else {
		ok = !t.bare
		rest = rest[hourWordLen(rest):]
	}
	c := clock{seconds: t.hour*3600 + t.minute*60 + t.second, rounded: t.rounded}
	if !ok || t.minute > 59 || c.seconds > secondsPerDay {
		return clock{}, false
	}
	ok = c.zone(strings.TrimLeftFunc(rest, isSpace), minus)
	return c, ok
}

// namedClock reads the times that have a name.
func namedClock(s string) (clock, bool) {
	switch {
	case isNoon(s):
		return clock{seconds: secondsPerDay / 2}, true
	case strings.EqualFold(s, "midnight"):
		return clock{}, true
	}
	return clock{}, false
}

// hms is a clock time as written.
type hms struct {
	hour, minute, second int
	rounded              bool // second was rounded up from a fraction, and may be 60
	bare                 bool // an hour alone: am or pm must follow
}

// readHMS reads 22:30, 22:30:15, 22.30, 22h30, 22h, 2230, 730, or an hour alone.
func readHMS(s string) (t hms, rest string, ok bool) {
	v, n := leadingInt(s)
	rest = s[n:]
	switch {
	case n == 3 || n == 4:
		return hms{hour: v / 100, minute: v % 100}, rest, true
	case n == 0 || n > 2:
		return t, s, false
	case strings.HasPrefix(rest, ":"):
		return readMinutes(v, rest[1:])
	case strings.HasPrefix(rest, "."):
		m, ok := twoDigits(rest[1:])
		// 0.25 is a quarter of a day in a spreadsheet rather than 25 past midnight.
		if !ok || n == 1 && v == 0 {
			return t, s, false
		}
		return hms{hour: v, minute: m}, rest[3:], true
	}
	t.hour = v
	if after := strings.TrimLeftFunc(rest, isSpace); wordLen(after) == 1 && after[0]|0x20 == 'h' {
		if after = strings.TrimLeftFunc(after[1:], isSpace); after == "" {
			return t, "", true
		}
		t.minute, ok = twoDigits(after)
		return t, after[min(2, len(after)):], ok
	}
	t.bare = true
	return t, rest, true
}

// readMinutes reads what follows "22:": two digits, and perhaps seconds and a fraction of one.
func readMinutes(hour int, s string) (t hms, rest string, ok bool) {
	t.hour = hour
	if t.minute, ok = twoDigits(s); !ok {
		return t, s, false
	}
	s = s[2:]
	if !strings.HasPrefix(s, ":") {
		return t, s, true
	}
	if t.second, ok = twoDigits(s[1:]); !ok || t.second > 59 {
		return t, s, false
	}
	s = s[3:]
	if s != "" && (s[0] == '.' || s[0] == ',') {
		n := digitRun(s[1:])
		if n == 0 {
			return t, s, false
		}
		if t.rounded = s[1] >= '5'; t.rounded {
			t.second++
		}
		s = s[1+n:]
	}
	return t, s, true
}

// meridiem reads am, pm, a.m. or p.m. at the start of s, and behind minutes a letter alone
// (6:20a; 6a is more likely a rod's name): the hours to add to an hour modulo 12, and the
// length read, 0 if there is none.
func meridiem(s string, bareHour bool) (hours, n int) {
	if s == "" {
		return 0, 0
	}
	switch s[0] | 0x20 {
	case 'p':
		hours = 12
	case 'a':
	default:
		return 0, 0
	}
	n = 1
	if strings.HasPrefix(s[n:], ".") {
		n++
	}
	if n == len(s) && !bareHour {
		return hours, n
	}
	if n == len(s) || s[n]|0x20 != 'm' || wordLen(s[n:]) != 1 {
		return 0, 0
	}
	n++
	if strings.HasPrefix(s[n:], ".") {
		n++
	}
	return hours, n
}

// hourWordLen is the length of a word that only says "o'clock": 2230 h, 0730 hrs, 22:30 Uhr.
func hourWordLen(s string) int {
	n := wordLen(s)
	if n == 0 || n > len("hours") {
		return 0
	}
	for _, w := range [...]string{"h", "hr", "hrs", "hours", "uhr"} {
		if strings.EqualFold(s[:n], w) {
			return n
		}
	}
	return 0
}

// zone reads an offset from UTC, the whole of s, into c: nothing, Z, UTC, GMT, +02:00,
// +0200 or +02. Offsets in use are whole quarters of an hour from -12:00 to +14:00.
func (c *clock) zone(s string, minus bool) bool {
	switch s {
	case "":
		return true
	case "Z", "z", "UTC", "GMT":
		c.zoned = true
		return true
	}
	sign := 1
	rest, ok := strings.CutPrefix(s, "+")
	if !ok && minus {
		sign = -1
		if rest, ok = strings.CutPrefix(s, "-"); !ok {
			rest, ok = strings.CutPrefix(s, "−")
		}
	}
	if !ok {
		return false
	}
	minutes, ok := offsetMinutes(rest)
	minutes *= sign
	c.zoned, c.offset = true, minutes*60
	return ok && minutes >= -12*60 && minutes <= 14*60 && minutes%15 == 0
}

// offsetMinutes reads 02:00, 0200 or 02.
func offsetMinutes(s string) (minutes int, ok bool) {
	v, n := leadingInt(s)
	switch {
	case n == 4 && n == len(s):
		return v/100*60 + v%100, v%100 < 60
	case n == 2 && n == len(s):
		return v * 60, true
	case n == 2 && s[n] == ':':
		m, k := leadingInt(s[n+1:])
		return v*60 + m, k == 2 && len(s) == 5 && m < 60
	}
	return 0, false
}

// noons are words for noon in six tongues.
var noons = []string{"noon", "midday", "midi", "mediodía", "mediodia", "mezzogiorno", "meio-dia",
	"meio dia", "mittag", "mittags"}

func isNoon(s string) bool {
	return slices.ContainsFunc(noons, func(w string) bool { return strings.EqualFold(s, w) })
}
