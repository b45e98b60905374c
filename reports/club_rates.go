package reports

import (
	"fmt"
	"math"
	"slices"

	"wakeledger/pipeline/factors"
	"wakeledger/pipeline/sentence"
	"wakeledger/queries/evidence"
	"wakeledger/queries/stats"
	"wakeledger/reports/bundle"
	"wakeledger/reports/page"
)

// apart is the level of what is not logged, and of what stands merged because it
// is of too few trips of its boat: it belongs to no class.
const apart = "in no class"

// untold is the level of line-hours whose strikes a boat does not show.
const untold = "strikes not shown"

// clubLevel is one level over all boats.
type clubLevel struct {
	name  string
	cell  clubSum
	boats int
}

// clubFactor is one table of cells over all boats.
type clubFactor struct {
	id, heading, noun, factor string
	rows                      func(bundle.Season) []bundle.Cell
}

// levels adds cells up by level: classes upwards, what is in no class last.
func (c *club) levels(rows func(bundle.Season) []bundle.Cell, name func(bundle.Cell) string) []clubLevel {
	var out []clubLevel
	seen := map[string]map[int]bool{}
	c.each(func(boat int, _ string, s bundle.Season) {
		for _, cell := range rows(s) {
			name := name(cell)
			i := slices.IndexFunc(out, func(l clubLevel) bool { return l.name == name })
			if i < 0 {
				i = len(out)
				out = append(out, clubLevel{name: name})
				seen[name] = map[int]bool{}
			}
			out[i].cell.add(cell)
			seen[name][boat] = true
		}
	})
	for i := range out {
		out[i].boats = len(seen[out[i].name])
	}
	slices.SortStableFunc(out, func(a, b clubLevel) int { return rankOf(a.name) - rankOf(b.name) })
	return out
}

// classOf is the level of a cell among those of all boats.
func classOf(cell bundle.Cell) string {
	if cell.Level == bundle.NotLogged || cell.Level == bundle.Merged {
		return apart
	}
	return cell.Level
}

// ratedOf is classOf, with the cells apart whose strikes are not shown.
func ratedOf(cell bundle.Cell) string {
	if cell.Strikes == nil {
		return untold
	}
	return classOf(cell)
}

// rated tells whether a rate is made of a level: strikes in no class may have no line-hours.
func rated(level string) bool { return level != apart && level != untold }

func rankOf(level string) int {
	switch level {
	case apart:
		return 1 << 29
	case untold:
		return 1 << 30
	}
	return int(factors.Lower(level) * 100)
}

// compare weighs the levels as a season's are weighed, with boats in the place of
// trips: counts vary between boats, and a ratio is that on the same boats.
func (c *club) compare(f clubFactor, levels []clubLevel) evidence.Comparison {
	in := evidence.Factor{Name: f.factor}
	for _, l := range levels {
		if rated(l.name) {
			in.Levels = append(in.Levels, l.name)
		}
	}
	c.each(func(boat int, _ string, s bundle.Season) {
		for _, cell := range f.rows(s) {
			if rated(ratedOf(cell)) && cell.LineHours > 0 {
				in.Cells = append(in.Cells, evidence.Cell{Trip: int64(boat + 1), Level: cell.Level,
					LineHours: cell.LineHours, Strikes: *cell.Strikes})
			}
		}
	})
	return evidence.Compare(in, nil)
}

func (c *club) speedSection() (page.Section, error) {
	return c.rateSection(clubFactor{"speed", "Strikes by speed band", "speed band", factors.Speed,
		func(s bundle.Season) []bundle.Cell { return s.Speeds }})
}

func (c *club) lureSection() (page.Section, error) {
	return c.rateSection(clubFactor{"lures", "Strikes by class of lure", "class of lure weight", factors.LureWeight,
		func(s bundle.Season) []bundle.Cell { return s.Lures }})
}

func (c *club) rateSection(f clubFactor) (page.Section, error) {
	section := page.Section{ID: f.id, Heading: f.heading}
	levels := c.levels(f.rows, ratedOf)
	comparison := c.compare(f, levels)
	if comparison.Season.Effort <= 0 || len(levels) == 0 {
		section.Sentences = []string{"No line-hours are shared with their strikes, so that there is no strike rate."}
		return section, nil
	}
	season := float64(comparison.Season.Events) / comparison.Season.Effort
	digits := page.Decimals(max(season, 3/comparison.Season.Effort), 2)
	var marks []page.RateMark
	var known []estimateOf
	for i, l := range comparison.Levels {
		name := c.levelText(f, levels[i].name)
		marks = append(marks, page.RateMark{Rate: finiteOf(l.Rate), Lo: finiteOf(l.Interval.Lo),
			Hi: finiteOf(l.Interval.Hi), Effort: l.Count.Effort,
			Level: page.Level{Name: name, Thin: l.Thin, Counts: page.Plural(l.Count.Events, "strike", "strikes") +
				"\n" + hours(l.Count.Effort) + " line-h"}})
		if m := marks[i]; !l.Thin && m.Rate != nil && m.Lo != nil && m.Hi != nil {
			known = append(known, estimateOf{name, *m.Rate, *m.Lo, *m.Hi})
		}
	}
	section.Sentences = clubRateSentences(known, f, digits, comparison.Trips >= stats.MinTrips)
	section.Sentences = append(section.Sentences, fmt.Sprintf("All boats, where both are shown: %s in %s "+
		"line-hours, %s per line-hour.",
		page.Plural(comparison.Season.Events, "strike", "strikes"),
		hours(comparison.Season.Effort), page.Number(season, digits)))
	chart, err := page.Rates(page.Frame{Label: "Strikes per line-hour by " + f.noun +
		", each with its 95 % interval. " + section.Sentences[0] + " The table below holds the figures.",
		Axis: "strikes per line-hour", Counts: "strikes and line-hours"}, marks, &season, "the rate of all boats")
	section.Chart, section.Table = chart, c.rateTable(f, levels, comparison, digits)
	section.Notes = c.rateNotes(comparison, levels)
	return section, err
}

// clubRateSentences: the leading level, and no more than its interval says. An
// interval that does not allow for how boats differ tells nothing apart.
func clubRateSentences(known []estimateOf, f clubFactor, digits int, boatsEnough bool) []string {
	lead, others, ok := leader(known)
	if !ok || lead.v <= 0 {
		return []string{"No " + f.noun + " has enough effort behind it to be put forward."}
	}
	first := fmt.Sprintf("%s: %s strikes per line-hour (%s to %s), the highest rate of a %s.",
		sentence.Capital(lead.level),
		page.Number(lead.v, digits), page.Number(lead.lo, digits), page.Number(lead.hi, digits), f.noun)
	var overlap []string
	for _, o := range others {
		if o.hi >= lead.lo {
			overlap = append(overlap, o.level)
		}
	}
	switch {
	case len(others) == 0:
		return []string{first, "No other " + f.noun + " has enough behind it to compare with."}
	case !boatsEnough:
		return []string{first, fmt.Sprintf("With fewer than %d boats, how much boats differ cannot be told: which "+
			"%s is better is not settled.", stats.MinTrips, f.noun)}
	case len(overlap) > 0:
		return []string{first, "Its interval overlaps that of " + sentence.List(overlap) +
			": the boats' seasons do not settle which is better."}
	}
	return []string{first, "Its interval lies above that of every other " + f.noun + " with enough behind it. It " +
		"was picked after looking, and the boats were not the same ones: worth trying, not settled."}
}

func (c *club) levelText(f clubFactor, level string) string {
	if level == apart {
		return apart
	}
	if f.factor == factors.LureWeight {
		if words, ok := c.lureClass(level); ok {
			return words
		}
	}
	return factors.Text(f.factor, level)
}

func (c *club) rateTable(f clubFactor, levels []clubLevel, comparison evidence.Comparison, digits int) *page.Table {
	head := "Times the one compared with, same boats"
	if comparison.Reference >= 0 {
		head = "Times that of " + c.levelText(f, comparison.Levels[comparison.Reference].Level) + ", same boats"
	}
	t := &page.Table{Caption: "strikes by " + f.noun, Columns: []page.Column{
		{Head: sentence.Capital(f.noun)}, {Head: "Boats", Kind: page.Measure},
		{Head: "Line-hours", Unit: "h", Kind: page.Measure, Decimals: 1},
		{Head: "Strikes", Kind: page.Measure}, {Head: "Hook-ups", Kind: page.Measure},
		{Head: "Landed or released", Kind: page.Measure},
		{Head: "Not shown", Kind: page.Measure}, {Head: "Rate", Unit: "strikes per line-hour",
			Kind: page.Measure, Decimals: digits},
		{Head: "95 % interval", Unit: "strikes per line-hour", Kind: page.Interval, Decimals: digits},
		{Head: head, Kind: page.Measure, Decimals: 2}, {Head: "95 % interval", Kind: page.Interval, Decimals: 2},
	}}
	var all clubSum
	for i, l := range comparison.Levels {
		cell := levels[i].cell
		name := c.levelText(f, levels[i].name)
		if l.Thin {
			name += " (" + page.LittleEffort + ")"
		}
		row := page.Row{Thin: l.Thin, Cells: []page.Cell{page.Words(name),
			page.Whole(int64(levels[i].boats)), page.Value(cell.LineHours),
			cell.strikes.shown(), cell.hookups.shown(), cell.boated.shown(), page.Whole(int64(cell.dark())),
			page.ValueOf(finiteOf(l.Rate)), page.Span(finiteOf(l.Interval.Lo), finiteOf(l.Interval.Hi)), {}, {}}}
		if l.Ratio.Known() {
			row.Cells[9], row.Cells[10] = page.ValueOf(finiteOf(l.Ratio.Ratio)),
				page.Span(finiteOf(l.Ratio.Interval.Lo), finiteOf(l.Ratio.Interval.Hi))
		}
		t.Rows = append(t.Rows, row)
		all.plus(cell)
	}
	for _, l := range levels {
		if rated(l.name) {
			continue
		}
		cells := []page.Cell{page.Words(l.name), page.Whole(int64(l.boats)), page.Value(l.cell.LineHours),
			l.cell.strikes.shown(), l.cell.hookups.shown(), l.cell.boated.shown(),
			page.Whole(int64(l.cell.dark())), {}, {}, {}, {}}
		t.Rows = append(t.Rows, page.Row{Cells: cells})
	}
	s := comparison.Season
	t.Total = []page.Cell{page.Words("all in the rate"), {}, page.Value(s.Effort),
		page.Whole(s.Events), all.hookups.shown(),
		all.boated.shown(), page.Whole(int64(all.dark())), page.Value(float64(s.Events) / s.Effort), {}, {}, {}}
	return t
}

func (c *club) rateNotes(comparison evidence.Comparison, levels []clubLevel) []string {
	notes := []string{
		"The bar's length is the rate and its thickness the line-hours, so that its area is the number of strikes. " +
			"An interval that leaves the chart ends in an arrow.",
		"“" + sentence.Capital(apart) + "” is what the logs do not say, strikes on legs whose lines are not logged, " +
			"and the " +
			"classes in which a boat had fewer than 3 trips. No rate is made of it.",
	}
	figures := 0
	for _, l := range levels {
		if figures += l.cell.dark(); l.name == untold {
			notes = append(notes, "“"+sentence.Capital(untold)+
				"”: line-hours of classes in which a boat had no strike, or "+
				"nearly all on one trip or day. They are in no rate, so that rates read higher than they were, most "+
				"where there were few strikes.")
		}
	}
	notes = append(notes, partly(figures)...)
	if comparison.Trips >= stats.MinTrips {
		return append(notes, fmt.Sprintf("Boats differ: the intervals are exact for counts that vary by chance "+
			"alone (Garwood 1936), widened for boats whose luck differs by %s either way.",
			page.Percent(math.Sqrt(comparison.Luck))))
	}
	return append(notes, "With fewer than 8 boats, how far boats differ is mostly assumed: the intervals (Garwood "+
		"1936) are widened for what is usual.")
}

func finiteOf(v float64) *float64 {
	if v-v != 0 {
		return nil
	}
	return &v
}

func (c *club) monthsSection() (page.Section, error) {
	section := page.Section{ID: "months", Heading: "Month by month"}
	levels := c.levels(func(s bundle.Season) []bundle.Cell { return s.Months }, classOf)
	months := slices.DeleteFunc(slices.Clone(levels), func(l clubLevel) bool { return l.name == apart })
	slices.SortFunc(months, func(a, b clubLevel) int {
		if a.name < b.name {
			return -1
		}
		return 1
	})
	if len(months) == 0 {
		section.Sentences = []string{"No boat has 3 trips or more in a month: months are not shown."}
		return section, nil
	}
	figures := 0
	for _, l := range levels {
		figures += l.cell.strikes.dark + l.cell.boated.dark
	}
	rest := c.inNoMonth()
	best := slices.MaxFunc(months, func(a, b clubLevel) int { return int(a.cell.strikes.n - b.cell.strikes.n) })
	section.Sentences = []string{fmt.Sprintf("%s: %s in %s line-hours, the most of any month.", monthText(best.name),
		best.cell.strikes.words("strike", "strikes"), hours(best.cell.LineHours))}
	if slices.ContainsFunc(levels, func(l clubLevel) bool { return l.cell.strikes.dark > 0 }) {
		best = slices.MaxFunc(months, func(a, b clubLevel) int { return int(a.cell.LineHours - b.cell.LineHours) })
		section.Sentences = []string{fmt.Sprintf("%s: %s line-hours, the most of any month. Which had the most "+
			"strikes cannot be told: not all are shown.",
			monthText(best.name), hours(best.cell.LineHours))}
	}
	var marks []page.OutingMark
	for _, m := range append(slices.Clone(months),
		slices.DeleteFunc(slices.Clone(levels), func(l clubLevel) bool { return l.name != apart })...) {
		name := "other"
		if m.name != apart {
			name = day(m.name+"-01", "Jan 2006")
		}
		if m.cell.strikes.lit == 0 {
			continue
		}
		marks = append(marks, page.OutingMark{Name: name, Strikes: m.cell.strikes.n,
			Boated: m.cell.boated.n, Hours: m.cell.LineHours})
	}
	if rest.boats > 0 {
		marks = append(marks, page.OutingMark{Name: rest.name, Strikes: rest.cell.strikes.n})
	}
	var chart *page.Chart
	var err error
	if len(marks) > 0 {
		chart, err = page.Outings("Strikes and line-hours of each month, and of other months and days not logged. "+
			section.Sentences[0]+" The table below holds the figures.", marks)
	}
	t := &page.Table{Caption: "every month", Columns: []page.Column{{Head: "Month", Kind: page.Token},
		{Head: "Boats", Kind: page.Measure}, {Head: "Trips", Kind: page.Measure},
		{Head: "Line-hours", Unit: "h", Kind: page.Measure, Decimals: 1}, {Head: "Strikes", Kind: page.Measure},
		{Head: "Landed or released", Kind: page.Measure}, {Head: "Not shown", Kind: page.Measure}}}
	for _, l := range append(months, slices.DeleteFunc(levels, func(l clubLevel) bool { return l.name != apart })...) {
		name := l.name
		if name == apart {
			name = "other months, and not logged"
		}
		t.Rows = append(t.Rows, page.Row{Cells: []page.Cell{page.Words(name), page.Whole(int64(l.boats)),
			page.Whole(l.cell.Trips), page.Value(l.cell.LineHours),
			l.cell.strikes.shown(), l.cell.boated.shown(),
			page.Whole(int64(l.cell.strikes.dark + l.cell.boated.dark))}})
	}
	if rest.boats > 0 {
		t.Rows = append(t.Rows, page.Row{Cells: []page.Cell{page.Words(rest.name), page.Whole(int64(rest.boats)), {},
			page.Value(0), rest.cell.strikes.cell(), {}, {}}})
	}
	section.Chart, section.Table = chart, t
	section.Notes = append(
		[]string{"A month in which a boat had fewer than 3 trips is among that boat's other months."},
		partly(figures)...)
	if figures > 0 {
		section.Notes = append(section.Notes, "A month of which no strikes are shown is not drawn. Fish at the boat "+
			"that are not shown are drawn with the other strikes.")
	}
	if rest.boats > 0 {
		section.Notes = append(section.Notes, "“"+sentence.Capital(rest.name)+
			"”: strikes of boats that show how many they had, but not in which month.")
	}
	return section, err
}

// inNoMonth are the strikes that boats show for the season and in no month, so that a chart of
// the months holds every strike that is shown. Anybody can subtract them.
func (c *club) inNoMonth() clubLevel {
	rest := clubLevel{name: "month not told"}
	c.each(func(_ int, _ string, s bundle.Season) {
		if s.Total.Strikes == nil {
			return
		}
		left := *s.Total.Strikes
		for _, m := range s.Months {
			if m.Strikes != nil {
				left -= *m.Strikes
			}
		}
		if left > 0 {
			rest.cell.strikes.add(&left)
			rest.boats++
		}
	})
	return rest
}
