// Package evidence weighs what a season's counts say: which level of a factor
// brought more strikes, by how much, how sure that is, and what it would take to
// know. It works on plain numbers, without the database, on top of package
// queries/stats, which holds the methods themselves.
//
//	model.go    one factor's counts and what is held still beside it
//	compare.go  one factor's levels: rates, what was fished beside what
//	ratios.go   ratios and trend of one factor by the model
//	rates.go    rates and their intervals, allowing for the trips' luck
//	finding.go  settled, leaning or not settled, by stated rules
//	words.go    a finding as one plain sentence
//	sizes.go    weights by level, by whole trips
//	next.go     the trips that would settle a question, and a plan
//	spread.go   tangles by the gap between lines
//
// Throughout: confidence is 95 %; a level with little effort is never put
// forward; and fewer than stats.MinTrips trips never settle anything.
package evidence
