package reports

import (
	"fmt"
	"slices"

	"wakeledger/pipeline/factors"
	"wakeledger/pipeline/sentence"
	"wakeledger/queries"
	"wakeledger/reports/page"
)

// fateKinds groups the fates as they are drawn.
var fateKinds = map[string]page.FateKind{queries.FateLanded: page.ToTheBoat, queries.FateReleased: page.ToTheBoat,
	queries.FateMissed:  page.Missed,
	queries.FateNoCause: page.LostUnsaid, queries.FateHooked: page.Unsaid, queries.FateNotLogged: page.Unsaid}

func fateKind(fate string) page.FateKind {
	if k, ok := fateKinds[fate]; ok {
		return k
	}
	return page.LostOff
}

// fatesPart is what became of all strikes.
func (s *season) fatesPart() (out part[page.Fate], total int64) {
	for _, f := range s.Fates {
		total += f.Strikes
	}
	if total == 0 {
		out.less = "what became of the strikes, of which none is logged"
		return out, 0
	}
	for _, f := range s.Fates {
		name := f.Fate
		if name == queries.FateNotLogged {
			name = "end not logged"
		}
		out.marks = append(out.marks, page.Fate{Strikes: f.Strikes, Kind: fateKind(f.Fate),
			Level: s.row(name, page.Count(f.Strikes))})
		out.rows = append(out.rows, page.Row{Cells: []page.Cell{page.Words(s.tagged(name)), page.Whole(f.Strikes),
			page.Value(float64(f.Strikes) / float64(total))}})
	}
	out.sentence = fatesSentence(s.Fates, total)
	return out, total
}

// fatesFrame is the words around the picture of what became of the strikes.
func fatesFrame(sentence, axis string, keys ...page.Key) page.Frame {
	return page.Frame{
		Label: "All strikes as one bar, and each part of it on a row of its own. " + sentence +
			" The table below holds the figures.",
		Axis: axis, Counts: "strikes", Keys: keys,
	}
}

func fatesTable(rows []page.Row) *page.Table {
	return &page.Table{Caption: "how the strikes ended",
		Columns: []page.Column{{Head: "How it ended"}, {Head: "Strikes", Kind: page.Measure},
			{Head: "Share", Kind: page.Share}}, Rows: rows}
}

// fatesPicture is one bar that adds up to all strikes.
func (s *season) fatesPicture() (section page.Section, less string, err error) {
	section = page.Section{ID: "fates", Heading: "What became of the strikes"}
	p, total := s.fatesPart()
	if p.less != "" {
		return section, p.less, nil
	}
	section.Sentences = []string{p.sentence}
	section.Chart, err = page.Fates(fatesFrame(p.sentence, "strikes",
		page.Key{Mark: page.MarkBoated, Words: "to the boat"},
		page.Key{Mark: page.MarkLost, Words: "hooked and lost"},
		page.Key{Mark: page.MarkStruck, Words: "missed, or not logged"}),
		[]page.Level{{Name: "all strikes", Counts: page.Count(total)}}, p.marks)
	section.Table = fatesTable(p.rows)
	section.Table.Total = []page.Cell{page.Words("all strikes"), page.Whole(total), page.Value(1)}
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

// pairsLogged are the cells of bands with hours enough to be drawn, and the weights and
// bands that they are of.
func (s *season) pairsLogged() (pairs []queries.Pair, bands, weights []string) {
	pairs = slices.DeleteFunc(slices.Clone(s.Pairs),
		func(p queries.Pair) bool { return p.A == factors.NotLogged || p.B == factors.NotLogged })
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
	return pairs, s.inOrder(factors.Speed, bands), s.inOrder(factors.LureWeight, weights)
}

// pairsPart is speed across the lure weights given.
func (s *season) pairsPart(weights []string) (out part[page.PairMark]) {
	pairs, bands, own := s.pairsLogged()
	if len(bands) < 2 || len(own) < 2 {
		out.less = "speed and lure weight together, because only one of a kind is logged"
		if len(s.Trips) < 2 {
			out.less = aloneOnPage
		}
		return out
	}
	columns := weightNames(weights)
	var plain []page.Level // without the season
	for i, band := range bands {
		plain = append(plain, page.Level{Name: factors.Text(factors.Speed, band)})
		out.levels = append(out.levels, s.row(plain[i].Name))
		for j, weight := range weights {
			m := page.PairMark{Row: i, Column: j}
			for _, p := range pairs {
				if p.A == band && p.B == weight {
					m.Hours, m.Strikes = p.Hours, p.Strikes
				}
			}
			m.Thin = m.Hours < s.enough()
			out.marks, out.rows = append(out.marks, m), append(out.rows, pairRow(out.levels[i].Name, columns[j], m))
		}
	}
	out.sentence = pairsSentence(plain, columns, out.marks)
	return out
}

func weightNames(weights []string) []string {
	var out []string
	for _, w := range weights {
		out = append(out, factors.Text(factors.LureWeight, w))
	}
	return out
}

// pairsFrame is the words around the picture of pairs.
func pairsFrame(sentence string, keys ...page.Key) page.Frame {
	return page.Frame{
		Label: "Speed bands across lure weights: the hours fished as area, the strike rate as shade. " + sentence +
			" The table below holds the figures.",
		Axis: "lure weight",
		Keys: append(keys, page.Key{Mark: page.MarkSolid, Words: "area: line-hours; the more it stands out, the " +
			"more strikes per line-hour; below it: strikes and hours"},
			page.Key{Mark: page.MarkThin, Words: page.LittleEffort}),
	}
}

// pairsPicture is speed across lure weight.
func (s *season) pairsPicture() (section page.Section, less string, err error) {
	section = page.Section{ID: "pairs", Heading: "Speed and lure weight together"}
	_, _, weights := s.pairsLogged()
	p := s.pairsPart(weights)
	if p.less != "" {
		return section, p.less, nil
	}
	section.Sentences = []string{p.sentence}
	section.Chart, err = page.Pairs(pairsFrame(p.sentence), p.levels, weightNames(weights), p.marks)
	section.Table = pairsTable(p.rows)
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
	out := fmt.Sprintf("Most fished: %s, %s in %s line-hours.", at(most),
		page.Plural(most.Strikes, "strike", "strikes"), hours(most.Hours))
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
	return out + " Hardly tried: " + sentence.List(hardly) + "."
}

// list2 joins two with a comma, for more to follow.
func list2(words []string) string { return words[0] + ", " + words[1] }

func pairsTable(rows []page.Row) *page.Table {
	return &page.Table{Caption: "speed and lure weight", Columns: []page.Column{{Head: "Speed over ground"},
		{Head: "Lure weight", Kind: page.Token},
		{Head: "Line-hours", Unit: "h", Kind: page.Measure, Decimals: 1}, {Head: "Strikes", Kind: page.Measure},
		{Head: "Rate", Unit: "strikes per line-hour", Kind: page.Measure, Decimals: 2}}, Rows: rows}
}

func pairRow(band, weight string, m page.PairMark) page.Row {
	rate := page.Cell{}
	if m.Hours > 0 {
		rate = page.Value(float64(m.Strikes) / m.Hours)
	}
	return page.Row{Thin: m.Thin, Cells: []page.Cell{page.Words(band), page.Words(weight),
		page.Value(m.Hours), page.Whole(m.Strikes), rate}}
}
