package layout

import "slices"

// Some sheets have a page for each outing: the headings of an outing over its one row, and under it the headings of
// bites over theirs, which say no day. Such rows are of the day above, and a text alone under the row of an outing is
// said of it.

// page is the table of an outing with its day.
type page struct {
	keys []int // columns of its day and its number, the day's first
	row  Row
}

// pagesOfDays gives the rows of tables that stand under pages of one outing each the day of that page.
func (s *Sheet) pagesOfDays(like Likeness) {
	opening := map[string][]*Block{}
	of := make([]string, len(s.Blocks))
	for i := range s.Blocks {
		b := &s.Blocks[i]
		if b.Open {
			return
		}
		if b.Shape == Table && b.openedPage(like).keys != nil {
			of[i] = s.Grid.texts(b.Heads[len(b.Heads)-1])
			opening[of[i]] = append(opening[of[i]], b)
		}
	}
	most := ""
	for text, all := range opening {
		if len(all) > len(opening[most]) || len(all) == len(opening[most]) && text < most {
			most = text
		}
	}
	if len(opening[most]) < fewPapers {
		return
	}
	var above page
	for i := range s.Blocks {
		switch b := &s.Blocks[i]; {
		case b.Shape != Table:
		case of[i] == most:
			above = b.openedPage(like)
			b.saidAlone(above)
		case above.keys != nil && !b.hasDays():
			b.ofPage(above, opening[most][0].Labels)
		default:
			above = page{}
		}
	}
}

// openedPage is the page that a table of one row with a day opens; under that row there may be texts that stand alone.
func (b *Block) openedPage(like Likeness) (p page) {
	if len(b.Rows) == 0 || len(b.Rows[0].filled(0, len(b.Rows[0].Cells))) < 2 {
		return p
	}
	for _, row := range b.Rows[1:] {
		if cells := row.filled(0, len(row.Cells)); len(cells) != 1 || row.at(cells[0]).Look != Text {
			return p
		}
	}
	p.row = b.Rows[0]
	for _, l := range b.Labels {
		switch c := p.row.at(l.Col); {
		case c.Look == Date && len(p.keys) == 0 && like.Key(l.Text):
			p.keys = append(p.keys, l.Col)
		case c.Look == Number && len(p.keys) == 1 && like.Key(l.Text):
			p.keys = append(p.keys, l.Col)
		}
	}
	return p
}

// saidAlone puts the texts that stand alone under the row of an outing into a column of remarks.
func (b *Block) saidAlone(p page) {
	col := b.Grid.Width
	for _, row := range b.Rows[1:] {
		p.row = p.row.with(col, row.at(row.filled(0, len(row.Cells))[0]).Text)
	}
	b.Rows = []Row{p.row}
	b.Labels = append(slices.Clone(b.Labels), Label{Col: col, Text: "notes"})
}

// hasDays tells a table some row of which holds a day.
func (b *Block) hasDays() bool {
	return slices.ContainsFunc(b.Rows, func(r Row) bool {
		return slices.ContainsFunc(r.Cells, func(c Cell) bool { return c.Look == Date })
	})
}

// ofPage gives each row what names its page, behind its own cells.
func (b *Block) ofPage(p page, labels []Label) {
	b.Labels = slices.Clone(b.Labels)
	for k, key := range p.keys {
		if i := slices.IndexFunc(labels, func(l Label) bool { return l.Col == key }); i >= 0 {
			b.Labels = append(b.Labels, Label{Col: b.Grid.Width + k, Text: labels[i].Text})
		}
	}
	for i, row := range b.Rows {
		cells := make([]Cell, b.Grid.Width+len(p.keys))
		copy(cells, row.Cells[:min(len(row.Cells), b.Grid.Width)])
		for k, key := range p.keys {
			cells[b.Grid.Width+k] = p.row.at(key)
		}
		b.Rows[i].Cells = cells
	}
}
