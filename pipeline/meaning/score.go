package meaning

import (
	"slices"
	"strings"

	"wakeledger/pipeline/layout"
	"wakeledger/pipeline/words"
)

// Score is a column of several figures a cell of which nothing in the log says what they count, "7-4-3-1": they are
// taken for bites, hooked, landed and, where they are four, those let go of the landed.
type Score struct {
	Heading string
	Cell    string // one of its cells
	Figures int    // in each
}

// scoreWords head what the figures of such a cell are taken for.
var scoreWords = []string{"all bites", "hooked", "landed", "of those released"}

// score finds such a column: each of its cells has as many figures, none more than the one before it, and some end on
// fewer than they begin with. nil: there is none.
func (t *Lexicon) score(blocks []*layout.Block) (*Score, *figures) {
	for _, b := range blocks {
		if b.Shape != layout.Table || b.Open {
			continue
		}
		for _, l := range b.Labels {
			if t.namesOther(l) {
				continue
			}
			for n := len(scoreWords); n > 2; n-- {
				if cell := scored(b, l.Col, n); cell != "" && !t.isSpecies(t.fishOf(l.Text)) {
					words := scoreWords[:n]
					names := t.countsNamed(words)
					f := figures{names: names, words: words, among: t.letGoAmong(names, words)}
					return &Score{l.Text, cell, n}, &f
				}
			}
		}
	}
	return nil, nil
}

// surelyNamed is what the words of a heading say at the least that names one thing: "Lat", and not "Score".
const surelyNamed = 3

// namesOther tells a heading of something that is no count, a day or a position, or of each of its figures.
func (t *Lexicon) namesOther(l layout.Label) bool {
	for c, s := range t.said(l).columns {
		if !slices.Contains(countNames, c.Name) && s.weight >= surelyNamed {
			return true
		}
	}
	heads, _ := t.partsNamed(l.Text)
	return heads != nil // it says itself what they are
}

// scored is the cell with the most between its first figure and its last of a column of n figures each; "" where it is
// no such column.
func scored(b *layout.Block, col, n int) string {
	f := figures{words: scoreWords[:n]}
	sign := f.partedFigures(b, col)
	if sign == "" {
		return ""
	}
	found, most := "", 0.0
	for _, r := range b.Rows {
		text := cellText(r, col)
		if text == "" || words.NotLogged(text) || loneText(&r) {
			continue
		}
		parts := strings.Split(text, sign)
		values := make([]float64, len(parts))
		for i, p := range parts {
			values[i], _ = number(strings.TrimSpace(p))
		}
		if !slices.IsSortedFunc(values, func(a, b float64) int { return int(b - a) }) {
			return ""
		}
		if fell := values[0] - values[len(values)-1]; fell > most {
			found, most = text, fell
		}
	}
	return found
}
