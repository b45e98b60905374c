package proof

import (
	"fmt"

	"wakeledger/pipeline/meaning"
)

// listed reports whether it is open how many lines the lures of its cells ran on.
func listed(s Subject) bool {
	return s.Listed.Unsure && !s.Plan.NoEffort && s.Stats.NoLines > 0
}

// lureLists asks whether each of the lures that a cell names was on a line of its own, where nothing counts the lines.
func (q *inquiry) lureLists(s Subject) {
	if !listed(s) {
		return
	}
	heading := s.Listed.At.Heading
	q.ask("lures of a cell", s.Plan.Name, heading, fmt.Sprintf("Under %q most cells name several lures (%s), and "+
		"nothing says how many lines were out. Was each lure on a line of its own?", heading, s.Listed.Example),
		[]string{"yes, a line each", "no, how many is not known"}, lines)
	q.last().Choices = []string{each, Leave}
}

// countListed takes the lures of a cell for lines, or leaves open how many there were.
func countListed(_ *meaning.Log, q *Question, choice string) {
	for _, u := range q.of {
		if u.Listed.Unsure = false; choice == each {
			u.Plan.Lures = &u.Listed.At
		}
	}
}
