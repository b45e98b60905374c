package meaning

import (
	"slices"
	"strings"

	"wakeledger/pipeline/plan"
	"wakeledger/pipeline/unit"
	"wakeledger/pipeline/words"
)

// halves takes the half of the day for a part of what a trip is known by, where two tables
// that have days both name it under the same heading, and one of them has hours: the boat
// goes out by the half-day.
func (l *Log) halves() {
	for _, u := range l.Data() {
		u.charters()
	}
	at := map[string][]*Understood{}
	for _, u := range l.Data() {
		if !u.Plan.Binds("date") || u.Plan.Binds("trip", "depart_s", "event") || u.Plan.Gives("trip") {
			continue
		}
		if x := u.half(); x != nil {
			key := strings.ToLower(x.Heading)
			at[key] = append(at[key], u)
		}
	}
	for _, us := range at {
		effort := slices.ContainsFunc(us, func(u *Understood) bool { return u.Plan.Binds("start_s", "duration_s") })
		other := slices.ContainsFunc(us, func(u *Understood) bool { return u.b.group != us[0].b.group })
		if !effort || !other {
			continue
		}
		for _, u := range us {
			x := u.half()
			u.Plan.Half = x.Index + 1
			u.b.note("%s: each half of a day is a trip, as two tables name it", x.Heading)
		}
	}
}

// charters takes the halves of the day in a table of stretches for trips, where on several days
// one row says the one half and one the other: the rest of its words are of whole days ("full",
// "3/4"). What reads as the trip's name is none then.
func (u *Understood) charters() {
	p := u.Plan
	date := p.Find("date")
	if date == nil || !p.Binds("start_s") || p.Gives("trip") || p.Half > 0 {
		return
	}
	days := u.b.daysOf(date.Index)
	of := slices.Clone(p.Unknown)
	for _, b := range p.Bindings {
		if b.Column.Name == "trip" {
			of = append(of, plan.Unknown{Index: b.Index, Heading: b.Heading, Aside: "people"})
		}
	}
	for _, x := range of {
		parts, both := map[unit.Date]map[string]bool{}, 0
		for i, row := range u.b.rows {
			half, ok := words.HalfOfDay(cellOf(row, x.Index))
			if !ok || days[i] == 0 {
				continue
			}
			if parts[days[i]] == nil {
				parts[days[i]] = map[string]bool{}
			}
			if parts[days[i]][half] = true; len(parts[days[i]]) == 2 {
				both++
			}
		}
		if both < 2 {
			continue
		}
		if p.Find("trip") != nil && p.Find("trip").Index == x.Index {
			p.Unknown = append(p.Unknown, x)
			p.Bindings = slices.DeleteFunc(p.Bindings, func(b plan.Binding) bool { return b.Column.Name == "trip" })
		}
		if p.Binds("trip") {
			continue
		}
		p.Half = x.Index + 1
		u.b.note("%s: both halves of the day stand on %d days: two trips each", x.Heading, both)
		return
	}
}

// half is the column without a meaning whose cells are halves of the day, both of them; nil
// where there is none.
func (u *Understood) half() *plan.Unknown {
	for i, x := range u.Plan.Unknown {
		seen, n := map[string]bool{}, 0
		cells := column(u.b.rows, x.Index)
		for _, c := range cells {
			if h, ok := words.HalfOfDay(c); ok {
				seen[h] = true
				n++
			}
		}
		if len(seen) == 2 && 10*n >= 9*len(cells) {
			return &u.Plan.Unknown[i]
		}
	}
	return nil
}
