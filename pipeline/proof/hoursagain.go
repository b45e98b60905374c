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

// luresTogether asks about lures of one day with the same hours, where it is not sure that they were out together.
func (q *inquiry) luresTogether(s Subject) {
	a := s.Understood.Beside
	if !a.Unsure() || s.Plan.NoEffort {
		return
	}
	q.ask("lures together", s.Plan.Name, "hours", fmt.Sprintf("Rows %d and %d are of one day, with two lures and the "+
		"same hours: were the lures out at the same time, or one after the other?", a.Row, a.Other),
		[]string{"at the same time", "one after the other"}, hours)
	q.last().Choices = []string{once, each}
}

// menTogether asks about men of one day with the same hours, where it is not sure that they were on the boat together.
func (q *inquiry) menTogether(s Subject) {
	a := s.Men
	if !a.Unsure() || s.Plan.NoEffort {
		return
	}
	q.ask("men together", s.Plan.Name, "hours", fmt.Sprintf("Rows %d and %d are of one day, with two men and the "+
		"same hours: were they fishing at the same time?", a.Row, a.Other),
		[]string{"at the same time", "one after the other"}, hours)
	q.last().Choices = []string{once, each}
}

// countMen counts the hours of men of one day once, or those of each.
func countMen(_ *meaning.Log, q *Question, choice string) {
	for _, u := range q.of {
		u.Plan.HoursOnce = choice == once
	}
}

// countLures takes lures of one day for lines that were out together, or each for a stretch.
func countLures(_ *meaning.Log, q *Question, choice string) {
	for _, u := range q.of {
		u.Plan.LureLines = choice == once
	}
}

// countHours counts hours that rows say again once, or each time.
func countHours(_ *meaning.Log, q *Question, choice string) {
	for _, u := range q.of {
		u.Plan.EffortOnce = choice == once
	}
}
