// Package spelling finds the word that a mistyped one was to be.
package spelling

import "strings"

// Distance counts the bytes to add, drop, change or swap with the next one to make b of a
// (optimal string alignment).
func Distance(a, b string) int {
	before, row := make([]int, len(b)+1), make([]int, len(b)+1)
	for j := range row {
		row[j] = j
	}
	for i := 1; i <= len(a); i++ {
		next := make([]int, len(b)+1)
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
		before, row = row, next
	}
	return row[len(b)]
}

// Nearest is the word of a list that word was to be: the same but for case, spaces, hyphens
// and underscores; else one a slip of the pen or two away; else one that it begins or that
// it is a part of. Of several as near, the first. "" where none is near.
func Nearest(word string, list []string) string {
	w := plain(word)
	if len(w) < 2 || len(w) > 60 {
		return ""
	}
	best, least := "", len(w)/3+1
	for _, x := range list {
		if d := Distance(w, plain(x)); d < least || d == 0 {
			best, least = x, d
		}
	}
	for _, x := range list {
		if best == "" && len(w) > 2 && (strings.HasPrefix(plain(x), w) || strings.HasPrefix(w, plain(x)) && len(plain(x)) > 2) {
			best = x
		}
	}
	for _, x := range list {
		if best == "" && len(w) > 2 && sharesWord(word, x) {
			best = x
		}
	}
	return best
}

// plain is a word without what people write now so, now so.
func plain(s string) string {
	return strings.NewReplacer("-", "", "_", "", " ", "").Replace(strings.ToLower(strings.TrimSpace(s)))
}

// sharesWord reports whether the parts of two names, as in strike-rate, have one of more
// than two letters in common, a slip of the pen aside.
func sharesWord(a, b string) bool {
	parts := func(s string) []string {
		return strings.FieldsFunc(strings.ToLower(s), func(r rune) bool { return r == '-' || r == '_' || r == ' ' })
	}
	for _, x := range parts(a) {
		for _, y := range parts(b) {
			if len(x) > 2 && len(y) > 2 && Distance(x, y) <= len(x)/4 {
				return true
			}
		}
	}
	return false
}
