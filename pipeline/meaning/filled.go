package meaning

import (
	"slices"

	"wakeledger/pipeline/plan"
)

// holdsOn are the settings that hold until they are changed: where one is blank, that of the row above
// may have been meant.
var holdsOn = []string{"speed_kn", "lines_out"}

// fewCopied is how many cells of a column must be those of another, and how many of its blanks be
// filled there, for the other to be it with its blanks filled.
const fewCopied = 3

// filledDown takes a setting from the column in which the log's owner filled its blanks with the value
// of the row above, as a formula does.
func (x *builder) filledDown() {
	p := x.plan
	if p.Kind != plan.Flat && p.Kind != plan.Legs {
		return
	}
	for i := range p.Bindings {
		b := &p.Bindings[i]
		if !slices.Contains(holdsOn, b.Column.Name) || b.By != nil || b.Set > 0 {
			continue
		}
		at := slices.IndexFunc(p.Unknown, func(u plan.Unknown) bool { return x.fillsDown(b.Index, u.Index) })
		if at < 0 {
			continue
		}
		from := p.Unknown[at]
		x.note("%s: %q has it with its blanks filled from the row above, and was taken", b.Heading, from.Heading)
		p.Unknown = slices.Clone(p.Unknown)
		p.Unknown[at] = plan.Unknown{Index: b.Index, Heading: b.Heading, Aside: "filled"}
		b.Index, b.Heading = from.Index, from.Heading
	}
}

// fillsDown tells whether a column is another one wherever that is filled, and the value of the row
// above wherever it is blank.
func (x *builder) fillsDown(column, filled int) bool {
	same, blank, last := 0, 0, ""
	for _, row := range x.rows {
		own, other := cellOf(row, column), cellOf(row, filled)
		switch {
		case own == "" && other == "" || last == "" && own == "":
		case own == "" && other == last:
			blank++
		case own == other:
			same++
		default:
			return false
		}
		last = other
	}
	return same >= fewCopied && blank >= fewCopied
}
