package unit

import (
	"math"
	"strconv"
	"strings"
	"unicode/utf8"
)

// Mark is the decimal mark of a file.
type Mark int

// The decimal marks.
const (
	MarkUnknown Mark = iota
	MarkPoint
	MarkComma
)

// String names the mark.
func (m Mark) String() string {
	switch m {
	case MarkPoint:
		return "point"
	case MarkComma:
		return "comma"
	}
	return "unknown"
}

// MarkOf tells which decimal mark one cell proves: "12,5" and "1.234,5" the comma,
// "12.5" and "1,234.5" the point; "12", "1,234" and text that is no number prove nothing.
// A unit may follow ("12,5 kg"). Ask it about cells that were typed, not about the raw
// values of a workbook, which have a point whatever the sheet shows, nor about dates and
// clock times.
func MarkOf(text string) Mark {
	s := strings.TrimSpace(text)
	end := numberLen(s, true)
	if end < len(s) {
		if _, ok := Lookup(s[end:]); !ok {
			return MarkUnknown
		}
	}
	var n numeral
	if !n.scan(s[:end]) {
		return MarkUnknown
	}
	return n.evidence()
}

// ParseNumber reads a number as people and spreadsheets write it: a leading sign (+, -
// or U+2212), digits grouped in threes by spaces, apostrophes or the mark that is not
// decimal, a fraction, and an exponent ("1.0416E-2"). The result is always finite.
//
// Where a single mark may group or divide (one to three digits, the first not 0, then
// exactly three): the file's mark decides; with MarkUnknown a comma is ErrAmbiguousMark
// and a point is decimal, since the raw values of a workbook look so. A mark that cannot
// group is decimal in any file. Other errors: ErrNotNumber, ErrTooLarge.
func ParseNumber(text string, mark Mark) (float64, error) {
	s := strings.TrimSpace(text)
	if isPlain(s, mark != MarkComma) {
		return finite(strconv.ParseFloat(s, 64))
	}
	var n numeral
	if !n.scan(s) {
		return 0, ErrNotNumber
	}
	point, err := n.pointAt(mark)
	if err != nil {
		return 0, err
	}
	return n.value(point)
}

// finite turns the errors of strconv into the package's.
func finite(v float64, err error) (float64, error) {
	switch {
	case math.IsInf(v, 0):
		return 0, ErrTooLarge
	case err != nil:
		return 0, ErrNotNumber
	}
	return v, nil
}

// isPlain reports whether s is an optional sign and digits, with a fraction after a
// point if that is allowed: the text that strconv reads as it is.
func isPlain(s string, point bool) bool {
	if s != "" && (s[0] == '-' || s[0] == '+') {
		s = s[1:]
	}
	if s == "" || !isDigit(s[len(s)-1]) {
		return false
	}
	for i := 0; i < len(s); i++ {
		switch {
		case isDigit(s[i]):
		case s[i] == '.' && point:
			point = false
		default:
			return false
		}
	}
	return true
}

// maxDigits bounds the digits of a decorated number; float64 holds 17.
const maxDigits = 40

// numeral is a number's text taken apart, before it is decided what its marks mean.
type numeral struct {
	digits   [maxDigits + 1]byte // sign and digits, marks left out
	n        int                 // bytes used in digits
	signed   int                 // 1 if digits[0] is a minus
	exponent string              // "" or E and what follows

	marks   int  // separators seen
	last    byte // class of the last separator: ',' '.' ' ' or '\''
	before  byte // class of the separators before the last, 0 if none
	mixed   bool // the separators before the last differ among themselves
	first   int  // digits before the first separator
	tail    int  // digits after the last separator
	thirds  bool // all groups between separators have three digits
	lastCut int  // index into digits of the last separator
}

// scan takes s apart. It returns false if s cannot be a number under any mark.
func (n *numeral) scan(s string) bool {
	*n = numeral{thirds: true}
	s = n.scanSign(s)
	run := 0 // digits since the last separator
	for i := 0; i < len(s); {
		if isDigit(s[i]) {
			if n.n == len(n.digits) {
				return false
			}
			n.digits[n.n] = s[i]
			n.n, run, i = n.n+1, run+1, i+1
			continue
		}
		if s[i]|0x20 == 'e' {
			n.exponent = s[i:]
			break
		}
		class, size := separator(s[i:])
		if size == 0 {
			return false
		}
		n.cut(class, run)
		run, i = 0, i+size
	}
	n.tail = run
	if n.marks == 0 {
		n.first = run
	}
	return n.tail > 0 && isExponent(n.exponent)
}

// scanSign stores a leading minus and returns the text after the sign.
func (n *numeral) scanSign(s string) string {
	switch {
	case strings.HasPrefix(s, "+"):
		return s[1:]
	case strings.HasPrefix(s, "-"):
		s = s[1:]
	case strings.HasPrefix(s, "−"):
		s = s[len("−"):]
	default:
		return s
	}
	n.digits[0], n.n, n.signed = '-', 1, 1
	return s
}

// cut records a separator that ends a group of run digits.
func (n *numeral) cut(class byte, run int) {
	switch n.marks {
	case 0:
		n.first = run
	case 1:
		n.before = n.last
		n.thirds = run == 3
	default:
		n.mixed = n.mixed || n.last != n.before
		n.thirds = n.thirds && run == 3
	}
	n.marks++
	n.last, n.lastCut = class, n.n
}

// groups reports whether the digits before the last separator are grouped properly.
func (n *numeral) groups() bool {
	return n.thirds && !n.mixed && n.first >= 1 && n.first <= 3 && n.digits[n.signed] != '0'
}

// mayGroup reports whether every separator may be one that groups.
func (n *numeral) mayGroup() bool {
	return n.groups() && n.tail == 3 && n.exponent == "" && (n.marks == 1 || n.before == n.last)
}

// mayDivide reports whether the last separator may be a decimal mark.
func (n *numeral) mayDivide() bool {
	isMark := n.last == ',' || n.last == '.'
	return isMark && (n.marks == 1 || n.before != n.last && n.groups())
}

// evidence is the decimal mark that the numeral proves.
func (n *numeral) evidence() Mark {
	divide, group := n.mayDivide(), n.mayGroup()
	isMark := n.last == ',' || n.last == '.'
	switch {
	case !isMark || divide == group:
		return MarkUnknown
	case divide == (n.last == ','): // a comma that divides or a point that groups
		return MarkComma
	}
	return MarkPoint
}

// pointAt returns the index into digits where the decimal point belongs.
func (n *numeral) pointAt(mark Mark) (int, error) {
	divide, group := n.mayDivide(), n.mayGroup()
	if divide && group {
		switch {
		case mark == MarkUnknown && n.last == ',':
			return 0, ErrAmbiguousMark
		case mark == MarkUnknown:
			group = false
		default:
			group = (mark == MarkComma) != (n.last == ',')
		}
	}
	switch {
	case n.marks == 0 || group:
		return n.n, nil
	case divide && (n.first > 0 || n.last == '.' || mark == MarkComma): // ",5" is half only where the comma is known
		return n.lastCut, nil
	}
	return 0, ErrNotNumber
}

// value puts the decimal point at the given index and lets strconv round.
func (n *numeral) value(point int) (float64, error) {
	var buf [maxDigits + 8]byte
	text := append(buf[:0], n.digits[:point]...)
	text = append(text, '.')
	text = append(text, n.digits[point:n.n]...)
	text = append(text, n.exponent...)
	return finite(strconv.ParseFloat(string(text), 64))
}

// isExponent reports whether s is empty or E, an optional sign and one to three digits.
func isExponent(s string) bool {
	if s == "" {
		return true
	}
	s = s[1:]
	if s != "" && (s[0] == '-' || s[0] == '+') {
		s = s[1:]
	}
	_, n := leadingInt(s)
	return n == len(s) && n >= 1 && n <= 3
}

// separator classes the mark or grouping sign at the start of s and gives its length
// in bytes, 0 if there is none.
func separator(s string) (class byte, size int) {
	switch s[0] {
	case ',', '.', ' ', '\'':
		return s[0], 1
	}
	if s[0] < utf8.RuneSelf {
		return 0, 0
	}
	switch r, size := utf8.DecodeRuneInString(s); r {
	case '\u00a0', '\u202f', '\u2009', '\u2007':
		return ' ', size
	case '’':
		return '\'', size
	}
	return 0, 0
}

// numberLen is the length in bytes of the number at the start of s, 0 if there is none.
// A space, or an apostrophe where quotes may group, belongs to the number only between a
// digit and exactly three more.
func numberLen(s string, quotes bool) int {
	i := 0
	switch {
	case strings.HasPrefix(s, "−"):
		i = len("−")
	case s != "" && (s[0] == '-' || s[0] == '+'):
		i = 1
	}
	end := 0
	for i < len(s) {
		if isDigit(s[i]) {
			i++
			end = i
			continue
		}
		if s[i]|0x20 == 'e' && end == i && end > 0 {
			return end + exponentLen(s[i:])
		}
		class, size := separator(s[i:])
		if size == 0 || i+size == len(s) || class == '\'' && !quotes {
			break
		}
		next := digitRun(s[i+size:])
		if next == 0 || (class == ' ' || class == '\'') && next != 3 {
			break
		}
		i += size
	}
	return end
}

// exponentLen is the length of the exponent at the start of s (an e), 0 if it is none.
func exponentLen(s string) int {
	i := 1
	if i < len(s) && (s[i] == '-' || s[i] == '+') {
		i++
	}
	_, n := leadingInt(s[i:])
	if n == 0 {
		return 0
	}
	return i + n
}
