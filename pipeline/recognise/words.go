package recognise

import (
	"bytes"
	_ "embed"
	"encoding/csv"
	"fmt"
	"slices"
	"strings"
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
func (t *Table) essence(name string) string {
	var out []string
	for _, w := range strings.Fields(name) {
		if usual, ok := t.words[w]; ok {
			w = usual
		}
		if len(w) > 3 && strings.HasSuffix(w, "s") && !strings.HasSuffix(w, "ss") {
			w = w[:len(w)-1]
		}
		if w != "" {
			out = append(out, w)
		}
	}
	slices.Sort(out)
	return strings.Join(slices.Compact(out), " ")
}

// quantifiers are words around what is counted: "# bites", "total landed".
var quantifiers = map[string]bool{"no": true, "total": true, "how": true, "many": true, "count": true}

// find looks a normalised heading up: as it is spelled in columns.csv, else by
// its essence, else for counts without the words that only say "number of".
func (t *Table) find(name string) []*Column {
	if c := t.byAlias[name]; len(c) > 0 || name == "" {
		return c
	}
	if c := t.byEssence[t.essence(name)]; len(c) > 0 {
		return c
	}
	words := strings.Fields(name)
	rest := slices.DeleteFunc(slices.Clone(words), func(w string) bool {
		return quantifiers[w] || quantifiers[t.words[w]]
	})
	if len(rest) == 0 || len(rest) == len(words) {
		return nil
	}
	var counts []*Column
	for _, c := range append(t.byAlias[strings.Join(rest, " ")], t.byEssence[t.essence(strings.Join(rest, " "))]...) {
		if c.Parse == "count" && !slices.Contains(counts, c) {
			counts = append(counts, c)
		}
	}
	return counts
}

// index files the spellings of the columns.
func (t *Table) index() {
	t.byAlias, t.byEssence = map[string][]*Column{}, map[string][]*Column{}
	for _, c := range t.Columns {
		for _, a := range c.Aliases {
			t.byAlias[a] = append(t.byAlias[a], c)
			if e := t.essence(a); !slices.Contains(t.byEssence[e], c) {
				t.byEssence[e] = append(t.byEssence[e], c)
			}
		}
	}
}
