package words

import (
	"strings"
	"unicode/utf8"
)

// tallyMarks are what bites are ticked off with, one mark each.
const tallyMarks = "xX|/✓✔*•●"

// Tally counts the marks of a cell that is nothing but one mark again and again, "xxx", "| | |", and gives the mark.
// One mark alone may as well say yes: who asks must know that the column counts.
func Tally(text string) (mark rune, n int, ok bool) {
	for i, c := range text {
		switch {
		case c == ' ':
		case i == 0 && strings.ContainsRune(tallyMarks, c):
			mark, n = c, 1
		case n > 0 && c == mark:
			n++
		default:
			return utf8.RuneError, 0, false
		}
	}
	return mark, n, n > 0
}
