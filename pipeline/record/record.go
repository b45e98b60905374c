package record

import (
	"fmt"
	"strconv"
	"strings"
	"unicode/utf8"
)

// Pos is a place in a log. Rows and columns count from 1, as users see them.
type Pos struct {
	// File is the log's name as its owner knows it: the base name, no folder.
	File string
	// Sheet is the sheet's name in a workbook, empty for a CSV file.
	Sheet string
	// Row is the sheet's row, or the line of a CSV file on which the record
	// starts. 0 means the whole sheet; Col is then without meaning.
	Row int
	// Col is the column. 0 means the whole row.
	Col int
}

// String gives the place in the form that editors and spreadsheet programs
// understand: file:row:col for a CSV file and file!Sheet!B17 for a workbook.
// What is 0 is left out: file:row, file!Sheet!17, file!Sheet, file.
func (p Pos) String() string {
	if p.Sheet == "" {
		return p.textPlace()
	}
	s := p.File + "!" + p.Sheet
	if p.Row <= 0 {
		return s
	}
	return s + "!" + ColumnName(p.Col) + strconv.Itoa(p.Row)
}

func (p Pos) textPlace() string {
	s := p.File
	if p.Row <= 0 {
		return s
	}
	s += ":" + strconv.Itoa(p.Row)
	if p.Col > 0 {
		s += ":" + strconv.Itoa(p.Col)
	}
	return s
}

// ColumnName gives a column's letters: 1 is A, 26 is Z, 27 is AA. It is empty
// for a number below 1.
func ColumnName(col int) string {
	var b [16]byte
	i := len(b)
	for ; col > 0; col = (col - 1) / 26 {
		i--
		b[i] = byte('A' + (col-1)%26)
	}
	return string(b[i:])
}

// Problem is something in a log that could not be used. It is an error, and
// also a value that is kept: a set-aside row is one Problem.
type Problem struct {
	// Pos is where it stands.
	Pos Pos
	// Column is the column's header as logged; empty when the whole row is
	// meant or the header is not known.
	Column string
	// Cell is the cell's text as logged.
	Cell string
	// Reason says in a few words what is wrong.
	Reason string
	// Whole tells that the whole row is left out for it; else the rest of it is kept.
	Whole bool
}

// maxShown bounds the cell text in a message, in characters: a note of a page
// must not hide the reason. Cell itself keeps the whole text.
const maxShown = 60

// Error names the place, the column, what was found there and the reason, as in
//
//	season.xlsx!Legs!D17: speed "fast": not a speed
func (p Problem) Error() string {
	var b strings.Builder
	b.WriteString(p.Pos.String())
	b.WriteString(": ")
	b.WriteString(p.found())
	b.WriteString(p.Reason)
	return b.String()
}

func (p Problem) found() string {
	switch {
	case p.Column == "" && p.Cell == "":
		return ""
	case p.Cell == "":
		return p.Column + ": "
	case p.Column == "":
		return fmt.Sprintf("%q: ", shorten(p.Cell))
	}
	return fmt.Sprintf("%s %q: ", p.Column, shorten(p.Cell))
}

// shorten cuts s to maxShown characters and marks the cut.
func shorten(s string) string {
	if utf8.RuneCountInString(s) <= maxShown {
		return s
	}
	return string([]rune(s)[:maxShown]) + "…"
}

// OfEither is the reason of a cell that has a speed for each of several stretches: it is read, and says
// not on which of them the row's bites were.
const OfEither = "a stretch each; at which speed the row's bites came is not known"

// OfStop, OfLines and OfSettings begin the reasons of remarks that tell of a stop, of a number of lines, and of a speed
// or lines.
const (
	OfStop     = "tells of a stop"
	OfLines    = "tells of lines"
	OfSettings = "tells of speed or lines"
)

// NotCounted begins the reason of a row that says that nobody counted its bites: those that it tells of stay.
const NotCounted = "no number of bites, as the row says"

// FateOfEither is the reason of a count of what became of the bites of several stretches: it is read, and says not of
// which of them they were.
const FateOfEither = "of which stretch these were is not said: the first stretches that have bites take them"
