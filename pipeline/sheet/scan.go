package sheet

import (
	"archive/zip"
	"bufio"
	"errors"
	"fmt"
	"html"
	"io"
	"strconv"
	"strings"
	"wakeledger/pipeline/tag"
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
	classes classSet
	class   []uint32 // by row: which of classes; rows after the last are Plain
	// formulas and comments are by row and by index of the cell, nil where they
	// were not asked for.
	formulas, comments map[int]map[int]string
	struck             map[int]bool // rows whose cells are all struck through
}

// bookFacts is what a workbook's other parts tell of its sheets' cells.
type bookFacts struct {
	texts   int     // how many shared texts there are
	styles  []Class // by the number that a cell has as its s; nil if all are Plain
	struck  []bool  // by the same, which strike their text through; nil if none does
	details bool
}

// mark is a cell whose text is not what excelize gives.
type mark struct {
	row, col int
	text     string
}

// mostFormula bounds the text kept between two tags, in bytes: of what is looked
// at, only a formula can be longer, and its beginning names it well enough. The tags only
// find places in a part that excelize reads with encoding/xml as well.
const mostFormula = 256

// scanner makes a layout from a part's tags.
type scanner struct {
	tags     *tag.Reader
	lay      layout
	facts    bookFacts
	row      int
	class    []Class // of the row in hand
	filled   int     // its cells that hold something
	struck   int     // and of these, those that are struck through
	formulas int
	cell     cellState
	closed   bool // the rows are complete
	whole    bool // the part is complete
}

// cellState is what was met of the cell in hand.
type cellState struct {
	col                       int
	class                     Class
	struck                    bool
	typ                       string
	value                     string
	stored, formula, hasValue bool
	formulaText               string
}

var errCutShort = errors.New("its XML is cut short")

// scan reads a sheet's part as a stream.
func scan(f *zip.File, facts bookFacts) (*layout, error) {
	r, err := f.Open()
	if err != nil {
		return nil, err
	}
	s := scanner{tags: tag.NewReader(bufio.NewReaderSize(r, 64<<10), mostFormula), facts: facts}
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
		err := s.tags.Next()
		if errors.Is(err, io.EOF) {
			return nil
		}
		if err != nil {
			return err
		}
		if s.tags.End {
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
	switch string(t.Name) {
	case "row":
		return s.startRow()
	case "c":
		return s.startCell()
	case "v":
		s.cell.stored = true
	case "f":
		s.cell.formula = true
	case "sheetData":
		s.closed = s.closed || t.Empty
	case "mergeCell":
		return s.addMerge()
	}
	return nil
}

func (s *scanner) endTag() error {
	t := s.tags
	switch string(t.Name) {
	case "v":
		s.cell.value = string(t.Text[:min(len(t.Text), 32)])
		s.cell.hasValue = s.cell.hasValue || len(t.Text) > 0
	case "t":
		s.cell.hasValue = s.cell.hasValue || s.cell.typ == "inlineStr" && len(t.Text) > 0
	case "f":
		s.cell.formulaText = string(t.Text)
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
	if ref := s.tags.Attr("r"); ref != nil {
		n, err := strconv.Atoi(string(ref))
		if err != nil || n < 1 || n > maxRow {
			return fmt.Errorf("it has a row numbered %.20q", ref)
		}
		num = n
	}
	if num <= s.row || num > maxRow {
		return fmt.Errorf("row %d comes after row %d", num, s.row)
	}
	s.endRow()
	s.row, s.cell = num, cellState{}
	return nil
}

// endRow keeps the classes of the row in hand, and whether it is struck through.
func (s *scanner) endRow() {
	if s.struck > 0 && s.struck == s.filled {
		if s.lay.struck == nil {
			s.lay.struck = map[int]bool{}
		}
		s.lay.struck[s.row] = true
	}
	s.filled, s.struck = 0, 0
	if len(s.class) == 0 {
		return
	}
	for len(s.lay.class) <= s.row {
		s.lay.class = append(s.lay.class, 0)
	}
	s.lay.class[s.row] = s.lay.classes.id(s.class)
	s.class = s.class[:0]
}

// classOf gives the classes of a row.
func (l *layout) classOf(row int) []Class {
	if row >= len(l.class) {
		return nil
	}
	return l.classes.kinds[l.class[row]]
}

// startCell takes a cell's place. A cell out of order is refused as a row is.
func (s *scanner) startCell() error {
	col := s.cell.col + 1
	if ref := s.tags.Attr("r"); ref != nil {
		c, row, ok := parseRef(ref)
		if !ok || row != s.row {
			return fmt.Errorf("row %d has a cell named %.20q", s.row, ref)
		}
		col = c
	}
	if col <= s.cell.col || col > maxCol || s.row == 0 || s.closed {
		return fmt.Errorf("the cells of row %d are out of order", s.row)
	}
	s.cell = cellState{col: col, typ: cellType(s.tags.Attr("t"))}
	if len(s.facts.styles) > 0 && s.cell.typ == "" {
		s.cell.class = styled(s.facts.styles, s.tags.Attr("s"))
	}
	if s.facts.struck != nil {
		s.cell.struck = styled(s.facts.struck, s.tags.Attr("s"))
	}
	if s.tags.Empty {
		return s.endCell()
	}
	return nil
}

// styled is what a cell's style says. A style that is not there says nothing.
func styled[T any](styles []T, number []byte) T {
	n := 0
	for _, c := range number {
		if n = n*10 + int(c) - '0'; c < '0' || c > '9' || n >= len(styles) {
			var none T
			return none
		}
	}
	return styles[n]
}

// cellType keeps the types that matter here without making a string of each; a
// number is "".
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
	case "e":
		return "e"
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
	if s.filled++; c.struck {
		s.struck++
	}
	if c.hasValue && c.typ != "s" { // A shared string may be "", and is then no cell to excelize.
		s.lay.lastCol = c.col
	}
	s.lay.width = max(s.lay.width, c.col)
	if c.hasValue && c.class != Plain {
		s.class = setClass(s.class, c.col-1, c.class)
	}
	if c.formula && s.facts.details {
		if s.formulas++; s.formulas > maxMarks {
			return fmt.Errorf("it has more than %d formulas", maxMarks)
		}
		noteCell(&s.lay.formulas, s.row, c.col, c.formulaCell())
	}
	if text := c.mark(); text != "" {
		s.lay.marks = append(s.lay.marks, mark{s.row, c.col, text})
	}
	if len(s.lay.marks) > maxMarks {
		return fmt.Errorf("it has more than %d booleans and formulas without a stored value; open it in a "+
			"spreadsheet program and save it again", maxMarks)
	}
	return nil
}

func (s *scanner) hasString(number string) bool {
	n, err := strconv.Atoi(strings.TrimSpace(number))
	return err == nil && 0 <= n && n < s.facts.texts
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
		return c.formulaCell()
	}
	return ""
}

// formulaCell is the cell's formula; a character that mostFormula cut through goes.
func (c *cellState) formulaCell() string {
	return FormulaNoValue + strings.ToValidUTF8(html.UnescapeString(c.formulaText), "")
}

// finish ends the last row and puts the merged areas in order.
func (s *scanner) finish() (_ *layout, err error) {
	s.endRow()
	s.lay.merges, err = clipMerges(s.lay.merges, s.lay.lastRow, s.lay.width)
	return &s.lay, err
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
