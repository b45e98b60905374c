package proof

import "fmt"

// staggered asks about rows of a line each that were out together and did not go in together: each start makes a
// stretch, and the boat's hours have the time of both.
func (q *inquiry) staggered(s Subject) {
	n := len(s.Stats.Staggered)
	if n == 0 {
		return
	}
	o := s.Stats.Staggered[0]
	q.ask("staggered", s.Plan.Name, "hours", fmt.Sprintf("The lines of rows %d and %d were out at the same time, and "+
		"went in at different times%s. Each start counts as a stretch of its own: the boat's hours count that time "+
		"twice.", o.Row, o.Other, pairsOf(n)), nil, []string{"boat_hours", "bands"})
	q.last().Brief = "Lines went in at different times: the boat's hours count some of the time twice."
}
