// Package spelling finds the word that a mistyped one was to be.
package spelling

import "strings"

// Distance counts the bytes to add, drop, change or swap with the next one to make b of a
// (optimal string alignment).
func Distance(a, b string) int {
	const short = 32 // bytes of a word for which no memory is asked for
	var room [3 * short]int
	rows := room[:]
	n := len(b) + 1
	if 3*n > len(rows) {
		rows = make([]int, 3*n)
	}
	before, row, next := rows[:n], rows[n:2*n], rows[2*n:3*n]
	for j := range row {
		row[j] = j
	}
	for i := 1; i <= len(a); i++ {
		next[0] = i
		for j := 1; j <= len(b); j++ {
			change := row[j-1]
			if a[i-1] != b[j-1] {
				change++
			}
			next[j] = min(change, row[j]+1, next[j-1]+1)
			if i > 1 && j > 1 && a[i-1] == b[j-2] && a[i-2] == b[j-1] {
				next[j] = min(next[j], before[j-2]+1)
			}
		}
		before, row, next = row, next, before
	}
	return row[len(b)]
}

// Nearest is the word of a list that word was to be: the same but for case, spaces, hyphens
// and underscores; else one a slip of the pen away; else one that it begins or that begins
// it; else one with a part in common, as in strike-rate; else one two or three slips away.
// Of several as near, the first. "" where none is near.
func Nearest(word string, list []string) string {
	w := plain(word)
	if len(w) < 2 || len(w) > 60 {
		return ""
	}
	if x := within(word, list, max(1, len(w)/4)); x != "" || len(w) < 3 {
		return x
	}
	for _, x := range list {
		if p := plain(x); strings.HasPrefix(p, w) || len(p) > 2 && strings.HasPrefix(w, p) {
			return x
		}
	}
	for _, x := range list {
		if sharesPart(word, x) {
			return x
		}
	}
	return within(word, list, len(w)/3)
}

// within is the nearest word of those at most so many slips away.
func within(word string, list []string, most int) string {
	best, slips, raw := "", most+1, 0
	for _, x := range list {
		d, r := Distance(plain(word), plain(x)), Distance(strings.ToLower(word), strings.ToLower(x))
		if d < slips || d == slips && best != "" && r < raw {
			best, slips, raw = x, d, r
		}
	}
	return best
}

// plain is a word without what people write now so, now so.
func plain(s string) string {
	return strings.NewReplacer("-", "", "_", "", " ", "").Replace(strings.ToLower(strings.TrimSpace(s)))
}

// sharesPart reports whether parts of two names, as in strike-rate, are the same but for a
// slip of the pen, or one is the beginning of the other, as temp is of temperature.
func sharesPart(a, b string) bool {
	parts := func(s string) []string {
		return strings.FieldsFunc(strings.ToLower(s), func(r rune) bool { return r == '-' || r == '_' || r == ' ' })
	}
	for _, x := range parts(a) {
		for _, y := range parts(b) {
			short := min(len(x), len(y))
			if short > 2 && Distance(x, y) <= len(x)/4 || short > 3 && x[:short] == y[:short] {
				return true
			}
		}
	}
	return false
}
