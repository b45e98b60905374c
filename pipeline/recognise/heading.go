package recognise

import (
	"strings"
	"unicode"

	"golang.org/x/text/unicode/norm"

	"wakeledger/pipeline/unit"
)

// heading is a header cell taken apart.
type heading struct {
	text       string // as logged
	name       string // normalised, without a unit
	unit       unit.Unit
	candidates []*Column
}

// normalise lower-cases, drops accents and makes every run of other characters
// than letters and digits one space; "#" reads as "no".
func normalise(s string) string {
	var b strings.Builder
	space := false
	for _, r := range norm.NFD.String(strings.ToLower(s)) {
		switch {
		case unicode.Is(unicode.Mn, r):
		case r == '#':
			b.WriteString(" no")
			space = false
		case unicode.IsLetter(r) || unicode.IsDigit(r):
			if space && b.Len() > 0 {
				b.WriteByte(' ')
			}
			space = false
			b.WriteRune(r)
		default:
			space = true
		}
	}
	return strings.TrimSpace(strings.ReplaceAll(b.String(), "  ", " "))
}

// heading looks a header cell up: whole first, then without what stands in
// brackets, then without a unit at its end.
func (t *Table) heading(text string) heading {
	h := heading{text: text, name: normalise(text)}
	if h.candidates = t.byAlias[h.name]; len(h.candidates) > 0 {
		return h
	}
	if outer, inner, ok := brackets(text); ok {
		if u, isUnit := unit.Lookup(inner); isUnit {
			if t.withUnit(&h, outer, u) {
				return h
			}
		}
		if c := t.byAlias[normalise(outer)]; len(c) > 0 {
			h.name, h.candidates = normalise(outer), c
			return h
		}
		text = outer + " " + inner
	}
	t.trailingUnit(&h, text)
	return h
}

// trailingUnit takes one to three last words for a unit: "Speed kts", "Wt lbs",
// "SST deg F", "Length, in".
func (t *Table) trailingUnit(h *heading, text string) {
	words := strings.FieldsFunc(text, func(r rune) bool {
		return unicode.IsSpace(r) || strings.ContainsRune("_,;:-", r)
	})
	for n := 1; n <= 3 && n < len(words); n++ {
		u, ok := unit.Lookup(strings.Join(words[len(words)-n:], " "))
		if ok && t.withUnit(h, strings.Join(words[:len(words)-n], " "), u) {
			return
		}
	}
}

// withUnit keeps the candidates that can be in unit u; a column of text (wind,
// leader) may have one in its heading too.
func (t *Table) withUnit(h *heading, name string, u unit.Unit) bool {
	var fit []*Column
	for _, c := range t.byAlias[normalise(name)] {
		if (c.HasUnit && c.Dimension == u.Dimension()) || c.Parse == "text" {
			fit = append(fit, c)
		}
	}
	if len(fit) == 0 {
		return false
	}
	h.name, h.unit, h.candidates = normalise(name), u, fit
	return true
}

func brackets(s string) (outer, inner string, ok bool) {
	open := strings.IndexAny(s, "([")
	if open < 0 {
		return "", "", false
	}
	end := strings.IndexAny(s[open:], ")]")
	if end < 0 {
		return "", "", false
	}
	outer = strings.TrimSpace(s[:open] + " " + s[open+end+1:])
	return outer, strings.TrimSpace(s[open+1 : open+end]), outer != ""
}
