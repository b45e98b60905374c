// Package recognise tells which columns a sheet of a log holds and what one of
// its rows is.
//
// The trade's spellings of each column are data (columns.csv), not code: adding
// a spelling is adding a word to a row; one with a ? before it counts only where
// the cells state a unit, or what they count. words.csv says which words mean another
// ("avg", "wt") or nothing, so that spellings nobody listed are found by their
// words. A sheet's kind follows from its columns; its name is only a hint. Where
// one heading means several things ("weight" of a lure or of a fish, "lines out"
// as a number or a time), the unit, the cells below the heading and the sheet's
// kind settle it; what nothing settles is kept as a column that is not understood.
//
//	header.go   which row, or two, the header is
//	heading.go  a heading's text taken apart: name, brackets, unit
//	words.go    a name looked up as spelled, or by its words
//	content.go  what the cells say of a heading's meanings
//	settle.go   what the cells and the other headings say together
//	cells.go    counts held against their cells and each other
//	effort.go   columns of clock times that are start and end whatever they are called
//	catch.go    columns headed by a species
//	places.go   columns headed by a place in the spread, and cells that name one
//	again.go    columns that the second fish of a day leaves out
//	kind.go     what a row of the sheet is
//	sheet.go    the layout: all of these together
//	given.go    values that stand above the table
//	below.go    where another table begins below one, and what it takes over
//	refuse.go   what is not read, because it would be read wrong
//	possible.go units and blanks that the cells tell of, said in Layout.Notes
//	mapped.go   what a user says of a sheet instead
//	nearest.go  a suggestion for a heading that was not understood
package recognise
