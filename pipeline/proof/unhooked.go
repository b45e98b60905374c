package proof

import (
	"fmt"
	"slices"

	"wakeledger/pipeline/plan"
)

// fateNames are the columns that tell of a bite whether it was hooked.
var fateNames = []string{"hooked_n", "lost_n", "missed_n", "outcome", "loss_cause"}

// fewUnknown is how many bites, and one of how many, must say nothing of a hook-up for it to be asked about; of few
// bites most of them.
const (
	fewUnknown     = 2
	unknownOfBites = 5
)

// unhooked asks about hook-ups where the log counts bites and fish landed and nothing between, and about bites where
// all that it tells of were hooked, or landed, and it has no place for others.
func (q *inquiry) unhooked() {
	binds := func(names ...string) bool {
		return slices.ContainsFunc(q.book, func(s Subject) bool { return s.Plan.Binds(names...) })
	}
	// of a list alone, without hours and without a count of bites, what else there was may stand in another log
	if q.total.Strikes == 0 || q.total.Stretches == 0 && !binds("strikes_n") ||
		slices.ContainsFunc(q.out, func(x Question) bool { return x.Kind == "unwritten" }) {
		return
	}
	t := TotalsOf(q.subjects)
	unknown := t.Bites - t.Hooked
	words := slices.ContainsFunc(q.book, func(s Subject) bool {
		p := s.Plan
		return p.Kind == plan.Events || p.Reads("story") || len(p.Figures)+len(p.Rods)+len(p.Others) > 0
	})
	told := words || binds(fateNames...) || slices.ContainsFunc(q.book, func(s Subject) bool {
		caught := s.ofItsCounts() && !s.Plan.Binds("outcome") // fish alone
		return s.Stats.Listed > 0 && s.Plan.StoredAs(s.Plan.Kind) == plan.Strikes && !caught
	})
	switch {
	case words || t.Lost > 0 || binds("strikes_n", "missed_n", "outcome", "loss_cause") || t.Bites < 2:
	case t.Bites == t.Hooked && binds("hooked_n", "lost_n"):
		q.onlyThese(t.Bites, "hooked", []string{"strikes", "bands"})
		return
	case t.Bites == t.Landed:
		q.onlyThese(t.Bites, "landed", []string{"strikes", "hooked", "bands"})
		return
	}
	if told || t.Lost > 0 || t.Landed == 0 ||
		unknown < fewUnknown && 2*unknown <= t.Bites || unknown < 2 || unknownOfBites*unknown < t.Bites {
		return
	}
	q.ask("hook-ups", "", "hooked", fmt.Sprintf("The log counts bites and fish landed, and not how many were hooked: "+
		"of %s of %d it is not known, and they count as not hooked.", plural(unknown, "bite", "bites"), t.Bites), nil,
		[]string{"hooked"}, fmt.Sprint(t.Bites))
	q.last().Brief = "A log does not say how many bites were hooked."
}

// onlyThese says what rests on bites of which a log tells those alone that were hooked, or landed.
func (q *inquiry) onlyThese(bites int, what string, effect []string) {
	q.ask("only these", "", "bites", fmt.Sprintf("All %d bites of this log are fish that were %s, and it has no "+
		"place for others. Were there bites that nobody wrote down? Strikes per line-hour counts these alone.",
		bites, what), nil, effect, what)
	q.last().Brief = fmt.Sprintf("All bites of a log are fish that were %s, and it has no place for others.", what)
}
