package meaning

import (
	"slices"

	"wakeledger/pipeline/plan"
)

// tripLetters takes a column of a table of stretches for their names where these begin anew with each trip, A, B
// and C, and a table of strikes or fish names them under the same heading.
func (l *Log) tripLetters() {
	data := l.Data()
	for _, to := range data {
		trip := to.Plan.Find("trip")
		if to.Plan.Kind != plan.Legs || trip == nil || to.Plan.Binds("leg") {
			continue
		}
		for _, x := range to.Plan.Unknown {
			own := to.lettered(trip.Index, x.Index)
			if own == nil {
				continue
			}
			for _, from := range data {
				if from.Plan.Kind == plan.Strikes || from.Plan.Kind == plan.Fish {
					l.nameLetters(to, from, x, own)
				}
			}
		}
	}
}

// lettered are the pairs of a trip and a name that a column gives the rows of a table; nil unless each stands once,
// each trip begins with the same name, and some trip has several.
func (u *Understood) lettered(trip, col int) map[string]bool {
	own, first, above, several := map[string]bool{}, "", "", false
	for _, row := range u.b.rows {
		t, name := cellOf(row, trip), cellOf(row, col)
		key := plan.Stretch(t, name)
		if t == "" || name == "" || len(name) > longestCode || own[key] {
			return nil
		}
		switch {
		case t == above:
			several = true
		case first == "":
			first = name
		case name != first:
			return nil
		}
		own[key], above = true, t
	}
	if !several {
		return nil
	}
	return own
}

// nameLetters binds the column in both tables, where nearly all rows of the other name a stretch that there is.
func (l *Log) nameLetters(to, from *Understood, x plan.Unknown, own map[string]bool) {
	trip := from.Plan.Find("trip")
	at := slices.IndexFunc(from.Plan.Unknown, func(o plan.Unknown) bool { return SameKey(o.Heading, x.Heading) })
	if trip == nil || at < 0 || from.Plan.Binds("leg") {
		return
	}
	ref, n, found := from.Plan.Unknown[at], 0, 0
	for _, row := range from.b.rows {
		if name := cellOf(row, ref.Index); name != "" {
			n++
			if own[plan.Stretch(cellOf(row, trip.Index), name)] {
				found++
			}
		}
	}
	if n < 3 || 10*found < 9*n {
		return
	}
	for _, u := range []struct {
		*Understood
		x plan.Unknown
	}{{to, x}, {from, ref}} {
		if u.Plan.Binds("leg") {
			continue
		}
		u.Plan.Bindings = append(slices.Clone(u.Plan.Bindings), plan.Binding{Index: u.x.Index, Heading: u.x.Heading,
			Column: l.lexicon.named("leg", "")})
		u.Plan.Unknown = slices.DeleteFunc(slices.Clone(u.Plan.Unknown),
			func(o plan.Unknown) bool { return o.Index == u.x.Index })
		u.b.note("%s: the stretches of each trip, named alike where the strikes stand", u.x.Heading)
	}
}
