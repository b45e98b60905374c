package proof

import (
	"fmt"

	"wakeledger/pipeline/meaning"
)

// once and each are what rows with the same hours may be.
const (
	once = "once"
	each = "each"
)

// hoursAgain asks about rows of one day that say the same hours, each with a bite, where neither reading is sure.
func (q *inquiry) hoursAgain(s Subject) {
	a := s.Again
	if !a.Unsure() || s.Plan.NoEffort {
		return
	}
	more := ""
	if a.Pairs > 1 {
		more = fmt.Sprintf(" (%d such pairs)", a.Pairs)
	}
	what, effect := "hours", hours
	switch {
	case a.Counts:
		what, effect = "counts", bites
	case s.Plan.Binds("strikes_n", "hooked_n", "landed_n"):
		what, effect = "hours and counts", all
	}
	q.ask("hours again", s.Plan.Name, what, fmt.Sprintf("Rows %d and %d are of one day and say the same %s%s: "+
		"are these written again for each bite, or does each row tell its own?", a.Row, a.Other, what, more),
		[]string{"the same " + what + ", written again", "each row has its own " + what}, effect)
	q.last().Choices = []string{once, each}
}

// countHours counts hours that rows say again once, or each time.
func countHours(_ *meaning.Log, q *Question, choice string) {
	for _, u := range q.of {
		u.Plan.EffortOnce = choice == once
	}
}
