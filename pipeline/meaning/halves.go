package meaning

import (
	"slices"
	"strings"

	"wakeledger/pipeline/plan"
	"wakeledger/pipeline/words"
)

// halves takes the half of the day for a part of what a trip is known by, where two tables
// that have days both name it under the same heading, and one of them has hours: the boat
// goes out by the half-day.
func (l *Log) halves() {
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
