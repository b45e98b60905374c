package sheet

import (
	"errors"
	"fmt"
	"math"
	"os"
	"strconv"

	"wakeledger/pipeline/record"
)

// maxGridCells bounds the cells of a book that is held in memory, blank ones
// between others and repeated ones included: some 400,000 rows of 20 columns.
const maxGridCells = 8 << 20

// grid is a sheet in memory.
type grid struct {
	rows    []gridRow // by number; blank rows are left out
	merges  []area    // by first row
	width   int       // the last column with a value or a formula
	left    *int      // how many cells the book may still hold
	details bool
}

// gridRow is a row, or several that are the same.
type gridRow struct {
	num, times       int
	table            int // see Row.Table
	cells            []string
	class            []Class
	formula, comment map[int]string
	filled, struck   int // cells that hold something, and of these those that are struck through
}

type gridCell struct {
	text             string
	class            Class
	struck           bool
	formula, comment string // the formula with its "=", which is also there if the text is not known
}

var errTooManyCells = fmt.Errorf("its sheets hold more than %d cells; save it as CSV", maxGridCells)

// put stores a cell n times beside each other, from row num and column col on,
// both counted from 1. Rows come in order.
func (g *grid) put(num, col, n int, c gridCell) error {
	used := c.text != "" || c.formula != ""
	if !used && (c.comment == "" || !g.details) {
		return nil
	}
	end := col - 1 + n
	if num > maxRow || end > maxCol {
		return fmt.Errorf("it has a cell in row %d, column %d, beyond the last of a sheet", num, end)
	}
	r, err := g.row(num)
	if err != nil {
		return err
	}
	if g.details {
		note(&r.comment, col-1, c.comment)
	}
	if !used {
		return nil
	}
	*g.left -= max(0, end-len(r.cells))
	if g.details && c.formula != "" {
		*g.left -= 8 * n // a formula takes the room of some cells
	}
	if *g.left < 0 {
		return errTooManyCells
	}
	for len(r.cells) < end {
		r.cells = append(r.cells, "")
	}
	if r.filled += n; c.struck {
		r.struck += n
	}
	for i := col - 1; i < end; i++ {
		r.cells[i], r.class = c.text, setClass(r.class, i, c.class)
		if c.class == Cents {
			r.cells[i] = cents(c.text)
		}
		if g.details {
			note(&r.formula, i, c.formula)
		}
	}
	g.width = max(g.width, end)
	return nil
}

func note(m *map[int]string, i int, text string) {
	if text == "" {
		return
	}
	if *m == nil {
		*m = map[int]string{}
	}
	(*m)[i] = text
}

func (g *grid) row(num int) (*gridRow, error) {
	last := g.lastRow()
	switch {
	case num > last:
		g.rows = append(g.rows, gridRow{num: num, times: 1, cells: make([]string, 0, g.width)})
	case num < last:
		return nil, fmt.Errorf("row %d comes after row %d", num, last)
	}
	return &g.rows[len(g.rows)-1], nil
}

// repeat has row num, the last one, stand for several.
func (g *grid) repeat(num, times int) error {
	if times <= 1 || g.lastRow() != num {
		return nil
	}
	r := &g.rows[len(g.rows)-1]
	if num+times-1 > maxRow {
		return fmt.Errorf("its row %d is repeated beyond the last of a sheet", num)
	}
	if *g.left -= len(r.cells) * (times - 1); *g.left < 0 {
		return errTooManyCells
	}
	r.times = times
	return nil
}

func (g *grid) merge(a area) error {
	if len(g.merges) == maxMerges {
		return errTooManyMerges
	}
	g.merges = append(g.merges, a)
	return nil
}

// lastRow is the last row that stands in the grid, 0 if none does.
func (g *grid) lastRow() int {
	if len(g.rows) == 0 {
		return 0
	}
	r := g.rows[len(g.rows)-1]
	return r.num + r.times - 1
}

// finish puts in order what could not be while rows came.
func (g *grid) finish() (err error) {
	for len(g.rows) > 0 && len(g.rows[len(g.rows)-1].cells) == 0 {
		g.rows = g.rows[:len(g.rows)-1]
	}
	var set classSet
	for i := range g.rows {
		g.rows[i].class = set.kinds[set.id(g.rows[i].class)]
	}
	g.merges, err = clipMerges(g.merges, g.lastRow(), g.width)
	return err
}

// gridBook is a workbook that was read into memory when it was opened.
type gridBook struct {
	file   *os.File
	name   string
	sheets []gridSheet
}

type gridSheet struct {
	info Info
	grid *grid
	err  error // why the sheet could not be read
}

func (b *gridBook) Sheets() []Info {
	list := make([]Info, len(b.sheets))
	for i, s := range b.sheets {
		list[i] = s.info
	}
	return list
}

func (b *gridBook) Close() error { return b.file.Close() }

func (b *gridBook) Rows(i int) (Rows, error) {
	if i < 0 || i >= len(b.sheets) {
		return nil, fmt.Errorf("%s: there is no sheet %d", b.name, i+1)
	}
	s := b.sheets[i]
	if s.err != nil {
		return nil, sheetError(b.name, s.info.Name, s.err)
	}
	r := &gridRows{rowMaker: rowMaker{file: b.name, sheet: s.info.Name}, rows: s.grid.rows}
	r.merges.coming = s.grid.merges
	return r, nil
}

// finish ends the opening of a book whose sheets were read.
func (b *gridBook) finish(err error) error {
	if err == nil && len(b.sheets) == 0 {
		return &Refusal{b.name, noSheets, nil}
	}
	if err != nil {
		return damaged(b.name, err)
	}
	for i := range b.sheets {
		b.sheets[i].info.describe(b.name)
	}
	return nil
}

// gridRows gives the rows of a grid.
type gridRows struct {
	rowMaker
	rows  []gridRow // the one in hand and those to come
	num   int
	cells []string
}

func (r *gridRows) Err() error   { return nil }
func (r *gridRows) Close() error { return nil }

// Next implements Rows.
func (r *gridRows) Next() bool {
	if len(r.rows) > 0 && r.num == r.rows[0].num+r.rows[0].times-1 {
		r.rows = r.rows[1:]
	}
	if len(r.rows) == 0 {
		return false
	}
	r.num++
	row := Row{Num: r.num}
	if next := r.rows[0]; r.num >= next.num {
		r.cells = append(r.cells[:0], next.cells...)
		row = Row{Num: r.num, Table: next.table, Cells: r.cells, Class: next.class, Formula: next.formula,
			Comment: next.comment, Struck: next.struck > 0 && next.struck == next.filled}
	}
	r.take(row)
	return true
}

// rowMaker makes a sheet's rows of its cells, whatever read them.
type rowMaker struct {
	file, sheet string
	merges      merger
	row         Row
}

// Row implements Rows.
func (m *rowMaker) Row() *Row { return &m.row }

// take makes the row in hand of what was read.
func (m *rowMaker) take(row Row) {
	row.Merged, row.Class = m.merges.row(row.Num, row.Cells, row.Class)
	m.row = row
	for i, c := range row.Cells {
		if tooLong(c) {
			pos := record.Pos{File: m.file, Sheet: m.sheet, Row: row.Num, Col: i + 1}
			m.row = Row{Num: row.Num, Problem: &record.Problem{Pos: pos, Cell: excerpt(c), Reason: longReason}}
			return
		}
	}
}

// numberText is a number as a workbook's own parts would have it, in as few
// digits as tell it apart. A number that is none cannot be stored by any program.
func numberText(f float64) string {
	a := math.Abs(f)
	switch {
	case math.IsNaN(f) || math.IsInf(f, 0):
		return "#NUM!"
	case f == 0:
		return "0"
	case a < 1e-9 || a >= 1e21:
		return strconv.FormatFloat(f, 'E', -1, 64)
	}
	return strconv.FormatFloat(f, 'f', -1, 64)
}

const noSheets = "has no sheets with cells"

func damaged(file string, err error) error {
	if errors.Is(err, errNoWorkbook) {
		return &Refusal{file, "is a zip archive without a workbook in it", err}
	}
	return &Refusal{file, "is damaged: " + err.Error(), err}
}

func sheetError(file, sheet string, err error) error {
	return &Refusal{file, fmt.Sprintf("sheet %q cannot be read: %v", sheet, err), err}
}
