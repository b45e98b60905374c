package proof

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"wakeledger/pipeline/layout"
	"wakeledger/pipeline/phrase"
	"wakeledger/pipeline/plan"
	"wakeledger/pipeline/words"
)

// keptBeside asks about remarks that tell of more fish kept than their row counts: "a skipjack too, for bait" beside
// a count of albacore.
func (q *inquiry) keptBeside(s Subject) {
	notes := s.Plan.Find("notes")
	if s.Plan.Kind != plan.Flat || notes == nil || notes.Column.Parse != "text" || notes.Measured ||
		!s.Plan.Binds("landed_n") && !s.Plan.Binds("kept_n") && len(s.Plan.Catch) == 0 {
		return
	}
	hours := map[int64]bool{}
	for _, w := range s.Stats.Worked {
		hours[w.Row] = true
	}
	n, first := 0, ""
	for _, r := range s.Block.Rows {
		text := textOf(r, notes)
		if text == "" || !hours[int64(r.Num)] || otherFishing(text) {
			continue
		}
		kept := 0
		for _, b := range phrase.Tell(text, phrase.Defaults{}).Bites {
			if b.Fate == words.Landed && b.Name != "" && (b.Method == "" || b.Method == "troll") {
				kept += max(b.N, 1)
			}
		}
		if kept > boatedIn(s.Plan, r) {
			if n++; first == "" {
				first = text
			}
		}
	}
	if n == 0 {
		return
	}
	q.ask("kept beside", s.Plan.Name, notes.Heading, fmt.Sprintf("%s of more fish kept than the row counts, the first "+
		"%q. The counts are taken: mend them in the log, or leave them.",
		subject(n, "remark", "tell", s.Plan.Name), first), nil,
		[]string{"landed", "hooked", "strikes", "bands", "fish"}, first)
	q.last().Brief = "Remarks tell of more fish kept than their rows count: the counts are taken."
}

// boatedIn is how many fish the counts of a row have in the boat, those let go among them.
func boatedIn(p *plan.Block, r layout.Row) int {
	sum := 0
	add := func(index int) {
		if index >= 0 && index < len(r.Cells) {
			n, _ := strconv.Atoi(strings.TrimSpace(r.Cells[index].Text))
			sum += n
		}
	}
	for _, b := range p.Bindings {
		if slices.Contains([]string{"landed_n", "kept_n", "released_n"}, b.Column.Name) {
			add(b.Index)
		}
	}
	for _, c := range p.Catch {
		add(c.Index)
	}
	return sum
}
