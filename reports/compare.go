package reports

import (
	"fmt"
	"math"
	"slices"

	"wakeledger/pipeline/factors"
	"wakeledger/pipeline/sentence"
	"wakeledger/queries"
	"wakeledger/queries/stats"
	"wakeledger/reports/page"
)

// Beside is the trips of two seasons to be shown side by side.
type Beside struct {
	Names  [2]string // of this season and of the other, as "2026"
	Season [2]queries.SeasonTrips
}

// side is one of the two, added up.
type side struct {
	name                               string
	trips                              int64
	boatHours, lineHours               float64
	strikes, hookups, landed, released int64
	all                                stats.Count // strikes on line-hours, and those
	bands                              map[string]stats.Count
}

func (b Beside) side(i int) side {
	s := side{name: b.Names[i], bands: map[string]stats.Count{}}
	for _, t := range b.Season[i].Trips {
		s.trips++
		s.boatHours, s.lineHours = s.boatHours+t.BoatHours, s.lineHours+t.LineHours
		s.strikes, s.hookups, s.landed, s.released = s.strikes+t.Strikes, s.hookups+t.Hookups,
			s.landed+t.Landed, s.released+t.Released
	}
	for _, c := range b.Season[i].Cells {
		s.all = plus(s.all, c)
		s.bands[c.Level] = plus(s.bands[c.Level], c)
	}
	return s
}

func plus(to stats.Count, c queries.TripCell) stats.Count {
	return stats.Count{Events: to.Events + c.Strikes, Effort: to.Effort + c.Hours}
}

// comparison is the two sides with the evidence for their difference.
type comparison struct {
	sides   [2]side
	bands   []string
	phi     float64 // dispersion of the counts between trips, within season and band; 1 where it is not known
	overall stats.RateRatio
	known   bool
	ratios  map[string]stats.RateRatio // first over second, by band; only where both were fished
	p       map[string]float64         // adjusted by Holm over the bands
}

// compare allows for strikes that cluster by trip: the dispersion is that of the
// trip x season x band counts, and takes both seasons' trips together.
func (b Beside) compare() comparison {
	c := comparison{sides: [2]side{b.side(0), b.side(1)}, phi: 1,
		ratios: map[string]stats.RateRatio{}, p: map[string]float64{}}
	var whole []stats.Cell
	for i := range b.Season {
		for _, band := range b.Season[i].Bands {
			if !slices.Contains(c.bands, band) {
				c.bands = append(c.bands, band)
			}
		}
		for _, cell := range b.Season[i].Cells {
			trip := fmt.Sprint(i, "-", cell.Trip)
			whole = append(whole, stats.Cell{Trip: trip, Level: b.Names[i] + fmt.Sprint(i),
				Count: stats.Count{Events: cell.Strikes, Effort: cell.Hours}})
		}
	}
	c.bands = lastNotLogged(c.bands, func(s string) string { return s })
	if d := stats.Dispersion(whole); d.Trips >= stats.MinTrips && d.Phi > 1 {
		c.phi = d.Phi
	}
	c.overall, c.known = stats.QuasiRatio(c.sides[0].all, c.sides[1].all, 0.95, c.phi)
	var names []string
	var ps []float64
	for _, band := range c.bands {
		if r, ok := stats.QuasiRatio(c.sides[0].bands[band], c.sides[1].bands[band], 0.95, c.phi); ok &&
			band != factors.NotLogged {
			c.ratios[band] = r
			names, ps = append(names, band), append(ps, r.P)
		}
	}
	for i, p := range stats.Holm(ps) {
		c.p[names[i]] = p
	}
	return c
}

// besideSection is the strike rates of two seasons side by side.
func (y *years) besideSection() (page.Section, error) {
	c := y.Beside.compare()
	a, b := c.sides[0], c.sides[1]
	section := page.Section{ID: "beside", Heading: sentence.Capital(a.name) + " beside " +
		b.name, Sentences: c.sentences()}
	var marks []page.RateMark
	most := 0.0
	for _, band := range c.bands {
		most = max(most, a.bands[band].Effort, b.bands[band].Effort)
	}
	enough := y.seasons[0].enough()
	for _, band := range c.bands {
		for _, i := range y.order {
			side := c.sides[i]
			n := side.bands[band]
			m := page.RateMark{Effort: n.Effort, Level: page.Level{Name: factors.Text(factors.Speed, band) + "\n" +
				side.name,
				Thin: n.Effort < enough, Ink: y.seasons[i].ink,
				Counts: page.Plural(n.Events, "strike", "strikes") + "\n" + hours(n.Effort) + " line-h"}}
			m.Rate, m.Lo, m.Hi = c.rate(n)
			marks = append(marks, m)
		}
	}
	var err error
	if most > 0 {
		section.Chart, err = page.Rates(page.Frame{Label: "Strikes per line-hour by speed band in " + a.name +
			" and in " + b.name + ", each with its 95 % interval. " + section.Sentences[0] +
			" The table below holds the figures.",
			Axis: "strikes per line-hour", Counts: "strikes and line-hours", Keys: y.keys()}, marks, nil, "")
	}
	section.Table = c.table()
	section.Notes = []string{
		"Two seasons differ in their fish, weather and waters before they differ in how they were fished: a ratio " +
			"here says what was, not what a change of tactics brought.",
		fmt.Sprintf("A ratio's interval is exact for counts (Przyborowski and Wilenski 1940, Biometrika "+
			"31:313-323), taken on counts divided by the dispersion between trips (%s); p-values by band are "+
			"adjusted for their number (Holm 1979).", page.Number(c.phi, 1)),
	}
	if !y.Beside.sameBands() {
		section.Notes = append(section.Notes, "The two season files part speed into different bands: compare only "+
			"bands of one name.")
	}
	return section, err
}

// sameBands tells whether no band of the one cuts across one of the other.
func (b Beside) sameBands() bool {
	return !slices.ContainsFunc(b.Season[1].Bands,
		func(band string) bool { return overlapsAny(band, b.Season[0].Bands) })
}

// overlapsAny tells whether a band cuts across one of others that has another name.
func overlapsAny(band string, others []string) bool {
	a, _ := factors.Parse(band) // what is no class overlaps none
	for _, o := range others {
		if b, _ := factors.Parse(o); o != band && a.Lo < b.Hi && b.Lo < a.Hi {
			return true
		}
	}
	return false
}

// rate is a side's rate at a band, its interval widened by the dispersion.
func (c comparison) rate(n stats.Count) (rate, lo, hi *float64) {
	r, iv, ok := stats.QuasiPoisson(n.Events, n.Effort, 0.95, c.phi)
	if !ok {
		return nil, nil, nil
	}
	return &r, &iv.Lo, &iv.Hi
}

// sentences: the two seasons, whether they differ, and at which bands.
func (c comparison) sentences() []string {
	a, b := c.sides[0], c.sides[1]
	if !c.known {
		return []string{fmt.Sprintf("%s and %s can't be compared: one has no line-hours, or neither has a strike.",
			sentence.Capital(a.name), b.name)}
	}
	out := []string{c.verdict(), c.sideSentence(a), c.sideSentence(b)}
	var apart []string
	for _, band := range c.bands {
		if p, ok := c.p[band]; ok && p < 0.05 {
			r := c.ratios[band]
			apart = append(apart, fmt.Sprintf("%s (%s times, %s to %s)",
				factors.Text(factors.Speed, band), times(r.Ratio),
				times(r.Interval.Lo), times(r.Interval.Hi)))
		}
	}
	if len(apart) > 0 {
		return append(out, fmt.Sprintf("At these speeds %s differs from %s by more than luck: %s.", a.name, b.name,
			sentence.List(apart)))
	}
	return append(out, "No speed differs between them by more than luck.")
}

// verdict is no stronger than the interval of the ratio.
func (c comparison) verdict() string {
	r, a, b := c.overall, sentence.Capital(c.sides[0].name), c.sides[1].name
	span := fmt.Sprintf("%s times the strikes per line-hour of %s (95 %%: %s to %s)", times(r.Ratio), b,
		times(r.Interval.Lo), times(r.Interval.Hi))
	switch {
	case r.Interval.Lo > 1:
		return fmt.Sprintf("%s brought %s: more than luck alone.", a, span)
	case r.Interval.Hi < 1:
		return fmt.Sprintf("%s brought %s: fewer than luck alone.", a, span)
	}
	return fmt.Sprintf("No difference shown: %s brought %s.", a, span)
}

// times prints a ratio; one without an end is said so.
func times(r float64) string {
	if math.IsInf(r, 1) {
		return "any number of"
	}
	return page.Number(r, max(2, min(3, page.Decimals(r, 2))))
}

func (c comparison) sideSentence(s side) string {
	rate, lo, hi := c.rate(s.all)
	if rate == nil {
		return fmt.Sprintf("%s: %s, no line-hours.", sentence.Capital(s.name), page.Plural(s.trips, "trip", "trips"))
	}
	digits := page.Decimals(*rate, 2)
	return fmt.Sprintf("%s: %s in %s line-hours on %s, %s per line-hour (%s to %s); %s landed and %s released.",
		sentence.Capital(s.name),
		page.Plural(s.all.Events, "strike", "strikes"), hours(s.all.Effort), page.Plural(s.trips, "trip", "trips"),
		page.Number(*rate, digits), page.Number(*lo, digits), page.Number(*hi, digits),
		page.Count(s.landed), page.Count(s.released))
}

func (c comparison) table() *page.Table {
	t := &page.Table{Caption: "the two seasons by speed band", Columns: []page.Column{{Head: "Speed over ground"}}}
	for _, s := range c.sides {
		t.Columns = append(t.Columns, page.Column{Head: sentence.Capital(s.name) + ": line-hours", Unit: "h",
			Kind: page.Measure, Decimals: 1},
			page.Column{Head: sentence.Capital(s.name) + ": strikes", Kind: page.Measure},
			page.Column{Head: sentence.Capital(s.name) + ": rate", Unit: "strikes per line-hour",
				Kind: page.Measure, Decimals: 2},
			page.Column{Head: sentence.Capital(s.name) + ": 95 % interval", Kind: page.Interval, Decimals: 2})
	}
	t.Columns = append(t.Columns, page.Column{Head: sentence.Capital(c.sides[0].name) + " over " + c.sides[1].name,
		Unit: "times", Kind: page.Measure, Decimals: 2},
		page.Column{Head: "95 % interval", Kind: page.Interval, Decimals: 2},
		page.Column{Head: "p, adjusted", Kind: page.Measure, Decimals: 3})
	for _, band := range c.bands {
		row := append([]page.Cell{page.Words(factors.Text(factors.Speed, band))},
			c.halves(func(s side) stats.Count { return s.bands[band] })...)
		r, ok := c.ratios[band]
		if !ok {
			t.Rows = append(t.Rows, page.Row{Cells: append(row, page.Cell{}, page.Cell{}, page.Cell{})})
			continue
		}
		t.Rows = append(t.Rows, page.Row{Cells: append(row, page.ValueOf(finiteOf(r.Ratio)),
			page.Span(finiteOf(r.Interval.Lo), finiteOf(r.Interval.Hi)), page.Value(c.p[band]))})
	}
	t.Total = append([]page.Cell{page.Words("season")}, c.halves(func(s side) stats.Count { return s.all })...)
	t.Total = append(t.Total, page.ValueOf(finiteOf(c.overall.Ratio)),
		page.Span(finiteOf(c.overall.Interval.Lo), finiteOf(c.overall.Interval.Hi)),
		page.ValueOf(finiteOf(c.overall.P)))
	return t
}

// halves are the cells of both sides, one after the other.
func (c comparison) halves(of func(side) stats.Count) []page.Cell {
	var out []page.Cell
	for _, s := range c.sides {
		n := of(s)
		rate, lo, hi := c.rate(n)
		out = append(out, page.Value(n.Effort), page.Whole(n.Events), page.ValueOf(rate), page.Span(lo, hi))
	}
	return out
}
