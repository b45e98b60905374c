package proof

import (
	"fmt"

	"wakeledger/pipeline/meaning"
)

// Choices of what a blank under a place of the spread says.
const (
	lineIn  = "in"
	lineOut = "out"
)

// blankRods asks whether a line was out where the cell of its place is blank and others have a mark for nothing struck.
func (q *inquiry) blankRods(s Subject) {
	p := s.Plan
	if !p.RodsBlank || p.NoEffort {
		return
	}
	q.ask("no line", p.Name, p.Rods[0].Heading, fmt.Sprintf("Under %q and the other places of the spread some cells "+
		"are blank, and others have a mark. Was a line out where the cell is blank?", p.Rods[0].Heading),
		[]string{"no, no line there", "yes, and nothing struck"}, lines)
	q.last().Choices = []string{lineIn, lineOut}
}

// tellBlankRods counts a line where the cell of a place is blank, or none.
func tellBlankRods(_ *meaning.Log, q *Question, choice string) {
	for _, u := range q.of {
		u.Plan.RodsBlank = choice != lineOut
	}
}
