package meaning

import (
	"fmt"

	"wakeledger/pipeline/layout"
	"wakeledger/pipeline/plan"
	"wakeledger/pipeline/spelling"
	"wakeledger/pipeline/unit"
	"wakeledger/pipeline/words"
)

// yearlessYear is the year that days written without one are given (dayIn).
const yearlessYear = 2000

// otherOutings sets strikes and fish apart that name a trip, or else a day, all of whose stretches were fished in
// another way, as the method or a remark beside each of them says in another table: "bottom fishing", with no hours.
func (l *Log) otherOutings() {
	other, trolled := map[string]bool{}, map[string]bool{}
	for _, u := range l.Data() {
		m, said := u.Plan.Find("method"), u.Plan.Find("notes")
		if u.Plan.Kind != plan.Legs && u.Plan.Kind != plan.Flat {
			continue
		}
		for _, name := range []string{"trip", "date"} {
			for i, keys := range u.outingKeys(u.Plan.Find(name)) {
				into := trolled
				if m != nil {
					if method, ok := words.Method(wayIn(u.Block.Rows[i], m)); ok && method != "troll" {
						into = other
					}
				} else if said != nil {
					remark := cellText(u.Block.Rows[i], said.Index)
					if words.NeverTrolled(remark) || words.Otherwise(remark) && u.hourless(u.Block.Rows[i]) {
						into = other
					}
				}
				for _, key := range keys {
					into[key] = true
				}
			}
		}
	}
	for _, u := range l.Data() {
		if u.Plan.Kind != plan.Strikes && u.Plan.Kind != plan.Fish || u.Plan.Binds("method", "leg") {
			continue
		}
		n := 0
		for i, keys := range u.outingKeys(outingOf(u.Plan)) {
			for _, key := range keys {
				if trolled[key] {
					break
				}
				if other[key] {
					setApart(u.Plan, u.Block.Rows[i])
					n++
					break
				}
			}
		}
		if n > 0 {
			u.Plan.Notes = append(u.Plan.Notes, fmt.Sprintf("rows of trips or days that were not trolled, left out: "+
				"%d", n))
		}
	}
}

// hourless tells a row of a table of stretches that has neither hours nor a speed.
func (u *Understood) hourless(r layout.Row) bool {
	timed := false
	for _, b := range u.Plan.Bindings {
		switch b.Column.Name {
		case "start_s", "end_s", "duration_s", "speed_kn":
			timed = true
			if cellText(r, b.Index) != "" {
				return false
			}
		}
	}
	return timed && !u.Plan.Reads("stretches", "story")
}

// outingKeys are what each row is known by in other tables, the surest first: its trip's name, or its day however it
// is written, and that day in any year, as some write it.
func (u *Understood) outingKeys(b *plan.Binding) [][]string {
	if b == nil {
		return nil
	}
	var days []unit.Date
	if b.Column.Parse == "date" {
		days = u.b.daysOf(b.Index)
	}
	out, last := make([][]string, len(u.Block.Rows)), []string(nil)
	for i, r := range u.Block.Rows {
		name := cellText(r, b.Index)
		switch {
		case name == "" && b.Carried:
		case name == "":
			last = nil
		case i < len(days) && days[i] != 0:
			year, month, day := days[i].Civil()
			last = []string{days[i].String(), fmt.Sprintf("%d-%d", month, day)}
			if year == yearlessYear {
				last = last[1:]
			}
		default:
			last = []string{b.Column.Name + " " + spelling.Trip(name)}
		}
		out[i] = last
	}
	return out
}
