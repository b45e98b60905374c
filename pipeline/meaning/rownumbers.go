package meaning

import (
	"slices"
	"strconv"
	"strings"

	"wakeledger/pipeline/layout"
	"wakeledger/pipeline/plan"
)

// rowNumbers takes a column headed No., which counts the rows of its table, for no more than that where the other
// tables of the log know these rows by something else: a trip by the number of its sheet, a stretch by its place in
// the trip.
func (l *Log) rowNumbers() {
	for _, to := range l.Data() {
		for _, name := range []string{"trip", "leg"} {
			b := to.Plan.Find(name)
			if b == nil || !to.counted(b) || name == "trip" && !l.otherKey(to, b) ||
				name == "leg" && !l.otherLegs(to, b) {
				continue
			}
			at, heading := b.Index, b.Heading
			to.Plan.Bindings = slices.DeleteFunc(to.Plan.Bindings,
				func(x plan.Binding) bool { return x.Index == at })
			to.Plan.Unknown = append(to.Plan.Unknown, plan.Unknown{Index: at, Heading: heading, Aside: "row"})
			to.b.note("%s: the number of the row", strings.TrimSpace(heading))
		}
	}
}

// counted tells a column headed No. in which no number stands twice.
func (u *Understood) counted(b *plan.Binding) bool {
	cells := column(u.b.rows, b.Index)
	return OnlyNumbers(b.Heading) && len(cells) >= 3 && len(set(cells)) == len(cells)
}

// countsOwn tells a column headed No. that counts the rows of its own table from one on: it names none of another.
func (u *Understood) countsOwn(at plan.Unknown) bool {
	cells := column(u.b.rows, at.Index)
	for i, c := range cells {
		if c != strconv.Itoa(i+1) {
			return false
		}
	}
	return OnlyNumbers(at.Heading) && len(cells) >= 3
}

// otherKey tells whether rows of another table name rows of this one by another column, of the same heading in both,
// and not by its trip's number.
func (l *Log) otherKey(to *Understood, trip *plan.Binding) bool {
	for _, from := range l.Data() {
		if from.b.group == to.b.group {
			continue
		}
		for _, key := range to.Plan.Unknown {
			own, cells := set(column(to.b.rows, key.Index)), column(to.b.rows, key.Index)
			if len(own) < 3 || len(own) < len(cells) || SameKey(key.Heading, trip.Heading) {
				continue
			}
			if i := from.headed(key.Heading); i >= 0 && allIn(column(from.b.rows, i), own) {
				return true
			}
		}
	}
	return false
}

// headed is where a column that is the trip's number, or whose meaning is not known, has a heading; -1 where none has.
func (u *Understood) headed(heading string) int {
	if b := u.Plan.Find("trip"); b != nil {
		if SameKey(b.Heading, heading) {
			return b.Index
		}
		return -1
	}
	for _, x := range u.Plan.Unknown {
		if SameKey(x.Heading, heading) {
			return x.Index
		}
	}
	return -1
}

// otherLegs tells whether rows of another table name stretches by trip and number, and hardly any of these are the
// trip and the number of rows of this one.
func (l *Log) otherLegs(to *Understood, leg *plan.Binding) bool {
	return slices.ContainsFunc(l.Data(), func(from *Understood) bool {
		b := from.Plan.Find("leg")
		return b != nil && from.b.group != to.b.group && !to.stretchesOf(leg.Index, from, b.Index)
	})
}

// stretchesOf tells whether the stretches that another table numbers are those that this one does, where both name
// their trips.
func (u *Understood) stretchesOf(own int, from *Understood, ref int) bool {
	of, named := u.Plan.Find("trip"), from.Plan.Find("trip")
	if of == nil || named == nil || of.Index == own {
		return true
	}
	pairs := from.pairs(named.Index, ref)
	return len(pairs) < 3 || allIn(pairs, set(u.pairs(of.Index, own)))
}

// pairs are what the rows have in two columns; the first may be written once for the rows under it.
func (u *Understood) pairs(a, b int) []string {
	var out []string
	last := ""
	for _, row := range u.b.rows {
		if x := cellOf(row, a); x != "" {
			last = x
		}
		if x := cellOf(row, b); last != "" && x != "" {
			out = append(out, last+"+"+x)
		}
	}
	return out
}

// allIn tells whether at least three cells, and nine of ten, are among some.
func allIn(cells []string, of map[string]bool) bool {
	found := 0
	for _, c := range cells {
		if of[strings.ToLower(c)] {
			found++
		}
	}
	return len(cells) >= 3 && 10*found >= 9*len(cells)
}

// rowOrTrip are numbers that are taken for those of trips, in a table that has a day on several of its rows, and that
// no other table names: they may count the rows.
func (l *Log) rowOrTrip(u *Understood, g *group) []Open {
	trip, date := u.Plan.Find("trip"), u.Plan.Find("date")
	if trip == nil || date == nil || !u.counted(trip) || !l.mayCount(u, trip) {
		return nil
	}
	days, twice, last := map[string]bool{}, false, ""
	for _, row := range u.b.rows {
		day := cellOf(row, date.Index)
		if cellOf(row, trip.Index) == "" || day == "" && (last == "" || !date.Carried) {
			continue
		}
		twice = twice || day == "" || day != last && days[day] || day == last
		if day != "" {
			last = day
		}
		days[last] = true
	}
	i := slices.IndexFunc(g.values, func(v *Values) bool { return v.Label.Col == trip.Index })
	if !twice || i < 0 {
		return nil
	}
	o := l.openOf(u, g, i)
	o.Taken, o.Others = "trip", []string{""}
	return []Open{o}
}

// mayCount tells whether no other table names the trips of a table by their numbers.
func (l *Log) mayCount(u *Understood, trip *plan.Binding) bool {
	own := set(column(u.b.rows, trip.Index))
	return u.Block.Shape == layout.Table && !slices.ContainsFunc(l.Data(), func(o *Understood) bool {
		b := o.Plan.Find("trip")
		return o.b.group != u.b.group && b != nil && allIn(column(o.b.rows, b.Index), own)
	})
}
