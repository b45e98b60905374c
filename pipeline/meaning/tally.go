package meaning

import (
	"slices"
	"strings"

	"wakeledger/pipeline/layout"
	"wakeledger/pipeline/plan"
)

// ofBites are the columns by whose words somebody counts bites over: how many on each lure.
var ofBites = []string{"lure", "species", "line", "area", "angler"}

// fewTallied is how many names a tally has at the least, for them to be no chance.
const fewTallied = 3

// tallied is the heading of another table's column by which a table without days was counted: that table has a row
// a bite, names in that column what names the rows here, and names each at least as often as is counted of it
// here. "" where there is none.
func (l *Log) tallied(u *Understood) string {
	for _, o := range l.Data() {
		p := o.Plan
		if o == u || p.Kind != plan.Strikes && p.Kind != plan.Events && !(p.Kind == plan.Flat && p.Binds("outcome")) ||
			!p.Binds("date", "trip") && !p.Gives("date") {
			continue
		}
		for _, name := range ofBites {
			b := p.Find(name)
			if b == nil || b.Index < 0 || b.Column.Parse != "text" && b.Column.Parse != "species" {
				continue
			}
			often := map[string]float64{}
			for _, row := range o.b.rows {
				often[strings.ToLower(cellOf(row, b.Index))]++
			}
			if slices.ContainsFunc(u.Block.Labels, func(of layout.Label) bool { return u.countsOver(of.Col, often) }) {
				return b.Heading
			}
		}
	}
	return ""
}

// countsOver tells whether a column names the rows of a table by names of which there are so many, each once, and
// no count beside them is of more.
func (u *Understood) countsOver(names int, often map[string]float64) bool {
	seen := map[string]bool{}
	for _, row := range u.b.rows {
		name := strings.ToLower(cellOf(row, names))
		if name == "" || seen[name] || often[name] == 0 {
			return false
		}
		seen[name] = true
		for i := range row {
			if n, ok := number(cellOf(row, i)); ok && i != names && n > often[name] {
				return false
			}
		}
	}
	return len(seen) >= fewTallied
}
