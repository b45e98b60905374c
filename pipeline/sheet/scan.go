package sheet

import (
	"archive/zip"
	"errors"
	"fmt"
	"html"
	"io"
	"slices"
	"strconv"
	"strings"
)

const (
	maxRow = 1048576
	maxCol = 16384
	// maxMarks bounds the cells of a sheet that need a word of their own.
	maxMarks = 1000000
)

// layout is what a pass over a sheet's part finds out before its rows are read
// through excelize, which tells none of it.
type layout struct {
	lastRow int // the last row with a value or a formula, 0 if none
	// lastCol is the last column of that row with a value in the row itself.
	// If excelize gives fewer cells, it stopped at a fault without saying so.
	lastCol int
	width   int    // the last column of the sheet with a value or a formula
	merges  []area // by first row
	marks   []mark // by row and column
}

// mark is a cell whose text is not what excelize gives.
type mark struct {
	row, col int
	text     string
}

// scanner makes a layout from a part's tags.
type scanner struct {
	tags   *tagReader
	lay    layout
	texts  int // how many shared texts the workbook has
	row    int
	cell   cellState
	closed bool // the rows are complete
	whole  bool // the part is complete
}

// cellState is what was met of the cell in hand.
type cellState struct {
	col                       int
	typ                       string
	value                     string
	stored, formula, hasValue bool
	formulaText               string
}

var errCutShort = errors.New("its XML is cut short")

// scan reads a sheet's part as a stream. texts is how many shared texts the
// workbook has.
func scan(f *zip.File, texts int) (*layout, error) {
	r, err := f.Open()
	if err != nil {
		return nil, err
	}
	s := scanner{tags: newTagReader(r), texts: texts}
	err = s.run()
	if err == nil && !(s.closed && s.whole) {
		err = errCutShort
	}
	if err = errors.Join(err, r.Close()); err != nil {
		return nil, err
	}
	return s.finish()
}

func (s *scanner) run() error {
	for {
		err := s.tags.next()
		if errors.Is(err, io.EOF) {
			return nil
		}
		if err != nil {
			return err
		}
		if s.tags.end {
			err = s.endTag()
		} else {
			err = s.startTag()
		}
		if err != nil {
			return err
		}
	}
}

func (s *scanner) startTag() error {
	t := s.tags
	switch string(t.name) {
	case "row":
		return s.startRow()
	case "c":
		return s.startCell()
	case "v":
		s.cell.stored = true
	case "f":
		s.cell.formula = true
	case "sheetData":
		s.closed = s.closed || t.empty
	case "mergeCell":
		return s.addMerge()
	}
	return nil
}

func (s *scanner) endTag() error {
	t := s.tags
	switch string(t.name) {
	case "v":
		s.cell.value = string(t.text[:min(len(t.text), 32)])
		s.cell.hasValue = s.cell.hasValue || len(t.text) > 0
	case "t":
		s.cell.hasValue = s.cell.hasValue || s.cell.typ == "inlineStr" && len(t.text) > 0
	case "f":
		s.cell.formulaText = string(t.text)
	case "c":
		return s.endCell()
	case "sheetData":
		s.closed = true
	case "worksheet":
		s.whole = true
	}
	return nil
}

// startRow takes a row's number. Rows out of order would be given out wrongly
// by excelize, so they are refused.
func (s *scanner) startRow() error {
	num := s.row + 1
	if ref := s.tags.attr("r"); ref != nil {
		n, err := strconv.Atoi(string(ref))
		if err != nil || n < 1 || n > maxRow {
			return fmt.Errorf("it has a row numbered %.20q", ref)
		}
		num = n
	}
	if num <= s.row || num > maxRow {
		return fmt.Errorf("row %d comes after row %d", num, s.row)
	}
	s.row, s.cell = num, cellState{}
	return nil
}

// startCell takes a cell's place. A cell out of order is refused as a row is.
func (s *scanner) startCell() error {
	col := s.cell.col + 1
	if ref := s.tags.attr("r"); ref != nil {
		c, row, ok := parseRef(ref)
		if !ok || row != s.row {
			return fmt.Errorf("row %d has a cell named %.20q", s.row, ref)
		}
		col = c
	}
	if col <= s.cell.col || col > maxCol || s.row == 0 || s.closed {
		return fmt.Errorf("the cells of row %d are out of order", s.row)
	}
	s.cell = cellState{col: col, typ: cellType(s.tags.attr("t"))}
	if s.tags.empty {
		return s.endCell()
	}
	return nil
}

// cellType keeps the types that matter here without making a string of each.
func cellType(b []byte) string {
	switch string(b) {
	case "b":
		return "b"
	case "s":
		return "s"
	case "str":
		return "str"
	case "inlineStr":
		return "inlineStr"
	}
	return ""
}

func (s *scanner) endCell() error {
	c := &s.cell
	if !c.hasValue && !c.formula {
		return nil
	}
	if c.hasValue && c.typ == "s" && !s.hasString(c.value) {
		return fmt.Errorf("row %d refers to a text that the workbook does not hold", s.row)
	}
	if s.row > s.lay.lastRow {
		s.lay.lastRow, s.lay.lastCol = s.row, 0
	}
	if c.hasValue && c.typ != "s" { // A shared string may be "", and is then no cell to excelize.
		s.lay.lastCol = c.col
	}
	s.lay.width = max(s.lay.width, c.col)
	if text := c.mark(); text != "" {
		s.lay.marks = append(s.lay.marks, mark{s.row, c.col, text})
	}
	if len(s.lay.marks) > maxMarks {
		return fmt.Errorf("it has more than %d booleans and formulas without a stored value; open it in a spreadsheet program and save it again", maxMarks)
	}
	return nil
}

func (s *scanner) hasString(number string) bool {
	n, err := strconv.Atoi(strings.TrimSpace(number))
	return err == nil && 0 <= n && n < s.texts
}

// mark is the text of a boolean, or of a formula without a stored value. A
// formula that gave the text "" is stored as an empty value of type str.
func (c *cellState) mark() string {
	switch {
	case c.typ == "b" && (c.value == "1" || c.value == "true"):
		return "TRUE"
	case c.typ == "b" && (c.value == "0" || c.value == "false"):
		return "FALSE"
	case c.formula && !c.hasValue && !(c.typ == "str" && c.stored):
		return FormulaNoValue + html.UnescapeString(c.formulaText)
	}
	return ""
}

// finish puts the merged areas in order and within the used part of the sheet.
func (s *scanner) finish() (*layout, error) {
	l := &s.lay
	kept := l.merges[:0]
	covered := 0
	for _, m := range l.merges {
		m.bottom, m.right = min(m.bottom, l.lastRow), min(m.right, l.width)
		if m.top > m.bottom || m.left > m.right {
			continue
		}
		covered += (m.bottom - m.top + 1) * (m.right - m.left + 1)
		kept = append(kept, m)
	}
	if covered > maxMergedCells {
		return nil, fmt.Errorf("its merged areas cover %d cells, more than %d; unmerge them", covered, maxMergedCells)
	}
	slices.SortStableFunc(kept, func(a, b area) int { return a.top - b.top })
	l.merges = kept
	return l, nil
}

// parseRef reads a cell's name such as B17.
func parseRef(ref []byte) (col, row int, ok bool) {
	i := 0
	for ; i < len(ref) && isLetter(ref[i]) && col <= maxCol; i++ {
		col = col*26 + int(ref[i]&^0x20-'A') + 1
	}
	digits := ref[i:]
	for ; i < len(ref) && '0' <= ref[i] && ref[i] <= '9' && row <= maxRow; i++ {
		row = row*10 + int(ref[i]-'0')
	}
	ok = i == len(ref) && len(digits) > 0 && 1 <= col && col <= maxCol && 1 <= row && row <= maxRow
	return col, row, ok
}

func isLetter(c byte) bool { return 'A' <= c&^0x20 && c&^0x20 <= 'Z' }
