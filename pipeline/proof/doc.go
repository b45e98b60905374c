// Package proof holds what was read of a log against the log itself: its rows of
// totals, its dashboards, the hours that it worked out, what its own columns leave
// unsaid. What agrees is told; what only the log's owner can settle becomes a question,
// with the totals that rest on it.
//
//	ledger.go    what each block's rows came to
//	question.go  a question, its id and its effect
//	ask.go       what is asked
//	cells.go     what is asked of single cells, words and days
//	stray.go     what is asked of bites that may not belong to the trolling, or be counted twice
//	among.go     bites and fish that two tables tell
//	atonce.go    tables with stretches at the same time of one day
//	keptbeside.go remarks of more fish kept than their rows count
//	unpaced.go   stretches without a speed that may be of another way of fishing
//	remarked.go  bites and fish that remarks tell; those of trips in tripremarks.go
//	outings.go   what is asked of days that may be of two trips
//	underdays.go bites of rows under the row of a day
//	notcounted.go rows that say that nobody counted their bites
//	figurecodes.go codes of fish that were not understood
//	left.go      what was not used
//	answer.go    what an answer is, and what it does to the plan
//	totals.go    what each answer would make of the totals
//	agree.go     what agrees with the log's own sums
//	summary.go   what agrees with forms that sum the season up
package proof
