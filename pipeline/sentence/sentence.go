// Package sentence puts words together as a sentence does.
package sentence

import (
	"fmt"
	"strings"
	"unicode"
	"unicode/utf8"
)

// Capital is a text with its first letter as a capital.
func Capital(s string) string {
	first, size := utf8.DecodeRuneInString(s)
	if first == utf8.RuneError {
		return s
	}
	return string(unicode.ToUpper(first)) + s[size:]
}

// List joins words: "a, b and c".
func List(words []string) string {
	if len(words) < 2 {
		return strings.Join(words, "")
	}
	return strings.Join(words[:len(words)-1], ", ") + " and " + words[len(words)-1]
}

// Count is a number with its noun: "1 trip", "3 trips".
func Count(n int64, one, many string) string {
	if n == 1 {
		return "1 " + one
	}
	return fmt.Sprintf("%d %s", n, many)
}
