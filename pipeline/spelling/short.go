package spelling

import "strings"

// Short reports whether a text is a phrase cut short as people cut words: of each word in
// turn its first letters ("len", "beg"), or its first and some of the consonants after it
// in their order ("wght", "spd", "tm"), written together or apart: "nl" and "no ln" for "number lines".
// Both are in lower case without accents. The phrase itself is none, nor is a word's plural.
func Short(text string, phrase []string) bool {
	s := strings.ReplaceAll(text, " ", "")
	whole := strings.Join(phrase, "")
	if s == "" || len(s) >= len(whole) || s+"s" == whole {
		return false
	}
	if parts := strings.Fields(text); len(parts) == len(phrase) {
		for i, p := range parts {
			if p != phrase[i] && !ofWord(p, phrase[i]) {
				return false
			}
		}
		return true
	}
	return len(strings.Fields(text)) == 1 && inPieces(s, phrase)
}

// inPieces parts a text into pieces, one a word, of which each cuts its word short.
func inPieces(s string, phrase []string) bool {
	if len(phrase) == 0 {
		return s == ""
	}
	for n := 1; n <= len(s); n++ {
		if (ofWord(s[:n], phrase[0]) || s[:n] == phrase[0]) && inPieces(s[n:], phrase[1:]) {
			return true
		}
	}
	return false
}

// ofWord reports whether a text is a word's first letters, or its first letter and consonants
// of the rest in their order.
func ofWord(s, word string) bool {
	if s == "" || len(s) >= len(word) || s[0] != word[0] {
		return false
	}
	if strings.HasPrefix(word, s) {
		return true
	}
	i := 1
	for _, b := range []byte(s[1:]) {
		if strings.IndexByte("aeiou", b) >= 0 {
			return false
		}
		for i < len(word) && word[i] != b {
			i++
		}
		if i == len(word) {
			return false
		}
		i++
	}
	return true
}
