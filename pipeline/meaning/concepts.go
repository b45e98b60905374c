package meaning

import (
	"bytes"
	_ "embed"
	"encoding/csv"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"wakeledger/pipeline/plan"
	"wakeledger/pipeline/words"
)

// The words of headings in seven tongues, by concept, and the meanings that concepts
// compose: begin and gear are when the lines went in.
var (
	//go:embed concepts.csv
	conceptsCSV []byte
	//go:embed meanings.csv
	meaningsCSV []byte
)

// concepts are the words of headings.
type concepts struct {
	of      map[string][]string // concepts of a word or phrase, in normal form
	english map[string]bool     // single words of English ones
	rules   []rule
}

// rule is a meaning that concepts have together.
type rule struct {
	columns []*plan.Column // of one name and way of reading, for blocks of each kind; none for an aside
	aside   string
	weight  float64
	all     []string
	not     []string
}

// fateConcepts are the concepts of what became of a bite: a heading may say it in the words of
// a cell, "Spit" or "Turned loose".
var fateConcepts = map[words.Fate]string{
	words.Missed: "miss", words.Lost: "lose", words.Landed: "land", words.Released: "release",
}

// maxPhrase is the most words that stand for one concept.
const maxPhrase = 4

func loadConcepts(columns []*plan.Column) (concepts, error) {
	c := concepts{of: map[string][]string{}, english: map[string]bool{}}
	rows, err := csvRows(conceptsCSV)
	if err != nil {
		return c, fmt.Errorf("concepts.csv: %w", err)
	}
	for _, r := range rows {
		for _, w := range strings.Split(r[2], "|") {
			if w = normalise(w); w != "" && !slices.Contains(c.of[w], r[0]) {
				c.of[w] = append(c.of[w], r[0])
			}
			if r[1] == "en" {
				for _, one := range strings.Fields(w) {
					c.english[one] = true
				}
			}
		}
	}
	for f, concept := range fateConcepts {
		for _, w := range words.FatePhrases(f) {
			if w = normalise(w); len(c.of[w]) == 0 {
				c.of[w] = []string{concept}
			}
		}
	}
	if rows, err = csvRows(meaningsCSV); err != nil {
		return c, fmt.Errorf("meanings.csv: %w", err)
	}
	for i, r := range rows {
		x := rule{all: strings.Fields(r[2]), not: strings.Fields(r[3])}
		if x.weight, err = strconv.ParseFloat(r[1], 64); err != nil {
			return c, fmt.Errorf("meanings.csv:%d: %w", i+2, err)
		}
		name, parse, _ := strings.Cut(r[0], "/")
		if name == "aside" {
			x.aside = parse
		} else if x.columns = alike(columns, name, parse); len(x.columns) == 0 {
			return c, fmt.Errorf("meanings.csv:%d: no column %q", i+2, r[0])
		}
		c.rules = append(c.rules, x)
	}
	return c, nil
}

// alike are the columns of a name and a way of reading; "" is that of the first.
func alike(columns []*plan.Column, name, parse string) []*plan.Column {
	var out []*plan.Column
	for _, c := range columns {
		if c.Name == name && (parse == "" || c.Parse == parse) {
			parse = c.Parse
			out = append(out, c)
		}
	}
	return out
}

// csvRows are a table's rows but its first; lines that begin with # are comments.
func csvRows(text []byte) ([][]string, error) {
	r := csv.NewReader(bytes.NewReader(text))
	r.Comment = '#'
	rows, err := r.ReadAll()
	if err != nil || len(rows) == 0 {
		return nil, err
	}
	return rows[1:], nil
}

// found are the concepts of a heading's words, and how many of its words have one.
func (c *concepts) found(name string) (in map[string]bool, share float64) {
	in = map[string]bool{}
	words := strings.Fields(name)
	known := 0
	for i := 0; i < len(words); {
		n := min(maxPhrase, len(words)-i)
		for ; n > 0; n-- {
			if of := c.of[strings.Join(words[i:i+n], " ")]; len(of) > 0 {
				for _, x := range of {
					in[x] = true
				}
				known += n
				break
			}
		}
		i += max(n, 1)
	}
	if len(words) == 0 {
		return in, 0
	}
	return in, float64(known) / float64(len(words))
}

// says are the meanings that a heading's concepts have, with their weights; a heading
// half of whose words are unknown says less.
func (c *concepts) says(name string) (columns map[*plan.Column]float64, aside string, asideWeight float64) {
	in, share := c.found(name)
	columns = map[*plan.Column]float64{}
	for _, r := range c.rules {
		if slices.ContainsFunc(r.all, func(x string) bool { return !in[x] }) ||
			slices.ContainsFunc(r.not, func(x string) bool { return in[x] }) {
			continue
		}
		w := r.weight * min(1, 0.3+0.8*share)
		if len(r.columns) == 0 {
			if w > asideWeight {
				aside, asideWeight = r.aside, w
			}
			continue
		}
		for _, c := range r.columns {
			columns[c] = max(columns[c], w)
		}
	}
	return columns, aside, asideWeight
}
