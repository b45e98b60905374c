package phrase

import "wakeledger/pipeline/words"

const day = 24 * 3600

// clock reads a time of day: 6:10, 06:10:30, 0610, 6:10a, 7am, 7 p.m., 08h25, 10:20 Uhr.
// Three or four digits alone may also be a plain number, which the item says.
func (s *scanner) clock(i int) (item, bool) {
	h, m, sec, next, style := s.clockDigits(i)
	if style == "" || m > 59 || h > 24 || s.tok(i-1) == "$" {
		return item{}, false
	}
	half, end := s.meridiem(next, style)
	switch {
	case end > next && h >= 1 && h <= 12:
		h = h%12 + half
	case style == "hour":
		if end = s.oclock(next); end == next {
			return item{}, false
		}
	case style == "point":
		if end = s.oclock(next); end == next && (!s.hourWord(i) || s.unitAt(next)) {
			return item{}, false
		}
	default:
		end = max(next, s.oclock(next))
	}
	sure := end > next && s.meridiemAt(next) || h > 12 || h == 0 || s.tok(i)[0] == '0' || style == "h"
	it := item{kind: aClock, clock: Clock{Seconds: (h*3600 + m*60 + sec) % day, Sure: sure}, end: end,
		digits: true, num: float64(h*100 + m)}
	it.compact = style == "compact" && !s.meridiemAt(next)
	if it.compact && s.plain(i, next) {
		return item{}, false
	}
	return it, true
}

// clockDigits reads the digits of a clock and how it is written.
func (s *scanner) clockDigits(i int) (h, m, sec, next int, style string) {
	v := s.small(i)
	text := s.tok(i)
	switch {
	case v >= 0 && len(text) <= 2 && s.tok(i+1) == ":" && s.near(i+1) && s.near(i+2) &&
		len(s.tok(i+2)) == 2 && s.small(i+2) >= 0:
		next = i + 3
		if s.tok(next) == ":" && s.near(next) && len(s.tok(next+1)) == 2 && s.small(next+1) >= 0 {
			sec, next = s.small(next+1), next+2
		}
		return v, s.small(i + 2), sec, next, "colon"
	case v >= 0 && len(text) <= 2 && s.tok(i+1) == "h" && s.near(i+1) && s.near(i+2) &&
		len(s.tok(i+2)) == 2 && s.small(i+2) >= 0:
		return v, s.small(i + 2), 0, i + 3, "h"
	case v >= 0 && (len(text) == 4 || len(text) == 3):
		return v / 100, v % 100, 0, i + 1, "compact"
	case v >= 0 && len(text) <= 2:
		return v, 0, 0, i + 1, "hour"
	case len(text) >= 4 && len(text) <= 5 && text[len(text)-3] == '.':
		a, _ := words.Number(text[:len(text)-3])
		b, _ := words.Number(text[len(text)-2:])
		return a, b, 0, i + 1, "point"
	}
	return 0, 0, 0, i, ""
}

// meridiem reads am, pm, a.m. or a letter close behind the digits.
func (s *scanner) meridiem(i int, style string) (half, end int) {
	t := s.tok(i)
	if t == "" {
		return 0, i
	}
	if t[0] == 'p' {
		half = 12
	}
	switch t {
	case "am", "pm":
		return half, i + 1
	case "a", "p":
		if s.tok(i+1) == "." && s.tok(i+2) == "m" {
			end = i + 3
			if s.tok(end) == "." && s.near(end) && end+1 < len(s.toks) && s.near(end+1) {
				end++
			}
			return half, end
		}
		if s.near(i) && (style != "compact" || !s.digits(i+1)) {
			return half, i + 1
		}
	}
	return 0, i
}

func (s *scanner) meridiemAt(i int) bool {
	_, end := s.meridiem(i, "")
	return end > i
}

// oclock passes a word that only says that a clock stood before it.
func (s *scanner) oclock(i int) int {
	switch s.tok(i) {
	case "uhr", "oclock":
		if s.digits(i+1) && len(s.tok(i+1)) == 2 {
			return i + 1
		}
		return i + 1
	case "something": // at 8 something
		if s.hourWord(i - 1) {
			return i + 1
		}
	case "hrs", "h":
		if len(s.tok(i-1)) >= 4 || s.tok(i-2) == ":" {
			return i + 1
		}
	}
	return i
}

// plain reports whether three or four digits are a number rather than a clock: a unit
// follows, or they look like a year, and no clock stands next to them.
func (s *scanner) plain(i, next int) bool {
	if s.tok(next) == "-" && s.digits(next+1) || s.tok(i-1) == "-" && i >= 2 && s.toks[i-2].Kind != words.Word {
		return s.unitAt(next)
	}
	if v := s.small(i); v >= 1950 && v <= 2059 && s.tok(i)[0] != '0' || len(s.tok(i)) == 3 {
		return !s.clockWordBefore(i)
	}
	return s.unitAt(next)
}

func (s *scanner) unitAt(i int) bool {
	if i >= len(s.toks) {
		return false
	}
	u, _, ok := words.UnitAt(s.toks, i)
	return ok && u != "h" && (s.tok(i) != "in" && s.tok(i) != "l" && s.tok(i) != "f" || s.near(i))
}

// clockWordBefore reports whether a word before digits says that they are a clock.
func (s *scanner) clockWordBefore(i int) bool {
	if i == 0 {
		return false
	}
	switch s.tok(i - 1) {
	case "at", "until", "till", "from", "@", "start", "stop", "quit", "las", "ore", "um", "as":
		return true
	}
	return s.inAndOut(i) && !s.unitAt(i+1)
}

// inAndOut reports whether digits are one of two times between which lines were out: "in 654 out 830".
func (s *scanner) inAndOut(i int) bool {
	ends := map[string]bool{"out": true, "up": true, "pulled": true}
	return s.tok(i-1) == "in" && ends[s.tok(i+1)] && s.digits(i+2) ||
		ends[s.tok(i-1)] && s.digits(i-2) && s.tok(i-3) == "in"
}

// hours reads a duration with its minutes: 2h45, 2 h 45 min, 5 1/2 hrs, 3h. What may also be
// a clock (08h25) is one where a nought leads or the hour is past noon.
func (s *scanner) hours(i int) (item, bool) {
	v, next, ok := s.value(i)
	if !ok || next >= len(s.toks) {
		return item{}, false
	}
	unit, end, ok := words.UnitAt(s.toks, next)
	if !ok || unit != "h" || v > 24 || len(s.tok(i)) > 2 && !hasPoint(s.tok(i)) {
		return item{}, false
	}
	oclock := s.atHour(i-1) || s.toHour(end) || s.clockDash(i)
	if next == i+1 && s.near(next) && s.tok(next) == "h" && oclock && !(s.digits(end) && s.near(end)) {
		return item{kind: aClock, clock: Clock{Seconds: int(v) * 3600 % day, Sure: true},
			num: v * 100, end: end, digits: true}, true
	}
	it := item{kind: aTime, num: v * 60, end: end, digits: true, unit: "h"}
	half := s.tok(end) == "1" && s.tok(end+1) == "/" && s.tok(end+2) == "2"
	if half {
		it.num, it.end = it.num+30, end+3
		return it, true
	}
	if n := end + 1; (ands[s.tok(end)] || s.tok(end) == "con") &&
		(s.tok(n) == "media" || s.tok(n) == "demie" || s.tok(n) == "mezza" || s.tok(n) == "mezzo" ||
			s.tok(n) == "meia" || s.tok(n) == "a" && s.tok(n+1) == "half") {
		it.num, it.end = it.num+30, n+1
		if s.tok(n) == "a" {
			it.end++
		}
		return it, true
	}
	if m := s.small(end); m >= 0 && m < 60 && len(s.tok(end)) <= 2 {
		close := s.near(end)
		if close && s.tok(next) == "h" && s.near(next) && len(s.tok(end)) == 2 &&
			(s.tok(i)[0] == '0' || v > 5 || s.toHour(end+1)) {
			return item{}, false // a clock: 08h25, 11h20
		}
		after := end + 1
		u := ""
		if after < len(s.toks) {
			if name, n, ok := words.UnitAt(s.toks, after); ok && (name == "min" || s.tok(after) == "m") {
				u, after = "min", n
			}
		}
		if u != "" || close {
			it.num, it.end = it.num+float64(m), after
		}
	}
	return it, true
}

// toHour reports whether another hour follows: "de 7h à 11h".
func (s *scanner) toHour(i int) bool {
	if i >= len(s.toks) {
		return false
	}
	next, ok := s.toWord(i)
	return ok && s.digits(next)
}

// atHour reports whether a word says that an hour behind it is one of the clock: "à 11h".
func (s *scanner) atHour(i int) bool {
	switch s.tok(i) {
	case "a", "as", "at", "vers", "um", "gegen", "alle", "las", "@":
		return true
	}
	return false
}

func hasPoint(s string) bool {
	for _, c := range s {
		if c == '.' || c == ',' {
			return true
		}
	}
	return false
}

// atSpeed reads "@ 14 kn", "@12-13" and "@ 9:30": a number behind the sign without a unit
// is a speed.
func (s *scanner) atSpeed(i int) item {
	if !s.digits(i + 1) {
		return item{kind: aGlue, end: i + 1}
	}
	it := s.number(i + 1)
	if it.kind == aNumber && it.num > 0 && it.num <= 25 {
		it.kind, it.hi = aSpeed, max(it.hi, it.num)
		return it
	}
	return item{kind: aGlue, end: i + 1}
}

// clockDash reports whether a clock and a dash stand right before token i: 9h00-11h.
func (s *scanner) clockDash(i int) bool {
	n := len(s.items)
	return n > 1 && s.tok(i-1) == "-" && s.near(i) && s.near(i-1) && s.items[n-1].end == i &&
		s.items[n-2].kind == aClock && s.items[n-2].end == i-1
}
