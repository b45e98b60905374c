package meaning

import (
	_ "embed"
	"fmt"
	"maps"
	"slices"
	"strings"

	"wakeledger/pipeline/layout"
	"wakeledger/pipeline/plan"
	"wakeledger/pipeline/spelling"
	"wakeledger/pipeline/unit"
)

// The names of meanings that people cut short at the head of a column.
//
//go:embed shorts.csv
var shortsCSV []byte

// shortNames are a meaning's names in words.
type shortNames struct {
	columns []*plan.Column // of one name and way of reading; none for an aside
	aside   string
	names   []shortName
}

// shortName is one name in words.
type shortName struct {
	words   []string
	english bool
}

func loadShorts(columns []*plan.Column, known concepts) ([]shortNames, error) {
	rows, err := csvRows(shortsCSV)
	if err != nil {
		return nil, fmt.Errorf("shorts.csv: %w", err)
	}
	var out []shortNames
	for i, r := range rows {
		var x shortNames
		name, parse, _ := strings.Cut(r[0], "/")
		if name == "aside" {
			x.aside = parse
		} else if x.columns = alike(columns, name, parse); len(x.columns) == 0 {
			return nil, fmt.Errorf("shorts.csv:%d: no column %q", i+2, r[0])
		}
		for _, n := range strings.Split(r[1], "|") {
			in := strings.Fields(n)
			foreign := slices.ContainsFunc(in, func(w string) bool { return !known.english[w] })
			x.names = append(x.names, shortName{in, !foreign})
		}
		out = append(out, x)
	}
	return out, nil
}

// longestShort is the most letters that a heading cut short has; longer ones are words.
const longestShort = 8

// The evidence of a heading cut short, by its letters: one is only a hint, and a column that is
// taken by a hint alone is asked about.
const (
	oneLetter    = "a letter for it"
	shortened    = "short for it"
	eachRival    = 0.12 // less for each other meaning that it may be short for
	mostRivals   = 5
	unproven     = 1.4 // less for two letters over texts that any cells may be
	surestShorts = 4   // letters from which on more of them say no more
)

var byLetters = [surestShorts + 1]float64{0, 0.9, 1.7, 2, 2.2}

// shortFor are the meanings that a heading may be short for, weaker the fewer its letters and
// the more they are: "nl" lines, "st" a start or a strike's time, "tid" a trip. Two letters that
// are short for no English words say as little as one.
func (t *Lexicon) shortFor(text string) (s sayings, letters int) {
	c := t.cuts.of(text, func() cutShort {
		s, letters := t.cutFrom(text)
		return cutShort{s, letters}
	})
	s, letters = c.sayings, c.letters
	s.columns = maps.Clone(s.columns)
	return s, letters
}

// cutShort is what a heading may be cut from, and of how many letters it is.
type cutShort struct {
	sayings
	letters int
}

func (t *Lexicon) cutFrom(text string) (s sayings, letters int) {
	s.columns = map[*plan.Column]saying{}
	text, u := withoutUnit(text)
	text = strings.TrimPrefix(normalise(splitCamel(text)), "no no ")
	for _, r := range text {
		switch {
		case r >= 'a' && r <= 'z':
			letters++
		case r != ' ':
			return s, 0
		}
	}
	if letters == 0 || letters > longestShort {
		return s, 0
	}
	var found []*shortNames
	english := false
	for i := range t.shorts {
		for _, n := range t.shorts[i].names {
			if spelling.Short(text, n.words) {
				found = append(found, &t.shorts[i])
				english = english || n.english
				break
			}
		}
	}
	if !english && letters == 2 {
		letters = 1
	}
	weight := byLetters[min(letters, surestShorts)] - eachRival*float64(min(len(found)-1, mostRivals))
	for _, x := range found {
		for _, c := range x.columns {
			w := weight
			if c.Parse == "text" && letters <= 2 {
				w -= unproven
			}
			s.say(c, w, u)
		}
		if len(x.columns) == 0 && s.asideWeight == 0 {
			s.aside, s.asideWeight = x.aside, weight
		}
	}
	return s, letters
}

// withoutUnit parts a unit from a heading of more words than that: "g_cm", "w (kg)".
func withoutUnit(text string) (string, unit.Unit) {
	words := headingWords(text)
	if len(words) < 2 {
		return text, ""
	}
	u, ok := unit.Lookup(words[len(words)-1])
	if !ok {
		return text, ""
	}
	words = words[:len(words)-1]
	if n := len(words) - 1; n > 0 && u == unit.Inch && (words[n] == "ft" || words[n] == "feet") {
		words = words[:n] // L ft-in
	}
	return strings.Join(words, " "), u
}

// labelWithUnit is a label's own text with the unit under it.
func labelWithUnit(l layout.Label) string {
	if l.Unit == "" {
		return l.Text
	}
	return l.Text + " (" + l.Unit + ")"
}

// codeAlone is what the code of a species over counts says where the heading may say another
// thing, and no other column is headed by a species.
const codeAlone = 1.2

// isCode tells a species' code from its name: three or four letters that are no word.
func isCode(head string) bool {
	return len(head) <= 4 && !strings.Contains(head, " ")
}

func (s *sayings) tells() bool { return len(s.columns) > 0 || s.asideWeight > 0 }

// windForce is the evidence of a heading or unit of the Beaufort scale, whose numbers are 0 to 12.
func windForce(l layout.Label) (float64, bool) {
	for _, w := range strings.Fields(normalise(l.Text + " " + l.Unit)) {
		if w == "bft" || w == "beaufort" || w == "bf" {
			return 0.8, true
		}
	}
	return 0, false
}
