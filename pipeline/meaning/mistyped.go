package meaning

import (
	"strings"
	"unicode"

	"wakeledger/pipeline/layout"
	"wakeledger/pipeline/plan"
	"wakeledger/pipeline/spelling"
	"wakeledger/pipeline/words"
)

// bySlip is which part of its weight a heading's word has that is read for another, a slip of the pen away.
const bySlip = 0.75

// leastMistyped is how many letters a word has at least that is looked for among those a slip away: boats and
// people have short names.
const leastMistyped = 5

// vocabulary are the words of headings, by their first letter and their length.
type vocabulary map[vocabularyKey][]string

type vocabularyKey struct {
	first byte
	long  int
}

func (v vocabulary) has(word string) bool {
	for _, w := range v[vocabularyKey{word[0], len(word)}] {
		if w == word {
			return true
		}
	}
	return false
}

func (v vocabulary) add(phrase string) {
	for _, w := range strings.Fields(phrase) {
		if !v.has(w) {
			k := vocabularyKey{w[0], len(w)}
			v[k] = append(v[k], w)
		}
	}
}

// meant is the only word of headings that is one slip of the pen from a word; "" where there is none, or
// several. A slip is hardly ever in the first letter; one letter more at the end makes another word, "schooly".
func (v vocabulary) meant(word string) string {
	found := ""
	for n := len(word) - 1; n <= len(word)+1; n++ {
		for _, w := range v[vocabularyKey{word[0], n}] {
			if spelling.Distance(word, w) != 1 || strings.HasPrefix(word, w) || strings.HasPrefix(w, word) {
				continue
			}
			if found != "" {
				return ""
			}
			found = w
		}
	}
	return found
}

// vocabularyOf are the words of the columns' spellings and of the concepts.
func (t *Lexicon) vocabularyOf() vocabulary {
	v := vocabulary{}
	for _, c := range t.Columns {
		for _, a := range c.Aliases {
			v.add(a)
		}
	}
	for phrase := range t.concepts.of {
		v.add(phrase)
	}
	for word := range t.words {
		v.add(word)
	}
	return v
}

// mended is a heading with its mistyped words as they were to be: "Reuslt", "Gitrh (in)".
func (t *Lexicon) mended(text string) (string, bool) {
	if len(text) > maxHeading || t.isSpecies(text) {
		return "", false
	}
	changed := false
	fields := strings.FieldsFunc(text, func(r rune) bool { return !unicode.IsLetter(r) })
	for _, f := range fields {
		w := normalise(f)
		if len(w) < leastMistyped || t.vocabulary.has(w) || words.Known(w) {
			continue
		}
		if m := t.vocabulary.meant(w); m != "" {
			text, changed = strings.Replace(text, f, m, 1), true
		}
	}
	return text, changed
}

// mistyped adds what a heading says with its mistyped words as they were to be.
func (t *Lexicon) mistyped(s *sayings, l layout.Label) {
	text, changed := t.mended(l.Text)
	if !changed {
		return
	}
	l.Text = text
	said := t.look(l)
	for c, x := range said.columns {
		s.say(c, bySlip*x.weight, x.unit)
	}
	if w := bySlip * said.asideWeight; w > s.asideWeight {
		s.aside, s.asideWeight = said.aside, w
	}
	s.guess = s.guess || said.guess
}

// says reports whether a label's own words say anything, as they are spelled.
func (t *Lexicon) says(l layout.Label) bool {
	if _, slip := t.mended(l.Text); slip {
		return false
	}
	s := t.look(l)
	return len(s.columns) > 0 || s.asideWeight > 0 || s.guess || t.isSpecies(l.Text) || words.IsPlace(l.Text)
}

// tellMended notes that a heading is read for another word, which alone says the column that it is taken for, or for
// its sisters' in sheets of one hand.
func (x *builder) tellMended(label, group layout.Label, column *plan.Column) {
	text, slip := x.t.mended(label.Text)
	if slip {
		_, own := x.t.look(label).columns[column]
		_, slip = x.t.look(layout.Label{Text: text}).columns[column]
		slip = slip && !own
	}
	switch {
	case !sameLabel(label, group) && !x.t.says(label) && x.t.says(group):
		name := label.Text
		if name == "" {
			name = "a column without a heading"
		}
		x.note("%s: read as %s, which stands there in the sheets like this one", name, group.Full())
	case slip:
		x.note("%s: read as %s", label.Text, text)
	}
}
