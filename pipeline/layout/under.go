package layout

import "slices"

// Of lines under the rows of a table: how many there are at the least, and how many cells the row above them has.
const (
	fewUnder = 6
	fullRow  = 3
)

// under puts the lines that stand alone under the rows of a table, in its column of days, into a column of their own
// behind the others, each with the row above: the fish of a day under the day. Under some rows there must be several,
// so that titles of months are none.
func (b *Block) under() {
	col := b.underColumn()
	if col < 0 || b.Open {
		return
	}
	to := b.Grid.Width
	for _, l := range b.Labels {
		to = max(to, l.Col+1)
	}
	var rows []Row
	above := -1
	for _, row := range b.Rows {
		switch {
		case !row.lineAt(col):
			if above = -1; len(row.filled(0, len(row.Cells))) >= fullRow || row.at(col).Look == Date {
				above = len(rows)
			}
			rows = append(rows, row)
		case above < 0:
			rows = append(rows, row)
		default:
			rows[above] = rows[above].with(to, row.at(col).Text)
		}
	}
	b.Labels, b.Rows = append(b.Labels, Label{Col: to}), rows
}

// with is the row with one more line in a column.
func (r Row) with(col int, line string) Row {
	cells := make([]Cell, max(col+1, len(r.Cells)))
	copy(cells, r.Cells)
	if said := cells[col].Text; said != "" {
		line = said + "; " + line
	}
	cells[col] = Cell{Text: line, Look: Text}
	r.Cells = cells
	return r
}

// underColumn is the column of days in which lines stand under the rows of a table; -1 where there are none.
func (b *Block) underColumn() int {
	for _, l := range b.Labels {
		days, others, lines, several := 0, 0, 0, 0
		for i, row := range b.Rows {
			switch {
			case row.lineAt(l.Col):
				lines++
				if i > 0 && b.Rows[i-1].lineAt(l.Col) {
					several++
				}
			case row.at(l.Col).Look == Date:
				days++
			case row.at(l.Col).Look != Blank:
				others++
			}
		}
		if lines >= fewUnder && several >= fewUnder/2 && 2*lines >= days && days >= fewUnder && days > 3*others {
			return l.Col
		}
	}
	return -1
}

// lineAt tells a row of no more than a text in a column, of some words.
func (r *Row) lineAt(col int) bool {
	cells := r.filled(0, len(r.Cells))
	return slices.Equal(cells, []int{col}) && r.Cells[col].Look == Text && lettered(r.Cells[col].Text)
}
