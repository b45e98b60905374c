// Package bundle is what leaves a boat for its club, and the file it leaves in.
//
//	season.go  the shared tables; Make fills them from pieces of single trips
//	merge.go   no cell of fewer than [MinTrips] trips, none to be had from a total
//	check.go   what a season read from a file must fulfil
//	parquet.go tables as Parquet and back
//	file.go    the file: Parquet tables in a zip, with a manifest
//	boats.go   seasons of several files matched by boat, each counted once
//	list.go    what is shared, as a list to read before
//
// # What is shared
//
// No position, file name, note, lure name or any other text of a log: a level is
// a month, a class with fixed edges, or a code of a closed list. The classes
// are the same for every boat, whatever edges its own reports use: two sets of
// edges would show the trips between them.
//
// # Cells
//
// Every cell is of three trips or more. Levels with fewer are merged into one,
// and where that is still of fewer, with the smallest of the others, so that
// levels always add up to the total and nothing can be had by subtraction. (The
// practice of agencies that publish catch and effort: fewer than three vessels
// are withheld. Here the unit to protect is the trip.) A single fish of the
// list of the heaviest is no cell: it is named on purpose, and can be left out.
//
// What no merging can prevent: two bundles of one season, made a trip apart,
// show that trip by their difference.
//
// The package is a leaf: it knows no database and none of the questions.
package bundle
