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

const (
	leastPairs = 3   // cells with two numbers that tell of themselves that they are pounds and ounces
	leastDown  = 2   // of them, those whose second number is the smaller one: no range is written so
	mostPairs  = 0.9 // the least share of cells with numbers that are such pairs
)

// paired are the columns whose cells are pounds and ounces, or feet and inches, in two numbers: 12-8. The second one
// is less than a whole of the first, and often the smaller of the two; or the log says what it is.
func (x *builder) paired(b *plan.Binding, v *Values) {
	of := b.Unit
	if of == "" && b.Column.Dimension == unit.Mass {
		of = unit.Pound
	}
	smaller, ratio, ok := unit.Divided(of)
	if !ok || b.Column.Parse != "quantity" || of != unit.Pound && of != unit.Foot {
		return
	}
	pairs, down, all := 0, 0, 0
	for _, c := range v.cells {
		if digits(c.Text) == 0 {
			continue
		}
		all++
		if whole, rest, ok := unit.Pair(c.Text); ok && rest < ratio {
			if pairs++; rest < whole {
				down++
			}
		}
	}
	said := slices.ContainsFunc(strings.Fields(normalise(b.Said)), func(w string) bool {
		u, _ := unit.Lookup(w)
		return u == smaller
	})
	if !said && (pairs < leastPairs || down < leastDown) || pairs == 0 || float64(pairs) < mostPairs*float64(all) {
		return
	}
	if b.Paired = of; b.Unit == "" {
		b.Only = of
	}
	x.note("%s: two numbers in a cell are %s and %s", b.Heading, of, smaller)
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
