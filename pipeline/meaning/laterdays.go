package meaning

import (
	"maps"
	"strings"

	"wakeledger/pipeline/plan"
	"wakeledger/pipeline/unit"
)

// laterDays finds the stretches of a trip of several days that are of its second day or a later one: the trip's
// table gives its first and last day in one cell, and the clock goes back from one stretch to the next. Strikes
// that name such a stretch are of its day too.
func (l *Log) laterDays() {
	days := map[string]int{} // of trips
	for _, u := range l.Data() {
		trip, date := u.Plan.Find("trip"), u.Plan.Find("date")
		if u.Plan.Kind != plan.Trips || trip == nil || date == nil {
			continue
		}
		for _, row := range u.b.rows {
			if _, n, ok := unit.DaySpan(cellOf(row, date.Index)); ok {
				days[strings.ToLower(cellOf(row, trip.Index))] = n
			}
		}
	}
	if len(days) == 0 {
		return
	}
	later := map[string]int{}
	for _, u := range l.Data() {
		if u.Plan.Kind == plan.Legs {
			u.goesBack(days, later)
		}
	}
	if len(later) == 0 {
		return
	}
	for _, u := range l.Data() {
		if (u.Plan.Kind == plan.Legs || u.Plan.Kind == plan.Strikes || u.Plan.Kind == plan.Fish) &&
			u.Plan.Binds("trip") && u.Plan.Binds("leg") && !u.Plan.Binds("date") {
			u.Plan.Later = later
			u.b.note(
				"%s: of trips of several days, stretches before whose start the clock goes back are of a later day",
				u.Plan.Find("leg").Heading)
		}
	}
}

// goesBack adds the stretches of a later day, of trips that last some days. A trip whose clock goes back more often
// than it has nights is left as it is.
func (u *Understood) goesBack(days, later map[string]int) {
	trip, leg, start := u.Plan.Find("trip"), u.Plan.Find("leg"), u.Plan.Find("start_s")
	if trip == nil || leg == nil || start == nil || u.Plan.Binds("date") {
		return
	}
	of, last := map[string]map[string]int{}, map[string]int{}
	nights := map[string]int{}
	above := ""
	for _, row := range u.Block.Rows {
		name := strings.ToLower(cellText(row, trip.Index))
		if name == "" && trip.Carried {
			name = above
		}
		above = name
		at, ok := clock(u.b.group, row, start.Index)
		if days[name] < 2 || !ok {
			continue
		}
		if before, seen := last[name]; seen && at < before {
			nights[name]++
		}
		last[name] = at
		if of[name] == nil {
			of[name] = map[string]int{}
		}
		key := cellText(row, leg.Index)
		if _, twice := of[name][key]; twice {
			nights[name] = days[name] // which of two is not said
		}
		of[name][key] = nights[name]
	}
	for name, legs := range of {
		for key, n := range legs {
			if n > 0 && nights[name] < days[name] {
				later[plan.Stretch(name, key)] = n
			}
		}
	}
}

// nextDays finds the rows of stretches below a day's cell that gives the first and the last day of an outing, 14-15
// June, which are of a later one of these days: the clock goes back before them. All are one trip. Where the clock goes
// back more often than there are nights, which of the rows are of which day is not said.
func (x *builder) nextDays() {
	p := x.plan
	date, start := p.Find("date"), p.Find("start_s")
	if date == nil || start == nil || !date.Carried || p.Binds("trip") || p.Gives("trip") ||
		p.Kind != plan.Legs && p.Kind != plan.Flat || p.StrikeSets() > 0 {
		return
	}
	nights := 0
	for i := range x.rows {
		_, days, ok := unit.DaySpan(cellOf(x.rows[i], date.Index))
		if !ok {
			continue
		}
		later, last := map[int64]int{}, -1
		n, end := 0, i
		for ; end < len(x.rows) && (end == i || cellOf(x.rows[end], date.Index) == ""); end++ {
			at, told := clock(x.group, x.block.Rows[end], start.Index)
			if told && p.Twelve && !saysHalf(x.block.Rows[end].Cells[start.Index]) {
				n = days // which half of the day it is of is not said
			}
			if told && at < last {
				n++
			}
			if told {
				last = at
			}
			later[int64(x.block.Rows[end].Num)] = n
		}
		if n == 0 || n >= days {
			continue
		}
		nights += n
		for k := i; k < end; k++ {
			x.ofTrip(k, "days "+cellOf(x.rows[i], date.Index))
		}
		if p.NextDays == nil {
			p.NextDays = map[int64]int{}
		}
		maps.Copy(p.NextDays, later)
	}
	if nights > 0 {
		x.note("%s: below the days of an outing, rows before which the clock goes back are of a later day: %s",
			date.Heading, often(nights))
	}
}
