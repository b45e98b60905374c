package species

import (
	"strings"
	"unicode"
)

// plain maps accented letters of the languages in the name table to plain ones.
var plain = strings.NewReplacer(
	"á", "a", "à", "a", "â", "a", "ã", "a", "ä", "a", "å", "a", "ā", "a", "ç", "c", "é", "e", "è",
	"e", "ê", "e", "ë", "e", "ē", "e",
	"í", "i", "ì", "i", "î", "i", "ï", "i", "ī", "i", "ñ", "n", "ó", "o", "ò", "o", "ô", "o", "õ",
	"o", "ö", "o", "ō", "o", "ø", "o",
	"ú", "u", "ù", "u", "û", "u", "ü", "u", "ū", "u", "ý", "y", "ÿ", "y", "œ", "oe", "æ", "ae", "ß", "ss")

// normalise is a name in lower case without accents; apostrophes (and the Hawaiian
// okina) go, other punctuation becomes a space, spaces become single.
func normalise(s string) string {
	var b strings.Builder
	for _, r := range plain.Replace(strings.ToLower(s)) {
		switch {
		case unicode.IsLetter(r) && r != 'ʻ' && r != 'ʼ', unicode.IsDigit(r):
			b.WriteRune(r)
		case strings.ContainsRune("'`´‘’ʻʼ", r), unicode.Is(unicode.Mn, r):
		default:
			b.WriteByte(' ')
		}
	}
	return strings.Join(strings.Fields(b.String()), " ")
}

// keys are the ways to look a name up, likeliest first: as it is, without a
// bracket, and with the plural taken off its words.
func keys(name string) []string {
	forms := []string{normalise(name)}
	if i := strings.IndexByte(name, '('); i > 0 {
		forms = append(forms, normalise(name[:i]))
	}
	out := append([]string{}, forms...)
	for _, f := range forms {
		out = append(out, singular(f, "s"), singular(f, "es"))
		if stem, ok := strings.CutSuffix(f, "ies"); ok {
			out = append(out, stem+"y")
		}
	}
	return out
}

// singular takes a plural ending off every word that keeps three letters without it.
func singular(name, ending string) string {
	words := strings.Fields(name)
	for i, w := range words {
		stem := strings.TrimSuffix(w, ending)
		if stem == w {
			stem = strings.TrimSuffix(w, "s")
		}
		if len(stem) >= 3 {
			words[i] = stem
		}
	}
	return strings.Join(words, " ")
}
