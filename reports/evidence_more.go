package reports

import (
	"fmt"
	"strings"

	"wakeledger/pipeline/factors"
	"wakeledger/pipeline/sentence"
	"wakeledger/queries"
	"wakeledger/queries/evidence"
	"wakeledger/queries/stats"
	"wakeledger/reports/page"
)

// mixedSection tells what was changed together.
func (s *season) mixedSection() (page.Section, error) {
	section := page.Section{ID: "mixed", Heading: "What was changed together"}
	t := &page.Table{Caption: "factors that went together", Columns: []page.Column{
		{Head: "Factor"}, {Head: "Went with"}, {Head: "Share", Unit: "of the other's changes on one trip",
			Kind: page.Measure, Decimals: 2},
		{Head: "Ratios made wider", Unit: "times", Kind: page.Measure, Decimals: 1}, {Head: "Held still"},
	}}
	for _, r := range s.Worked.Mixed {
		with := ""
		if r.With != nil {
			with = factors.Noun(*r.With)
			section.Sentences = append(section.Sentences, r.Note)
		}
		var held []string
		if r.Held != "" {
			held = strings.Split(r.Held, ", ")
		}
		t.Rows = append(t.Rows, page.Row{Cells: []page.Cell{page.Words(sentence.Capital(factors.Noun(r.Factor))),
			page.Words(with), page.ValueOf(r.Share),
			page.ValueOf(r.Inflation), page.Words(nouns(held))}})
	}
	if len(section.Sentences) == 0 {
		section.Sentences = []string{"No two settings were changed together so much that one hides the other."}
	}
	if len(t.Rows) > 0 {
		section.Table = t
	}
	section.Notes = []string{"Counted within trips (for lures and lines within legs), by line-hours alone. What " +
		"follows by nature, as a lure's weight from the lure, is left out."}
	return section, nil
}

// mediansTable compares weights between speed bands, species by species.
func (s *season) mediansTable() *page.Table {
	t := &page.Table{Caption: "median weight by species and speed band", Columns: []page.Column{
		{Head: "Species"}, {Head: "Speed over ground"}, {Head: "Fish with a weight", Kind: page.Measure},
		{Head: "On a scale", Kind: page.Measure},
		{Head: "Median", Unit: s.weight, Kind: page.Measure, Decimals: 1},
		{Head: "95 % interval", Unit: s.weight, Kind: page.Interval, Decimals: 1},
		{Head: "Heavier by", Unit: s.weight, Kind: page.Measure, Decimals: 1},
		{Head: "95 % interval", Unit: s.weight, Kind: page.Interval, Decimals: 1},
		{Head: "Verdict", Kind: page.Token},
	}}
	for _, r := range s.Worked.Medians {
		t.Rows = append(t.Rows, page.Row{Thin: r.PValue == nil && r.Fish < 4, Cells: []page.Cell{
			page.Words(sentence.Capital(fishNames(r.Species))),
			page.Words(s.tagged(factors.Text(factors.Speed, r.Level))),
			page.Whole(r.Fish), page.Whole(r.OnScale),
			page.ValueOf(scaled(r.Median, s.perKG)), page.Span(scaled(r.MedianLo, s.perKG),
				scaled(r.MedianHi, s.perKG)),
			page.ValueOf(scaled(r.Shift, s.perKG)), page.Span(scaled(r.ShiftLo, s.perKG), scaled(r.ShiftHi, s.perKG)),
			page.Words(r.Verdict),
		}})
	}
	return t
}

// sizeSentence tells a difference that is settled or leaning.
func (s *season) sizeSentence(r queries.SizeMedian) string {
	out := fmt.Sprintf("%s at %s, %s: %s %s %s than at the band with the most fish", fishNames(r.Species),
		factors.Text(factors.Speed, r.Level), r.Verdict,
		page.Number(abs(*r.Shift)*s.perKG, 0), s.weight, heavier(*r.Shift))
	if r.ShiftLo != nil && r.ShiftHi != nil {
		lo, hi := abs(*r.ShiftLo)*s.perKG, abs(*r.ShiftHi)*s.perKG
		out += fmt.Sprintf(" (%s to %s)", page.Number(min(lo, hi), 0), page.Number(max(lo, hi), 0))
	}
	if r.Verdict == string(evidence.Leaning) {
		out += "; with all bands and species compared luck alone could do this"
	}
	return out + "."
}

func heavier(shift float64) string {
	if shift < 0 {
		return "lighter"
	}
	return "heavier"
}

func abs(v float64) float64 { return max(v, -v) }

// nextSection is what it would take to know.
func (s *season) nextSection() (page.Section, error) {
	section := page.Section{ID: "next", Heading: "What to try next season"}
	if len(s.Worked.Next) == 0 {
		section.Sentences = []string{"There is no open question with two settings that have hours enough to plan by."}
		return section, nil
	}
	first := s.Worked.Next[0]
	for _, q := range s.Worked.Next {
		if q.Leaning && !first.Leaning {
			first = q
		}
	}
	text := func(level string) string { return factors.Text(first.Factor, level) }
	section.Sentences = []string{nextSentence(first, text), "A day that compares: " + first.PairedDay}
	for _, q := range s.Worked.Next {
		if q.SideBySide != first.SideBySide && q.Factor != "position" {
			section.Sentences = append(section.Sentences,
				fmt.Sprintf("For %s: %s", factors.Noun(q.Factor), q.PairedDay))
			break
		}
	}
	if n := len(s.Worked.Plan); n > 0 {
		section.Sentences = append(section.Sentences, planSentence(s.Worked.Plan))
		section.Notes = append(section.Notes, planLines(s.Worked.Plan)...)
	}
	section.Table = nextTable(s.Worked.Next)
	section.Notes = append(section.Notes,
		fmt.Sprintf("Settled four times in five by this report's own rules, if one setting truly brings %s the "+
			"strikes of the other: simulated at this season's rate, luck and hours. A larger difference takes less, "+
			"a smaller one more.", evidence.Times(first.Ratio)),
		"A lookout and the weather come before any plan.")
	return section, nil
}

func nextSentence(q queries.NextSeason, text func(string) string) string {
	what := fmt.Sprintf("whether %s of %s brings %s the strikes of %s", factors.Noun(q.Factor), text(q.SettingA),
		evidence.Times(q.Ratio), text(q.SettingB))
	if q.Trips == nil {
		return fmt.Sprintf("More than %d trips like this season's would be needed to settle %s.",
			evidence.MostPlanTrips, what)
	}
	return fmt.Sprintf(
		"To settle %s takes about %s like this season's with half the hours at each, %s line-hours each.", what,
		page.Plural(*q.Trips, "trip", "trips"), hours(*q.Hours))
}

func planSentence(plan []queries.PlanDay) string {
	last := plan[len(plan)-1]
	head := fmt.Sprintf("A plan for %s is listed below. At this season's hours and rate it has a chance of ",
		page.Plural(int64(len(plan)), "trip", "trips"))
	switch {
	case last.BoatChance != nil && last.LineChance != nil:
		return head + fmt.Sprintf("%s to settle the boat's setting and of %s to settle the lines'.",
			page.Percent(*last.BoatChance), page.Percent(*last.LineChance))
	case last.BoatChance != nil:
		return head + page.Percent(*last.BoatChance) + " to settle it."
	case last.LineChance != nil:
		return head + page.Percent(*last.LineChance) + " to settle it."
	}
	return "A plan is listed below."
}

// planLines are the trips of a plan, one a line.
func planLines(plan []queries.PlanDay) []string {
	var out []string
	for _, d := range plan {
		line := fmt.Sprintf("Trip %d: ", d.Trip)
		if d.FirstHalf != "" {
			line += "first half " + d.FirstHalf + ", second half " + d.SecondHalf
		}
		if d.Port != "" {
			if d.FirstHalf != "" {
				line += "; "
			}
			line += d.Port + " to port and " + d.Starboard + " to starboard, changed over at half time"
		}
		out = append(out, line+".")
	}
	return out
}

func nextTable(next []queries.NextSeason) *page.Table {
	t := &page.Table{Caption: "trips that would settle each question", Columns: []page.Column{
		{Head: "Factor"}, {Head: "One setting"}, {Head: "The other"},
		{Head: "Fished so far", Unit: "h, one", Kind: page.Measure},
		{Head: "Fished so far", Unit: "h, the other", Kind: page.Measure},
		{Head: "Trips", Unit: "both on each", Kind: page.Measure}, {Head: "Line-hours at each", Kind: page.Measure},
	}}
	for _, q := range next {
		trips := page.Words(fmt.Sprintf("more than %d", evidence.MostPlanTrips))
		if q.Trips != nil {
			trips = page.Whole(*q.Trips)
		}
		t.Rows = append(t.Rows, page.Row{Thin: q.Trips == nil, Cells: []page.Cell{
			page.Words(sentence.Capital(factors.Noun(q.Factor))), page.Words(factors.Text(q.Factor, q.SettingA)),
			page.Words(factors.Text(q.Factor, q.SettingB)),
			page.Value(q.HadA), page.Value(q.HadB), trips, page.ValueOf(q.Hours),
		}})
	}
	return t
}

// spreadSection is tangles by the smallest gap in the spread.
func (s *season) spreadSection() (page.Section, error) {
	section := page.Section{ID: "spread", Heading: "The spread: gaps and tangles"}
	var legs, tangles int64
	hoursAll, supported := 0.0, -1
	for i, g := range s.Worked.Spread {
		legs, tangles, hoursAll = legs+g.Legs, tangles+g.Tangles, hoursAll+g.Hours
		if g.Supported {
			supported = i
		}
	}
	if legs == 0 {
		section.Sentences = []string{"No leg has the setbacks of two lines and says whether lines tangled."}
		return section, nil
	}
	head := fmt.Sprintf("%s in %s leg-hours with the gaps logged. ",
		page.Plural(tangles, "leg with a tangle", "legs with a tangle"), hours(hoursAll))
	if supported < 0 {
		section.Sentences = []string{head + "The season does not show a gap below which lines tangle more."}
	} else {
		g := s.Worked.Spread[supported]
		section.Sentences = []string{fmt.Sprintf("%sWhere two lines ran less than %s apart in setback, tangles were "+
			"%s as frequent as with wider gaps: the season supports %s or more.",
			head, s.gap(g.GapLo), evidence.Times(*g.BelowRatio), s.gap(g.GapLo))}
	}
	var marks []page.RateMark
	t := &page.Table{Caption: "tangles by the smallest gap", Columns: []page.Column{
		{Head: "Smallest gap", Unit: s.far + " of setback"}, {Head: "Legs", Kind: page.Measure},
		{Head: "Leg-hours", Kind: page.Measure, Decimals: 1}, {Head: "Legs with a tangle", Kind: page.Measure},
		{Head: "Tangles per leg-hour", Kind: page.Measure, Decimals: 3},
		{Head: "95 % interval", Kind: page.Interval, Decimals: 3},
		{Head: "Times as often below", Kind: page.Measure, Decimals: 1},
		{Head: "Luck alone would show as much", Kind: page.Token},
	}}
	thin := evidence.Enough(stats.Count{Events: tangles, Effort: hoursAll})
	for _, g := range s.Worked.Spread {
		name := s.gap(g.GapLo) + " and up"
		if g.GapHi != nil {
			name = s.gapNumber(g.GapLo) + " to " + s.gap(*g.GapHi)
		}
		if g.Hours > 0 {
			marks = append(marks, page.RateMark{Rate: g.Rate, Lo: g.RateLo, Hi: g.RateHi, Effort: g.Hours,
				Level: page.Level{Name: name, Thin: g.Hours < thin,
					Counts: page.Plural(g.Tangles, "tangle", "tangles") + "\n" + hours(g.Hours) + " leg-h"}})
		}
		t.Rows = append(t.Rows, page.Row{Thin: g.Hours < thin, Cells: []page.Cell{
			page.Words(name), page.Whole(g.Legs), page.Value(g.Hours), page.Whole(g.Tangles), page.ValueOf(g.Rate),
			page.Span(g.RateLo, g.RateHi),
			page.ValueOf(g.BelowRatio), luck(g.PValue),
		}})
	}
	chart, err := page.Rates(page.Frame{Label: "Tangles per leg-hour by the smallest gap between two lines. " +
		section.Sentences[0] + " The table below holds the figures.",
		Axis: "tangles per leg-hour", Counts: "tangles and leg-hours"}, marks, nil, "")
	section.Chart, section.Table = chart, t
	section.Notes = []string{"Each leg stands at the smallest difference in setback between two of its lines. Legs " +
		"that say nothing of tangles count as none where their log tells of tangles elsewhere."}
	return section, err
}

// gap is a distance in m as a difference of setbacks in the unit shown.
func (s *season) gap(m float64) string {
	return s.gapNumber(m) + " " + s.far
}

// gapNumber has one decimal where an edge is not round in the unit shown.
func (s *season) gapNumber(m float64) string {
	v := m * s.perM
	return page.Number(v, weightDecimals([]float64{v}))
}

// workedMethods are the methods of the evidence, one a line.
func (s *season) workedMethods() []string {
	var out []string
	for _, m := range s.Worked.Methods {
		line := m.Method + ": " + m.Words
		if m.Formula != "" {
			line += " Formula: " + m.Formula + "."
		}
		out = append(out, line+" Source: "+m.Source+".")
	}
	return out
}
