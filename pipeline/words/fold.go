package words

import (
	"strings"
	"unicode"
	"unicode/utf8"
)

// accents maps the accented letters of the six languages to plain ones.
var accents = func() map[rune]string {
	m := map[rune]string{'ß': "ss", 'œ': "oe", 'æ': "ae"}
	for plain, marked := range map[string]string{"a": "áàâãäåāª", "c": "ç", "e": "éèêëē", "i": "íìîïī", "n": "ñ", "o": "óòôõöøōº", "u": "úùûüū", "y": "ýÿ"} {
		for _, r := range marked {
			m[r] = plain
		}
	}
	return m
}()

// Fold is a text in lower case without accents, its spaces single.
func Fold(text string) string {
	var b strings.Builder
	for _, r := range text {
		b.WriteString(foldRune(r))
	}
	return strings.Join(strings.Fields(b.String()), " ")
}

func foldRune(r rune) string {
	if r < utf8.RuneSelf {
		return string(unicode.ToLower(r))
	}
	r = unicode.ToLower(r)
	if s, ok := accents[r]; ok {
		return s
	}
	if unicode.Is(unicode.Mn, r) { // an accent written as a character of its own
		return ""
	}
	return string(r)
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
			t.Text = foldWord(text[at:t.End])
			t.Caps = text[at:t.End] == strings.ToUpper(text[at:t.End])
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

func startsLetter(s string) bool {
	r, _ := utf8.DecodeRuneInString(s)
	return unicode.IsLetter(r)
}

func foldWord(s string) string {
	plain := true
	for i := 0; i < len(s); i++ {
		plain = plain && s[i] >= 'a' && s[i] <= 'z'
	}
	if plain {
		return s
	}
	var b strings.Builder
	for _, r := range s {
		if r != '\'' && r != '’' {
			b.WriteString(foldRune(r))
		}
	}
	return b.String()
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
