package meaning

import (
	"slices"

	"wakeledger/pipeline/phrase"
	"wakeledger/pipeline/plan"
)

// toldInRemarks takes a form's remarks for its hours and bites, where they tell how long lines were
// out and the tables of its sheet were not filled in: "Trolled 4 h with 5 lines, two dorado in the box".
func (l *Log) toldInRemarks(f *Understood) {
	b := f.Plan.Find("notes")
	inWords := f.Plan.Reads("stretches")
	if b == nil || !inWords && f.Plan.Binds("start_s", "duration_s", "line_hours") || len(phrase.Stretches(f.text(b.Index))) == 0 {
		return
	}
	for _, u := range l.Blocks {
		if u == f || u.Plan.Sheet != f.Plan.Sheet {
			continue
		}
		if u.fills(append([]string{"start_s", "end_s", "duration_s", "outcome"}, countNames...)...) {
			return
		}
	}
	b.Column = l.lexicon.named("notes", "story")
	if !inWords {
		f.Plan.Bindings = append(f.Plan.Bindings, plan.Binding{Index: b.Index, Heading: b.Heading, Column: l.lexicon.named("start_s", "stretches")})
	}
	f.Plan.Kind, f.told = plan.Flat, true
}

// fills tells a block that has a cell of one of the meanings.
func (u *Understood) fills(names ...string) bool {
	return slices.ContainsFunc(u.Plan.Bindings, func(b plan.Binding) bool {
		return slices.Contains(names, b.Column.Name) && (b.Index < 0 || len(column(u.b.rows, b.Index)) > 0)
	})
}
