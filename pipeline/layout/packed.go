package layout

import (
	"fmt"
	"regexp"
	"slices"
	"strings"
	"unicode"
)

const (
	leastParts  = 3  // from how many parts on a heading says how its cells are made up
	mostParts   = 8  // and to how many
	mostPacked  = 12 // stretches in one cell
	leastPacked = 2  // cells of a column that are made up so
)

// partNames are the names of the parts of a cell, as its heading tells them: "Stretches (lines, time, bites)",
// "1st stretch: lines, time, speed, bites".
var partNames = regexp.MustCompile(`^([^:(]+?)\s*(?:\(([^()]+)\)|:\s*([^:()]+))$`)

// packing is a heading that says of what its cells are made up, in their order.
type packing struct {
	names []string
	cols  []int // its own column, and those right of it that are made up as its cells are
	many  int   // the most that one cell holds
}

// unpack gives cells that tell several figures of one or several stretches a column for each figure, where the heading
// names them in their order: "5 lines / 2 h / 4 bites; 3 lines / 1 h / no bites" under "Stretches (lines, time,
// bites)". The new columns stand at the end.
func (g *Grid) unpack() {
	if g.More {
		return
	}
	for r := 0; r < len(g.Rows)-1; r++ {
		for c := range g.Rows[r].Cells {
			if p, ok := g.packed(r, c); ok {
				g.apart(r, p)
				return
			}
		}
	}
}

// packed is the packing of which the cell at column c of row r is the heading.
func (g *Grid) packed(r, c int) (packing, bool) {
	head := g.Rows[r].Cells[c]
	m := partNames.FindStringSubmatch(head.Text)
	if head.Look != Text || m == nil {
		return packing{}, false
	}
	var p packing
	for name := range strings.SplitSeq(m[2]+m[3], ",") {
		p.names = append(p.names, strings.TrimSpace(name))
	}
	if n := len(p.names); n < leastParts || n > mostParts || slices.Contains(p.names, "") {
		return packing{}, false
	}
	for i := c; i < g.Width && g.Rows[r].at(i).Look != Blank; i++ {
		n, cells := g.packedBelow(r, i, len(p.names))
		if n == 0 || i == c && cells < leastPacked {
			break
		}
		p.cols, p.many = append(p.cols, i), max(p.many, n)
	}
	return p, len(p.cols) > 0
}

// packedBelow is how many of so many parts the cells of column c under row r hold at the most, 0 where one of them is
// not made up so, and how many cells there are.
func (g *Grid) packedBelow(r, c, parts int) (most, cells int) {
	for q := r + 1; q < len(g.Rows); q++ {
		cell := g.Rows[q].at(c)
		if cell.Look == Blank {
			continue
		}
		all := partsOf(cell.Text, parts)
		if all == nil {
			return 0, 0
		}
		most, cells = max(most, len(all)), cells+1
	}
	return most, cells
}

// partsOf takes a cell apart; nil where it is not made up of so many parts, two of them figures with their unit.
func partsOf(text string, parts int) [][]string {
	var out [][]string
	for one := range strings.FieldsFuncSeq(text, func(c rune) bool { return c == ';' || c == '\n' }) {
		var all []string
		figures := 0
		for part := range strings.SplitSeq(one, "/") {
			part = strings.TrimSpace(part)
			if part == "" {
				return nil
			}
			if unicode.IsDigit(rune(part[0])) && strings.IndexFunc(part, unicode.IsLetter) > 0 {
				figures++
			}
			all = append(all, part)
		}
		if len(all) != parts || figures < 2 {
			return nil
		}
		out = append(out, all)
	}
	if len(out) > mostPacked {
		return nil
	}
	return out
}

// apart puts the parts of packed cells into columns of their own.
func (g *Grid) apart(r int, p packing) {
	wide := len(p.names)
	for k := range p.many * len(p.cols) {
		for j, name := range p.names {
			put(&g.Rows[r], g.Width+k*wide+j, Cell{Text: fmt.Sprintf("%s %d", name, k+1), Look: Text})
		}
	}
	for q := r + 1; q < len(g.Rows); q++ {
		k := 0
		for _, c := range p.cols {
			for _, one := range partsOf(g.Rows[q].at(c).Text, wide) {
				for j, part := range one {
					part = bare(part, p.names[j])
					put(&g.Rows[q], g.Width+k*wide+j, Cell{Text: part, Look: lookOf(part, 0)})
				}
				k++
			}
		}
	}
	for q := r; q < len(g.Rows); q++ {
		for _, c := range p.cols {
			if c < len(g.Rows[q].Cells) {
				g.Rows[q].Cells[c] = Cell{}
			}
		}
	}
	g.Width += p.many * len(p.cols) * wide
}

// bare is a part without the word behind its figure, where that is its name again: "2 bites" and "1 bite" of bites.
func bare(part, name string) string {
	figure, word, ok := strings.Cut(part, " ")
	if ok && len(word) >= leastParts && lookOf(figure, 0) == Number &&
		strings.HasPrefix(strings.ToLower(name), strings.ToLower(word)) {
		return figure
	}
	return part
}

// put puts a cell into column i of a row.
func put(row *Row, i int, c Cell) {
	for len(row.Cells) <= i {
		row.Cells = append(row.Cells, Cell{})
	}
	row.Cells[i] = c
}
