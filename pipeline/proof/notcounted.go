package proof

import (
	"fmt"
	"strings"

	"wakeledger/pipeline/plan"
	"wakeledger/pipeline/record"
)

// notCounted asks how many bites there were on rows that say that nobody counted them: of each of a few, and of more of
// them at once.
func (q *inquiry) notCounted(s *Subject) {
	var rows []int64
	for _, p := range s.Stats.Aside {
		if notCounted(p) && p.Pos.Row > 0 {
			rows = append(rows, int64(p.Pos.Row))
		}
	}
	b := s.Plan.Find("strikes_n")
	if len(rows) == 0 || b == nil || b.Index < 0 {
		return
	}
	effect := []string{"strikes", "bands"}
	const brief = "A row says that nobody counted its bites: those that it tells of are counted."
	if len(rows) > mostCells {
		q.ask("not counted", s.Plan.Name, b.Heading, fmt.Sprintf("%d rows say that nobody counted their bites, the "+
			"first %s: those that they tell of are counted, and there were more.", len(rows), rowName(s, rows[0])), nil,
			effect, rowText(s, rows[0]))
		q.last().Brief = brief
		return
	}
	for _, row := range rows {
		q.ask("not counted", s.Plan.Name, b.Heading, fmt.Sprintf("%s: nobody counted the bites, as the row says. How "+
			"many were there? Choose, or say the number.", rowName(s, row)), []string{"not known"}, effect,
			rowText(s, row))
		x := q.last()
		x.Brief, x.Choices, x.cell, x.column = brief, []string{Leave}, plan.Cell{Row: row, Index: b.Index}, b
	}
}

// notCounted tells a row that says that nobody counted its bites.
func notCounted(p record.Problem) bool { return strings.HasPrefix(p.Reason, record.NotCounted) }
