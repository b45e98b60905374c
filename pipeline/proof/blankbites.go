package proof

import (
	"fmt"
	"slices"

	"wakeledger/pipeline/layout"
	"wakeledger/pipeline/plan"
)

// fewCounted is how many rows must count their bites for one that does not to be asked about.
const fewCounted = 4

// blankBites asks how many bites there were in a row that counts fish and leaves its bites blank, where next to all
// others count them, none too: "quit counting". They are then as many as its fish. Where it counts those hooked, lost
// or missed, its bites are the sum of these.
func (q *inquiry) blankBites(s *Subject) {
	b := s.Plan.Find("strikes_n")
	if b == nil || b.Index < 0 || b.Set > 0 || s.Plan.StoredAs(s.Plan.Kind) != plan.Flat || len(s.Plan.Figures) > 0 {
		return
	}
	var fish, parts []*plan.Binding
	hooks := s.Plan.Find("hooked_n")
	for i := range s.Plan.Bindings {
		x := &s.Plan.Bindings[i]
		switch {
		case x.Set > 0:
		case slices.Contains([]string{"landed_n", "kept_n", "released_n"}, x.Column.Name):
			fish = append(fish, x)
		case slices.Contains([]string{"hooked_n", "lost_n", "missed_n"}, x.Column.Name):
			parts = append(parts, x)
		}
	}
	worked, counted := s.Stats.worked(), 0
	var blank []int64
	for _, r := range s.Block.Rows {
		switch {
		case !worked[int64(r.Num)]:
		case textOf(r, b) != "":
			counted++
		case slices.ContainsFunc(parts, func(x *plan.Binding) bool { return textOf(r, x) != "" }):
		case slices.ContainsFunc(fish, func(x *plan.Binding) bool { return someOf(r, x) }):
			blank = append(blank, int64(r.Num))
		}
	}
	if len(blank) == 0 || counted < fewCounted || counted < 9*len(blank) {
		return
	}
	effect := []string{"strikes", "bands"}
	if hooks != nil {
		effect = []string{"strikes", "hooked", "bands"}
	}
	q.ask("blank bites", s.Plan.Name, b.Heading, fmt.Sprintf("%s fish, and nothing under %q, the first: %s. How many "+
		"bites were there? I count as many as fish.", subject(len(blank), "row", "count", s.Plan.Name), b.Heading,
		rowName(s, blank[0])), nil, effect, fmt.Sprint(blank))
	q.last().Brief = "A row counts its fish, and not its bites."
}

// someOf tells a cell of a count that is more than none.
func someOf(r layout.Row, b *plan.Binding) bool {
	v, ok := plainAmount(b, textOf(r, b))
	return ok && v > 0
}
