package proof

import (
	"fmt"
	"strings"

	"wakeledger/pipeline/words"
)

// unwritten says what rests on bites that nobody wrote down, where the log itself says so: "misses are not counted".
func (q *inquiry) unwritten() {
	for _, text := range q.log.Texts {
		said, ok := words.UnwrittenIn(text)
		switch text = strings.TrimSpace(text); {
		case !ok:
			continue
		case said.Missed && said.Hooked:
			q.ask("unwritten", "", "bites", fmt.Sprintf("The log says: %q. Its bites are then the fish at the boat "+
				"alone: what is counted per hour is these.", text), nil, []string{"strikes", "hooked", "bands"})
			q.last().Brief = "Bites and lost fish are not in this log: what is counted per hour is fish at the boat."
		case said.Missed:
			q.ask("unwritten", "", "bites", fmt.Sprintf("The log says: %q. Its bites are then those that were hooked: "+
				"what is counted per hour is these.", text), nil, []string{"strikes", "bands"})
			q.last().Brief = "Bites that were missed are not in this log: what is counted per hour is fish hooked."
		default:
			q.ask("unwritten", "", "hooked fish", fmt.Sprintf("The log says: %q. How many were hooked is then not "+
				"known: I count as hooked what is said to be.", text), nil, []string{"hooked"})
			q.last().Brief = "How many fish were hooked is not in this log."
		}
		return
	}
}
