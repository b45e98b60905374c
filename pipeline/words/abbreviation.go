package words

import (
	"regexp"
	"strings"
	"unicode"
)

// WrittenOut is a text with the short words of the log's legend written out, also behind a
// figure: "5c" and "5 c".
func WrittenOut(text string, short map[string]string) string {
	return shortWord.ReplaceAllStringFunc(text, func(w string) string {
		figure := strings.TrimRightFunc(w, unicode.IsLetter)
		means, ok := short[strings.ToLower(w[len(figure):])]
		switch {
		case !ok:
			return w
		case figure != "":
			return figure + " " + means
		}
		return means
	})
}

// shortWord is a word, with the figure that is written together with it.
var shortWord = regexp.MustCompile(`(?:\d+(?:[.,]\d+)?)?\pL+`)
