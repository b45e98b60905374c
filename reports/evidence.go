package reports

import (
	"fmt"
	"math"
	"slices"

	"wakeledger/pipeline/factors"
	"wakeledger/pipeline/sentence"
	"wakeledger/queries"
	"wakeledger/queries/evidence"
	"wakeledger/queries/stats"
	"wakeledger/reports/page"
)

// Worked is what the season says of what worked: the evidence on every factor,
// the findings in the order in which they are told, and what follows from them.
type Worked struct {
	Evidence []queries.Evidence
	Findings []queries.Finding
	Mixed    []queries.MixedUp
	Medians  []queries.SizeMedian // by speed band
	Next     []queries.NextSeason
	Plan     []queries.PlanDay
	Spread   []queries.SpreadGap
	Methods  []queries.Method
}

// findingOf is the finding on a factor; nil where there is none.
func (w Worked) findingOf(factor string) *queries.Finding {
	for i := range w.Findings {
		if w.Findings[i].Factor == factor {
			return &w.Findings[i]
		}
	}
	return nil
}

// evidenceOn is the evidence on a factor; nil where there is none.
func (w Worked) evidenceOn(factor string) *queries.Evidence {
	for i := range w.Evidence {
		if w.Evidence[i].Factor == factor {
			return &w.Evidence[i]
		}
	}
	return nil
}

// Rates are the rows of strike-rate by a factor, as the season file has them.
func (w Worked) Rates(factor string) []queries.StrikeRate {
	if e := w.evidenceOn(factor); e != nil {
		return slices.Clone(e.Rows)
	}
	return nil
}

// factorSections are the sections of the factors but speed, the clearest
// finding first. A factor with fewer than two levels that have hours has none.
func (s *season) factorSections() []func() (page.Section, error) {
	var out []func() (page.Section, error)
	for _, f := range s.Worked.Findings {
		for _, e := range s.Worked.Evidence {
			if e.Factor == f.Factor && f.Factor != factors.Speed && e.Finding.Levels >= 2 {
				out = append(out, func() (page.Section, error) { return s.factorSection(e, f) })
			}
		}
	}
	return out
}

// luck words a p-value: how often chance alone would show as much.
func luck(p *float64) page.Cell {
	if p == nil {
		return page.Cell{}
	}
	return page.Words(luckWords(*p))
}

func luckWords(p float64) string {
	switch n := page.Number(p*100, 0); {
	case p < 0.005:
		return "less than 1 time in 100"
	case n == "1":
		return "1 time in 100"
	case p < 0.5:
		return n + " times in 100"
	}
	return "half the time or more"
}

// factorSection is one factor's rates by level.
func (s *season) factorSection(e queries.Evidence, f queries.Finding) (page.Section, error) {
	noun := factors.Noun(e.Factor)
	section := page.Section{ID: "by-" + e.Factor, Heading: "Strikes by " + noun,
		Sentences: []string{grouped(f.Sentence)}}
	rows := lastNotLogged(e.Rows, func(r queries.StrikeRate) string { return r.Level })
	digits := rateDigits(rows)
	if best := ranked(rows); best != nil {
		section.Sentences = append(section.Sentences,
			"Highest raw rate, good days not evened out: "+rateSentence(worded(e.Factor, *best), digits))
	}
	var marks []page.RateMark
	for _, r := range rows {
		if r.LineHours == 0 {
			continue // nothing to draw; the table has it
		}
		marks = append(marks, page.RateMark{Rate: r.Rate, Lo: r.RateLo, Hi: r.RateHi, Effort: r.LineHours,
			Level: page.Level{Name: factors.Text(e.Factor, r.Level), Thin: r.LittleEffort,
				Counts: page.Plural(r.Strikes-r.WithoutHours, "strike", "strikes") + "\n" +
					hours(r.LineHours) + " line-h"}})
	}
	var reference *float64
	if c := logged(e); c.Effort > 0 {
		rate := float64(c.Events) / c.Effort
		reference = &rate
	}
	chart, err := page.Rates(page.Frame{
		Label: "Strikes per line-hour by " + noun + ", each with its 95 % interval. " + grouped(f.Sentence) +
			" The table below holds the figures.",
		Axis: "strikes per line-hour", Counts: "strikes and line-hours",
	}, marks, reference, "the rate of all that is logged")
	section.Chart, section.Table = chart, evidenceTable(e, rows, digits)
	section.Notes = evidenceNotes(e, rows)
	return section, err
}

// logged is the strikes and hours whose level of the factor is logged. A strike without
// an hour, on a leg whose hours are known, is in no level, and so not in their sum.
func logged(e queries.Evidence) stats.Count {
	var c stats.Count
	for _, l := range e.Comparison.Levels {
		if l.Level != factors.NotLogged {
			c.Events, c.Effort = c.Events+l.Count.Events, c.Effort+l.Count.Effort
		}
	}
	return c
}

// rateDigits shows two digits of the largest solid rate.
func rateDigits(rows []queries.StrikeRate) int {
	top := 0.0
	for _, r := range rows {
		if r.Rate != nil && !r.LittleEffort {
			top = max(top, *r.Rate)
		}
	}
	return page.Decimals(top, 2)
}

func worded(factor string, r queries.StrikeRate) queries.StrikeRate {
	r.Level = factors.Text(factor, r.Level)
	r.Strikes -= r.WithoutHours
	return r
}

// ranked is the level with the highest rate for ranking among those with enough
// effort; nil where ranks do not differ.
func ranked(rows []queries.StrikeRate) *queries.StrikeRate {
	var best *queries.StrikeRate
	differ := false
	for i := range rows {
		r := &rows[i]
		if r.LittleEffort || r.Level == factors.NotLogged || r.ShrunkRate == nil || r.RateLo == nil {
			continue
		}
		if best != nil && *r.ShrunkRate != *best.ShrunkRate {
			differ = true
		}
		if best == nil || *r.ShrunkRate > *best.ShrunkRate {
			best = r
		}
	}
	if !differ {
		return nil
	}
	return best
}

func evidenceTable(e queries.Evidence, rows []queries.StrikeRate, digits int) *page.Table {
	t := &page.Table{Caption: "strikes by " + factors.Noun(e.Factor), Columns: []page.Column{
		{Head: sentence.Capital(factors.Noun(e.Factor))}, {Head: "Trips", Kind: page.Measure},
		{Head: "Line-hours", Unit: "h", Kind: page.Measure, Decimals: 1}, {Head: "Strikes", Kind: page.Measure},
		{Head: "Of these in the rate", Kind: page.Measure},
		{Head: "Rate", Unit: "strikes per line-hour", Kind: page.Measure, Decimals: digits},
		{Head: "95 % interval", Unit: "strikes per line-hour", Kind: page.Interval, Decimals: digits},
		{Head: "For ranking", Unit: "strikes per line-hour", Kind: page.Measure, Decimals: digits},
	}}
	t.Columns = append(t.Columns, besideColumns(e)...)
	strikes := int64(0)
	for _, r := range rows {
		if r.Level != factors.NotLogged {
			strikes += r.Strikes
		}
		name := factors.Text(e.Factor, r.Level)
		if r.LittleEffort && r.Level != factors.NotLogged {
			name += " (" + page.LittleEffort + ")"
		}
		cells := []page.Cell{
			page.Words(name), page.Whole(r.Trips), page.Value(r.LineHours), page.Whole(r.Strikes),
			page.Whole(r.Strikes - r.WithoutHours),
			page.ValueOf(r.Rate), page.Span(r.RateLo, r.RateHi), page.ValueOf(r.ShrunkRate),
		}
		t.Rows = append(t.Rows, page.Row{Thin: r.LittleEffort, Cells: append(cells, beside(r)...)})
	}
	if c := logged(e); c.Effort > 0 {
		t.Total = []page.Cell{page.Words("all that is logged"), {}, page.Value(c.Effort), page.Whole(strikes),
			page.Whole(c.Events), page.Value(float64(c.Events) / c.Effort)}
		t.Total = append(t.Total, make([]page.Cell, len(t.Columns)-len(t.Total))...)
	}
	return t
}

// besideColumns are the columns of the side-by-side comparison.
func besideColumns(e queries.Evidence) []page.Column {
	with := ""
	if c := e.Comparison; c.Reference >= 0 {
		with = "times the rate of " + factors.Text(e.Factor, c.Levels[c.Reference].Level)
	}
	shared := "Trips that fished both"
	if e.Comparison.ByLeg {
		shared = "Legs that fished both"
	}
	return []page.Column{
		{Head: "Side by side", Unit: with, Kind: page.Measure, Decimals: 2},
		{Head: "95 % interval", Kind: page.Interval, Decimals: 2},
		{Head: "Luck alone would show as much", Kind: page.Token}, {Head: shared, Kind: page.Measure},
	}
}

func beside(r queries.StrikeRate) []page.Cell {
	both := page.Cell{}
	if r.ComparedWith != "" {
		both = page.Whole(r.SharedStrata)
	}
	return []page.Cell{page.ValueOf(r.Ratio), page.Span(r.RatioLo, r.RatioHi), luck(r.PValue), both}
}

// evidenceNotes is what must be known to read a factor's rates.
func evidenceNotes(e queries.Evidence, rows []queries.StrikeRate) []string {
	var out []string
	c := e.Comparison
	if c.Trips > 0 {
		out = append(out, fmt.Sprintf("Strikes come in clusters: the intervals of the rates allow for trips whose "+
			"luck differs by %s either way, as %s and what is usual suggest.",
			page.Percent(math.Sqrt(c.Luck)), page.Plural(int64(c.Trips), "trip", "trips")))
	}
	if len(c.Held) > 0 {
		out = append(out, "Held still in the side-by-side figures: "+nouns(c.Held)+".")
	}
	var missing, all, without int64
	var missingHours, allHours float64
	for _, r := range rows {
		all, allHours, without = all+r.Strikes, allHours+r.LineHours, without+r.WithoutHours
		if r.Level == factors.NotLogged {
			missing, missingHours = r.Strikes, r.LineHours
		}
	}
	if all > 0 && allHours > 0 && float64(missing)/float64(all) > missingHours/allHours+.05 {
		out = append(out, fmt.Sprintf("For %s of %s strikes the %s is not logged while their hours are: all the "+
			"rates here come out too low, and compare with each other only.",
			page.Count(missing), page.Count(all), factors.Noun(e.Factor)))
	}
	if without > 0 && e.Factor == factors.Speed {
		out = append(out, fmt.Sprintf("%s on legs whose lines are not logged %s in no rate: there are no line-hours "+
			"to divide by.",
			page.Plural(without, "strike", "strikes"), isAre(without)))
	}
	if slices.ContainsFunc(rows, func(r queries.StrikeRate) bool {
		return r.ComparedWith != "" && r.Ratio == nil && r.LineHours > 0
	}) {
		unit := "trip"
		if c.ByLeg {
			unit = "leg"
		}
		out = append(out, "A dash: no "+unit+" with a strike fished both.")
	}
	if slices.ContainsFunc(rows, func(r queries.StrikeRate) bool { return r.Note == evidence.WhyFewTrips }) {
		out = append(out, "No interval side by side: "+evidence.WhyFewTrips+".")
	}
	return append(out, factorNotes[e.Factor]...)
}

// nouns joins factors as a sentence does.
func nouns(names []string) string {
	var words []string
	for _, n := range names {
		words = append(words, factors.Noun(n))
	}
	return sentence.List(words)
}

// factorNotes are cautions of single factors.
var factorNotes = map[string][]string{
	"light": {"Dawn is the hour on either side of sunrise, dusk of sunset, at the leg's position, or the mean of " +
		"its trip's where the leg has none. A leg that spans several is split by minutes."},
	"moon": {"Within an eighth of a month of each phase: about new moon less than 15 % of the disc is lit, " +
		"about full moon more than 85 %."},
	"hour":     {"By the boat's clock; a leg's hours are split at the full hours."},
	"sea-temp": {"Water temperature goes with place and month; a difference between trips may be theirs."},
	"month":    {"A month is a handful of trips: what differs between months differs between those days."},
}

func isAre(n int64) string {
	if n == 1 {
		return "is"
	}
	return "are"
}
