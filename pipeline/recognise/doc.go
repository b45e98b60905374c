// Package recognise tells which columns a sheet of a log holds and what one of
// its rows is.
//
// The trade's spellings of each column are data (columns.csv), not code: adding
// a spelling is adding a word to a row. A sheet's kind follows from its columns;
// its name is only a hint. Where one heading means several things ("weight" of
// a lure or of a fish, "lines out" as a number or a time), the sheet's kind and
// the cells below the heading settle it.
package recognise
