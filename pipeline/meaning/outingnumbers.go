package meaning

import (
	"slices"
	"strings"

	"wakeledger/pipeline/plan"
)

// outingNumbers takes numbers that are headed as those of stretches, "Run no.", for those of trips where the log uses
// them so: rows of several stretches have one of them, or each row of a table of trips has its own.
func (l *Log) outingNumbers() {
	var heads []string
	for _, u := range l.Data() {
		if b := u.Plan.Find("leg"); b != nil && !u.Plan.Binds("trip") && u.severalStretches(b.Index, b.Carried) {
			heads = append(heads, b.Heading)
		}
		for _, x := range u.Plan.Unknown {
			if u.Plan.Kind == plan.Trips && !u.Plan.Binds("trip") && l.namesRowsOf(u, x) {
				heads = append(heads, x.Heading)
			}
		}
	}
	of := func(heading string) bool {
		return slices.ContainsFunc(heads, func(h string) bool { return SameKey(h, heading) })
	}
	for _, u := range l.Data() {
		if u.Plan.Binds("trip") || len(heads) == 0 {
			continue
		}
		for i := range u.Plan.Bindings {
			if b := &u.Plan.Bindings[i]; b.Column.Name == "leg" && of(b.Heading) {
				u.Plan.Bindings = slices.Clone(u.Plan.Bindings)
				u.Plan.Bindings[i].Column = l.lexicon.named("trip", "")
				u.b.note("%s: the trip's number", strings.TrimSpace(b.Heading))
				break
			}
		}
		u.bindOuting(l, of)
	}
}

// bindOuting binds the number of a table of trips that heads none of its own meanings.
func (u *Understood) bindOuting(l *Log, of func(string) bool) {
	i := slices.IndexFunc(u.Plan.Unknown, func(x plan.Unknown) bool { return of(x.Heading) })
	if i < 0 || u.Plan.Kind != plan.Trips || u.Plan.Binds("trip") {
		return
	}
	x := u.Plan.Unknown[i]
	u.Plan.Unknown = slices.Delete(slices.Clone(u.Plan.Unknown), i, i+1)
	u.Plan.Bindings = append(slices.Clone(u.Plan.Bindings), plan.Binding{Index: x.Index, Heading: x.Heading,
		Column: l.lexicon.named("trip", "")})
	u.b.note("%s: the trip's number", strings.TrimSpace(x.Heading))
}

// fewShared is which share of the stretches of a table have the number of the one above, at least, for it to be a
// trip's.
const fewShared = 0.15

// severalStretches tells numbers of a table of effort that neighbouring rows share which are of different stretches,
// each with its own start, of one day. Numbers that begin anew are none of trips.
func (u *Understood) severalStretches(index int, carried bool) bool {
	start := u.Plan.Find("start_s")
	if start == nil || u.Plan.Kind != plan.Legs && u.Plan.Kind != plan.Flat {
		return false
	}
	rows, shared := 0, 0
	lastName, lastStart, day := "", "", ""
	date, seen := u.Plan.Find("date"), map[string]string{} // the day of each number's last row
	for _, row := range u.b.rows {
		name, at := strings.ToLower(cellOf(row, index)), cellOf(row, start.Index)
		if date != nil && cellOf(row, date.Index) != "" {
			day = cellOf(row, date.Index)
		}
		if name == "" && carried {
			name = lastName
		}
		if name == "" || at == "" {
			continue
		}
		rows++
		on, again := seen[name]
		if again && name != lastName {
			return false
		}
		if again && at != lastStart && on == day {
			shared++
		}
		seen[name] = day
		lastName, lastStart = name, at
	}
	return shared > 1 && float64(shared) >= fewShared*float64(rows)
}

// namesRowsOf tells whether each row of a table of trips has its own number in a column, and another table names them
// as its stretches' by a column of the same heading.
func (l *Log) namesRowsOf(u *Understood, x plan.Unknown) bool {
	cells := column(u.b.rows, x.Index)
	own := set(cells)
	return len(own) >= 3 && len(own) == len(cells) && slices.ContainsFunc(l.Data(), func(o *Understood) bool {
		b := o.Plan.Find("leg")
		return b != nil && !o.Plan.Binds("trip") && SameKey(b.Heading, x.Heading) &&
			allIn(column(o.b.rows, b.Index), own)
	})
}
