package page

import (
	"math"
	"strconv"
)

// Kind is what the cells of a column hold, and so how they are aligned,
// printed and sorted.
type Kind int

// The kinds of columns.
const (
	Text     Kind = iota // words, left
	Token                // text that must not be broken: a date, a name; left
	Prose                // a sentence: a wide column, left
	Source               // where a row stands: long names that may be broken anywhere, left
	Measure              // a number with the column's decimals, right
	Share                // a share of 0 to 1 as per cent, right
	Interval             // "lo to hi" with the column's decimals, right; sorts by lo
	ShareGap             // an interval of shares
)

// Column is the head of a column.
type Column struct {
	Head     string
	Unit     string // printed after the head; empty for none
	Kind     Kind
	Decimals int // of Measure and Interval
}

func (c Column) numeric() bool { return c.Kind >= Measure }

// class is the column's class in the style sheet.
func (c Column) class() string {
	switch {
	case c.numeric():
		return "num"
	case c.Kind == Token:
		return "whole"
	case c.Kind == Prose:
		return "prose"
	case c.Kind == Source:
		return "source"
	}
	return ""
}

// Cell is one value: text, one number or the two ends of an interval.
// The zero Cell is a value that is not known.
type Cell struct {
	text  string
	lo    float64
	hi    float64
	known bool
}

// Words is a cell of text. Empty text is not known.
func Words(s string) Cell { return Cell{text: s, known: s != ""} }

// WordsOf is a cell of text that may be missing.
func WordsOf(s *string) Cell {
	if s == nil {
		return Cell{}
	}
	return Words(*s)
}

// Value is a cell of one number, in the column's unit.
func Value(v float64) Cell {
	return Cell{lo: v, known: !math.IsNaN(v) && !math.IsInf(v, 0)}
}

// ValueOf is a cell of one number that may be missing.
func ValueOf(v *float64) Cell {
	if v == nil {
		return Cell{}
	}
	return Value(*v)
}

// Whole is a cell of a count.
func Whole(n int64) Cell { return Value(float64(n)) }

// Span is a cell of an interval; not known unless both ends are.
func Span(lo, hi *float64) Cell {
	if lo == nil || hi == nil {
		return Cell{}
	}
	return Cell{lo: *lo, hi: *hi, known: true}
}

// Row is one row of a table.
type Row struct {
	Cells []Cell
	Thin  bool // a level with little effort: set paler, and named so in its first cell
}

// Table is the figures of a section.
type Table struct {
	Caption string
	Columns []Column
	Rows    []Row
	Total   []Cell // the row at the foot, not sorted; nil for none
	Open    bool   // shown open on a screen; paper shows every table open
}

// print is the cell as text, under the head of its column.
func (c Cell) print(col Column) string {
	if !c.known {
		return Unknown
	}
	switch col.Kind {
	case Measure:
		return Number(c.lo, col.Decimals)
	case Share:
		return Percent(c.lo)
	case Interval:
		return Number(c.lo, col.Decimals) + " to " + Number(c.hi, col.Decimals)
	case ShareGap:
		return Number(c.lo*100, 0) + " to " + Percent(c.hi)
	default:
		return c.text
	}
}

// key is what the cell is sorted by: the unrounded number, or nothing where the
// text itself serves or the value is not known.
func (c Cell) key(col Column) string {
	if !c.known || !col.numeric() {
		return ""
	}
	return strconv.FormatFloat(c.lo, 'g', -1, 64)
}
