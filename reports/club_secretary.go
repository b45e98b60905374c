package reports

import (
	"fmt"
	"maps"
	"math"
	"slices"

	"wakeledger/pipeline/estimate"
	"wakeledger/pipeline/sentence"
	"wakeledger/pipeline/species"
	"wakeledger/queries/stats"
	"wakeledger/reports/bundle"
	"wakeledger/reports/page"
)

// boatRates is every boat's rate beside the others'. It shows no more than the table of
// boats: a rate is made where the boat shows its strikes.
func (c *club) boatRates() (page.Section, error) {
	section := page.Section{ID: "rates", Heading: "Boats side by side"}
	known := slices.DeleteFunc(slices.Clone(c.boats),
		func(b clubBoat) bool { return b.total.strikes.dark > 0 || b.total.LineHours <= 0 })
	if len(known) < 2 {
		section.Sentences = []string{"Fewer than two boats show their strikes and line-hours: no rates to set side " +
			"by side."}
		return section, nil
	}
	var all stats.Count
	for _, b := range known {
		all = stats.Count{Events: all.Events + b.total.strikes.n, Effort: all.Effort + b.total.LineHours}
	}
	season := float64(all.Events) / all.Effort
	digits := page.Decimals(max(season, 3/all.Effort), 2)
	t := &page.Table{Caption: "strikes per line-hour by boat",
		Columns: []page.Column{{Head: "Boat"}, {Head: "Line-hours", Unit: "h", Kind: page.Measure, Decimals: 1},
			{Head: "Strikes", Kind: page.Measure}, {Head: "Rate", Unit: "strikes per line-hour",
				Kind: page.Measure, Decimals: digits},
			{Head: "95 % interval", Unit: "strikes per line-hour", Kind: page.Interval, Decimals: digits}}}
	var marks []page.RateMark
	for _, b := range known {
		n := b.total
		m := page.RateMark{Effort: n.LineHours, Level: page.Level{Name: b.ID, Thin: n.LineHours*season < 3,
			Counts: page.Plural(n.strikes.n, "strike", "strikes") + "\n" + hours(n.LineHours) + " line-h"}}
		if r, iv, ok := stats.QuasiPoisson(n.strikes.n, n.LineHours, 0.95, 1); ok {
			m.Rate, m.Lo, m.Hi = &r, &iv.Lo, &iv.Hi
		}
		name := b.ID
		if m.Thin {
			name += " (" + page.LittleEffort + ")"
		}
		marks = append(marks, m)
		t.Rows = append(t.Rows, page.Row{Thin: m.Thin, Cells: []page.Cell{page.Words(name), page.Value(n.LineHours),
			page.Whole(n.strikes.n), page.ValueOf(m.Rate), page.Span(m.Lo, m.Hi)}})
	}
	t.Total = []page.Cell{page.Words("these boats"), page.Value(all.Effort),
		page.Whole(all.Events), page.Value(season), {}}
	section.Sentences = []string{fmt.Sprintf("%s: from %s to %s strikes per line-hour, together %s.",
		sentence.Capital(page.Plural(int64(len(known)), "boat", "boats")),
		page.Number(extreme(marks, -1), digits), page.Number(extreme(marks, 1), digits), page.Number(season, digits))}
	if len(known) > mostBars {
		section.Table = t
		return section, nil
	}
	chart, err := page.Rates(page.Frame{Label: "Strikes per line-hour of each boat, each with its 95 % interval. " +
		section.Sentences[0] + " The table below holds the figures.",
		Axis: "strikes per line-hour", Counts: "strikes and line-hours"}, marks, &season, "these boats together")
	section.Chart, section.Table = chart, t
	section.Notes = []string{"Boats fish other waters on other days, and some log no missed strikes: a rate ranks " +
		"no crew. The intervals are of counts alone (Garwood 1936)."}
	return section, err
}

// extreme is the least (sign -1) or the largest of the rates.
func extreme(marks []page.RateMark, sign float64) float64 {
	best := math.Inf(-1)
	for _, m := range marks {
		if m.Rate != nil {
			best = max(best, sign**m.Rate)
		}
	}
	return sign * best
}

// farOut is how many times the rate of the others a boat's must be to be asked about, with
// an interval that leaves out 1. A choice.
const farOut = 3

// secretary is what to ask boats before the page goes round: a rate that stands far out, and
// seasons of other years than most.
func (c *club) secretary() []string {
	out := c.farOut()
	years := map[string]int{}
	c.each(func(_ int, _ string, s bundle.Season) {
		for _, y := range yearsOf(s) {
			years[y]++
		}
	})
	main := ""
	for _, y := range slices.Sorted(maps.Keys(years)) {
		if main == "" || years[y] >= years[main] {
			main = y
		}
	}
	c.each(func(_ int, id string, s bundle.Season) {
		if of := yearsOf(s); len(of) > 0 && !slices.Contains(of, main) {
			out = append(out, fmt.Sprintf("Boat %s shares %s, most others %s: ask for its season of %s.", id,
				sentence.List(of),
				main, main))
		}
	})
	return out
}

// farOut names the boats whose rate is far from that of the others together.
func (c *club) farOut() []string {
	var out []string
	for i, b := range c.boats {
		var rest stats.Count
		for j, o := range c.boats {
			if j != i && o.total.strikes.dark == 0 {
				rest = stats.Count{Events: rest.Events + o.total.strikes.n, Effort: rest.Effort + o.total.LineHours}
			}
		}
		if b.total.strikes.dark > 0 || b.total.LineHours <= 0 || rest.Effort <= 0 {
			continue
		}
		r, ok := stats.QuasiRatio(stats.Count{Events: b.total.strikes.n, Effort: b.total.LineHours}, rest, 0.95, 1)
		switch {
		case !ok:
		case r.Ratio >= farOut && r.Interval.Lo > 1:
			out = append(out, fmt.Sprintf("Boat %s has %s times the strikes per line-hour of the others. Check its "+
				"hours: are all stretches logged, and all lines?", b.ID, ratioText(r.Ratio)))
		case r.Ratio*farOut <= 1 && r.Interval.Hi < 1:
			out = append(out, fmt.Sprintf("Boat %s has %s times the strikes per line-hour of the others. Check its "+
				"strikes: are misses logged? And its lines out.", b.ID, ratioText(r.Ratio)))
		}
	}
	return out
}

// yearsOf are the years of a season's months, in order.
func yearsOf(s bundle.Season) []string {
	var out []string
	for _, m := range s.Span() {
		if len(m) >= 4 && !slices.Contains(out, m[:4]) {
			out = append(out, m[:4])
		}
	}
	slices.Sort(out)
	return out
}

// doubtfulWeight tells whether a weight is above what its species grows to (the list of
// species names the source of each).
func doubtfulWeight(code string, kg float64) bool {
	all, err := species.Default()
	if err != nil {
		return false
	}
	s, ok := all.ByCode(code)
	return ok && s.MaxWeightKG > 0 && kg > estimate.OverRecord*s.MaxWeightKG
}
