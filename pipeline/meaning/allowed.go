package meaning

import (
	"slices"
	"strings"

	"wakeledger/pipeline/layout"
)

// fewLists is how many columns of a table list the words of a column of another table, for it to be such lists alone.
const fewLists = 2

// allowed tells a table whose columns only list the words that the cells of other tables are chosen from: each of
// another length, filled from its top, no word twice, most under a heading that a table with days has too, whose cells
// are of that list.
func (l *Log) allowed(u *Understood) bool {
	lengths, listed, all := map[int]bool{}, 0, 0
	for _, label := range u.Block.Labels {
		cells := column(u.b.rows, label.Col)
		if len(cells) == 0 {
			continue
		}
		own := set(cells)
		if len(own) != len(cells) || !fromTop(u.b.rows, label.Col, len(cells)) {
			return false
		}
		lengths[len(cells)] = true
		if all++; l.chosenFrom(u, label.Text, own) {
			listed++
		}
	}
	return len(lengths) > 1 && listed >= fewLists && 2*listed > all
}

// fromTop tells a column whose first n rows are filled.
func fromTop(rows [][]string, col, n int) bool {
	return len(rows) >= n && !slices.ContainsFunc(rows[:n], func(row []string) bool { return cellOf(row, col) == "" })
}

// chosenFrom reports whether a table with days has a column under the same heading, whose cells are of a list.
func (l *Log) chosenFrom(u *Understood, heading string, list map[string]bool) bool {
	for _, o := range l.Blocks {
		if o == u || o.Block.Shape != layout.Table || !dated(o.Block) {
			continue
		}
		for _, label := range o.Block.Labels {
			if normalise(label.Text) != normalise(heading) {
				continue
			}
			cells := column(o.b.rows, label.Col)
			strange := func(c string) bool { return !list[strings.ToLower(c)] }
			if len(cells) > len(list) && !slices.ContainsFunc(cells, strange) {
				return true
			}
		}
	}
	return false
}
