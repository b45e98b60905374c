package layout

// turned takes a sheet whose labels stand in its first column, with a record in each
// column beside it.
func (g *Grid) turned(like Likeness) (Block, bool) {
	if g.Width < 4 || g.More {
		return Block{}, false
	}
	labels, hits, body := 0, 0.0, 0
	for r := range g.Rows {
		c := g.Rows[r].at(0)
		if len(g.Rows[r].filled(0, g.Width)) >= 3 {
			body++
		}
		if c.Look == Text && len(g.Rows[r].filled(1, g.Width)) >= 2 {
			labels++
			hits += like.Label(c.Text)
		}
	}
	if labels < 5 || hits < 0.6*float64(labels) || body < 4 ||
		g.alike(true) <= g.alike(false)+0.12 && !(g.alike(true) >= g.alike(false) && g.daysAcross()) {
		return Block{}, false
	}
	b := Block{Grid: g, Shape: Records, Turned: true}
	first := 0
	for len(g.Rows[first].filled(1, g.Width)) == 0 { // a title stands over the records
		if text := g.Rows[first].at(0).Text; text != "" {
			b.Above = append([]string{text}, b.Above...)
		}
		first++
	}
	label := func(r int) bool { return g.Rows[r].at(0).Look == Text && len(g.Rows[r].filled(1, g.Width)) > 0 }
	for r := first; r < len(g.Rows); r++ {
		text := oneLine(g.Rows[r].at(0).Text)
		switch {
		case label(r):
			b.Labels = append(b.Labels, Label{Col: len(b.Labels), Text: text})
		case text != "":
			b.Above = append(b.Above, text) // a remark beneath the records
		}
	}
	for i := 1; i < g.Width; i++ {
		row := Row{Num: i + 1} // no two rows have one number
		for r := first; r < len(g.Rows); r++ {
			if label(r) {
				row.Cells = append(row.Cells, g.Rows[r].at(i))
			}
		}
		if len(row.filled(0, len(row.Cells))) > 1 {
			b.Rows = append(b.Rows, row)
		}
	}
	return b, len(b.Rows) > 1
}

// turnedAbove takes the records that stand in columns, a day each, above a table with headings of its own, and
// gives the first of the heads that are below them, behind a title or a blank row.
func (g *Grid) turnedAbove(heads []head, like Likeness) (b Block, below int, ok bool) {
	for k, h := range heads {
		if g.named(h, like) < sureHeads {
			continue // a row of the records, all in words
		}
		end := h.first
		for end > 0 && len(g.Rows[end-1].filled(0, g.Width)) == 1 {
			end-- // the title of the table
		}
		if end == 0 || end == h.first && g.Rows[end].Num == g.Rows[end-1].Num+1 {
			continue // or one with the names of fish
		}
		part := &Grid{Index: g.Index, Info: g.Info, Rows: g.Rows[:end]}
		for r := range part.Rows {
			if filled := part.Rows[r].filled(0, g.Width); len(filled) > 1 {
				part.Width = max(part.Width, filled[len(filled)-1]+1)
			}
		}
		if !part.daysAcross() {
			return Block{}, 0, false
		}
		b, ok = part.turned(like)
		b.Grid = g
		return b, k, ok
	}
	return Block{}, 0, false
}

// fewAcross is how many days stand side by side at least, for them to head columns.
const fewAcross = 3

// daysAcross reports whether behind its label a row has days and nothing else.
func (g *Grid) daysAcross() bool {
	for r := range g.Rows {
		row := &g.Rows[r]
		filled, days := row.filled(1, g.Width), 0
		for _, i := range filled {
			if row.at(i).Look == Date {
				days++
			}
		}
		if row.at(0).Look == Text && days >= fewAcross && days == len(filled) {
			return true
		}
	}
	return false
}

// alike is how much the cells of rows (or of columns) look alike.
func (g *Grid) alike(rows bool) float64 {
	same, all := 0, 0
	count := func(looks map[Look]int) {
		n, most := 0, 0
		for look, k := range looks {
			if look != Blank {
				n += k
				most = max(most, k)
			}
		}
		if n >= 3 {
			all += n
			same += most
		}
	}
	if rows {
		for r := range g.Rows {
			looks := map[Look]int{}
			for i := 1; i < g.Width; i++ {
				looks[g.Rows[r].at(i).Look]++
			}
			count(looks)
		}
	} else {
		for i := 1; i < g.Width; i++ {
			looks := map[Look]int{}
			for r := range g.Rows {
				looks[g.Rows[r].at(i).Look]++
			}
			count(looks)
		}
	}
	if all == 0 {
		return 0
	}
	return float64(same) / float64(all)
}
