package meaning

import (
	"slices"

	"wakeledger/pipeline/plan"
	"wakeledger/pipeline/unit"
)

const (
	fewOutings = 6 // days whose first row fills a column, for it to be one that stands once an outing
	fewFurther = 3 // further rows of a day that leave it blank
)

// onceAnOuting makes one trip of the rows of a day, however far apart, where a column that nearly each first row of a
// day fills, who was aboard or the fuel, is blank on each further row of its day.
func (x *builder) onceAnOuting() {
	p := x.plan
	date := p.Find("date")
	if date == nil || date.Carried || p.Binds("trip") || p.Gives("trip") || p.Outings || p.Trips != nil ||
		p.Kind != plan.Flat && p.Kind != plan.Legs {
		return
	}
	days := x.daysOf(date.Index)
	i := slices.IndexFunc(p.Unknown, func(u plan.Unknown) bool {
		return !among(p.Catch, u) && !among(p.Rods, u) && !among(p.Spread, u) && x.filledOnce(days, u.Index)
	})
	if i < 0 {
		return
	}
	rows, last := map[unit.Date]int{}, unit.Date(0)
	for _, d := range days {
		rows[d]++
	}
	for k, d := range days {
		if d != 0 {
			last = d
		}
		if last > unit.DateOf(yearlessYear, 12, 31) && rows[last] > 1 {
			x.ofTrip(k, last.String())
		}
	}
	x.note("%s: filled once a day, on its first row: one trip a day", p.Unknown[i].Heading)
}

// filledOnce tells a column that the first rows of days fill, but for a few, and no further row of a day.
func (x *builder) filledOnce(days []unit.Date, index int) bool {
	first, filled, later := 0, 0, 0
	seen := map[unit.Date]bool{}
	for i, d := range days {
		if d == 0 {
			continue
		}
		has := cellOf(x.rows[i], index) != ""
		switch {
		case seen[d] && has:
			return false
		case seen[d]:
			later++
		default:
			if first++; has {
				filled++
			}
		}
		seen[d] = true
	}
	return filled >= fewOutings && later >= fewFurther && 10*filled >= 9*first
}

// among tells a column that is one of several whose meaning is known.
func among(of []plan.Unknown, u plan.Unknown) bool {
	return slices.ContainsFunc(of, func(x plan.Unknown) bool { return x.Index == u.Index })
}
