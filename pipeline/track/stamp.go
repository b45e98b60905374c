package track

import (
	"bytes"
	"errors"
	"math"
	"strings"
	"time"

	"wakeledger/pipeline/unit"
)

// stamp is what a cell says of a time.
type stamp struct {
	unit.Moment
	ms   int64 // beyond its whole seconds
	unix bool  // ms are since 1970, and that is all
}

// Times that a count of seconds since 1970 may be: 2000 to 2100.
const earliest, latest = 946684800, 4102444800

var errDayOrder = errors.New("the order of day and month is not certain")

// readStamp reads a date, a clock time or both, or a count of seconds or of
// milliseconds since 1970. The error is errDayOrder where the order would settle it.
func readStamp(b []byte, order unit.Order) (s stamp, err error) {
	if v, ok := plainDecimal(b); ok && v >= earliest {
		if v < latest {
			return stamp{unix: true, ms: int64(math.Round(v * 1000))}, nil
		}
		if v >= earliest*1000 && v < latest*1000 {
			return stamp{unix: true, ms: int64(v)}, nil
		}
	}
	text, ms := cutFraction(b)
	if s.Moment, err = unit.ParseMoment(text, order); errors.Is(err, unit.ErrAmbiguousDate) {
		err = errDayOrder
	}
	s.ms = ms
	return s, err
}

// cutFraction takes the fraction of a second out of a clock time.
func cutFraction(b []byte) (rest string, ms int64) {
	text := spelled(string(b))
	colon := strings.LastIndexByte(text, ':')
	if at := strings.IndexAny(text, ".,"); at == 0 || colon < 0 || !strings.ContainsAny(text[colon:], ".,") {
		return text, 0
	}
	// the last mark with three characters before it, ":SS"
	for i := 3; i < len(text); i++ {
		if (text[i] != '.' && text[i] != ',') || text[i-3] != ':' {
			continue
		}
		end, scale := i+1, int64(100)
		for ; end < len(text) && text[end] >= '0' && text[end] <= '9'; end++ {
			ms += int64(text[end]-'0') * scale
			scale /= 10
		}
		return text[:i] + text[end:], ms
	}
	return text, 0
}

// spelled is a time with its zone written as other times have it: "+ 13:00",
// "GMT+13" and "UT" are +13:00 and UTC.
func spelled(text string) string {
	for _, name := range []string{"UTC", "GMT"} {
		if i := strings.Index(text, name); i > 0 && i+3 < len(text) && (text[i+3] == '+' || text[i+3] == '-') {
			text = strings.TrimRight(text[:i], " ") + text[i+3:]
		}
	}
	if rest, ok := strings.CutSuffix(text, " GMT"); ok {
		text = rest + " UTC"
	}
	return strings.Replace(strings.Replace(text, " +", "+", 1), "Z UTC", "Z", 1)
}

// clockOf joins a date's cell and a clock's.
func (s stamp) clockOf(c stamp) (stamp, bool) {
	if !s.HasDate || !c.HasTime || c.unix {
		return s, false
	}
	c.Date, c.HasDate = s.Date, true
	return c, true
}

// at is the instant in milliseconds since 1970. A time that names no zone is on
// zone's clock; of the two that such a time has where clocks go back, the one
// nearer to the fix before, of time near.
func (s stamp) at(zone *time.Location, near int64) (ms int64, ok bool) {
	switch {
	case s.unix:
		return s.ms, true
	case !s.HasDate || !s.HasTime:
		return 0, false
	}
	civil := s.Date.Time().Add(time.Duration(s.Seconds) * time.Second)
	if s.Offset != nil {
		return civil.UnixMilli() - int64(*s.Offset)*1000 + s.ms, true
	}
	return onClock(civil, zone, near) + s.ms, true
}

// onClock is the instant of a civil time, given as if it were in UTC. A time that
// clocks going forward leave out is taken as by the clock before.
func onClock(civil time.Time, zone *time.Location, near int64) int64 {
	if zone == time.UTC {
		return civil.UnixMilli()
	}
	before, ok1 := withOffsetOf(civil, zone, -24*time.Hour)
	after, ok2 := withOffsetOf(civil, zone, 24*time.Hour)
	switch {
	case !ok2 || before == after:
		return before
	case !ok1 || near != 0 && abs(after-near) < abs(before-near):
		return after
	}
	return before
}

// withOffsetOf is the instant of a civil time by the zone's offset so long after
// it; ok tells that the offset holds then.
func withOffsetOf(civil time.Time, zone *time.Location, after time.Duration) (ms int64, ok bool) {
	_, offset := civil.Add(after).In(zone).Zone()
	t := civil.Add(-time.Duration(offset) * time.Second)
	_, there := t.In(zone).Zone()
	return t.UnixMilli(), there == offset
}

// instant reads an XML Schema dateTime in milliseconds; one without a zone is
// UTC, as GPX has it.
func instant(b []byte) (int64, bool) {
	var t time.Time
	if t.UnmarshalText(b) == nil {
		return t.UnixMilli(), true
	}
	s, err := readStamp(bytes.TrimSpace(b), unit.OrderUnknown)
	if err != nil || s.unix {
		return 0, false
	}
	return s.at(time.UTC, 0)
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
