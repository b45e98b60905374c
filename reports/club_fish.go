package reports

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"wakeledger/pipeline/factors"
	"wakeledger/pipeline/sentence"
	"wakeledger/queries/stats"
	"wakeledger/reports/bundle"
	"wakeledger/reports/page"
)

// clubFishSum is the fish of one level over all boats.
type clubFishSum struct {
	level                     string
	fish                      int64
	onScale, landed, released clubCount
	// of boats that show both: what a share is made of
	weighed, weighedOf, back, backOf int64
}

func (o *clubFishSum) add(f bundle.FishCell) {
	o.fish += f.Fish
	o.onScale.add(f.OnScale)
	o.landed.add(f.Landed)
	o.released.add(f.Released)
	if f.OnScale != nil {
		o.weighed, o.weighedOf = o.weighed+*f.OnScale, o.weighedOf+f.Fish
	}
	if f.Landed != nil && f.Released != nil {
		o.back, o.backOf = o.back+*f.Released, o.backOf+*f.Landed+*f.Released
	}
}

// species adds fish up by species.
func (c *club) species() []*clubFishSum {
	var out []*clubFishSum
	c.each(func(_ int, _ string, s bundle.Season) {
		for _, f := range s.Species {
			i := slices.IndexFunc(out, func(o *clubFishSum) bool { return o.level == f.Level })
			if i < 0 {
				i = len(out)
				out = append(out, &clubFishSum{level: f.Level})
			}
			out[i].add(f)
		}
	})
	return out
}

// sizes adds fish up by class of size.
func (c *club) sizes() []bundle.SizeCell {
	var out []bundle.SizeCell
	c.each(func(_ int, _ string, s bundle.Season) {
		for _, f := range s.Sizes {
			i := slices.IndexFunc(out, func(o bundle.SizeCell) bool { return o.Level == f.Level })
			if i < 0 {
				i = len(out)
				out = append(out, bundle.SizeCell{Level: f.Level})
			}
			out[i].Fish += f.Fish
		}
	})
	slices.SortStableFunc(out, func(a, b bundle.SizeCell) int { return classRank(a.Level) - classRank(b.Level) })
	return out
}

// classRank orders classes upwards, then the fish without a weight, then those of
// merged classes.
func classRank(level string) int {
	switch level {
	case bundle.NoWeight:
		return 1 << 29
	case bundle.Merged:
		return 1 << 30
	}
	return rankOf(level)
}

func (c *club) sizesSection() (page.Section, error) {
	section := page.Section{ID: "sizes", Heading: "Sizes"}
	rows := c.sizes()
	var fish int64
	var classes []page.Class
	var cells []page.HistogramCell
	t := &page.Table{Caption: "fish by weight class", Columns: []page.Column{{Head: "Round weight", Unit: c.weight},
		{Head: "Fish", Kind: page.Measure}}}
	for i, r := range rows {
		name := c.sizeText(r.Level)
		fish += r.Fish
		classes = append(classes, page.Class{Name: name, Ordered: factors.Lower(r.Level) >= 0})
		cells = append(cells, page.HistogramCell{Class: i, Count: r.Fish, Solid: r.Fish})
		t.Rows = append(t.Rows, page.Row{Cells: []page.Cell{page.Words(name), page.Whole(r.Fish)}})
	}
	if fish == 0 {
		section.Sentences = []string{"No fish is shared."}
		return section, nil
	}
	section.Sentences = []string{fmt.Sprintf("%s, weighed on a scale or estimated from the tape.",
		page.Plural(fish, "fish", "fish"))}
	chart, err := page.Histograms(page.Frame{Label: "Number of fish by weight class. " + section.Sentences[0] +
		" The table below holds the figures.",
		Axis: "round weight, " + c.weight, Counts: "fish"},
		[]page.Level{{Name: "all boats", Counts: page.Plural(fish, "fish", "fish")}}, classes, cells)
	section.Chart, section.Table = chart, t
	section.Notes = []string{"“Other classes” are those in which a boat caught fish on fewer than 3 trips, or " +
		"nearly all on one.",
		"The classes are wide, and wider above, so that most hold fish of three trips of a boat."}
	return section, err
}

// sizeText is a class in the unit shown.
func (c *club) sizeText(level string) string {
	if level == bundle.Merged {
		return "other classes"
	}
	class, ok := factors.Parse(level)
	if !ok {
		return level
	}
	from := page.Number(class.Lo*c.perKG, 0)
	if math.IsInf(class.Hi, 1) {
		return from + " and up"
	}
	return from + " to " + page.Number(class.Hi*c.perKG, 0)
}

func (c *club) speciesSection() (page.Section, error) {
	section := page.Section{ID: "species", Heading: "Species and releases"}
	last := func(level string) int {
		return map[string]int{bundle.Other: 1, bundle.NotLogged: 2, bundle.Merged: 3}[level]
	}
	rows := c.species()
	slices.SortStableFunc(rows, func(a, b *clubFishSum) int {
		return cmp.Or(cmp.Compare(last(a.level), last(b.level)), cmp.Compare(b.fish, a.fish),
			cmp.Compare(a.level, b.level))
	})
	var all clubFishSum
	var marks []page.SharesMark
	figures := 0
	t := &page.Table{Caption: "fish by species", Columns: []page.Column{{Head: "Species", Kind: page.Token},
		{Head: "Fish", Kind: page.Measure}, {Head: "Landed", Kind: page.Measure},
		{Head: "Released", Kind: page.Measure}, {Head: "Share released", Unit: "of landed and released",
			Kind: page.Share}, {Head: "95 % interval", Kind: page.ShareGap},
		{Head: "Weighed on a scale", Kind: page.Measure},
		{Head: "Share weighed", Unit: "of the fish", Kind: page.Share}, {Head: "95 % interval", Kind: page.ShareGap}}}
	for _, r := range rows {
		all.fish, all.back, all.backOf, all.weighed, all.weighedOf = all.fish+r.fish, all.back+r.back, all.backOf+
			r.backOf, all.weighed+r.weighed, all.weighedOf+r.weighedOf
		figures += r.landed.dark + r.released.dark + r.onScale.dark
		back, weighed := shareOf(r.back, r.backOf), shareOf(r.weighed, r.weighedOf)
		name := speciesWord(r.level)
		marks = append(marks, page.SharesMark{Level: page.Level{Name: name,
			Counts: page.Plural(r.fish, "fish", "fish")}, First: back, Second: weighed, Of: float64(r.fish)})
		t.Rows = append(t.Rows, page.Row{Cells: []page.Cell{page.Words(name), page.Whole(r.fish),
			r.landed.cell(), r.released.cell(),
			page.ValueOf(back.Share), page.Span(back.Lo, back.Hi), r.onScale.cell(), page.ValueOf(weighed.Share),
			page.Span(weighed.Lo, weighed.Hi)}})
	}
	if len(rows) == 0 {
		section.Sentences = []string{c.total.boated.words("fish", "fish") + " landed or released; no species is shown."}
		return section, nil
	}
	// The season's figures, where all are shown; else none is the club's.
	t.Total = []page.Cell{page.Words("all"), page.Whole(all.fish), c.total.landed.cell(),
		c.total.released.cell(), {}, {}, {}, {}, {}}
	section.Sentences = []string{page.Plural(all.fish, "fish", "fish") + " landed or released."}
	if l, r := c.total.landed, c.total.released; l.dark == 0 {
		t.Total[4] = page.ValueOf(shareOf(r.n, l.n+r.n).Share)
		section.Sentences = []string{fmt.Sprintf("Of %s landed or released, %s went back.",
			page.Plural(l.n+r.n, "fish", "fish"), page.Count(r.n))}
	}
	chart, err := page.Shares(page.Frame{Label: "Share of fish released, and share weighed on a scale, by species, " +
		"each with its 95 % interval. " + section.Sentences[0] + " The table below holds the figures.",
		Axis: "share of the fish", Counts: "fish"}, marks, "released", "weighed on a scale")
	section.Chart, section.Table = chart, t
	section.Notes = []string{"“Other species” are those that a boat caught on fewer than 3 trips, and those that " +
		"are on no list.",
		"95 % intervals: Wilson 1927."}
	if figures > 0 {
		section.Notes = append(section.Notes, page.Plural(int64(figures), "figure", "figures")+
			" of boats are not shown, because one trip or day would be nearly all of it, or because there was none. "+
			"A share is of the boats that show both of its parts; it leans away from none and from all.")
	}
	return section, err
}

func shareOf(r, n int64) page.ShareMark {
	share, iv, ok := stats.Wilson(r, n, 0.95)
	if !ok {
		return page.ShareMark{}
	}
	return page.ShareMark{Share: &share, Lo: &iv.Lo, Hi: &iv.Hi}
}

func speciesWord(level string) string {
	switch level {
	case bundle.Merged:
		return "Other species, few each"
	case bundle.Other:
		return "Other species"
	}
	return sentence.Capital(fishNames(level))
}

// heavyFish is one fish with its boat.
type heavyFish struct {
	bundle.Heavy
	boat string
}

// doubt is what is doubtful of the fish: what its own boat says, else whether it is heavier
// than its kind grows; "" for nothing.
func (f heavyFish) doubt() string {
	switch {
	case f.Doubt != nil:
		return doubtText[*f.Doubt]
	case doubtfulWeight(f.Species, f.WeightKG):
		return doubtText["heavy fish"]
	}
	return ""
}

func (f heavyFish) doubtful() bool { return f.doubt() != "" }

// mostHeavy is how many fish a list of the page shows.
const mostHeavy = 10

// heaviest is one list over all boats, the heaviest first.
func (c *club) heaviest(list string) []heavyFish {
	var out []heavyFish
	c.each(func(_ int, id string, s bundle.Season) {
		for _, f := range s.Heaviest {
			if f.List == list {
				out = append(out, heavyFish{f, id})
			}
		}
	})
	slices.SortStableFunc(out, func(a, b heavyFish) int {
		switch {
		case a.WeightKG > b.WeightKG:
			return -1
		case a.WeightKG < b.WeightKG:
			return 1
		}
		return 0
	})
	return out[:min(mostHeavy, len(out))]
}

func (c *club) weightOf(f heavyFish) string {
	w := f.WeightKG * c.perKG
	if f.List == bundle.Estimate {
		return page.Number(w, estimateDecimals(w))
	}
	return page.Number(w, weightDecimals([]float64{w}))
}

func (c *club) heaviestSection(name string) (page.Section, error) {
	words := map[string]string{bundle.Certified: "certified scale", bundle.Dock: "dock scale, not certified",
		bundle.Estimate: "estimated from the tape"}
	section := page.Section{ID: "heaviest-" + strings.ReplaceAll(name, " ", "-"), Heading: "Heaviest: " + words[name]}
	fish := c.heaviest(name)
	if len(fish) == 0 {
		section.Sentences = []string{"No fish on this list."}
		return section, nil
	}
	estimate := name == bundle.Estimate
	about := ""
	if estimate {
		about = "about "
	}
	if sure := slices.IndexFunc(fish, func(f heavyFish) bool { return !f.doubtful() }); sure >= 0 {
		f := fish[sure]
		section.Sentences = []string{fmt.Sprintf("%s%s %s, %s, boat %s.",
			sentence.Capital(about), c.weightOf(f), c.weight,
			speciesWord(f.Species), f.boat)}
	}
	for _, f := range fish {
		if f.doubtful() {
			section.Sentences = append(section.Sentences, fmt.Sprintf("Doubtful: %s %s, %s, boat %s: %s. Ask the boat.",
				c.weightOf(f), c.weight, fishNames(f.Species), f.boat, f.doubt()))
		}
	}
	decimals := 1
	if estimate {
		decimals = estimateDecimals(fish[len(fish)-1].WeightKG * c.perKG)
	}
	t := &page.Table{Caption: "heaviest, " + words[name], Open: true,
		Columns: []page.Column{{Head: "Boat", Kind: page.Token},
			{Head: "Round weight", Unit: c.weight, Kind: page.Measure, Decimals: decimals},
			{Head: "Species", Kind: page.Token}, {Head: "Month", Kind: page.Token}}}
	if estimate {
		t.Columns = append(t.Columns, page.Column{Head: "90 % interval", Unit: c.weight,
			Kind: page.Interval, Decimals: decimals})
		section.Notes = []string{"An estimate is not for records, sale or legal size. Its interval is a 90 % " +
			"prediction interval; where none is known, there is none."}
	}
	for _, f := range fish {
		name := speciesWord(f.Species)
		if f.doubtful() {
			name += " (doubtful)"
		}
		cells := []page.Cell{page.Words(f.boat), page.Value(f.WeightKG * c.perKG), page.Words(name), page.Words(f.When)}
		if estimate {
			cells = append(cells, page.Span(scaled(f.LoKG, c.perKG), scaled(f.HiKG, c.perKG)))
		}
		t.Rows = append(t.Rows, page.Row{Cells: cells})
	}
	section.Table = t
	return section, nil
}

func (c *club) sharedSection() (page.Section, error) {
	notes := []string{
		"In this page: months, effort, counts by class, and the fish of the three lists. Not in it: positions, " +
			"days, notes, file names, lures' names.",
		"No row but a single fish of the lists is of fewer than 3 trips of a boat on 3 days: rows of fewer are " +
			"merged, with a larger one where that is needed, so that nothing follows from a total.",
		"No trip and no day is more than four fifths of a figure of a boat, also after any other is taken off; a " +
			"figure that would be, or that is nothing at all, is not shown " +
			"(Handbook on Statistical Disclosure Control, Hundepool et al., section 4.2: minimum frequency and p% " +
			"rules, secondary suppression).",
		"Rates: strikes per line-hour. A ratio on the same boats is Mantel and Haenszel's for person-time " +
			"(Greenland and Robins 1985), with boats as strata.",
		"Boats are matched by the id that they chose. Speed is over ground: a current of a knot shifts a whole band.",
		"Colours: Okabe and Ito 2008, Color Universal Design; ColorBrewer YlGnBu, Harrower and Brewer 2003, The " +
			"Cartographic Journal 40:27-37.",
	}
	if c.Names {
		notes = append(notes, "Names are those that the boats chose to share.")
	}
	return page.Section{ID: "shared", Heading: "What is in this page", Notes: notes}, nil
}

func (c *club) cautionsSection() (page.Section, error) {
	return page.Section{ID: "cautions", Heading: "Cautions", Notes: cautions}, nil
}
