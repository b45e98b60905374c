package normalise

import (
	"wakeledger/pipeline/entry"
	"wakeledger/pipeline/plan"
	"wakeledger/pipeline/record"
)

// spare tells whether a row is kept without a cell of the column that cannot be read: it
// keeps its strike and its effort, but without its day, trip or boat it would be of another.
func spare(c *plan.Column) bool {
	switch c.Name {
	case "trip", "boat", "zone", "date":
		return false
	}
	return true
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
