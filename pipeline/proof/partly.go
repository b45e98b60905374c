package proof

import (
	"fmt"
	"slices"
	"strings"

	"wakeledger/pipeline/plan"
	"wakeledger/pipeline/words"
)

// fateNames are the columns that tell of a bite whether it was hooked.
var fateNames = []string{"hooked_n", "lost_n", "missed_n", "outcome", "loss_cause"}

// fewUnknown is how many bites, and one of how many, must say nothing of a hook-up for it to be asked about.
const (
	fewUnknown     = 4
	unknownOfBites = 5
)

// partly asks about bites that the log leaves out, as it says itself, and about hook-ups where it counts bites and fish
// landed and nothing between.
func (q *inquiry) partly() {
	if q.total.Strikes == 0 {
		return
	}
	for _, text := range q.log.Texts {
		kind := words.Partly(text)
		if kind == "" {
			continue
		}
		what, effect := "those that were hooked", []string{"strikes", "bands"}
		if kind == "landed" {
			what, effect = "fish that came to the boat", []string{"strikes", "hooked", "bands"}
		}
		q.ask("partly", "", "bites", fmt.Sprintf("The log says %q: its bites are %s, and how many more there were "+
			"is not known.", strings.TrimSpace(text), what), nil, effect, text)
		q.last().Brief = "A log leaves out bites, as it says itself."
		return
	}
	t := TotalsOf(q.subjects)
	unknown := t.Bites - t.Hooked
	told := slices.ContainsFunc(q.book, func(s Subject) bool {
		p := s.Plan
		return p.Binds(fateNames...) || p.Kind == plan.Events || p.Reads("story") || len(p.Figures)+len(p.Rods) > 0 ||
			len(p.Others) > 0 || s.Stats.Listed > 0 && p.StoredAs(p.Kind) == plan.Strikes
	})
	if told || t.Lost > 0 || unknown < fewUnknown || unknownOfBites*unknown < t.Bites {
		return
	}
	q.ask("hook-ups", "", "hooked", fmt.Sprintf("The log counts bites and fish landed, and not how many were hooked: "+
		"of %s of %d it is not known, and they count as not hooked.", plural(unknown, "bite", "bites"), t.Bites), nil,
		[]string{"hooked"}, fmt.Sprint(t.Bites))
	q.last().Brief = "A log does not say how many bites were hooked."
}
