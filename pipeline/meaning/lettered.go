package meaning

import (
	"regexp"
	"slices"
	"strings"

	"wakeledger/pipeline/plan"
	"wakeledger/pipeline/unit"
)

// letteredNumber is the number of an outing with the letter of one of its stretches: "9a".
var letteredNumber = regexp.MustCompile(`^(\d{1,4})[\s.-]?([a-h])$`)

// parts takes "9a" and "9b" of one day for stretches of trip 9, where each number that has letters
// has them from a on, on one day, and is nowhere written bare. Strikes name them the same way.
func (l *Log) parts() {
	of := map[string]string{}
	for _, u := range l.Data() {
		trip := u.Plan.Find("trip")
		if trip != nil && u.Plan.Kind == plan.Trips && slices.ContainsFunc(u.b.rows, func(row []string) bool {
			return letteredNumber.MatchString(strings.ToLower(cellOf(row, trip.Index)))
		}) {
			return // a row of each, with what trips have: they are trips
		}
		more, ok := u.partNames()
		if !ok {
			return
		}
		for name, number := range more {
			of[name] = number
		}
	}
	if len(of) == 0 {
		return
	}
	for _, u := range l.Data() {
		trip := u.Plan.Find("trip")
		if trip == nil || trip.By != nil {
			continue
		}
		u.ofNumber(trip, of)
	}
}

// partNames are the numbers of the lettered stretches of a block of effort; false where letters say
// something else.
func (u *Understood) partNames() (map[string]string, bool) {
	trip, date := u.Plan.Find("trip"), u.Plan.Find("date")
	effort := (u.Plan.Kind == plan.Flat || u.Plan.Kind == plan.Legs) && u.Plan.Binds("start_s", "duration_s")
	if trip == nil || date == nil || !effort {
		return nil, true
	}
	of, letters, dayOf := map[string]string{}, map[string]string{}, map[string]unit.Date{}
	bare := map[string]bool{}
	days := u.b.daysOf(date.Index)
	for i, row := range u.b.rows {
		name := strings.ToLower(cellOf(row, trip.Index))
		m := letteredNumber.FindStringSubmatch(name)
		if m == nil {
			bare[name] = true
			continue
		}
		day := days[i]
		if d, ok := dayOf[m[1]]; ok && day == 0 && cellOf(row, date.Index) == "" {
			day = d // written once for the trip
		} else if ok && d != day {
			return nil, false
		}
		dayOf[m[1]], of[name] = day, m[1]
		if !strings.HasSuffix(letters[m[1]], m[2]) { // a row for each lure of a stretch
			letters[m[1]] += m[2]
		}
	}
	for number, got := range letters {
		if bare[number] || len(got) < 2 || !strings.HasPrefix("abcdefgh", got) {
			return nil, false
		}
	}
	return of, true
}

// ofNumber has the trip of a block's rows be the number before the letter, and their leg what was
// written.
func (u *Understood) ofNumber(trip *plan.Binding, of map[string]string) {
	by, leg, n := map[string]string{}, map[string]string{}, 0
	for _, text := range column(u.b.rows, trip.Index) {
		name := strings.ToLower(text)
		if by[name] = text; of[name] != "" {
			by[name], leg[name] = of[name], text
			n++
		}
	}
	if n == 0 {
		return
	}
	trip.By, u.Plan.Parts = by, true
	if c := u.b.t.named("leg", ""); c.In(u.Plan.Kind) && !u.Plan.Binds("leg") {
		u.Plan.Bindings = append(u.Plan.Bindings, plan.Binding{Index: trip.Index,
			Heading: trip.Heading, Column: c, By: leg})
	}
	u.b.note("%s: a and b of one number are of one day: taken for stretches of one trip", trip.Heading)
}

// OwnTrips has lettered numbers be trips of their own.
func (l *Log) OwnTrips() {
	for _, u := range l.Data() {
		if !u.Plan.Parts {
			continue
		}
		index := u.Plan.Find("trip").Index
		u.Plan.Parts = false
		u.Plan.Find("trip").By = nil
		u.Plan.Bindings = slices.DeleteFunc(u.Plan.Bindings, func(b plan.Binding) bool {
			return b.Column.Name == "leg" && b.Index == index && b.By != nil
		})
	}
}
