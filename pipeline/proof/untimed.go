package proof

import (
	"fmt"
	"strings"

	"wakeledger/pipeline/layout"
	"wakeledger/pipeline/plan"
)

// untimed tells of days or trips of a table that count bites, or say how many lines were out or how fast, and have no
// hours anywhere, where most others have: the hours of the log are fewer than those that were fished.
func (q *inquiry) untimed(s Subject) {
	if s.Plan.Kind != plan.Flat || s.Stats.Stretches == 0 || s.Plan.NoEffort {
		return
	}
	timed := map[string]bool{}
	for _, o := range q.book {
		for day := range o.Stats.Days {
			timed[day] = true
		}
	}
	rows := map[int64]layout.Row{}
	for _, r := range s.Block.Rows {
		rows[int64(r.Num)] = r
	}
	var first int64
	days := map[string]bool{}
	for _, w := range s.Stats.Untimed {
		if r, ok := rows[w.Row]; !ok || w.Day == "" || timed[w.Day] || !fishes(r, s.Plan) {
			continue
		}
		if len(days) == 0 {
			first = w.Row
		}
		days[w.Day] = true
	}
	if len(days) == 0 || len(days) >= len(timed) {
		return
	}
	q.ask("no hours", s.Plan.Name, "hours", fmt.Sprintf("%s no hours, the first: %s. The hours of the log are too few "+
		"by these.", subject(len(days), "trip", "have", s.Plan.Name), rowName(&s, first)), nil, hours,
		fmt.Sprint(first))
}

// fishes tells a row with a bite, or with a number of lines or a speed of its own.
func fishes(r layout.Row, p *plan.Block) bool {
	for _, b := range p.Bindings {
		switch text := textOf(r, &b); b.Column.Name {
		case "lines_out", "speed_kn", "strikes_n", "hooked_n", "landed_n", "kept_n", "released_n", "lost_n", "missed_n":
			if strings.ContainsAny(text, "123456789") {
				return true
			}
		}
	}
	return false
}
