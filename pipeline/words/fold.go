package words

import (
	"strings"
	"unicode"
	"unicode/utf8"
)

// accents maps the accented letters of the languages to plain ones.
var accents = func() map[rune]string {
	m := map[rune]string{'ß': "ss", 'œ': "oe", 'æ': "ae"}
	for plain, marked := range map[string]string{"a": "áàâãäåāª", "c": "ç", "e": "éèêëē", "i": "íìîïī", "n": "ñ",
		"o": "óòôõöøōº", "u": "úùûüū", "y": "ýÿ"} {
		for _, r := range marked {
			m[r] = plain
		}
	}
	return m
}()

// Fold is a text in lower case without accents, its spaces single.
func Fold(text string) string {
	if folded(text) {
		return text
	}
	var b strings.Builder
	b.Grow(len(text))
	for _, r := range text {
		foldRune(&b, r)
	}
	return strings.Join(strings.Fields(b.String()), " ")
}

// folded reports whether a text is as Fold leaves it; of one with letters beyond ASCII it never says so.
func folded(text string) bool {
	space := true // a space here would stand at the beginning or behind another
	for i := 0; i < len(text); i++ {
		switch c := text[i]; {
		case c >= utf8.RuneSelf, c >= 'A' && c <= 'Z', c >= '\t' && c <= '\r', c == ' ' && space:
			return false
		default:
			space = c == ' '
		}
	}
	return !space || text == ""
}

// foldRune writes a letter in lower case without its accent.
func foldRune(b *strings.Builder, r rune) {
	if r < utf8.RuneSelf {
		if r >= 'A' && r <= 'Z' {
			r += 'a' - 'A'
		}
		b.WriteByte(byte(r))
		return
	}
	r = unicode.ToLower(r)
	switch s, ok := accents[r]; {
	case ok:
		b.WriteString(s)
	case unicode.Is(unicode.Mn, r): // an accent written as a character of its own
	default:
		b.WriteRune(r)
	}
}

// Kind is what a token is.
type Kind int

// The kinds of tokens.
const (
	Word   Kind = iota // letters; an apostrophe within is dropped: didnt
	Digits             // digits with the marks between them: 12, 48.5, 1,200
	Mark               // any other character but a space; a line's end is "\n"
)

// Token is a word, a number or a mark of a text.
type Token struct {
	Kind    Kind
	Text    string // folded
	At, End int    // bytes of the text
	Gap     bool   // a space stands before it
	Caps    bool   // a word in capitals
}

// Scan cuts a text into tokens.
func Scan(text string) []Token {
	out := make([]Token, 0, len(text)/4+1)
	gap := false
	for at := 0; at < len(text); {
		r, size := utf8.DecodeRuneInString(text[at:])
		t := Token{At: at, Gap: gap}
		switch {
		case r != '\n' && unicode.IsSpace(r):
			gap, at = true, at+size
			continue
		case unicode.IsDigit(r):
			t.Kind, t.End = Digits, at+digitsLen(text[at:])
			t.Text = text[at:t.End]
		case unicode.IsLetter(r):
			t.End = at + wordLen(text[at:])
			t.Text = meantWord(foldWord(text[at:t.End]))
			t.Caps = capitals(text[at:t.End])
		default:
			t.Kind, t.Text, t.End = Mark, plainMark(r), at+size
		}
		if t.Text == "'" && !gap && len(out) > 0 && out[len(out)-1].Kind == Word && startsLetter(text[t.End:]) {
			at = t.End // an elision: l'eau is two words
			continue
		}
		out = append(out, t)
		gap, at = r == '\n', t.End
	}
	return out
}

// digitsLen is the length of a number: a point or comma between digits is part of it.
func digitsLen(s string) int {
	n := 0
	for n < len(s) {
		switch c := s[n]; {
		case c >= '0' && c <= '9':
			n++
		case (c == '.' || c == ',') && n+1 < len(s) && s[n+1] >= '0' && s[n+1] <= '9':
			n += 2
		default:
			return max(n, 1)
		}
	}
	return n
}

// endings are what English writes behind an apostrophe: didn't, o'clock.
var endings = set("t s re ve ll d m clock")

// shortened reports whether what follows an apostrophe belongs to the word before it. In
// French and Italian it is a word of its own (l'hamecon, un'altra).
func shortened(s string) bool {
	n := 0
	for n < len(s) && (s[n]|0x20 >= 'a' && s[n]|0x20 <= 'z' || s[n] >= utf8.RuneSelf) {
		n++
	}
	return endings[strings.ToLower(s[:n])]
}

// wordLen is the length of a word.
func wordLen(s string) int {
	letters := 0
	for n, r := range s {
		switch {
		case unicode.IsLetter(r) && r != 'ª' && r != 'º', unicode.Is(unicode.Mn, r):
			letters++
		case r == 'ª' || r == 'º':
			letters++
		case (r == '\'' || r == '’') && letters > 1 && shortened(s[n+utf8.RuneLen(r):]):
		default:
			return n
		}
	}
	return len(s)
}

func capitals(s string) bool {
	for _, r := range s {
		if unicode.ToUpper(r) != r {
			return false
		}
	}
	return true
}

func startsLetter(s string) bool {
	r, _ := utf8.DecodeRuneInString(s)
	return unicode.IsLetter(r)
}

// plainWord reports whether a text is letters from a to z alone.
func plainWord(s string) bool {
	for i := 0; i < len(s); i++ {
		if s[i] < 'a' || s[i] > 'z' {
			return false
		}
	}
	return true
}

func foldWord(s string) string {
	if plainWord(s) {
		return s
	}
	var b strings.Builder
	for _, r := range s {
		if r != '\'' && r != '’' {
			foldRune(&b, r)
		}
	}
	return b.String()
}

// meantWord is the short word that two letters in the wrong order were to be: in teh box.
func meantWord(s string) string {
	switch s {
	case "teh", "hte":
		return "the"
	case "adn":
		return "and"
	case "wiht":
		return "with"
	}
	return s
}

// plainMark makes typographic quotes and dashes plain.
func plainMark(r rune) string {
	switch r {
	case '–', '—', '−', '‐', '‑':
		return "-"
	case '′', '’', '‘', '´', '`':
		return "'"
	case '″', '”', '“', '„', '＂':
		return `"`
	case '≈', '≃', '∼':
		return "~"
	case '×':
		return "x"
	}
	return string(r)
}
