package reports

import (
	"fmt"

	"wakeledger/pipeline/factors"
	"wakeledger/pipeline/sentence"
	"wakeledger/queries"
	"wakeledger/reports/page"
)

// fewHookups is how many hook-ups of a known end a level of drag takes to be
// compared; with fewer its mark is drawn pale.
const fewHookups = 10

// gearSection is break-offs and pulled hooks by drag as a part of the line class.
func (s *season) gearSection() (page.Section, error) {
	section := page.Section{ID: "gear", Heading: "Was the gear up to it"}
	var hookups, known, breaks, pulled int64
	var marks []page.SharesMark
	for _, d := range s.Drag {
		hookups, known = hookups+d.Hookups, known+d.Hookups-d.EndNotKnown
		breaks, pulled = breaks+d.BreakOffs, pulled+d.Pulled
		marks = append(marks, dragMark(d))
	}
	if known == 0 {
		section.Sentences = []string{"No hook-up whose end is known is logged: nothing can be said of the gear."}
		return section, nil
	}
	section.Sentences = []string{fmt.Sprintf("Of %s whose end is known, %s broke off (line, leader or knot) and %s "+
		"pulled the hook.",
		page.Plural(known, "hook-up", "hook-ups"), page.Count(breaks), page.Count(pulled)), s.dragVerdict()}
	chart, err := page.Shares(page.Frame{
		Label: "Share of hook-ups broken off, and share lost to a pulled hook, by drag in per cent of the line " +
			"class, each with its 95 % interval. " + section.Sentences[0] + " The table below holds the figures.",
		Axis: "share of the hook-ups whose end is known", Counts: "of hook-ups",
	}, marks, "broken off", "hook pulled")
	section.Chart, section.Table = chart, s.dragTable()
	section.Notes = append(s.failureNotes(),
		"Drag as logged for the line, in per cent of its line class; what it was at the moment of the break is not "+
			"logged. More drag was not given at random: it goes with heavier tackle and larger fish.",
		"A quarter to a third of the line class is what the trade fishes: common practice, no source. Heavy drag is "+
			"set on a scale, with harness and a knife at hand.",
		"95 % intervals: Wilson 1927. A lost fish without a logged cause is in neither share.")
	return section, err
}

func dragMark(d queries.Drag) page.SharesMark {
	known := d.Hookups - d.EndNotKnown
	return page.SharesMark{
		Level: page.Level{Name: factors.Text(factors.Drag, d.Level), Thin: known < fewHookups,
			Counts: fmt.Sprintf("%s of %s broke off\n%s of %s pulled", page.Count(d.BreakOffs), page.Count(known),
				page.Count(d.Pulled), page.Count(known))},
		First:  page.ShareMark{Share: d.BreakShare, Lo: d.BreakLo, Hi: d.BreakHi},
		Second: page.ShareMark{Share: d.PulledShare, Lo: d.PulledLo, Hi: d.PulledHi},
		Of:     float64(known),
	}
}

// dragVerdict says whether break-offs differ between drags, no more strongly than
// the intervals do.
func (s *season) dragVerdict() string {
	var shares []estimateOf
	for _, d := range s.Drag {
		if d.Level != factors.NotLogged && d.BreakShare != nil && d.Hookups-d.EndNotKnown >= fewHookups {
			shares = append(shares, estimateOf{factors.Text(factors.Drag, d.Level),
				*d.BreakShare, *d.BreakLo, *d.BreakHi})
		}
	}
	lead, others, ok := leader(shares)
	if !ok || len(others) == 0 {
		return fmt.Sprintf("Fewer than two levels of drag have %d hook-ups: they cannot be compared.", fewHookups)
	}
	for _, o := range others {
		if o.hi >= lead.lo {
			return fmt.Sprintf("Most broke off at a drag of %s of the line class, %s (%s to %s), but the intervals "+
				"overlap: the season does not tell the drags apart.",
				lead.level, page.Percent(lead.v), page.Percent(lead.lo), page.Percent(lead.hi))
		}
	}
	return fmt.Sprintf("Most broke off at a drag of %s of the line class, %s (%s to %s): its interval lies above "+
		"that of the others. It is one season's result.",
		lead.level, page.Percent(lead.v), page.Percent(lead.lo), page.Percent(lead.hi))
}

func (s *season) dragTable() *page.Table {
	t := &page.Table{Caption: "how hook-ups ended, by drag", Columns: []page.Column{
		{Head: "Drag", Unit: "of line class"}, {Head: "Hook-ups", Kind: page.Measure},
		{Head: "Lost", Kind: page.Measure}, {Head: "End known", Kind: page.Measure},
		{Head: "Broken off", Kind: page.Measure}, {Head: "Share broken off", Kind: page.Share},
		{Head: "95 % interval", Kind: page.ShareGap},
		{Head: "Hook pulled", Kind: page.Measure}, {Head: "Share, hook pulled", Kind: page.Share},
		{Head: "95 % interval", Kind: page.ShareGap}}}
	for _, d := range s.Drag {
		t.Rows = append(t.Rows, page.Row{Thin: d.Hookups-d.EndNotKnown < fewHookups, Cells: []page.Cell{
			page.Words(factors.Text(factors.Drag, d.Level)), page.Whole(d.Hookups), page.Whole(d.Lost),
			page.Whole(d.Hookups - d.EndNotKnown),
			page.Whole(d.BreakOffs), page.ValueOf(d.BreakShare), page.Span(d.BreakLo, d.BreakHi),
			page.Whole(d.Pulled), page.ValueOf(d.PulledShare), page.Span(d.PulledLo, d.PulledHi),
		}})
	}
	return t
}

// failureNotes are a sentence for each part of the gear: how often it failed, and on
// which leader or hooks most often.
func (s *season) failureNotes() []string {
	var out []string
	for _, f := range s.Failures {
		if f.Gear != "all" || f.Share == nil {
			continue
		}
		out = append(out, fmt.Sprintf("%s failed in %s of %s: %s %% (%s to %s)%s.", sentence.Capital(f.Part),
			page.Count(f.Failed), page.Plural(f.Known, "hook-up", "hook-ups"),
			page.Number(100**f.Share, 1), page.Number(100**f.Lo, 1), page.Number(100**f.Hi, 1), s.failedOn(f.Part)))
	}
	return out
}

// failedOn lists the leaders or hooks that failed, most first by the log's order.
func (s *season) failedOn(part string) string {
	var on []string
	for _, f := range s.Failures {
		if f.Part == part && f.Gear != "all" && f.Failed > 0 {
			on = append(on, fmt.Sprintf("%s: %s of %s", f.Gear, page.Count(f.Failed), page.Count(f.Known)))
		}
	}
	if len(on) == 0 {
		return ""
	}
	return "; by what it was, " + sentence.List(on)
}
