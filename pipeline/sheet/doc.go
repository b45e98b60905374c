// Package sheet reads logs as people keep them - a workbook or a text file of
// separated values - into rows of raw cell text. It decides nothing about what
// a cell means: dates stay serials, numbers stay as stored, and what a workbook's
// format makes of them is told beside (Class). An .ods and an .xls give the same
// text as the .xlsx of the same book.
//
// Open looks at the content, not the name, and refuses in one sentence what it
// cannot read. Then every sheet gives its rows one at a time, so the size of a
// log does not matter for memory, but for .ods, .xls and .docx, which are bounded:
//
//	open.go    Open, Book, Rows, Row: what the other stages use
//	refuse.go  what is not a log, by its first bytes
//	text.go    which encoding a text file is in
//	sniff.go   which separator
//	csv.go     rows of a text file, through encoding/csv
//	aligned.go columns made of spaces, where no separator divides the lines
//	loose.go   lines that encoding/csv refuses: 6'2" and stray quotes
//	zip.go     a workbook's parts, checked before anything is unpacked
//	strings.go the texts that a workbook's cells share
//	class.go   dates, times and durations by a cell's number format
//	styles.go  the formats and comments of an .xlsx
//	xlsx.go    rows of a sheet, through excelize
//	scan.go    what excelize's rows do not tell: merges, booleans, formulas
//	           without a stored value, the last row, damage
//	merge.go   values of merged areas
//	grid.go    a workbook in memory, which .ods, .xls and .docx are read into
//	ods.go     OpenDocument: sheets and rows
//	odscell.go its cells, their styles, dates and texts
//	docx.go    a text document: its lines and its tables, as of a text file
//	xls.go     the compound file around an old workbook
//	biff.go    its records: sheets and cells
//	bifftext.go  its texts
//
// A row that cannot be split or stored is a value (Row.Problem) and reading
// goes on; a file that is damaged or cannot be read is an error (Rows.Err).
package sheet
