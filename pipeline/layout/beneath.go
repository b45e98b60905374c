package layout

import (
	"regexp"
	"slices"
	"strings"

	"wakeledger/pipeline/unit"
)

// keyed is a text with what it is before a colon: "weighed: wahoo".
var keyed = regexp.MustCompile(`^(\pL[\pL ]{1,20}):\s+(\S.*)$`)

// fewBeneath is how many rows of one key under the rows of a table make a table of their own.
const fewBeneath = 3

// beneath parts the rows off that say in another order what belongs to the row above, each with the
// same word before a colon in the same column: "weighed: wahoo | 12 kg | 120 cm" under a trip. They
// become records with the cells of the row above that stand to the left of that word.
func (b *Block) beneath() (Block, bool) {
	col, key := b.keyBeneath()
	if key == "" {
		return Block{}, false
	}
	out := Block{Grid: b.Grid, Shape: Records}
	var rest []Row
	var above Row
	width := col + 1
	for _, row := range b.Rows {
		own, text, ok := keyOf(row, col)
		switch {
		case ok && own == key && above.Cells != nil:
			cells := append(slices.Clone(above.Cells[:col]), Cell{Text: text, Look: lookOf(text, 0)})
			row.Cells = append(cells, row.Cells[col+1:]...)
			out.Rows = append(out.Rows, row)
			width = max(width, 1+lastFilled(row))
			continue
		case len(row.filled(0, len(row.Cells))) > 2 && len(row.Cells) > col:
			above = row
		}
		rest = append(rest, row)
	}
	for i := range width {
		switch {
		case i < col:
			if j := slices.IndexFunc(b.Labels, func(l Label) bool { return l.Col == i }); j >= 0 {
				out.Labels = append(out.Labels, b.Labels[j])
			}
		case holds(out.Rows, i):
			out.Labels = append(out.Labels, Label{Col: i, Text: labelOf(out.Rows, i, key)})
		}
	}
	b.Rows = rest
	return out, true
}

// keyBeneath is the word before a colon that rows with nothing to its left begin with, and its column,
// where the other rows have no such word there.
func (b *Block) keyBeneath() (col int, key string) {
	count, columns := map[string]int{}, map[string]int{}
	for _, row := range b.Rows {
		if cells := row.filled(0, len(row.Cells)); len(cells) > 1 {
			if own, _, ok := keyOf(row, cells[0]); ok {
				count[own]++
				columns[own] = cells[0]
			}
		}
	}
	for own, n := range count {
		if n >= fewBeneath && n > count[key] && columns[own] > 0 {
			key = own
		}
	}
	other := 0
	for _, row := range b.Rows {
		own, _, ok := keyOf(row, columns[key])
		if ok && own != key || len(row.filled(0, columns[key])) > 0 && row.at(columns[key]).Look != Blank {
			other++
		}
	}
	if key == "" || other < fewBeneath {
		return 0, ""
	}
	return columns[key], key
}

// keyOf is the word before the colon of a row's cell, and what stands behind it, where nothing stands
// to the left of the cell.
func keyOf(row Row, col int) (key, text string, ok bool) {
	m := keyed.FindStringSubmatch(row.at(col).Text)
	if m == nil || len(row.filled(0, col)) > 0 {
		return "", "", false
	}
	return strings.ToLower(m[1]), m[2], true
}

func lastFilled(row Row) int {
	cells := row.filled(0, len(row.Cells))
	return cells[len(cells)-1]
}

// labelOf is what stands over a column of such rows: their key, but the unit where its cells are figures
// of lengths.
func labelOf(rows []Row, col int, key string) string {
	for _, row := range rows {
		m := withUnit.FindStringSubmatch(row.at(col).Text)
		if m == nil {
			continue
		}
		if u, ok := unit.Lookup(strings.ToLower(m[1])); ok && u.Dimension() == unit.Length {
			return m[1]
		}
	}
	return key
}

// withUnit is a figure with its unit.
var withUnit = regexp.MustCompile(`^\d+(?:[.,]\d+)?\s*(\pL+)$`)
