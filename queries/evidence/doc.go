// Package evidence weighs what a season's counts say: which level of a factor
// brought more strikes, by how much, how sure that is, and what it would take to
// know. It works on plain numbers, without the database, on top of package
// queries/stats, which holds the methods themselves.
//
//	compare.go  rates, intervals, shrinkage and same-trip ratios of one factor
//	dispersion.go  how much a level's counts vary between trips beyond chance
//	within.go   the same within trips
//	robust.go   the same-trip ratio, its interval by the trips' own scatter
//	finding.go  settled, leaning or not settled, by stated rules
//	words.go    a finding as one plain sentence
//	adjust.go   several factors at once: Poisson regression
//	confound.go levels that the log cannot tell apart
//	sizes.go    weights by level
//	next.go     the line-hours that would settle a question, and a plan
//	spread.go   tangles by the gap between lines
//
// Throughout: confidence is 95 %; a level with little effort is never put
// forward; and fewer than stats.MinTrips trips never settle anything.
package evidence
