package reports

import (
	"fmt"

	"wakeledger/pipeline/factors"
	"wakeledger/pipeline/sentence"
	"wakeledger/queries"
	"wakeledger/reports/page"
)

func (s *season) strikesSection() (page.Section, error) {
	section := page.Section{ID: "strikes", Heading: "Strikes by speed band"}
	rate := s.rate()
	if rate == nil {
		section.Sentences = []string{"No line-hours are logged, so that there is no strike rate."}
		return section, nil
	}
	// Two digits of the season's rate, or of what three strikes would be.
	digits := page.Decimals(max(*rate, 3/s.strikeHours), 2)
	lead, others, ok := leader(s.rates())
	ok = ok && lead.v > 0
	var marks []page.RateMark
	for _, r := range s.StrikeRate {
		if ok && r.Level == lead.level {
			section.Sentences = []string{rateSentence(worded(factors.Speed, r), digits), verdict(lead, others)}
			if f := s.Worked.findingOf(factors.Speed); f != nil {
				section.Sentences = []string{grouped(f.Sentence), "Highest raw rate, good days not evened out: " +
					rateSentence(worded(factors.Speed, r), digits)}
			}
		}
		marks = append(marks, page.RateMark{Rate: r.Rate, Lo: r.RateLo, Hi: r.RateHi, Effort: r.LineHours,
			Level: page.Level{Name: r.Level, Thin: s.thin[r.Level],
				Counts: page.Plural(r.Strikes-r.WithoutHours, "strike", "strikes") + "\n" +
					hours(r.LineHours) + " line-h"}})
	}
	section.Sentences = append(section.Sentences, fmt.Sprintf("The season: %s in %s line-hours, %s per line-hour.",
		page.Plural(s.strikes-s.without, "strike", "strikes"), hours(s.strikeHours), page.Number(*rate, digits)))
	chart, err := page.Rates(page.Frame{
		Label: "Strikes per line-hour by speed band, each with its 95 % interval. " + section.Sentences[0] +
			" The table below holds the figures.",
		Axis: "strikes per line-hour", Counts: "strikes and line-hours",
	}, marks, rate, "the season's rate")
	section.Chart, section.Table = chart, s.strikesTable(digits)
	section.Notes = []string{
		"The bar's length is the rate and its thickness the line-hours, so that its area is the number of strikes. " +
			"An interval that leaves the chart ends in an arrow.",
		"Strikes come in clusters, and a band may owe its rate to a few good days; the bands were not fished side " +
			"by side.",
	}
	if e := s.Worked.evidenceOn(factors.Speed); e != nil {
		section.Notes = append(section.Notes[:1], evidenceNotes(*e, s.StrikeRate)...)
	}
	return section, err
}

// rates are the levels that may be compared: logged, with enough effort.
func (s *season) rates() []estimateOf {
	var out []estimateOf
	for _, r := range s.StrikeRate {
		if r.Level != factors.NotLogged && !s.thin[r.Level] && r.Rate != nil && r.RateLo != nil && r.RateHi != nil {
			out = append(out, estimateOf{r.Level, *r.Rate, *r.RateLo, *r.RateHi})
		}
	}
	return out
}

// rateSentence is one level in words; its rate and interval must be known.
func rateSentence(r queries.StrikeRate, digits int) string {
	return fmt.Sprintf("%s: %s in %s line-hours, %s per line-hour (%s to %s).", sentence.Capital(r.Level),
		page.Plural(r.Strikes, "strike", "strikes"), hours(r.LineHours),
		page.Number(*r.Rate, digits), page.Number(*r.RateLo, digits), page.Number(*r.RateHi, digits))
}

func (s *season) strikesTable(digits int) *page.Table {
	t := &page.Table{
		Caption: "strikes by speed band",
		Columns: []page.Column{
			{Head: "Speed over ground"},
			{Head: "Line-hours", Unit: "h", Kind: page.Measure, Decimals: 1},
			{Head: "Strikes", Kind: page.Measure}, {Head: "Of these in the rate", Kind: page.Measure},
			{Head: "Hook-ups", Kind: page.Measure},
			{Head: "Landed", Kind: page.Measure}, {Head: "Released", Kind: page.Measure},
			{Head: "Rate", Unit: "strikes per line-hour", Kind: page.Measure, Decimals: digits},
			{Head: "95 % interval", Unit: "strikes per line-hour", Kind: page.Interval, Decimals: digits},
		},
	}
	e := s.Worked.evidenceOn(factors.Speed)
	if e != nil {
		t.Columns = append(t.Columns, besideColumns(*e)...)
	}
	for _, r := range s.StrikeRate {
		row := page.Row{Thin: s.thin[r.Level], Cells: []page.Cell{
			s.levelCell(r.Level), page.Value(r.LineHours), page.Whole(r.Strikes),
			page.Whole(r.Strikes - r.WithoutHours), page.Whole(r.Hookups),
			page.Whole(r.Landed), page.Whole(r.Released), page.ValueOf(r.Rate), page.Span(r.RateLo, r.RateHi),
		}}
		if e != nil {
			row.Cells = append(row.Cells, beside(r)...)
		}
		t.Rows = append(t.Rows, row)
	}
	t.Total = []page.Cell{page.Words("season"), page.Value(s.strikeHours), page.Whole(s.strikes),
		page.Whole(s.strikes - s.without), page.Whole(s.hookups),
		page.Whole(s.landed), page.Whole(s.released), page.ValueOf(s.rate()), {}}
	t.Total = append(t.Total, make([]page.Cell, len(t.Columns)-len(t.Total))...)
	return t
}
