package reports

import (
	"fmt"
	"slices"

	"wakeledger/queries"
	"wakeledger/reports/page"
)

// fateKinds groups the fates as they are drawn.
var fateKinds = map[string]page.FateKind{queries.FateLanded: page.ToTheBoat, queries.FateReleased: page.ToTheBoat, queries.FateMissed: page.Missed,
	queries.FateNoCause: page.LostUnsaid, queries.FateHooked: page.Unsaid, queries.FateNotLogged: page.Unsaid}

func fateKind(fate string) page.FateKind {
	if k, ok := fateKinds[fate]; ok {
		return k
	}
	return page.LostOff
}

// fatesPicture is one bar that adds up to all strikes.
func (s *season) fatesPicture() (page.Section, string, error) {
	section := page.Section{ID: "fates", Heading: "What became of the strikes"}
	total := int64(0)
	for _, f := range s.Fates {
		total += f.Strikes
	}
	if total == 0 {
		return section, "what became of the strikes, of which none is logged", nil
	}
	t := &page.Table{Caption: "how the strikes ended", Columns: []page.Column{{Head: "How it ended"}, {Head: "Strikes", Kind: page.Measure}, {Head: "Share", Kind: page.Share}}}
	var parts []page.Fate
	for _, f := range s.Fates {
		name := f.Fate
		if name == queries.FateNotLogged {
			name = "end not logged"
		}
		parts = append(parts, page.Fate{Strikes: f.Strikes, Kind: fateKind(f.Fate), Level: page.Level{Name: name, Counts: page.Count(f.Strikes)}})
		t.Rows = append(t.Rows, page.Row{Cells: []page.Cell{page.Words(name), page.Whole(f.Strikes), page.Value(float64(f.Strikes) / float64(total))}})
	}
	t.Total = []page.Cell{page.Words("all strikes"), page.Whole(total), page.Value(1)}
	section.Sentences = []string{fatesSentence(s.Fates, total)}
	chart, err := page.Fates(page.Frame{
		Label: "All strikes as one bar, and each part of it on a row of its own. " + section.Sentences[0] + " The table below holds the figures.",
		Axis:  "strikes", Counts: "strikes",
		Keys: []page.Key{{Mark: page.MarkBoated, Words: "to the boat"}, {Mark: page.MarkLost, Words: "hooked and lost"}, {Mark: page.MarkStruck, Words: "missed, or not logged"}},
	}, page.Level{Name: "all strikes", Counts: page.Count(total)}, parts)
	section.Chart, section.Table = chart, t
	return section, "", err
}

// fatesSentence is how many came to the boat, and the largest leak.
func fatesSentence(fates []queries.Fate, total int64) string {
	boat := int64(0)
	var leak *queries.Fate
	for i, f := range fates {
		switch kind := fateKind(f.Fate); {
		case kind == page.ToTheBoat:
			boat += f.Strikes
		case leak == nil || f.Strikes > leak.Strikes:
			leak = &fates[i]
		}
	}
	out := fmt.Sprintf("%s of %s came to the boat.", page.Count(boat), page.Plural(total, "strike", "strikes"))
	if leak == nil {
		return out
	}
	words := map[string]string{queries.FateNotLogged: "end not logged"}[leak.Fate]
	if words == "" {
		words = leak.Fate
	}
	return fmt.Sprintf("%s The largest leak: %s, %s.", out, words, page.Count(leak.Strikes))
}

const byLureWeight = "lure-weight"

// pairsPicture is speed across lure weight.
func (s *season) pairsPicture() (page.Section, string, error) {
	section := page.Section{ID: "pairs", Heading: "Speed and lure weight together"}
	var bands, weights []string
	pairs := slices.DeleteFunc(slices.Clone(s.Pairs), func(p queries.Pair) bool { return p.A == notLogged || p.B == notLogged })
	sum := map[string]float64{}
	for _, p := range pairs {
		sum[p.A] += p.Hours
	}
	pairs = slices.DeleteFunc(pairs, func(p queries.Pair) bool { return sum[p.A] < leastDrawn })
	for _, p := range pairs {
		if !slices.Contains(bands, p.A) {
			bands = append(bands, p.A)
		}
		if !slices.Contains(weights, p.B) {
			weights = append(weights, p.B)
		}
	}
	if len(bands) < 2 || len(weights) < 2 {
		if len(s.Trips) < 2 {
			return section, "", nil
		}
		return section, "speed and lure weight together, because only one of a kind is logged", nil
	}
	bands, weights = s.inOrder(bySpeed, bands), s.inOrder(byLureWeight, weights)
	var cells []page.PairMark
	for i, band := range bands {
		for j, weight := range weights {
			m := page.PairMark{Row: i, Column: j}
			for _, p := range pairs {
				if p.A == band && p.B == weight {
					m.Hours, m.Strikes = p.Hours, p.Strikes
				}
			}
			m.Thin = m.Hours < s.enough()
			cells = append(cells, m)
		}
	}
	levels, columns := make([]page.Level, len(bands)), make([]string, len(weights))
	for i, b := range bands {
		levels[i] = page.Level{Name: queries.LevelText(bySpeed, b)}
	}
	for i, w := range weights {
		columns[i] = queries.LevelText(byLureWeight, w)
	}
	section.Sentences = []string{pairsSentence(levels, columns, cells)}
	chart, err := page.Pairs(page.Frame{
		Label: "Speed bands across lure weights: the hours fished as area, the strike rate as shade. " + section.Sentences[0] + " The table below holds the figures.",
		Axis:  "lure weight",
		Keys:  []page.Key{{Mark: page.MarkSolid, Words: "area: line-hours; shade: strikes per line-hour; below it: strikes and hours"}, {Mark: page.MarkThin, Words: page.LittleEffort}},
	}, levels, columns, cells)
	section.Chart, section.Table = chart, pairsTable(levels, columns, cells)
	return section, "", err
}

// inOrder puts levels in the order of the factor's rows.
func (s *season) inOrder(factor string, levels []string) []string {
	var out []string
	if e := s.Worked.evidenceOn(factor); e != nil {
		for _, r := range e.Rows {
			if slices.Contains(levels, r.Level) {
				out = append(out, r.Level)
			}
		}
	}
	for _, l := range levels {
		if !slices.Contains(out, l) {
			out = append(out, l)
		}
	}
	return out
}

// pairsSentence is the cell with the most hours, and those hardly tried of a speed and a
// weight that both have hours enough elsewhere.
func pairsSentence(levels []page.Level, columns []string, cells []page.PairMark) string {
	most := cells[0]
	rows, cols := map[int]bool{}, map[int]bool{}
	for _, c := range cells {
		if c.Hours > most.Hours {
			most = c
		}
		if !c.Thin {
			rows[c.Row], cols[c.Column] = true, true
		}
	}
	at := func(c page.PairMark) string { return columns[c.Column] + " at " + levels[c.Row].Name }
	out := fmt.Sprintf("Most fished: %s, %s in %s line-hours.", at(most), page.Plural(most.Strikes, "strike", "strikes"), hours(most.Hours))
	var hardly []string
	for _, c := range cells {
		if c.Thin && rows[c.Row] && cols[c.Column] {
			hardly = append(hardly, at(c))
		}
	}
	switch {
	case len(hardly) == 0:
		return out
	case len(hardly) > 2:
		return out + fmt.Sprintf(" Hardly tried: %s and %d more.", list2(hardly[:2]), len(hardly)-2)
	}
	return out + " Hardly tried: " + list(hardly) + "."
}

// list2 joins two with a comma, for more to follow.
func list2(words []string) string { return words[0] + ", " + words[1] }

func pairsTable(levels []page.Level, columns []string, cells []page.PairMark) *page.Table {
	t := &page.Table{Caption: "speed and lure weight", Columns: []page.Column{{Head: "Speed over ground"}, {Head: "Lure weight", Kind: page.Token},
		{Head: "Line-hours", Unit: "h", Kind: page.Measure, Decimals: 1}, {Head: "Strikes", Kind: page.Measure}, {Head: "Rate", Unit: "strikes per line-hour", Kind: page.Measure, Decimals: 2}}}
	for _, c := range cells {
		rate := page.Cell{}
		if c.Hours > 0 {
			rate = page.Value(float64(c.Strikes) / c.Hours)
		}
		t.Rows = append(t.Rows, page.Row{Thin: c.Thin, Cells: []page.Cell{page.Words(levels[c.Row].Name), page.Words(columns[c.Column]), page.Value(c.Hours), page.Whole(c.Strikes), rate}})
	}
	return t
}
