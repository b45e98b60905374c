package meaning

import (
	"slices"

	"wakeledger/pipeline/plan"
)

// tellsStrike are the meanings by which one of several columns alike tells a strike: a lure alone tells none.
var tellsStrike = []string{"time_s", "outcome", "species", "length_cm", "girth_cm", "scale_kg", "loss_cause", "fight_s"}

// ofStretch are those by which it tells a stretch.
var ofStretch = []string{"start_s", "end_s", "duration_s", "speed_kn", "lines_out"}

// numberedAs reports whether a row has several columns of one of some meanings: a first, a second, a third.
func numberedAs(p *plan.Block, names []string) bool {
	return slices.ContainsFunc(p.Bindings, func(b plan.Binding) bool {
		return b.Set > 0 && slices.Contains(names, b.Column.Name)
	})
}

// noStretches adds up the counts of a row that are numbered, or are of the morning and the afternoon, where the row has
// one stretch: "Hits 1" and "Hits 2" of two lures.
func (x *builder) noStretches() {
	if numberedAs(x.plan, ofStretch) || numberedAs(x.plan, tellsStrike) || x.plan.Reads("stretches") {
		return
	}
	for i := range x.plan.Bindings {
		if b := &x.plan.Bindings[i]; b.Set > 0 && slices.Contains(countNames, b.Column.Name) {
			b.Set, b.Adds = 0, true
		}
	}
}

// noStrikes takes columns of a first, a second, a third lure for what was out, where no column of several tells of a
// strike: "Lure 1", "Lure 2" beside "Bites", or "Rod 1", "Rod 2" with the lures of each. Those of other gear, or of
// who fished, are kept by their names.
func (x *builder) noStrikes() {
	p := x.plan
	if p.Kind != plan.Flat && p.Kind != plan.Legs || numberedAs(p, tellsStrike) || p.StrikeSets() == 0 {
		return
	}
	of := map[string]int{}
	for _, b := range p.Bindings {
		if b.Index >= 0 {
			of[b.Column.Name]++
		}
	}
	lures := "lure"
	if of[lures] < 2 && of["line"] > 1 {
		lures = "line"
	}
	p.Bindings = slices.DeleteFunc(p.Bindings, func(b plan.Binding) bool {
		if b.Index < 0 || !b.OfStrike() || of[b.Column.Name] < 2 {
			return false
		}
		place := plan.Unknown{Index: b.Index, Heading: b.Heading}
		if b.Column.Name == lures {
			p.Spread = append(p.Spread, place)
		} else {
			place.Aside = "of the whole row"
		}
		p.Unknown = append(p.Unknown, place)
		return true
	})
}
