package meaning

import (
	"slices"
	"strings"

	"wakeledger/pipeline/plan"
)

// sameTrips takes columns of strikes or fish without a meaning for the number of their trip, and of their stretch,
// where they have the headings under which another table numbers these, and each of their cells is one of its numbers;
// a stretch's together with its trip's.
func (l *Log) sameTrips() {
	data := l.Data()
	for _, of := range data {
		if of.Plan.Kind == plan.Strikes || of.Plan.Kind == plan.Fish {
			continue
		}
		for _, u := range data {
			if u.Plan.Kind != plan.Strikes && u.Plan.Kind != plan.Fish {
				continue
			}
			u.sameNumber(of, "trip")
			u.sameNumber(of, "leg", "trip")
		}
	}
}

// sameNumber binds a column by the heading and the numbers that another table has under a meaning, each with those of
// the same rows under others.
func (u *Understood) sameNumber(of *Understood, name string, with ...string) {
	b := of.Plan.Find(name)
	if b == nil || b.Index < 0 || u.Plan.Binds(name) || u.Plan.Gives(name) {
		return
	}
	own, others := []int{b.Index}, []int{-1}
	for _, w := range with {
		x, y := of.Plan.Find(w), u.Plan.Find(w)
		if x == nil || y == nil || x.Index < 0 || y.Index < 0 {
			return
		}
		own, others = append(own, x.Index), append(others, y.Index)
	}
	known := map[string]bool{}
	for _, row := range of.b.rows {
		known[keyOf(row, own)] = true
	}
	for i, x := range u.Plan.Unknown {
		if x.Aside != "" || !SameKey(x.Heading, b.Heading) {
			continue
		}
		others[0] = x.Index
		if n := u.numbered(x.Index, others, known); n == 0 {
			continue
		}
		u.Plan.Unknown = slices.Delete(slices.Clone(u.Plan.Unknown), i, i+1)
		u.Plan.Bindings = append(slices.Clone(u.Plan.Bindings),
			plan.Binding{Index: x.Index, Heading: x.Heading, Column: b.Column})
		u.b.note("%s: the number of %s, as in %s", strings.TrimSpace(x.Heading), numberOf[name], of.Plan.Name)
		return
	}
}

// numberOf are what numbers of a table's rows are of, in words.
var numberOf = map[string]string{"trip": "the trip", "leg": "the stretch"}

// numbered counts the rows that a column numbers; 0 where one of them has no number of those known.
func (u *Understood) numbered(at int, with []int, known map[string]bool) (n int) {
	for _, row := range u.b.rows {
		if cellOf(row, at) == "" {
			continue
		}
		if !known[keyOf(row, with)] {
			return 0
		}
		n++
	}
	return n
}

// keyOf is what a row says in some columns.
func keyOf(row []string, at []int) string {
	var b strings.Builder
	for _, i := range at {
		b.WriteString(strings.ToLower(cellOf(row, i)))
		b.WriteByte(0)
	}
	return b.String()
}
