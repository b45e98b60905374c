package meaning

import (
	"slices"

	"wakeledger/pipeline/layout"
	"wakeledger/pipeline/plan"
)

// besideOnly takes tables for no record that say nothing of trolling of their own, in a log
// whose other tables do: days with a remark, most of them not days of trolling (costs, work on
// the boat, the weather), and counts without a day, a trip or an hour (a tally).
func (l *Log) besideOnly() {
	days, effort := keySets{}, false
	for _, u := range l.Data() {
		if u.tellsHours() || u.Plan.Reads("stretches") {
			u.keys(days)
			effort = true
		}
	}
	if !effort {
		return
	}
	for _, u := range l.Data() {
		switch {
		case u.Block.Shape != layout.Table || u.Block.Open || u.b.group.sheets() > 1:
		case u.remarksOnly() && len(days["date"]) > 0:
			own := keySets{}
			u.keys(own)
			if len(own["date"]) > 2 && !(keySets{"date": own["date"]}).within(days) {
				u.leave("its days are hardly those of the log's hours, and it tells of nothing else")
			}
		case u.tallies() && l.otherStrikes(u):
			if of := l.tallied(u); of != "" {
				u.Proof = true
				u.b.note("it counts over what stands under %q of another table: not counted again", of)
				continue
			}
			u.leave("its counts have no day, and other tables of the log have")
		}
	}
}

func (u *Understood) leave(why string) {
	u.Plan.Kind = ""
	u.b.note("no record: %s", why)
}

// remarksOnly tells a table of days and of what stands beside them: no trip, no time, no one aboard.
func (u *Understood) remarksOnly() bool {
	return u.Plan.Kind == plan.Trips && len(u.Plan.Given) == 0 &&
		!slices.ContainsFunc(u.Plan.Bindings, func(b plan.Binding) bool {
			return !slices.Contains([]string{"date", "notes", "wind", "sea_state", "sea_temp_c", "area"}, b.Column.Name)
		})
}

// tallies tells a table of counts whose rows have neither a day nor a trip nor an hour.
func (u *Understood) tallies() bool {
	p := u.Plan
	if p.Kind != plan.Flat || len(p.Given) > 0 || u.tellsHours() || !p.Binds(countNames...) && len(p.Catch) == 0 {
		return false
	}
	return !p.Binds(whenNames...) && !p.Reads("story", "stretches")
}

// otherStrikes tells whether another table of the log tells of strikes or fish by the day.
func (l *Log) otherStrikes(u *Understood) bool {
	return slices.ContainsFunc(l.Data(), func(o *Understood) bool {
		p := o.Plan
		return o != u && (p.Binds("date", "trip", "leg") || p.Gives("date") || p.Gives("trip")) &&
			(p.Kind == plan.Strikes || p.Kind == plan.Events || p.Binds(countNames...) || len(p.Catch) > 0 ||
				p.Binds("outcome", "species"))
	})
}
