package identity

import (
	"strings"
	"unicode"
)

// Near reports whether two different names of boats may be two spellings of one: equal but
// for case, spaces and marks, or one slip of the pen apart, two from nine letters on.
// Numbers that differ, in figures or as I, II, III, are different boats.
func Near(a, b string) bool {
	if a == b {
		return false
	}
	x, y := letters(a), letters(b)
	if numbersOf(a) != numbersOf(b) {
		return false
	}
	if string(x) == string(y) {
		return true
	}
	allowed := 0
	switch n := min(len(x), len(y)); {
	case n >= 9:
		allowed = 2
	case n >= 5:
		allowed = 1
	}
	return allowed > 0 && distance(x, y) <= allowed
}

func letters(name string) []rune {
	var out []rune
	for _, r := range strings.ToLower(name) {
		if unicode.IsLetter(r) || unicode.IsDigit(r) {
			out = append(out, r)
		}
	}
	return out
}

// numbersOf are the numbers in a name, words of Roman figures among them.
func numbersOf(name string) string {
	var out []string
	out = append(out, strings.FieldsFunc(name, func(r rune) bool { return !unicode.IsDigit(r) })...)
	for _, w := range strings.FieldsFunc(name, func(r rune) bool { return !unicode.IsLetter(r) }) {
		if strings.Trim(strings.ToUpper(w), "IVX") == "" {
			out = append(out, strings.ToUpper(w))
		}
	}
	return strings.Join(out, " ")
}

// distance is the number of letters put in, left out, changed or swapped with the next
// (Damerau 1964, optimal string alignment).
func distance(a, b []rune) int {
	rows := make([][]int, len(a)+1)
	for i := range rows {
		rows[i] = make([]int, len(b)+1)
		rows[i][0] = i
	}
	for j := range rows[0] {
		rows[0][j] = j
	}
	for i := 1; i <= len(a); i++ {
		for j := 1; j <= len(b); j++ {
			change := 1
			if a[i-1] == b[j-1] {
				change = 0
			}
			d := min(rows[i-1][j]+1, rows[i][j-1]+1, rows[i-1][j-1]+change)
			if i > 1 && j > 1 && a[i-1] == b[j-2] && a[i-2] == b[j-1] {
				d = min(d, rows[i-2][j-2]+1)
			}
			rows[i][j] = d
		}
	}
	return rows[len(a)][len(b)]
}
