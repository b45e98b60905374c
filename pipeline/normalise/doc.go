// Package normalise turns the rows of a recognised sheet into entries: units
// converted, dates and times made comparable, closed lists brought to one word,
// species to codes. It works a row at a time and keeps nothing but the file's
// evidence on what is ambiguous and what each column said last, for ditto marks
// and keys that are written once for the rows under them (carry.go). A sheet may
// hold several tables, one below the other: tables.go parts them as its rows come.
//
// A row with a column for each place in the spread gives an entry for each of its
// lines beside its own (spread.go). A fish's notes may tell what became of it
// (fate.go).
//
// A cell that cannot be used comes back as a problem with its place, text and
// reason, for the caller to set aside. Its row is no entry, unless it can do without
// the cell (spare.go).
package normalise
