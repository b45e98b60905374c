// Package bundle is what leaves a boat for its club, and the file it leaves in.
//
//	season.go   the shared tables; Make fills them from pieces of single trips
//	rule.go     what a figure may be shown of
//	merge.go    rows that may not stand alone, merged
//	hide.go     counts that a row must not show, and others so that sums do not tell them
//	heaviest.go the lists of single fish, and what they must not tell
//	again.go    a later summary held against the one that was shared last
//	check.go    what a season read from a file must fulfil
//	parquet.go  tables as Parquet and back
//	file.go     the file: Parquet tables in a zip, with a manifest
//	boats.go    seasons of several files matched by boat, each counted once
//	list.go     what is shared, as a list to read before
//
// # What is shared
//
// No position, file name, note, lure name or any other text of a log: a level is
// a month, a class with fixed edges, or a code of a closed list. The classes
// are the same for every boat, whatever edges its own reports use: two sets of
// edges would show the trips between them.
//
// # The rule
//
// The unit to protect is the trip, and the day. Every row is of three trips or more
// on three days with effort, one of fish of as many that had some. No trip and no day is more
// than four fifths of a figure, nor of what is left of it when any other is taken
// off: who was aboard on one trip takes that one off. A count of nothing says that
// each trip had nothing, and is not shown. Rows that may not stand are merged, with
// the smallest of the others where that is needed; counts are hidden (nil), with those
// of other rows so that the season's figure does not give them away, and so is a count
// that leaves one trip's by subtraction, such as strikes less hook-ups.
//
// It is the minimum frequency rule (n = 3) and the p% rule (p = 25) with secondary
// suppression of the Handbook on Statistical Disclosure Control (Hundepool et al.),
// sections 4.2.1 and 4.2.2. The handbook has agencies keep p to themselves; ours
// is open to read, so that one more is taken off counts (see units.spread). What is not
// shown for being nothing, or for following, are our own additions, no source.
//
// A single fish of the list of the heaviest is no cell: it is named on purpose, and
// can be left out. It is told with no month or species of which something is hidden, and there are no lists where
// the fish that are not told would tell of the rest.
//
// # A later summary
//
// What two summaries differ by is a cell too. Make holds it to the same rule: it keeps
// merged and hidden what the last one did, the season's figures too, merges and hides more where the difference of a
// row would tell, and refuses (Difference) where that of the season does. The season
// file remembers the last summary with what it was made of.
//
// # What is not protected
//
// Who knows all trips of a cell but one knows that one: no rule of three helps. That a
// level has no row and nothing is merged says that no trip had any of it. Bundles of season
// files that know nothing of each other are not held against each other.
//
// attack_test.go plays the curious reader: see there.
//
// The package is a leaf: it knows no database and none of the questions.
package bundle
