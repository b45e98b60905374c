// Package seasons makes random seasons for tests: a model season from a seed,
// what a loader must find in it, and the same season written in every layout,
// unit system, separator, encoding, date style and clock style that logs come in.
//
//	model.go    what a season is
//	amount.go   quantities as exact fractions in the unit they were measured in
//	make.go     a season from a seed: boats, trips, legs
//	spread.go   the lines on each leg
//	hits.go     the strikes and fish
//	truth.go    what the season adds up to, by every factor
//	tables.go   the season file's tables, cell for cell; tables_hits.go strikes and fish
//	format.go   the ways to write a log, and samples of them
//	fields.go   the columns: headings, units
//	layout.go   the season as sheets; layout_hits.go those of strikes and fish, and the flat one
//	render.go   cells as text, numbers and serials
//	files.go    text files and workbooks
//
// It shares no code with the loader, so that the two can be held against each
// other: units are converted by exact fractions, times by package time. All
// names are invented; the species are real.
//
// The seasons avoid what a log leaves open in truth, such as two landed fish of
// one species without a clock time; the loader's choice there is not a defect.
package seasons
