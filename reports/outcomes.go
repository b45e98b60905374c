package reports

import (
	"fmt"

	"wakeledger/pipeline/factors"
	"wakeledger/pipeline/sentence"
	"wakeledger/queries"
	"wakeledger/reports/page"
)

func (s *season) outcomesSection() (page.Section, error) {
	section := page.Section{ID: "outcomes", Heading: "Hook-ups by speed"}
	var strikes, hooked, boated, unknown int64
	var marks []page.SharesMark
	for _, r := range s.Outcomes {
		strikes, hooked, boated, unknown = strikes+r.Strikes, hooked+r.Hookups, boated+r.Boated, unknown+r.NotLogged
		marks = append(marks, outcomeMark(r, s.thin[r.Level]))
	}
	if strikes == 0 {
		section.Sentences = []string{"No strike is logged."}
		return section, nil
	}
	section.Sentences = s.outcomeSentences(strikes, hooked, boated, unknown)
	chart, err := page.Shares(page.Frame{
		Label: "Share of strikes hooked up, and share boated, by speed band, each with its 95 % interval. " +
			section.Sentences[0] + " The table below holds the figures.",
		Axis: "share of the strikes whose outcome is logged", Counts: "of strikes with an outcome",
	}, marks, "hooked up", "boated (landed or released)")
	section.Chart, section.Table = chart, s.outcomesTable([]int64{strikes, hooked, boated, unknown})
	section.Notes = []string{
		"A hook-up is a strike that came tight: lost, landed or released. The size of a mark shows how many strikes " +
			"it stands on.",
		"A strike whose outcome nobody wrote down is in neither share.",
	}
	return section, err
}

func outcomeMark(r queries.Outcomes, thin bool) page.SharesMark {
	known := r.Strikes - r.NotLogged
	counts := fmt.Sprintf("%s of %s hooked\n%s of %s boated", page.Count(r.Hookups), page.Count(known),
		page.Count(r.Boated), page.Count(known))
	if known == 0 {
		counts = "no strike"
	}
	return page.SharesMark{
		Level:  page.Level{Name: r.Level, Thin: thin, Counts: counts},
		First:  page.ShareMark{Share: r.HookupShare, Lo: r.HookupLo, Hi: r.HookupHi},
		Second: page.ShareMark{Share: r.BoatedShare, Lo: r.BoatedLo, Hi: r.BoatedHi},
		Of:     float64(known),
	}
}

// outcomeSentences are the season, then the level that boated the largest share.
func (s *season) outcomeSentences(strikes, hooked, boated, unknown int64) []string {
	out := []string{fmt.Sprintf("Of %s with a logged outcome, %s came tight and %s reached the boat.",
		page.Plural(strikes-unknown, "strike", "strikes"), page.Count(hooked), page.Count(boated))}
	if unknown > 0 {
		out[0] += fmt.Sprintf(" For %s the outcome is not logged.", page.Count(unknown))
	}
	var shares []estimateOf
	for _, r := range s.Outcomes {
		if r.Level != factors.NotLogged && !s.thin[r.Level] && r.BoatedShare != nil &&
			r.BoatedLo != nil && r.BoatedHi != nil {
			shares = append(shares, estimateOf{r.Level, *r.BoatedShare, *r.BoatedLo, *r.BoatedHi})
		}
	}
	lead, others, ok := leader(shares)
	if !ok {
		return out
	}
	for _, r := range s.Outcomes {
		if r.Level == lead.level {
			out = append(out, fmt.Sprintf("%s: %s of %s boated, %s (%s to %s), the largest share. %s",
				sentence.Capital(r.Level), page.Count(r.Boated),
				page.Plural(r.Strikes-r.NotLogged, "strike", "strikes"), page.Percent(lead.v),
				page.Number(lead.lo*100, 0), page.Percent(lead.hi), verdict(lead, others)))
		}
	}
	return out
}

// outcomesTable takes the sums: strikes, hook-ups, boated, outcome not logged.
func (s *season) outcomesTable(sums []int64) *page.Table {
	t := &page.Table{
		Caption: "outcomes by speed band",
		Columns: []page.Column{
			{Head: "Speed over ground"},
			{Head: "Strikes", Kind: page.Measure}, {Head: "With an outcome", Kind: page.Measure},
			{Head: "Hook-ups", Kind: page.Measure}, {Head: "Share hooked up", Kind: page.Share},
			{Head: "95 % interval", Kind: page.ShareGap},
			{Head: "Boated", Kind: page.Measure}, {Head: "Share boated", Kind: page.Share},
			{Head: "95 % interval", Kind: page.ShareGap},
		},
	}
	for _, r := range s.Outcomes {
		t.Rows = append(t.Rows, page.Row{Thin: s.thin[r.Level], Cells: []page.Cell{
			s.levelCell(r.Level), page.Whole(r.Strikes), page.Whole(r.Strikes - r.NotLogged),
			page.Whole(r.Hookups), page.ValueOf(r.HookupShare), page.Span(r.HookupLo, r.HookupHi),
			page.Whole(r.Boated), page.ValueOf(r.BoatedShare), page.Span(r.BoatedLo, r.BoatedHi),
		}})
	}
	t.Total = []page.Cell{page.Words("season"), page.Whole(sums[0]), page.Whole(sums[0] - sums[3]),
		page.Whole(sums[1]), share(sums[1], sums[0]-sums[3]), {}, page.Whole(sums[2]),
		share(sums[2], sums[0]-sums[3]), {}}
	return t
}

func share(part, all int64) page.Cell {
	if all <= 0 {
		return page.Cell{}
	}
	return page.Value(float64(part) / float64(all))
}
