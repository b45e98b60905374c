package layout

import (
	"slices"
	"strings"
)

// leastPairs is from how many rows on two words that take turns in a column tell two kinds of rows.
const leastPairs = 3

// joinPairs makes one row of two that are of one record: a column without a heading says of the upper what it holds,
// "lure", and of the lower, "bite", which fills the same columns and names no day of its own. What the lower says comes
// into columns of their own at the end, under the heading and its word.
func (g *Grid) joinPairs() {
	for c := 1; c < min(g.Width, 4); c++ {
		upper, lower, ok := g.takesTurns(c)
		if !ok {
			continue
		}
		head := g.Rows[upper[0]-1]
		var under []int // columns that the lower rows fill
		word := ""
		for _, r := range lower {
			word = g.Rows[r].at(c).Text
			for _, i := range g.Rows[r].filled(c+1, g.Width) {
				if !slices.Contains(under, i) {
					under = append(under, i)
				}
			}
		}
		slices.Sort(under)
		if len(under) == 0 || head.at(c).Look != Blank || slices.ContainsFunc(under, func(i int) bool {
			return head.at(i).Look != Text
		}) {
			continue
		}
		width := g.Width
		put := func(r int, k int, cell Cell) {
			row := &g.Rows[r]
			for len(row.Cells) <= width+k {
				row.Cells = append(row.Cells, Cell{})
			}
			row.Cells[width+k] = cell
		}
		for k, i := range under {
			put(upper[0]-1, k, Cell{Text: head.at(i).Text + " " + word, Look: Text})
			for _, r := range lower {
				put(r-1, k, g.Rows[r].at(i))
			}
		}
		for _, r := range upper {
			g.Rows[r].Cells[c] = Cell{}
		}
		g.Width = width + len(under)
		for _, r := range slices.Backward(lower) {
			g.Rows = slices.Delete(g.Rows, r, r+1)
		}
		return
	}
}

// takesTurns are the rows of two words that take turns in column c: each lower one is right beneath an upper one, has
// nothing left of its word where that has, and the upper ones come first.
func (g *Grid) takesTurns(c int) (upper, lower []int, ok bool) {
	first, second := "", ""
	for r := 1; r < len(g.Rows); r++ {
		cell := g.Rows[r].at(c)
		text, left := strings.ToLower(cell.Text), len(g.Rows[r].filled(0, c)) > 0
		switch {
		case cell.Look == Blank:
		case cell.Look != Text:
			return nil, nil, false
		case left && (first == "" || text == first):
			first, upper = text, append(upper, r)
		case !left && first != "" && text != first && (second == "" || text == second) && upper[len(upper)-1] == r-1:
			second, lower = text, append(lower, r)
		case first != "":
			return nil, nil, false
		}
	}
	return upper, lower, len(lower) >= leastPairs && !g.More
}
