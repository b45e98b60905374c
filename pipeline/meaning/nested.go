package meaning

import (
	"math"
	"slices"
	"strings"

	"wakeledger/pipeline/layout"
	"wakeledger/pipeline/plan"
	"wakeledger/pipeline/unit"
)

// Of a column of numbers that may be a count of fish: on how many rows with bites it must stand, and which share of the
// bites it has at least.
const (
	leastNested = 5
	nestedShare = 0.2
)

// mayBeNested are the counts of what became of bites, the likeliest to be called by another word first.
var mayBeNested = []string{"hooked_n", "landed_n", "released_n", "lost_n", "missed_n"}

// nested are columns of small numbers whose headings are words for something else, and that are on no row more than
// the bites: a count of fish under a word that also means their fight, or that they were seen.
func (l *Log) nested(u *Understood, g *group) []Open {
	bites := u.Plan.Find("strikes_n")
	if bites == nil || bites.Index < 0 {
		return nil
	}
	var others []string
	for _, name := range mayBeNested {
		if !u.Plan.Binds(name) {
			others = append(others, name)
		}
	}
	var out []Open
	for i, v := range g.values {
		name := meaningOf(g.cands[i][u.choice[i]])
		if name != "fight_s" && name != "aside" || v.numeric() < 0.9 || v.whole(0, 60) < 1 || len(others) == 0 ||
			headingUnit(v.Label) != "" || !u.within(v.Label.Col, bites) {
			continue
		}
		o := l.openOf(u, g, i)
		o.Taken, o.Others = name, others
		out = append(out, o)
	}
	return out
}

// portions are columns of small numbers of which nothing is made, though their headings have the word of a count
// that another column has: "Bites on top" beside "Bites deep". Beside a count whose heading is the bare word, one that
// is on no row more than that is a part of it, and is told already.
func (l *Log) portions(u *Understood, g *group) []Open {
	var out []Open
	for i, v := range g.values {
		unread := g.cands[i][u.choice[i]].column == nil || g.cands[i][u.choice[i]].column == asideColumn
		if !unread || v.numeric() < 0.9 || v.whole(0, 60) < 1 || !v.tellsSomething() || headingUnit(v.Label) != "" ||
			u.derived(v.Label.Col) {
			continue
		}
		for k := range u.Plan.Bindings {
			b := &u.Plan.Bindings[k]
			if b.Index < 0 || !slices.Contains(countNames, b.Column.Name) ||
				!l.lexicon.hasWord(v.Label.Text, b.Column) {
				continue
			}
			bare := l.lexicon.said(layout.Label{Text: b.Heading}).columns[b.Column].weight >= asSpelled
			if bare && u.never(v.Label.Col, b) {
				continue
			}
			o := l.openOf(u, g, i)
			o.Others = []string{b.Column.Name}
			out = append(out, o)
			break
		}
	}
	return out
}

// hasWord tells a heading one of whose words alone is a column's.
func (t *Lexicon) hasWord(heading string, c *plan.Column) bool {
	return slices.ContainsFunc(strings.Fields(heading), func(word string) bool {
		return t.said(layout.Label{Text: word}).columns[c].weight >= asSpelled
	})
}

// never tells numbers that are on no row more than those of a count.
func (u *Understood) never(index int, b *plan.Binding) bool {
	return !slices.ContainsFunc(u.rowNumbers(), func(row []float64) bool {
		return index < len(row) && b.Index < len(row) && row[index] > row[b.Index]
	})
}

// within tells numbers that are on no row more than the bites, are not all of them, and are a good share of them.
func (u *Understood) within(index int, bites *plan.Binding) bool {
	if !u.never(index, bites) {
		return false
	}
	rows, all, part, differ := 0, 0.0, 0.0, false
	for _, row := range u.rowNumbers() {
		if index >= len(row) || bites.Index >= len(row) {
			continue
		}
		x, n := row[index], row[bites.Index]
		if n > 0 {
			rows++
		}
		all, part, differ = all+n, part+x, differ || x != n
	}
	return rows >= leastNested && differ && part >= nestedShare*all
}

// inOtherUnit reports whether each figure of a column is that of a measure in the same row, in the other unit that its
// heading names: pounds beside kilos.
func (u *Understood) inOtherUnit(index int) bool {
	at := slices.IndexFunc(u.Block.Labels, func(l layout.Label) bool { return l.Col == index })
	if at < 0 {
		return false
	}
	for _, b := range u.Plan.Bindings {
		own := unitAmong(u.Block.Labels[at].Text, b.Column.Dimension)
		if b.Index < 0 || b.Unit == "" || own == "" || own == b.Unit || b.Set > 0 {
			continue
		}
		figures, same := 0, 0
		for _, row := range u.rowNumbers() {
			if index >= len(row) || row[index] == 0 {
				continue
			}
			v, err := unit.Convert(row[index], own, b.Unit)
			if figures++; err == nil && b.Index < len(row) && math.Abs(v-row[b.Index]) <= 0.03*v {
				same++
			}
		}
		if figures >= 3 && same == figures {
			return true
		}
	}
	return false
}
