package meaning

import (
	"slices"
	"strings"

	"wakeledger/pipeline/plan"
	"wakeledger/pipeline/unit"
)

// rests joins a column of ounces to the pounds before it, or inches to feet: the smaller unit alone or behind
// the same words heads it, and its numbers are less than one of the greater unit.
func (x *builder) rests() {
	p := x.plan
	for i := range p.Bindings {
		b := &p.Bindings[i]
		smaller, ratio, ok := unit.Divided(b.Unit)
		if !ok || b.Column.Dimension != unit.Mass && b.Column.Dimension != unit.Length {
			continue
		}
		at := b.Index + 1
		heading, free := x.freeHeading(at)
		if !free || !restOf(heading, b.Heading, smaller) || !x.below(at, ratio) {
			continue
		}
		b.Rest = &plan.Rest{Index: at, Unit: smaller}
		p.Unknown = slices.DeleteFunc(p.Unknown, func(u plan.Unknown) bool { return u.Index == at })
		first := b.Heading
		p.Bindings = slices.DeleteFunc(p.Bindings, func(b plan.Binding) bool { return b.Index == at })
		x.note("%s and %s: read as one", first, heading)
		return
	}
}

// freeHeading is the heading of a column that has no meaning here, or hangs on its unit alone as a lure's weight.
func (x *builder) freeHeading(at int) (string, bool) {
	for _, u := range x.plan.Unknown {
		if u.Index == at {
			return u.Heading, true
		}
	}
	for _, b := range x.plan.Bindings {
		if b.Index == at {
			return b.Heading, b.Column.Name == "lure_weight_g"
		}
	}
	return "", false
}

// restOf tells a heading that is a smaller unit, alone or behind the words of another heading.
func restOf(heading, of string, smaller unit.Unit) bool {
	bare, u := withoutUnit(heading)
	if u == "" {
		bare = ""
		u, _ = unit.Lookup(strings.TrimSpace(heading))
	}
	other, _ := withoutUnit(of)
	return u == smaller && (bare == "" || normalise(bare) == normalise(other))
}

// below tells a column whose cells are numbers from 0 to less than a limit, or blank.
func (x *builder) below(col int, limit float64) bool {
	cells := column(x.rows, col)
	for _, c := range cells {
		if n, ok := number(c); !ok || n < 0 || n >= limit {
			return false
		}
	}
	return len(cells) > 0
}
