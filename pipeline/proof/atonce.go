package proof

import (
	"fmt"
	"slices"
	"strings"

	"wakeledger/pipeline/plan"
)

// atOnce asks about two tables that have stretches at the same time of one day: of two boats, or told twice. Those of
// the same begin and end are one stretch, which a second table may tell more of; both may not count its bites.
func (q *inquiry) atOnce() {
	if slices.ContainsFunc(q.out, func(x Question) bool { return x.Kind == "sheet day" }) {
		return // a day that was copied is asked about
	}
	for i := range q.subjects {
		for j := i + 1; j < len(q.subjects); j++ {
			a, b := &q.subjects[i], &q.subjects[j]
			if !ofStretches(a) || !ofStretches(b) {
				continue
			}
			n, first := overlapping(a.Stats, b.Stats)
			if n == 0 {
				continue
			}
			q.ask("at once", a.Plan.Name, b.Plan.Name, fmt.Sprintf("%s row %d and %s row %d are for the same time "+
				"of one day%s. Are they of two boats, or told twice? Both are counted.",
				tableIn(a.Plan.Name), first.Row, tableIn(b.Plan.Name), first.Other, pairsOf(n)), nil, all,
				rowText(a, first.Row), rowText(b, first.Other), fmt.Sprint(n))
			q.last().Brief = "Two tables have stretches at the same time of one day: both are counted."
			return
		}
	}
}

func ofStretches(s *Subject) bool {
	return (s.Plan.Kind == plan.Legs || s.Plan.Kind == plan.Flat) && !s.Plan.NoEffort
}

func tableIn(sheet string) string {
	if sheet == "" {
		return "A table"
	}
	return fmt.Sprintf("%q", sheet)
}

// overlapping is how many stretches of one table overlap with one of another, and the rows of the first.
func overlapping(a, b *Stats) (n int, first Overlap) {
	twice := a.ByCount > 0 && b.ByCount > 0
	for day, spans := range a.spans {
		for _, x := range spans {
			k := slices.IndexFunc(b.spans[day], func(o span) bool {
				same := x.from == o.from && x.to == o.to
				return x.from < o.to && o.from < x.to && (twice || !same) && (x.line == "" || x.line == o.line)
			})
			if k < 0 || strings.HasPrefix(day, "trip ") { // numbers of trips may begin anew
				continue
			}
			if n++; first.Row == 0 || x.row < first.Row {
				first = Overlap{x.row, b.spans[day][k].row}
			}
		}
	}
	return n, first
}
