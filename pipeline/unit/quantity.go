package unit

import (
	"math"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"
)

// Quantity is a value with its unit.
type Quantity struct {
	Value  float64
	Unit   Unit
	Stated bool // the cell itself named the unit, rather than the caller's fallback
}

// In returns the quantity's value in another unit; errors as for [Convert].
func (q Quantity) In(to Unit) (float64, error) { return Convert(q.Value, q.Unit, to) }

// String writes the quantity so that [ParseQuantity] reads it back: "74 in".
func (q Quantity) String() string {
	return strconv.FormatFloat(q.Value, 'g', -1, 64) + " " + string(q.Unit)
}

// notQuantity says, by dimension, what would be right.
var notQuantity = map[Dimension]*reason{
	Length:      {ErrNotQuantity, `not a length: expected a number with in, cm or ft, like 74in or 6'2"`},
	Mass:        {ErrNotQuantity, "not a weight: expected a number with lb, oz, g or kg, like 187 lb or 12 lb 8 oz"},
	Speed:       {ErrNotQuantity, "not a speed: expected a number with kn, mph or km/h, like 12.5 kn"},
	Temperature: {ErrNotQuantity, "not a temperature: expected a number with F or C, like 68 F"},
	Duration:    {ErrNotQuantity, "not a duration: expected hours and minutes, like 2 h 15 min or 1:30"},
	Angle:       {ErrNotQuantity, "not an angle: expected degrees, like 270"},
}

// expected is the error for text that is no value of the dimension.
func expected(dim Dimension) error {
	if r, ok := notQuantity[dim]; ok {
		return r
	}
	return ErrNotQuantity
}

// ParseQuantity reads a cell that holds a length, weight, speed, temperature, duration or
// angle: a number, with a unit (188cm, 212#, 12.5 kts, 20 °C) or without one, which then
// takes the fallback ("" if there is none). Compounds (6'2", 6 ft 2, 12 lb 8 oz,
// 2 h 15 min) are given in the smaller unit: 74 in. Inches and the like may end in a
// fraction (74 1/2 in, 74½"). A duration may be written h:mm or h:mm:ss, and is given in
// minutes or seconds; note that a fight of 4:30 is read as hours and minutes too.
//
// Errors: ErrNotQuantity, ErrNoUnit, ErrDimension, ErrAmbiguousUnit, ErrApproximate,
// ErrRange and those of [ParseNumber]. The sign is not judged: a negative length is returned.
func ParseQuantity(text string, dim Dimension, fallback Unit, mark Mark) (Quantity, error) {
	if fallback != "" && fallback.Dimension() != dim {
		return Quantity{}, wrongDimension(fallback, dim)
	}
	s := strings.TrimSpace(text)
	if dim == Duration && strings.IndexByte(s, ':') > 0 {
		return parseClockDuration(s)
	}
	p := quantityParser{dim: dim, mark: mark}
	q, err := p.parse(s)
	switch {
	case err != nil && isGuess(s):
		return Quantity{}, ErrApproximate
	case err != nil:
		return Quantity{}, err
	case q.Unit != "":
		q.Stated = true
	case fallback == "":
		return Quantity{}, ErrNoUnit
	default:
		q.Unit = fallback
	}
	return q, nil
}

// step is how a unit is divided in compounds.
type step struct {
	unit    Unit
	ratio   float64
	implied bool // the smaller unit may go without saying: 6'2, 2h15, 1m27
}

// steps is common practice, no source; the ratios are those of the exact definitions.
var steps = map[Unit]step{
	Yard:     {Foot, 3, false},
	Foot:     {Inch, 12, true},
	Metre:    {Centimetre, 100, true},
	Pound:    {Ounce, 16, true},
	Kilogram: {Gram, 1000, false},
	Hour:     {Minute, 60, true},
	Minute:   {Second, 60, true},
}

// Divided is the smaller unit in which people write the rest of a quantity, and how many of it make one: pounds
// and ounces, feet and inches.
func Divided(u Unit) (smaller Unit, ratio float64, ok bool) {
	s, ok := steps[u]
	return s.unit, s.ratio, ok
}

// Pair is two whole numbers with a dash between them, as some write pounds and ounces: 12-8.
func Pair(text string) (whole, rest float64, ok bool) {
	first, second, ok := strings.Cut(strings.ReplaceAll(text, "–", "-"), "-")
	first, second = strings.TrimSpace(first), strings.TrimSpace(second)
	a, n := leadingInt(first)
	b, m := leadingInt(second)
	return float64(a), float64(b), ok && n > 0 && m > 0 && n == len(first) && m == len(second)
}

// quantityParser reads terms, each a number and the unit after it.
type quantityParser struct {
	dim  Dimension
	mark Mark
	bare bool // the term last read is a fraction with no whole number before it
}

// parse reads one term or a compound of several; the Unit is "" if none is stated.
func (p *quantityParser) parse(s string) (Quantity, error) {
	total, rest, err := p.term(s)
	if err != nil {
		return Quantity{}, err
	}
	if p.bare && total.Unit == "" { // "1/2" alone may be a date or "1 of 2"
		return Quantity{}, expected(p.dim)
	}
	for rest != "" {
		var next Quantity
		if next, rest, err = p.term(rest); err != nil {
			return Quantity{}, err
		}
		s, ok := steps[total.Unit]
		if next.Unit == "" && s.implied && (total.Unit != Metre || next.Value >= 10) { // 1m5 may be either
			next.Unit = s.unit
		}
		if !ok || next.Unit != s.unit || !isCount(total.Value) || !(next.Value >= 0 && next.Value < s.ratio) {
			return Quantity{}, expected(p.dim)
		}
		total = Quantity{Value: total.Value*s.ratio + next.Value, Unit: s.unit}
	}
	return total, nil
}

// isCount reports whether v can be counted out: whole, not negative, and no more than a
// billion, so that a compound stays finite and exact.
func isCount(v float64) bool { return v == math.Trunc(v) && !math.Signbit(v) && v <= 1e9 }

// term reads a number and the unit after it and returns the text that follows both.
func (p *quantityParser) term(s string) (q Quantity, rest string, err error) {
	if q.Value, rest, err = p.number(s); err != nil {
		return Quantity{}, "", err
	}
	name, rest, ok := unitText(rest)
	switch {
	case !ok:
		return Quantity{}, "", expected(p.dim)
	case name == "":
		return q, rest, nil
	case rest != "" && isRange(name):
		return Quantity{}, "", ErrRange
	}
	q.Unit, err = lookupFor(name, p.dim)
	return q, rest, err
}

// number reads the number at the start of s, a common fraction after it included.
func (p *quantityParser) number(s string) (v float64, rest string, err error) {
	if v, rest, p.bare = commonFraction(s); p.bare {
		return v, rest, nil
	}
	end := numberLen(s, p.dim == Mass || p.dim == Speed)
	if end == 0 {
		return 0, "", expected(p.dim)
	}
	if v, err = ParseNumber(s[:end], p.mark); err != nil {
		return 0, "", err
	}
	rest = s[end:]
	fraction := strings.TrimLeftFunc(rest, isSpace)
	if joined := strings.TrimPrefix(rest, "-"); joined != rest && joined != "" && joined[0] >= '1' && joined[0] <= '9' {
		fraction = joined // 6-1/4, as carpenters write it
	}
	if f, after, ok := commonFraction(fraction); ok {
		if !isCount(v) {
			return 0, "", expected(p.dim)
		}
		v, rest = v+f, after
	}
	return v, rest, nil
}

// unitText splits s before the next number: the unit's spelling, without a comma or "and"
// that joins the terms, and the rest. It returns false if a mark stands between a letter
// and a digit, as in "6 ft.5", where it may end the unit or start the number.
func unitText(s string) (name, rest string, ok bool) {
	end := strings.IndexFunc(s, startsNumber)
	if end < 0 {
		return strings.TrimSpace(s), "", true
	}
	if end > 0 && (s[end-1] == '.' || s[end-1] == ',') {
		end--
		if end > 0 && s[end-1] != ' ' {
			return "", "", false
		}
	}
	name = strings.TrimSpace(s[:end])
	if cut, found := strings.CutSuffix(name, ","); found {
		name = cut
	} else if cut, found := strings.CutSuffix(name, " and"); found {
		name = cut
	}
	return strings.TrimSpace(name), s[end:], true
}

func startsNumber(r rune) bool {
	return r >= '0' && r <= '9' || r >= utf8.RuneSelf && vulgar(r) != 0
}

// isRange reports whether the text between two numbers makes them a range: "-", "to", "kn -".
func isRange(s string) bool {
	return s == "to" || strings.HasSuffix(s, "-") || strings.HasSuffix(s, "–") || strings.HasSuffix(s, " to")
}

// commonFraction reads "1/2" or "½" at the start of s. Only halves, quarters and so on
// down to thirty-seconds are read, as on a tape: other slashes are not fractions.
func commonFraction(s string) (v float64, rest string, ok bool) {
	if s == "" {
		return 0, s, false
	}
	if s[0] >= utf8.RuneSelf {
		r, size := utf8.DecodeRuneInString(s)
		v = vulgar(r)
		return v, s[size:], v != 0
	}
	top, n := leadingInt(s)
	if n == 0 || n > 2 || n >= len(s) || s[n] != '/' {
		return 0, s, false
	}
	bottom, m := leadingInt(s[n+1:])
	switch bottom {
	case 2, 4, 8, 16, 32:
		ok = m <= 2 && top > 0 && top < bottom
	}
	if !ok {
		return 0, s, false
	}
	return float64(top) / float64(bottom), s[n+1+m:], true
}

// vulgar is the value of a one-character fraction, 0 for any other character.
func vulgar(r rune) float64 {
	switch r {
	case '½':
		return 1. / 2
	case '¼':
		return 1. / 4
	case '¾':
		return 3. / 4
	case '⅛':
		return 1. / 8
	case '⅜':
		return 3. / 8
	case '⅝':
		return 5. / 8
	case '⅞':
		return 7. / 8
	}
	return 0
}

// guesses are words that mark a guess before or after a number.
var guesses = map[string]bool{
	"approx": true, "approximately": true, "about": true, "around": true, "abt": true, "apx": true,
	"appx": true, "ca": true, "circa": true,
	"est": true, "estimate": true, "estimated": true, "guess": true, "guessed": true, "guesstimate": true, "estd": true,
	"maybe": true, "roughly": true,
	"env": true, "environ": true, "estimé": true, "aprox": true, "unos": true, "unas": true, "estimado": true,
	"estimada": true, "stim": true, "stimato": true, "stimata": true, "forse": true, "etwa": true, "ungefähr": true,
	"geschätzt": true, "vielleicht": true, "zirka": true, "cerca": true, "talvez": true,
}

// isGuess reports whether text that could not be read holds a number marked as a guess.
func isGuess(s string) bool {
	if strings.IndexFunc(s, unicode.IsDigit) < 0 {
		return false
	}
	if strings.ContainsAny(s, "~≈?±") {
		return true
	}
	for _, w := range strings.FieldsFunc(s, func(r rune) bool { return !unicode.IsLetter(r) }) {
		if guesses[strings.ToLower(w)] {
			return true
		}
	}
	return false
}

// parseClockDuration reads h:mm in minutes or h:mm:ss in seconds; hours may pass 24.
func parseClockDuration(s string) (Quantity, error) {
	hours, n := leadingInt(s)
	if n == 0 || n > 3 || s[n] != ':' {
		return Quantity{}, expected(Duration)
	}
	minutes, ok := twoDigits(s[n+1:])
	if !ok || minutes > 59 {
		return Quantity{}, expected(Duration)
	}
	total := hours*60 + minutes
	rest := s[n+3:]
	if rest == "" {
		return Quantity{Value: float64(total), Unit: Minute, Stated: true}, nil
	}
	seconds, ok := twoDigits(rest[1:])
	if rest[0] != ':' || !ok || seconds > 59 || len(rest) != 3 {
		return Quantity{}, expected(Duration)
	}
	return Quantity{Value: float64(total*60 + seconds), Unit: Second, Stated: true}, nil
}
