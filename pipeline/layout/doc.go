// Package layout finds the blocks of a sheet by their shape: tables (several of them,
// one below the other or side by side, with headings of one or two rows), forms whose
// labels stand beside their values, records of "key: value", and records across. Each
// becomes the same thing: labels, and rows of cells under them. What is left are
// titles, notes and totals. It knows shapes; what a label means it does not know, only
// how much a text is like a label, which its caller tells.
//
//	cell.go    what a cell looks like: number, clock, date, duration, text
//	grid.go    a sheet's cells
//	head.go    which rows are headings
//	table.go   the rows under a heading, tables side by side
//	beneath.go rows of one key beneath a table's rows
//	daylines.go lines among a table's rows that tell of a day
//	dayrecords.go a line a day: the day, then labels with their values; daywords.go its words
//	section.go lines that part a table's rows by number
//	loose.go   sentences and lists of a text file that its separators parted
//	form.go    labels beside their values
//	stacked.go outings one below the other, each with the same labels and tables
//	openings.go an outing opened by its number, its day and clock times
//	kinds.go   lines of several kinds, the kind in the first cell
//	paired.go  an outing opened by its number, its day and labels with their values
//	packed.go  several figures in a cell, in an order that its heading names
//	hourly.go  hours side by side, hours below each other, rows that hold until the next one
//	turn.go    records across
//	diary.go   a text of days and times, a paragraph a day
//	outing.go  headings of outings and watches in such a text
//	notes.go   notes of a phone, each with its title and when it was written
//	journal.go mails and notes of a phone, a row a line
//	blocks.go  all of these together
package layout
