package meaning

import (
	"bytes"
	_ "embed"
	"encoding/csv"
	"fmt"
	"slices"
	"strings"

	"wakeledger/pipeline/plan"
)

//go:embed words.csv
var wordsCSV []byte

// loadWords returns the words that mean another in a heading; "" for those that
// add nothing.
func loadWords() (map[string]string, error) {
	rows, err := csv.NewReader(bytes.NewReader(wordsCSV)).ReadAll()
	if err != nil {
		return nil, fmt.Errorf("words.csv: %w", err)
	}
	words := map[string]string{}
	for _, r := range rows[1:] {
		words[r[0]] = r[1]
	}
	return words, nil
}

// essence is a heading's words with the usual word for each, singular and in
// the order of the alphabet: "AVG SPD" and "Average speed" have the same.
func (t *Lexicon) essence(name string) string {
	var out []string
	for _, w := range strings.Fields(name) {
		if usual, ok := t.words[w]; ok {
			out = append(out, strings.Fields(usual)...)
		} else {
			out = append(out, w)
		}
	}
	for i, w := range out {
		if plural(w) {
			out[i] = w[:len(w)-1]
		}
	}
	slices.Sort(out)
	return strings.Join(slices.Compact(out), " ")
}

// quantifiers are words around what is counted: "# bites", "total landed".
var quantifiers = map[string]bool{"no": true, "total": true, "how": true, "many": true, "count": true}

// tackle are words for what was struck: "Jig strikes" are strikes.
var tackle = map[string]bool{"jig": true, "lure": true, "bait": true, "plug": true, "troll": true, "trolling": true}

func plural(w string) bool {
	return len(w) > 3 && strings.HasSuffix(w, "s") && !strings.HasSuffix(w, "ss")
}

// harmless are words that a heading may have besides a spelling's without
// meaning another thing.
var harmless = map[string]bool{
	"average": true, "used": true, "taken": true, "recorded": true, "reading": true, "local": true, "actual": true,
	"measured": true, "steered": true, "made": true, "good": true, "logged": true, "all": true, "material": true,
	"list": true, "config": true, "configuration": true, "setup": true,
	"if": true, "any": true, "seen": true, "went": true, "came": true, "gps": true, "plotter": true, "strength": true,
	"written": true, "given": true, "noted": true, "please": true, "now": true,
}

// labels are words for what something is called by: a trip has one, a species none.
var labels = map[string]bool{"ref": true, "reference": true, "id": true, "label": true, "code": true}

// meant looks for columns by a heading's essence, where its spelling is not
// known or does not fit its cells: by all words, by those that are not harmless,
// for keys by those that are no label, and for counts by those that do not only
// say "number of" or what was struck.
func (t *Lexicon) meant(name string) []*plan.Column {
	var found []*plan.Column
	for _, spare := range []struct {
		words map[string]bool
		fits  func(*plan.Column) bool
	}{
		{nil, func(*plan.Column) bool { return true }},
		{harmless, func(*plan.Column) bool { return true }},
		{labels, func(c *plan.Column) bool { return c.Key || c.Name == "strike" }},
		{tackle, func(c *plan.Column) bool { return c.Parse == "count" && c.Name != "lines_out" }},
		{quantifiers, func(c *plan.Column) bool { return c.Parse == "count" }},
	} {
		rest := slices.DeleteFunc(strings.Fields(name),
			func(w string) bool { return spare.words[w] || spare.words[t.words[w]] })
		for _, c := range t.byEssence[t.essence(strings.Join(rest, " "))] {
			several := c.Key && c.Parse == "text" && (plural(name) || plural(t.words[name])) // "Legs", "lns" count them
			if !several && spare.fits(c) && !slices.Contains(found, c) {
				found = append(found, c)
			}
		}
	}
	return found
}

// find looks a normalised heading up: as it is spelled in columns.csv, else by
// its essence.
func (t *Lexicon) find(name string) []*plan.Column {
	if c := t.byAlias[name]; len(c) > 0 || name == "" {
		return c
	}
	return t.meant(name)
}

// index files the spellings of the columns.
func (t *Lexicon) index() {
	t.byAlias, t.byEssence = map[string][]*plan.Column{}, map[string][]*plan.Column{}
	for _, c := range t.Columns {
		for _, a := range c.Aliases {
			t.byAlias[a] = append(t.byAlias[a], c)
			if e := t.essence(a); !slices.Contains(t.byEssence[e], c) {
				t.byEssence[e] = append(t.byEssence[e], c)
			}
		}
	}
}
