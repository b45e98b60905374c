// Package normalise turns the rows of a block into entries as its plan says, and guesses
// nothing: units converted, dates and times made comparable, closed lists brought to one
// word, species to codes. It works a row at a time and keeps nothing but the file's
// evidence on what is ambiguous, what each column said last, for ditto marks and keys
// that are written once for the rows under them (carry.go), and the stretch and the bites that a
// log of events has open (events.go). Finish says what the last row leaves open.
//
// A row with a column for each place in the spread gives an entry for each of its
// lines beside its own (spread.go). A fish's notes may tell what became of it
// (fate.go). A cell may hold what several would (several.go), a row of events a whole
// stretch (spell.go), and a row may stand twice (again.go). Phrases in a row's cells give stretches, strikes and fish
// beside its own
// entry (phrases.go, side.go).
//
// A cell that cannot be used comes back as a problem with its place, text and
// reason, for the caller to set aside. Its row is kept without it, unless the cell says
// whose row it is, or the row says nothing that counts without it (spare.go).
package normalise
