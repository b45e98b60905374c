package track

import (
	"strings"
	"time"
)

// instant reads an XML Schema dateTime in milliseconds; one without a zone is
// UTC, as GPX has it.
func instant(b []byte) (int64, bool) {
	const seconds = len("2026-07-01T13:00:00")
	if len(b) < seconds || b[4] != '-' || b[7] != '-' || (b[10] != 'T' && b[10] != ' ') || b[13] != ':' || b[16] != ':' {
		return 0, false
	}
	ok := true
	n := func(from, to int) int {
		v := 0
		for _, c := range b[from:to] {
			ok = ok && c >= '0' && c <= '9'
			v = 10*v + int(c-'0')
		}
		return v
	}
	year, month, day, hour, minute, second := n(0, 4), n(5, 7), n(8, 10), n(11, 13), n(14, 16), n(17, 19)
	if !ok || month < 1 || month > 12 || day < 1 || day > 31 || hour > 24 || minute > 59 || second > 60 {
		return 0, false
	}
	rest := b[seconds:]
	ms, rest, ok := fraction(rest)
	if !ok {
		return 0, false
	}
	offset, ok := offsetOf(string(rest))
	days := daysTo(year, month, day)
	return ((int64(days)*24+int64(hour))*60+int64(minute)-offset)*60000 + int64(second)*1000 + ms, ok
}

// fraction reads .123 at the beginning of b.
func fraction(b []byte) (ms int64, rest []byte, ok bool) {
	if len(b) == 0 || (b[0] != '.' && b[0] != ',') {
		return 0, b, true
	}
	i, scale := 1, int64(100)
	for ; i < len(b) && b[i] >= '0' && b[i] <= '9'; i++ {
		ms += int64(b[i]-'0') * scale
		scale /= 10
	}
	return ms, b[i:], i > 1
}

// offsetOf reads Z, +13:00 or nothing in minutes.
func offsetOf(s string) (int64, bool) {
	if s == "" || s == "Z" || s == "z" {
		return 0, true
	}
	t, err := time.Parse("-07:00", s)
	if err != nil {
		if t, err = time.Parse("-0700", s); err != nil {
			return 0, false
		}
	}
	_, seconds := t.Zone()
	return int64(seconds) / 60, true
}

// daysTo is the days from 1970-01-01 to a day (Hinnant, chrono-compatible
// low-level date algorithms: years that begin in March put the leap day last).
func daysTo(year, month, day int) int {
	if month <= 2 {
		year--
		month += 12
	}
	era := year / 400
	of := year - era*400
	inYear := (153*(month-3)+2)/5 + day - 1
	return era*146097 + of*365 + of/4 - of/100 + inYear - 719468
}

// layouts of times in a CSV; what has no zone is on the log's clock.
var layouts = []string{"2006-01-02 15:04:05", "2006-01-02T15:04:05", "2006-01-02 15:04", "2006-01-02T15:04",
	"2006/01/02 15:04:05", "2006-01-02 15:04:05.000", "2006-01-02T15:04:05.000"}

// clockTime reads a CSV's time on a clock; zoned tells that it named its own zone.
func clockTime(s string, zone *time.Location) (ms int64, zoned, ok bool) {
	s, utc := strings.CutSuffix(strings.TrimSpace(s), " UTC")
	if utc {
		s, zone = strings.TrimSpace(s), time.UTC
	}
	if len(s) > len("2006-01-02T15:04") && strings.ContainsAny(s[len("2006-01-02"):], "Zz+-") {
		ms, ok = instant([]byte(strings.ReplaceAll(s, " +", "+")))
		return ms, true, ok
	}
	for _, l := range layouts {
		if t, err := time.ParseInLocation(l, s, zone); err == nil {
			return t.UnixMilli(), utc, true
		}
	}
	return 0, false, false
}

// PutOn gives a reader's fixes with so much added to their times: a receiver's
// clock that is wrong, put right.
func PutOn(r Reader, by time.Duration) Reader {
	if by == 0 {
		return r
	}
	return &putOn{Reader: r, ms: by.Milliseconds()}
}

type putOn struct {
	Reader
	ms int64
}

func (p *putOn) Next() (Fix, bool, error) {
	f, ok, err := p.Reader.Next()
	f.At += p.ms
	return f, ok, err
}
