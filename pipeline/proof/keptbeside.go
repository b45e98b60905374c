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
	hours := s.Stats.worked()
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

// moreTold asks about remarks that say of more bites than their row counts: "had one hit, never saw it" beside none.
func (q *inquiry) moreTold(s Subject) {
	if s.Plan.Kind != plan.Flat || !s.Plan.Binds("strikes_n") {
		return
	}
	hours, aside := s.Stats.worked(), map[int64]bool{}
	for _, p := range s.Stats.Aside {
		aside[int64(p.Pos.Row)] = true // it is asked about already
	}
	for i := range s.Plan.Bindings {
		b := &s.Plan.Bindings[i]
		if b.Column.Name != "notes" && b.Column.Parse != "fishlist" || b.Measured || b.Gone {
			continue
		}
		n, first := 0, ""
		for _, r := range s.Block.Rows {
			text := textOf(r, b)
			if text == "" || !hours[int64(r.Num)] || aside[int64(r.Num)] || otherFishing(text) {
				continue
			}
			if told := phrase.Tell(text, phrase.Defaults{}); !told.Nothing && told.Strikes > bitesIn(s.Plan, r) {
				if n++; first == "" {
					first = text
				}
			}
		}
		if n > 0 {
			q.ask("told beside", s.Plan.Name, b.Heading, fmt.Sprintf("%s of more bites than the row counts, the first "+
				"%q. The counts are taken: mend them in the log, or leave them.",
				subject(n, "remark", "tell", s.Plan.Name), first), nil, listing, first)
			q.last().Brief = "Remarks tell of more bites than their rows count: the counts are taken."
		}
	}
}

// bitesIn is how many bites the counts of a row tell.
func bitesIn(p *plan.Block, r layout.Row) int {
	of := func(names ...string) int {
		sum := 0
		for _, b := range p.Bindings {
			if slices.Contains(names, b.Column.Name) {
				n, _ := strconv.Atoi(strings.TrimSpace(cellAt(r, b.Index)))
				sum += n
			}
		}
		return sum
	}
	return max(of("strikes_n"), of("hooked_n", "missed_n"), boatedIn(p, r)+of("lost_n", "missed_n"))
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
	aboard := slices.Index(p.Figures, "landed_n")
	for _, c := range p.Catch {
		counts := phrase.Figures(strings.TrimSpace(cellAt(r, c.Index)))
		switch {
		case len(p.Figures) == 0 || len(counts) == 1 && p.Alone:
			add(c.Index)
		case aboard >= 0 && aboard < len(counts):
			sum += counts[aboard]
		}
	}
	return sum
}
