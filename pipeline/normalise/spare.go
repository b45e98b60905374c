package normalise

import (
	"slices"

	"wakeledger/pipeline/entry"
	"wakeledger/pipeline/recognise"
	"wakeledger/pipeline/record"
)

// needed are the columns, besides counts and clock times, without which a row of
// effort is not what it says: which stretch it is, how long, how fast, and what struck.
var needed = []string{"trip", "boat", "zone", "date", "leg", "line", "duration_s", "speed_kn", "outcome"}

// spare tells whether a row is kept without a cell of the column that cannot be read:
// of a row of effort and counts what else it tells, such as a weight. Without its
// effort the day would be missing from the rates, and more often so a day with fish.
func spare(k recognise.Kind, c *recognise.Column) bool {
	switch k {
	case recognise.Legs, recognise.Lines, recognise.Flat:
	default:
		return false
	}
	switch c.Parse {
	case "count", "moment", "span", "date":
		return false
	}
	return !slices.Contains(needed, c.Name)
}

// unread sets aside a cell, alone where the row can do without it.
func (r *Reader) unread(t *target, text, reason string) {
	if !t.spare {
		r.fault(t, text, reason)
		return
	}
	r.values[t.field] = entry.Value{}
	if t.beside >= 0 {
		r.values[t.beside] = entry.Value{}
	}
	r.aside = append(r.aside, r.problem(t, text, reason))
}

// kept are the cells set aside of a row that is kept, which says so.
func (r *Reader) kept() []record.Problem {
	for i := range r.aside {
		r.aside[i].Reason += keptReason
	}
	return r.aside
}

const keptReason = "; the rest of the row is kept"

// measure tells a column that the scale or the tape fills.
func (t *target) measure() bool {
	switch t.Column.Name {
	case "scale_kg", "length_cm", "girth_cm":
		return true
	}
	return false
}
