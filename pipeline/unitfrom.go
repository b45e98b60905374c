package pipeline

import (
	"wakeledger/pipeline/normalise"
	"wakeledger/pipeline/plan"
	"wakeledger/pipeline/unit"
)

// decide says of each column in which unit its numbers are read, and what that rests on, in
// the order in which the reader of cells asks.
func (r *SheetReport) decide(b *table, ev *normalise.Evidence, set normalise.Settings) {
	for i, x := range b.Plan.Bindings {
		if !x.Column.HasUnit {
			continue
		}
		c := &r.Columns[i]
		u, from := unitFrom(x, ev, set)
		if own, all := statedIn(b, x); own != "" && (all || u == "") {
			u, from = own, "its cells"
		}
		c.Decided, c.From = string(u), from
	}
}

func unitFrom(x plan.Binding, ev *normalise.Evidence, set normalise.Settings) (unit.Unit, string) {
	system, from := set.Units, "--log-units"
	if system == "" {
		system, from = ev.System(), "the log's other columns"
	}
	of := map[string]unit.Unit{"us": x.Column.US, "metric": x.Column.Metric}[system]
	switch {
	case x.Unit != "":
		return x.Unit, "its heading"
	case x.Only != "":
		return x.Only, "its numbers: no other is possible"
	case x.Column.Bare != "":
		return x.Column.Bare, "what is usual"
	case of != "":
		return of, from
	}
	return "", "not decided"
}

// statedIn is the first unit that cells of a column state themselves, and whether every
// number there states one.
func statedIn(b *table, x plan.Binding) (first unit.Unit, all bool) {
	all = true
	for _, row := range b.Block.Rows {
		cells := sheetRow(row).Cells
		if x.Index >= len(cells) || cells[x.Index] == "" {
			continue
		}
		q, err := unit.ParseQuantity(cells[x.Index], x.Column.Dimension, x.Column.Unit, unit.MarkOf(cells[x.Index]))
		switch {
		case err != nil:
		case !q.Stated:
			all = false
		case first == "":
			first = q.Unit
		}
	}
	return first, all
}
