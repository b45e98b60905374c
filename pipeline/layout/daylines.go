package layout

import "strings"

// dayLines parts the lines off that stand among the rows of a table and tell of a day what its rows do not, "Fri 7/4 -
// lines in 6:10 up 12:40, 5 lines, 7 kn": they become a table of their own, and the rows under each get its day, in a
// column behind theirs. The first row must be one; a table with a column of days has no need of them.
func (b *Block) dayLines(like Likeness) (Block, bool) {
	if b.Open || len(b.Labels) < sureHeads || len(b.Rows) == 0 || b.Rows[0].dayLine() == nil {
		return Block{}, false
	}
	col := b.Grid.Width
	for _, l := range b.Labels {
		col = max(col, l.Col+1)
		if lookOf(l.Text, 0) == Date || strings.EqualFold(l.Text, dayLabel) {
			return Block{}, false
		}
	}
	told := Block{Grid: b.Grid, Shape: Records,
		Labels: []Label{{Col: 0, Text: dayLabel}, {Col: 1, Text: "what happened"}}}
	var rest []Row
	day, worded := Cell{}, false
	for _, row := range b.Rows {
		if m := row.dayLine(); m != nil {
			day = Cell{Text: m[2], Look: Date}
			worded = worded || lettered(m[3])
			told.Rows = append(told.Rows, Row{Num: row.Num, Cells: []Cell{day, {Text: m[3], Look: Text}}})
			continue
		}
		cells := make([]Cell, col+1)
		copy(cells, row.Cells)
		cells[col] = day
		row.Cells = cells
		rest = append(rest, row)
	}
	if !worded || len(rest) == 0 {
		return Block{}, false
	}
	b.Labels, b.Rows = append(b.Labels, Label{Col: col, Text: dayLabel}), rest
	return told, true
}

// dayLabel stands over the days of lines that tell of one.
const dayLabel = "date"

// dayLine are a row's day and what it says of it, where it is no more than one text that begins with a day.
func (r *Row) dayLine() []string {
	cells := r.filled(0, len(r.Cells))
	if len(cells) != 1 || r.Cells[cells[0]].Look != Text {
		return nil
	}
	m := dayFirst.FindStringSubmatch(oneLine(r.Cells[cells[0]].Text))
	if m == nil || !isDay(m[2]) {
		return nil
	}
	return m
}
