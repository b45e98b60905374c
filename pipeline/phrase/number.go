package phrase

import (
	"strconv"
	"strings"
	"unicode"

	"wakeledger/pipeline/unit"
	"wakeledger/pipeline/words"
)

// number reads what starts with digits: a clock, a measure, a score, so many lines, an
// ordinal, or a bare number.
func (s *scanner) number(i int) item {
	for _, read := range []func(int) (item, bool){s.session, s.date, s.feetInches, s.score, s.hours, s.clock} {
		if it, ok := read(i); ok {
			return it
		}
	}
	v, next, ok := s.value(i)
	if !ok {
		return item{kind: aMeasure, end: i + 1}
	}
	if s.tok(next) == "s" && s.near(next) && next == i+1 && v >= 10 && v == float64(int(v)) {
		return item{kind: aMeasure, end: next + 1} // new 30s spooled: reels
	}
	if s.tok(next) == "ish" && s.near(next) { // 80ish lb
		if it, ok := s.measure(i, v, v, next+1); ok {
			it.hedged = true
			return it
		}
	}
	if s.tok(next) == "s" && s.near(next) { // new 30s spooled
		return item{kind: aMeasure, end: next + 1}
	}
	hi, after := v, next
	if to, n, ok := s.rangeTo(next); ok && to >= v && to <= 4*v {
		if it, ok := s.measure(i, v, to, n); ok {
			return it
		}
		if s.near(next) || s.tok(next) != "-" { // a dash with spaces parts clauses
			hi, after = to, n
		}
	}
	if it, ok := s.measure(i, v, v, next); ok {
		return it
	}
	if hi > v && hi < 1000 && after > next {
		return item{kind: aNumber, end: after, num: v, hi: hi, digits: true}
	}
	text := s.tok(i)
	point := len(text) > 3 && text[len(text)-3] == '.' && v >= 1 && v < 24 && int(v*100+.5)%100 < 60
	return item{kind: aNumber, end: next, num: v, digits: true, minutes: point && next == i+1, exact: hasPoint(text)}
}

// value reads the number at token i with a fraction behind it: 48.5, 48,5, 32 1/2, 43½.
func (s *scanner) value(i int) (v float64, next int, ok bool) {
	if v, ok = parse(s.tok(i)); !ok {
		return 0, i + 1, false
	}
	next = i + 1
	switch {
	case s.tok(next) == "½":
		return v + .5, next + 1, true
	case s.andHalf(next):
		return v + .5, next + 3, true
	case s.tok(next) == "¼":
		return v + .25, next + 1, true
	case s.tok(next) == "¾":
		return v + .75, next + 1, true
	}
	if part, after := s.fraction(next); part > 0 {
		return v + part, after, true
	}
	if s.tok(next) == "-" && s.near(next) && s.near(next+1) && v == float64(int(v)) { // 44-1/4
		if part, after := s.fraction(next + 1); part > 0 {
			return v + part, after, true
		}
	}
	return v, next, true
}

// fraction reads a part of an inch or a pound, 3/4, at token i; 0 is none.
func (s *scanner) fraction(i int) (part float64, next int) {
	if !s.digits(i) || s.tok(i+1) != "/" || !s.digits(i+2) {
		return 0, i
	}
	top, bottom := s.small(i), s.small(i+2)
	if (bottom == 2 || bottom == 4 || bottom == 8 || bottom == 16) && top < bottom && top > 0 {
		return float64(top) / float64(bottom), i + 3
	}
	return 0, i
}

// andHalf reads "and a half" behind a whole number.
func (s *scanner) andHalf(i int) bool {
	return ands[s.tok(i)] && s.tok(i+1) == "a" && s.tok(i+2) == "half"
}

// small is the whole number at a token, -1 if it is none.
func (s *scanner) small(i int) int {
	if !s.digits(i) || len(s.tok(i)) > 4 {
		return -1
	}
	n, err := strconv.Atoi(s.tok(i))
	if err != nil {
		return -1
	}
	return n
}

// parse reads digits with a decimal point or comma; a comma before three digits groups
// them (1,200), but for a first digit of nought.
func parse(text string) (float64, bool) {
	if n := strings.Count(text, ",") + strings.Count(text, "."); n > 1 {
		text = strings.ReplaceAll(text, ",", "")
		if strings.Count(text, ".") > 1 {
			return 0, false
		}
	} else if whole, rest, ok := strings.Cut(text, ","); ok {
		if len(rest) == 3 && whole != "0" {
			text = whole + rest
		} else {
			text = whole + "." + rest
		}
	}
	v, err := strconv.ParseFloat(text, 64)
	return v, err == nil
}

// rangeTo reads "-13" or "to 13" behind a number.
func (s *scanner) rangeTo(i int) (v float64, next int, ok bool) {
	if s.tok(i) != "-" && s.tok(i) != "to" && s.tok(i) != "a" && s.tok(i) != "bis" || !s.digits(i+1) {
		return 0, i, false
	}
	if s.tok(i) == "a" && s.near(i) {
		return 0, i, false
	}
	v, next, ok = s.value(i + 1)
	return v, next, ok && !(s.tok(next) == ":" && s.near(next) && s.digits(next+1))
}

// base is the grammar's own unit of each kind.
var base = map[kind]unit.Unit{aLength: unit.Centimetre, aWeight: unit.Kilogram, aSpeed: unit.Knot, aTime: unit.Minute}

// factor turns a unit of the word lists into the grammar's own.
var factor = func() map[string]float64 {
	m := map[string]float64{}
	for symbol, k := range unitKind {
		if to, ok := base[k]; ok {
			v, err := unit.Convert(1, unit.Unit(symbol), to)
			if err != nil {
				panic(err) // a symbol that package unit does not have: fails in every test
			}
			m[symbol] = v
		}
	}
	return m
}()

var unitKind = map[string]kind{"in": aLength, "cm": aLength, "mm": aLength, "m": aLength, "ft": aLength, "lb": aWeight,
	"kg": aWeight, "g": aWeight, "oz": aWeight,
	"kn": aSpeed, "mph": aSpeed, "km/h": aSpeed, "min": aTime, "h": aTime, "s": aTime,
	"girth": aGirth, "other": aMeasure}

// measure reads the unit at token next behind the number of token i.
func (s *scanner) measure(i int, v, hi float64, next int) (item, bool) {
	if next >= len(s.toks) {
		return item{}, false
	}
	if s.tok(next) == "-" && s.near(next) && s.near(next+1) { // 49-inch
		next++
	}
	if next >= len(s.toks) {
		return item{}, false
	}
	if n, ok := words.LineAt(s.toks, next, "line"); ok && v == float64(int(v)) && v < 30 && s.tok(n) != "of" {
		return item{kind: aLines, num: v, hi: hi, end: n, digits: true}, true
	}
	symbol, end, ok := words.UnitAt(s.toks, next)
	if symbol == "" && s.tok(next) == "k" && s.near(next) && v < 25 {
		symbol, end, ok = "kn", next+1, true
	}
	if !ok || !s.fits(symbol, v, next, end) || s.ofNext(i, symbol, end) || symbol == "girth" && s.girthAt(end) {
		return item{}, false
	}
	if s.tok(end-1) != "." && s.tok(end) == "." && s.near(end) && !s.endsSentence(end) {
		end++
	}
	it := item{kind: unitKind[symbol], num: v * factor[symbol], hi: hi * factor[symbol], unit: symbol, end: end,
		digits: true, exact: hasPoint(s.tok(i))}
	if (it.kind == aWeight || it.kind == aLength) && hi > v {
		it.num, it.hedged = (it.num+it.hi)/2, true // "40-50 lb" was not measured
	}
	if symbol == "ft" && (!fishFeet(v) || hi > v) || symbol == "m" && (v < .3 || v > 5) {
		it.kind = aMeasure
	}
	if symbol == "girth" {
		it.num, it.unit = v, ""
	}
	if symbol == "lb" && s.digits(end) && (s.tok(end+1) == "oz" || s.tok(end+1) == "ozs") {
		it.num, it.end, it.exact = it.num+float64(s.small(end))*factor["oz"], end+2, true
	}
	return it, true
}

// unitFirst reads a weight or a length whose unit stands before it: "alalunga kg 12,1", "tonno cm 74". "in 45" may
// be where, and "m 2" anything.
func (s *scanner) unitFirst(i int) (item, bool) {
	symbol, end, ok := words.UnitAt(s.toks, i)
	k := unitKind[symbol]
	first := k == aWeight || k == aLength && symbol != "m" && symbol != "ft" && s.tok(i) != "in"
	if !ok || !first || !letters(s.tok(i)) || !s.digits(end) || i > 0 &&
		s.digits(i-1) && !s.ofNext(i-1, symbol, end) {
		return item{}, false
	}
	v, next, ok := s.value(end)
	if !ok || s.unitAt(next) && !s.otherFirst(k, next) || v <= 0 || s.tok(next) == ":" {
		return item{}, false
	}
	return item{kind: k, num: v * factor[symbol], hi: v * factor[symbol], unit: symbol, end: next, digits: true,
		exact: hasPoint(s.tok(end))}, true
}

// otherFirst reports whether the unit at a token is of another kind, and before a number of its own: "kg 7,1"
// behind "cm 98".
func (s *scanner) otherFirst(k kind, i int) bool {
	symbol, end, ok := words.UnitAt(s.toks, i)
	return ok && unitKind[symbol] != k && s.digits(end)
}

// girthAt reports whether a number at token i is the girth, its word between it and the length: "112 girth 45".
func (s *scanner) girthAt(i int) bool {
	if !s.digits(i) {
		return false
	}
	_, next, ok := s.value(i)
	if !ok || next >= len(s.toks) {
		return ok
	}
	symbol, _, _ := words.UnitAt(s.toks, next)
	return unitKind[symbol] != aWeight
}

// ofNext reports whether the unit behind the whole number at i is that of the number after it,
// which has a decimal of its own: "98 kg 41,0" after a length.
func (s *scanner) ofNext(i int, symbol string, end int) bool {
	if unitKind[symbol] != aWeight || hasPoint(s.tok(i)) || !s.digits(end) {
		return false
	}
	text := s.tok(end)
	if s.unitAt(end + 1) {
		return false
	}
	n := len(text)
	return n > 2 && (text[n-2] == ',' || text[n-2] == '.')
}

func letters(word string) bool {
	return word != "" && !strings.ContainsFunc(word, func(r rune) bool { return !unicode.IsLetter(r) })
}

func fishFeet(v float64) bool { return v >= 2 && v <= 14 }

// fits reports whether a unit's spelling is one behind this number. "in" is an inch behind
// what may be a fish's length only, and not before an article: "2 in the box"; before "box" it is one where it is
// written close to its number, "mahi 42in box"; a lone
// letter is a unit only close to the number.
func (s *scanner) fits(symbol string, v float64, next, end int) bool {
	switch t := s.tok(next); {
	case t == "in":
		if _, ok := words.LineAt(s.toks, min(end, len(s.toks)-1), "session"); ok && end < len(s.toks) || v < 5 {
			return s.near(next) && v >= 5
		}
		return s.tok(end) != "the" && s.tok(end) != "a" && (s.tok(end) != "box" || s.near(next)) &&
			s.tok(end) != "my" && s.tok(end) != "all" && s.tok(end) != "total"
	case t == "o" || t == "a" || t == "l" && !s.near(next) || t == "f" && v < 30 || t == "nd" && s.near(next):
		return false
	case t == "tour" || t == "giro":
		return v > 20
	case symbol == "s" && t == "second":
		return false
	}
	return true
}

// feetInches reads 6'2", 6' 2 and 6 ft 2 in as one length.
func (s *scanner) feetInches(i int) (item, bool) {
	feet := s.small(i)
	symbol, next, ok := "", 0, false
	if i+1 < len(s.toks) {
		symbol, next, ok = words.UnitAt(s.toks, i+1)
	}
	if feet < 1 || feet > 15 || !ok || symbol != "ft" || s.tok(i+2) == "'" {
		return item{}, false
	}
	inches, end, ok := s.value(next)
	if !s.digits(next) || !ok || inches >= 12 || s.tok(i+1) != "'" && s.tok(end) != "in" &&
		s.tok(end) != `"` && s.tok(end) != "inches" {
		return item{}, false
	}
	if end < len(s.toks) {
		if u, n, ok := words.UnitAt(s.toks, end); ok && u == "in" {
			end = n
		}
	}
	return item{kind: aLength, num: (float64(feet)*12 + inches) * 2.54, hi: (float64(feet)*12 + inches) * 2.54,
		unit: "in", end: end, digits: true}, true
}

// score reads "2 for 5".
func (s *scanner) score(i int) (item, bool) {
	j := i + 1
	if s.tok(j) == "-" && s.tok(j+1) == "for" && s.tok(j+2) == "-" {
		j++
	}
	a, b := s.small(i), -1
	switch s.tok(j) {
	case "of", "por", "sur", "su", "von":
		if j+2 < len(s.toks) && s.toks[j+2].Kind != words.Mark {
			return item{kind: aWord, end: j + 2}, s.digits(j + 1) // 2 of 3 tuna
		}
		b = s.small(j + 1)
	case "for", "fer":
		b = s.small(j + 1)
		if s.tok(j+1) == "-" {
			b, j = s.small(j+2), j+1
		}
	}
	if a < 0 || b < a || b > 99 {
		return item{}, false
	}
	end := j + 2
	if end < len(s.toks) {
		if _, ok := s.measure(j+1, float64(b), float64(b), end); ok {
			return item{}, false // "2 for 20 min"
		}
	}
	return item{kind: aScore, num: float64(a), hi: float64(b), end: end}, true
}

// session reads "1st:", "2nd set:", "1) " and the same in other tongues.
func (s *scanner) session(i int) (item, bool) {
	n := s.small(i)
	if n < 1 || n > 9 || !s.near(i+1) {
		return item{}, false
	}
	j := i + 2
	switch s.tok(i + 1) {
	case "st", "nd", "rd", "th", "er", "ere", "e", "eme", "a", "o", "ª", "º", "°", ".":
	default:
		return item{}, false
	}
	if s.tok(i+1) == "." && (!s.toks[min(j, len(s.toks)-1)].Gap || i > 0 && s.items[len(s.items)-1].kind != aBreak) {
		return item{}, false
	}
	if j < len(s.toks) {
		if next, ok := words.LineAt(s.toks, j, "session"); ok {
			j = next
		}
	}
	if s.tok(j) == ":" {
		return item{kind: aSession, num: float64(n), end: j + 1}, true
	}
	if s.tok(i+1) == "." {
		return item{}, false
	}
	return item{kind: aGlue, end: j}, true
}

// date reads 6/4 and 4/24/25, which are no counts.
func (s *scanner) date(i int) (item, bool) {
	if strings.Count(s.tok(i), ".") > 1 {
		return item{kind: aMeasure, end: i + 1}, true
	}
	if s.tok(i+1) != "/" || !s.digits(i+2) || !s.near(i+1) || !s.near(i+2) {
		return item{}, false
	}
	end := i + 3
	if s.tok(end) == "/" && s.digits(end+1) {
		end += 2
	}
	return item{kind: aMeasure, end: end}, true
}
