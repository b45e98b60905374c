package proof

import (
	"fmt"
	"slices"

	"wakeledger/pipeline/plan"
)

// fateNames are the columns that tell of a bite whether it was hooked.
var fateNames = []string{"hooked_n", "lost_n", "missed_n", "outcome", "loss_cause"}

// fewUnknown is how many bites, and one of how many, must say nothing of a hook-up for it to be asked about.
const (
	fewUnknown     = 4
	unknownOfBites = 5
)

// unhooked asks about hook-ups where the log counts bites and fish landed and nothing between.
func (q *inquiry) unhooked() {
	if q.total.Strikes == 0 || slices.ContainsFunc(q.out, func(x Question) bool { return x.Kind == "unwritten" }) {
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
