// Package plan is how a log will be read: for each block of each sheet what one of
// its records is, what each of its columns means and in which unit, what holds for
// all of its rows. Inference (package meaning) writes it, a user may change it (a
// mapping file, TOML), and reading (package normalise) does what it says and nothing else.
//
//	column.go  the meanings that a column may have: columns.csv
//	block.go   a block of a sheet, understood
package plan
