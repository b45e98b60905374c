package meaning

import (
	"slices"

	"wakeledger/pipeline/phrase"
	"wakeledger/pipeline/plan"
)

// fewCounted is in how many rows a count must be that of the bites which its row tells, before it is nothing else.
const fewCounted = 5

// countsTold tells a column of a log of events that counts, row by row, the bites that the words beside it tell: in
// nine rows of ten that have a count.
func (u *Understood) countsTold(index int) bool {
	if u.Plan.Kind != plan.Events {
		return false
	}
	var words []int
	for _, b := range u.Plan.Bindings {
		if b.Index >= 0 && slices.Contains([]string{"story", "fishlist", "event"}, b.Column.Parse) {
			words = append(words, b.Index)
		}
	}
	counted, same := 0, 0
	for _, row := range u.b.rows {
		n, ok := number(cellOf(row, index))
		if !ok || n == 0 {
			continue
		}
		counted++
		told := 0
		for _, i := range words {
			for _, b := range phrase.Tell(cellOf(row, i), phrase.Defaults{}).Bites {
				told += max(b.N, 1)
			}
		}
		if float64(told) == n {
			same++
		}
	}
	return same >= fewCounted && 10*same >= 9*counted
}
