package normalise

import (
	"wakeledger/pipeline/recognise"
	"wakeledger/pipeline/record"
	"wakeledger/pipeline/sheet"
)

// Tables reads the tables of one sheet one after the other, each without its
// header: where a header of other headings stands below a table, or the same with
// a title of its own above it, another table begins. It is a sheet.Rows that ends
// with the table. It is not safe for concurrent use.
type Tables struct {
	rows    sheet.Rows
	columns *recognise.Table
	layout  recognise.Layout // of the table at hand
	pos     record.Pos       // of the sheet
	header  int              // rows to drop before the first table

	row   *sheet.Row
	own   sheet.Row   // a row that is kept while rows below it are read
	ahead []sheet.Row // read ahead, from at on
	at    int

	below   *recognise.Layout // of the table that begins at row
	looked  [][]string        // the rows it was recognised by
	HeadRow int               // number of the header's last row in the sheet; 0 for the first table
}

// NewTables takes over the rows of a sheet from its first row on. layout is that
// of its first table, whose header ends after header rows; pos names file and sheet.
func NewTables(rows sheet.Rows, columns *recognise.Table, layout recognise.Layout, pos record.Pos, header int) *Tables {
	return &Tables{rows: rows, columns: columns, layout: layout, pos: pos, header: header}
}

// Next reads the next row of the table at hand.
func (t *Tables) Next() bool {
	for ; t.header > 0; t.header-- {
		if !t.take() {
			return false
		}
	}
	if t.below != nil || !t.take() {
		return false
	}
	if isData(t.row.Cells) {
		return true
	}
	return !t.another()
}

// isData tells most rows that are no header, title or blank row, as soon as it can
// be told: of their first three cells none is blank or a label, and one begins with
// a digit.
func isData(cells []string) bool {
	if len(cells) < 3 {
		return false
	}
	digit := false
	for _, c := range cells[:3] {
		if c == "" || c[0] <= ' ' || c[len(c)-1] == ':' || c[len(c)-1] <= ' ' {
			return false
		}
		digit = digit || c[0] >= '0' && c[0] <= '9'
	}
	return digit
}

// take reads the next row of the sheet.
func (t *Tables) take() bool {
	if t.at < len(t.ahead) {
		t.row = &t.ahead[t.at]
		t.at++
		return true
	}
	t.ahead, t.at = t.ahead[:0], 0
	if !t.rows.Next() {
		return false
	}
	t.row = t.rows.Row()
	return true
}

// another tells whether another table begins at the row at hand: with its header,
// or with what stands above that.
func (t *Tables) another() bool {
	if t.row.Problem != nil || !t.columns.MayLead(t.row.Cells) {
		return false
	}
	at, ok := t.layout.NextHeader(t.columns, t.peek(recognise.HeaderReach))
	if !ok {
		return false
	}
	rows := t.peek(recognise.Lookahead)
	below, ok := t.columns.Below(t.layout, t.pos.Sheet, rows, at)
	if !ok {
		return false
	}
	below.Dated(t.pos.File)
	t.below, t.looked = &below, rows
	return true
}

// peek is the cells of the row at hand and of up to n below it.
func (t *Tables) peek(n int) [][]string {
	if t.at == 0 { // the row is the sheet's own, and would be overwritten
		t.own.CopyOf(t.row)
		t.row = &t.own
	}
	for len(t.ahead)-t.at < n && t.rows.Next() {
		if len(t.ahead) < cap(t.ahead) {
			t.ahead = t.ahead[:len(t.ahead)+1] // the row that was here before lends its room
		} else {
			t.ahead = append(t.ahead, sheet.Row{})
		}
		t.ahead[len(t.ahead)-1].CopyOf(t.rows.Row())
	}
	rows := [][]string{t.row.Cells}
	for i := t.at; i < len(t.ahead); i++ {
		rows = append(rows, t.ahead[i].Cells)
	}
	return rows
}

// Below goes on to the table below the one whose rows have been read. It returns
// how that was understood and the rows by which it was, or false where the sheet
// has ended.
func (t *Tables) Below() (recognise.Layout, [][]string, bool) {
	if t.below == nil {
		return recognise.Layout{}, nil, false
	}
	t.layout, t.below = *t.below, nil
	for range t.layout.Header {
		t.take()
	}
	t.HeadRow = t.row.Num
	return t.layout, t.looked, true
}

// Row is the row that Next read.
func (t *Tables) Row() *sheet.Row { return t.row }

// Err is what ended the sheet early; nil at the end of a table above another.
func (t *Tables) Err() error {
	if t.below != nil {
		return nil
	}
	return t.rows.Err()
}

// Close lets go of the sheet.
func (t *Tables) Close() error { return t.rows.Close() }
