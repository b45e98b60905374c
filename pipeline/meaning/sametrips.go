package meaning

import (
	"slices"
	"strings"

	"wakeledger/pipeline/plan"
)

// sameTrips takes a column of strikes or fish without a meaning for the number of their trip, where it has the heading
// under which another table numbers its trips, and each of its cells is one of these.
func (l *Log) sameTrips() {
	data := l.Data()
	for _, of := range data {
		trip := of.Plan.Find("trip")
		if trip == nil || of.Plan.Kind == plan.Strikes || of.Plan.Kind == plan.Fish {
			continue
		}
		known := set(column(of.b.rows, trip.Index))
		for _, u := range data {
			if u.Plan.Kind != plan.Strikes && u.Plan.Kind != plan.Fish ||
				u.Plan.Binds("trip") || u.Plan.Gives("trip") {
				continue
			}
			i := slices.IndexFunc(u.Plan.Unknown, func(x plan.Unknown) bool {
				cells := column(u.b.rows, x.Index)
				return x.Aside == "" && SameKey(x.Heading, trip.Heading) && len(cells) > 0 &&
					!slices.ContainsFunc(cells, func(c string) bool { return !known[strings.ToLower(c)] })
			})
			if i < 0 {
				continue
			}
			x := u.Plan.Unknown[i]
			u.Plan.Unknown = slices.Delete(slices.Clone(u.Plan.Unknown), i, i+1)
			u.Plan.Bindings = append(slices.Clone(u.Plan.Bindings),
				plan.Binding{Index: x.Index, Heading: x.Heading, Column: trip.Column})
			u.b.note("%s: the trip's number, as in %s", strings.TrimSpace(x.Heading), of.Plan.Name)
		}
	}
}
