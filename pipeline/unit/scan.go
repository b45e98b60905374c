package unit

import (
	"strings"
	"unicode"
)

// maxMoment bounds the text of a date or a moment, in bytes: the longest sensible one, with
// weekday, Spanish month, fraction of a second and offset, has about 70. Notes are not searched.
const maxMoment = 80

// isDigit reports whether c is an ASCII digit; other scripts' digits are not read.
func isDigit(c byte) bool { return c-'0' <= 9 }

// isSpace reports whether r is white space, the spaces that group digits included
// (no-break U+00A0, narrow no-break U+202F, thin U+2009).
func isSpace(r rune) bool { return r == ' ' || r != 0 && unicode.IsSpace(r) }

// plainSpaces makes every white space, such as a line break in a cell or a no-break space,
// a plain one.
func plainSpaces(s string) string {
	special := func(r rune) bool { return r != ' ' && isSpace(r) }
	if strings.IndexFunc(s, special) < 0 {
		return s
	}
	return strings.Map(func(r rune) rune {
		if special(r) {
			return ' '
		}
		return r
	}, s)
}

// digitRun counts the digits at the start of s.
func digitRun(s string) int {
	n := 0
	for n < len(s) && isDigit(s[n]) {
		n++
	}
	return n
}

// leadingInt reads the digits at the start of s: their value and how many they are.
// More than nine digits are no number of any use here and count as none.
func leadingInt(s string) (value, digits int) {
	for digits < len(s) && isDigit(s[digits]) {
		value = value*10 + int(s[digits]-'0')
		if digits++; digits > 9 {
			return 0, 0
		}
	}
	return value, digits
}

// twoDigits reads exactly two digits at the start of s, not followed by a third.
func twoDigits(s string) (value int, ok bool) {
	value, n := leadingInt(s)
	return value, n == 2
}

// foldWord writes the lower case of s into dst, for ASCII and for the letters of
// Latin-1 (two bytes in UTF-8, the first 0xC3), and returns the part used. Text that is
// longer than dst gives nothing.
func foldWord(dst []byte, s string) []byte {
	if len(s) > len(dst) {
		return nil
	}
	for i := 0; i < len(s); i++ {
		c := s[i]
		latin := i > 0 && s[i-1] == 0xC3 && c >= 0x80 && c <= 0x9E && c != 0x97
		if c >= 'A' && c <= 'Z' || latin {
			c += 'a' - 'A'
		}
		dst[i] = c
	}
	return dst[:len(s)]
}
