package meaning

import (
	"slices"
	"strings"
	"unicode"

	"golang.org/x/text/unicode/norm"

	"wakeledger/pipeline/plan"
	"wakeledger/pipeline/unit"
)

// heading is a header cell taken apart.
type heading struct {
	text       string // as logged
	name       string // normalised, without a unit
	unit       unit.Unit
	candidates []*plan.Column
	loose      bool // found by its words, not as spelled in columns.csv
}

// ligatures writes letters out that are two of another alphabet's: nœuds. Stück without its dots would be English.
var ligatures = strings.NewReplacer("stück", "stueck", "œ", "oe", "æ", "ae", "ß", "ss", "ø", "o")

// normalise lower-cases, drops accents and apostrophes and makes every run of other characters
// than letters and digits one space; "#" reads as "no".
func normalise(s string) string {
	var b strings.Builder
	space := false
	s = strings.ToLower(s)
	if measure, ok := strings.CutSuffix(s, " in."); ok {
		s = measure + " inches" // lines in has no point
	}
	for _, r := range norm.NFD.String(ligatures.Replace(s)) {
		switch {
		case unicode.Is(unicode.Mn, r) || r == '\'' || r == '’':
		case r >= '₀' && r <= '₉': // h₁ is h1
			b.WriteRune('0' + r - '₀')
			space = false
		case r == '#':
			b.WriteString(" no")
			space = true
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
	return strings.Join(strings.Fields(b.String()), " ")
}

// maxHeading is the most bytes that a heading has; longer text is none.
const maxHeading = 120

// heading looks a header cell up.
func (t *Lexicon) heading(text string) heading {
	h := heading{text: strings.TrimSpace(text), name: normalise(text)}
	if len(text) > maxHeading {
		return h
	}
	if !t.lookUp(&h, h.text) && !t.lookUp(&h, partSign(h.text)) {
		t.lookUp(&h, splitCamel(h.text))
	}
	h.loose = len(t.byAlias[h.name]) == 0
	h.ofOneFish()
	return h
}

// ofSeveral are words for what a day's catch weighed, or the best of it.
var ofSeveral = map[string]bool{
	"avg": true, "average": true, "ave": true, "av": true, "mean": true, "total": true, "combined": true, "sum": true,
	"biggest": true, "heaviest": true, "largest": true, "best": true, "top": true,
}

// ofOneFish keeps an average, a total or the day's best from being what a scale
// showed of the row's fish.
func (h *heading) ofOneFish() {
	if slices.ContainsFunc(strings.Fields(normalise(h.text)), func(w string) bool { return ofSeveral[w] }) {
		h.candidates = slices.DeleteFunc(slices.Clone(h.candidates),
			func(c *plan.Column) bool { return c.Name == "scale_kg" || c.Name == "lure_weight_g" })
	}
}

// lookUp tries a heading whole, then without what stands in brackets or after a
// slash, then without a unit at its end.
func (t *Lexicon) lookUp(h *heading, text string) bool {
	if t.firstOfTwo(h, text) || t.ofEither(h, text) {
		return true
	}
	if c := t.find(normalise(text)); len(c) > 0 {
		h.name, h.candidates = normalise(text), c
		t.ownUnit(h, partSign(text))
		return true
	}
	if outer, inner, ok := brackets(text); ok {
		if u, isUnit := unitIn(inner); isUnit && t.withUnit(h, outer, u) {
			return true
		}
		return t.lookUp(h, outer) || t.trailingUnit(h, outer+" "+inner)
	}
	if i := strings.LastIndexByte(text, '/'); i > 0 {
		if u, isUnit := unit.Lookup(text[i+1:]); isUnit && t.withUnit(h, text[:i], u) {
			return true
		}
	}
	return t.trailingUnit(h, text) || t.leadingUnit(h, text) || t.innerUnit(h, text) || t.anyPart(h, text)
}

// innerUnit takes a word between others for a unit: "Leader lb test". Short ones
// are words rather than units there.
func (t *Lexicon) innerUnit(h *heading, text string) bool {
	words := headingWords(text)
	for i := 1; i < len(words)-1; i++ {
		if u, ok := unit.Lookup(words[i]); ok && len(words[i]) > 1 && u != unit.Inch {
			return t.withUnit(h, strings.Join(slices.Delete(slices.Clone(words), i, i+1), " "), u)
		}
	}
	return false
}

// leadingUnit takes a first word for a unit: "Mins fought", "Lbs of drag".
func (t *Lexicon) leadingUnit(h *heading, text string) bool {
	words := headingWords(text)
	if len(words) < 2 {
		return false
	}
	u, ok := unit.Lookup(words[0])
	rest := strings.Join(words[1:], " ")
	return ok && len(ofDimension(t.find(normalise(rest)), u)) > 0 && t.withUnit(h, rest, u)
}

// firstOfTwo takes "Lure/colour", which holds two texts, for the first of them.
func (t *Lexicon) firstOfTwo(h *heading, text string) bool {
	left, right, ok := strings.Cut(text, "/")
	if !ok {
		return false
	}
	a, b := t.find(normalise(left)), t.find(normalise(right))
	if len(a) == 0 || len(b) == 0 || a[0] == b[0] || a[0].Parse != "text" || b[0].Parse != "text" {
		return false
	}
	if a[0].Name == "hooks" && b[0].Name == "area" {
		left, a = right, b // a rig beside a ground is one that drills
	}
	h.name, h.candidates = normalise(left), a
	return true
}

// ofEither takes "Bait/lure weight", a quantity of the one or the other, for that of
// the second.
func (t *Lexicon) ofEither(h *heading, text string) bool {
	left, right, ok := strings.Cut(text, "/")
	if !ok || len(headingWords(left)) != 1 || len(headingWords(right)) < 2 {
		return false
	}
	a, b := t.find(normalise(left)), t.find(normalise(right))
	if len(a) == 0 || a[0].Parse != "text" || len(b) == 0 || !b[0].HasUnit {
		return false
	}
	h.name, h.candidates = normalise(right), b
	t.ownUnit(h, partSign(right))
	return true
}

// anyPart takes a heading of several parts ("If lost - why", "Skipper & crew")
// for the first part that is a column of text.
func (t *Lexicon) anyPart(h *heading, text string) bool {
	parts := strings.FieldsFunc(text, func(r rune) bool { return strings.ContainsRune("/&+,;:-", r) })
	for _, part := range parts {
		if len(parts) < 2 {
			break
		}
		if c := t.find(normalise(part)); len(c) > 0 && c[0].Parse == "text" {
			h.name, h.candidates = normalise(part), c
			return true
		}
	}
	return false
}

// ownUnit takes the unit from a spelling that has one, at its end or start
// ("Lure oz", "Knots", "Yds back").
func (t *Lexicon) ownUnit(h *heading, text string) {
	words := headingWords(text)
	for n := 1; n <= 3 && n <= len(words); n++ {
		for _, part := range [][]string{words[len(words)-n:], words[:n]} {
			u, ok := unit.Lookup(strings.Join(part, " "))
			if !ok {
				continue
			}
			if fit := ofDimension(h.candidates, u); len(fit) > 0 {
				h.unit, h.candidates = u, fit
				return
			}
		}
	}
}

func ofDimension(candidates []*plan.Column, u unit.Unit) []*plan.Column {
	var fit []*plan.Column
	for _, c := range candidates {
		if c.HasUnit && c.Dimension == u.Dimension() {
			fit = append(fit, c)
		}
	}
	return fit
}

func headingWords(text string) []string {
	return strings.FieldsFunc(text, func(r rune) bool {
		return unicode.IsSpace(r) || strings.ContainsRune("_,;:-()[]", r)
	})
}

// unitIn finds the unit in the text of a bracket, alone or beside other words:
// "lbs", "in, fork", "whole lb".
func unitIn(text string) (unit.Unit, bool) {
	if u, ok := unit.Lookup(text); ok {
		return u, true
	}
	for _, w := range headingWords(text) {
		if u, ok := unit.Lookup(w); ok {
			return u, true
		}
	}
	return "", false
}

// trailingUnit takes one to three last words for a unit: "Speed kts", "Wt lbs",
// "SST deg F", "Length, in", "Length in inches".
func (t *Lexicon) trailingUnit(h *heading, text string) bool {
	words := headingWords(text)
	for n := 1; n <= 3 && n < len(words); n++ {
		u, ok := unit.Lookup(strings.Join(words[len(words)-n:], " "))
		if !ok {
			continue
		}
		rest := words[:len(words)-n]
		if t.withUnit(h, strings.Join(rest, " "), u) {
			return true
		}
		if last := strings.ToLower(rest[len(rest)-1]); last == "in" && len(rest) > 1 {
			return t.withUnit(h, strings.Join(rest[:len(rest)-1], " "), u)
		}
	}
	return false
}

// withUnit keeps the candidates that can be in unit u; where there is none, a
// column of text (wind, leader), which may have one in its heading too.
func (t *Lexicon) withUnit(h *heading, name string, u unit.Unit) bool {
	all := t.find(normalise(name))
	fit := ofDimension(all, u)
	if len(fit) == 0 {
		for _, c := range all {
			if c.Parse == "text" && !c.Key {
				fit = append(fit, c)
			}
		}
	}
	if len(fit) == 0 {
		return false
	}
	h.name, h.unit, h.candidates = normalise(name), u, fit
	return true
}

// partSign parts a unit's sign from the word before it: Wt#, Length".
func partSign(s string) string {
	word := strings.TrimRight(s, "#\"'″′’”°")
	return word + " " + s[len(word):]
}

// splitCamel parts words that are written together: LureWeight, SpeedKts.
func splitCamel(s string) string {
	var b strings.Builder
	var before rune
	for _, r := range s {
		if unicode.IsUpper(r) && unicode.IsLower(before) {
			b.WriteByte(' ')
		}
		b.WriteRune(r)
		before = r
	}
	return b.String()
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
