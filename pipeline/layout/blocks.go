package layout

import (
	"slices"
	"strings"
)

// Shape is how a block stands in its sheet.
type Shape string

// The shapes of block.
const (
	Table   Shape = "table"   // headings above columns
	Records Shape = "records" // labels repeated for each record, beside or across
	Form    Shape = "form"    // one record: labels beside their values
	Prose   Shape = "prose"   // a paragraph for each record
)

// Likeness tells what the caller knows of texts.
type Likeness struct {
	Label func(text string) float64 // how much a text is like a column's heading or a form's label, 0 to 1
	Key   func(text string) bool    // whether a heading may name a day or a trip, so that it begins a table of its own
	// words that tell lines in or up, or that the boat left or is home, as they are best understood; "" for others
	Event func(text string) string
	// what a log says of its hours: "rows", each row is one that was trolled; "columns", those of hours are blank where
	// nobody trolled; "until", each row holds until the next one; "idle", nobody trolled; "" for other texts
	Hourly func(text string) string
}

// Label is what stands over a column of a block, or beside a value.
type Label struct {
	Col   int // of the cells in the block's rows
	Text  string
	Group string // what stands over several labels, this one among them
	Unit  string // of a row of units under the headings
	Glued bool   // it is written right behind each of its figures: 4L
	Whole bool   // its number is part of its name, as the log says, and counts no first and second of several
}

// Full is the label with its group before it and its unit behind.
func (l Label) Full() string { return strings.TrimSpace(l.Group + " " + l.Text + " " + l.Unit) }

// Block is labels and the rows of cells under them.
type Block struct {
	Grid   *Grid
	Shape  Shape
	Heads  []int // indexes of the heading's rows in the grid
	Labels []Label
	Rows   []Row
	Totals []Row    // sums of rows, once they are told from them
	Foot   []Row    // rows under a table and its totals that are of no day, once they are told from them
	Years  []Row    // rows among them that hold a year and nothing else, once they are told from them
	Beside []Note   // lines among its rows that are part of none
	Onward []Note   // lines among its rows that say how the boat trolls from there on, once they are told from them
	Above  []string // texts between the block above and this one
	Open   bool     // its rows may go on beyond the grid's
	Turned bool     // its records stand in columns: the number of a row is that of its column
	Kind   string   // the word before its rows, where those of a sheet are of several kinds
}

// Note is a text that is part of no block.
type Note struct {
	Row, Col int
	Text     string
}

// Sheet is a sheet taken apart.
type Sheet struct {
	Grid   *Grid
	Blocks []Block
	Notes  []Note
}

// Take takes a sheet's grid apart.
func Take(g *Grid, like Likeness) *Sheet {
	s := &Sheet{Grid: g}
	used := map[int]bool{}
	g.joinComments()
	g.joinPairs()
	if s.allPairs(like) {
		return s
	}
	g.unpack()
	g.hourly(like)
	heads := g.heads(like)
	headed := slices.ContainsFunc(heads, func(h head) bool { return g.named(h, like) >= sureHeads })
	if blocks, notes, ok := g.kinds(like); ok {
		s.Blocks, s.Notes = blocks, notes
		return s
	}
	if b, ok := g.dayRecords(like); ok {
		for _, text := range b.Above {
			s.Notes = append(s.Notes, Note{Text: text})
		}
		s.Blocks = []Block{b}
		return s
	}
	for _, told := range []func() (Block, bool){g.notes,
		func() (Block, bool) { return g.daysOfSpans(len(heads) > 0, like) },
		func() (Block, bool) { return g.diary(like) }, func() (Block, bool) { return g.journal(like) },
		func() (Block, bool) { return g.paragraphs(len(heads) > 0, like) }} {
		b, ok := told()
		if !ok || headed && g.Width >= sureHeads {
			continue
		}
		for _, text := range b.Above {
			s.Notes = append(s.Notes, Note{Text: text})
		}
		s.Notes = append(s.Notes, b.Beside...)
		s.Blocks = []Block{b}
		return s
	}
	above, below, parted := g.turnedAbove(heads, like)
	if turned, ok := g.turned(like); ok && !parted && (len(heads) == 0 || g.daysAcross()) {
		s.Blocks = []Block{turned}
		return s
	}
	if blocks, notes, ok := g.stacked(like); ok {
		s.Blocks, s.Notes = blocks, notes
		return s
	}
	if parted {
		s.Blocks = append(s.Blocks, above)
		for r := range heads[below].first {
			used[r] = true
		}
		heads = heads[below:]
	}
	for k, h := range heads {
		end := len(g.Rows)
		if k+1 < len(heads) {
			end = heads[k+1].first - g.titleRows(h, heads[k+1].first)
		}
		end = g.tableEnd(h.last, end)
		before := len(s.Blocks)
		s.Blocks = append(s.Blocks, g.tables(h, end, like)...)
		for _, b := range s.Blocks[before:] {
			s.Notes = append(s.Notes, b.Beside...)
		}
		explained := g.explained(h, end)
		for r := h.first; r < end; r++ {
			if used[r] = r <= h.last || explained[r] || !g.isAside(h, r, like); explained[r] {
				s.Notes = append(s.Notes, Note{Row: g.Rows[r].Num, Text: joined(g.Rows[r])})
			}
		}
	}
	s.outside(used, like)
	s.titles(used)
	s.pagesOfDays(like)
	return s
}

// sureHeads is how many headings that are known make a table, whatever its lines look like.
const sureHeads = 3

// named is how many of the cells of a heading are known.
func (g *Grid) named(h head, like Likeness) int {
	n := 0
	for _, c := range g.Rows[h.names].Cells {
		if c.Look == Text && like.Label(c.Text) >= 0.8 {
			n++
		}
	}
	return n
}

// mostTitles is how many rows the title of a table has at the most.
const mostTitles = 3

// titleRows is how many of the rows above a heading are the title of its table, and no rows of the
// table above, whose heading is h: each of one text, with a blank row between them and that table.
func (g *Grid) titleRows(h head, next int) int {
	for n := 1; n <= mostTitles && next-n > h.last; n++ {
		row := &g.Rows[next-n]
		if cells := row.filled(0, g.Width); len(cells) != 1 || row.Cells[cells[0]].Look != Text {
			return 0
		}
		if row.Num > g.Rows[next-n-1].Num+1 {
			return n
		}
	}
	return 0
}

// titles gives each block the texts that stand above it, up to the block before.
func (s *Sheet) titles(used map[int]bool) {
	for i := range s.Blocks {
		b := &s.Blocks[i]
		if b.Shape != Table {
			continue
		}
		for r := b.Heads[0] - 1; r >= 0 && !used[r]; r-- {
			if s.Grid.isComment(r) || s.Grid.explains(r) {
				b.Above = append(b.Above, joined(s.Grid.Rows[r])) // its commas part no cells
				continue
			}
			for _, c := range s.Grid.Rows[r].Cells { // from the nearest row upwards
				if c.Look != Blank {
					b.Above = append(b.Above, c.Text)
				}
			}
		}
	}
}
