package pipeline

import (
	"slices"
	"strconv"
	"strings"

	"wakeledger/pipeline/meaning"
	"wakeledger/pipeline/normalise"
	"wakeledger/pipeline/plan"
	"wakeledger/pipeline/unit"
)

// SheetReport is how one sheet was understood and what came of it.
type SheetReport struct {
	Name      string
	Kind      string // "" where the sheet was not understood
	Why       string
	HeaderRow int // as the sheet numbers it
	Columns   []ColumnReport
	Kept      int64
	Beside    int64 // entries of phrases in its rows
	SetAside  int64 // rows, and cells of rows that are kept
	Skipped   map[normalise.Skip]int64
	Notes     []string
	Shape     string      // table, records or form
	From, To  int         // its rows, the heading's among them; To is 0 where it goes on to the sheet's end
	Votes     meaning.Why // where Config.Why asks for it; empty for a block that is read like an earlier one
}

// ColumnReport is how one column was understood.
type ColumnReport struct {
	Heading string
	Column  string // the season file's name; "" where the heading was not understood
	Unit    string // of cells that state none
	Decided string // the unit that its numbers are read in, "" where each cell says or none is decided
	From    string // what Decided rests on, or "not decided"; "" for a column without a unit
	// what its cells are where it has no column of its own: a place in the spread, or a count of a species; "" else
	As      string
	Nearest string   // what a heading that was not understood may be
	Samples []string // up to three cells, as logged
}

const samples = 3

// describe fills in how a block was understood.
func (r *SheetReport) describe(b *table, t *meaning.Lexicon) {
	p := b.Plan
	r.Name, r.Kind, r.Why, r.HeaderRow = p.Name, string(p.Kind), p.Why, p.Row
	r.Notes = append(append([]string{}, b.info.Notes...), p.Notes...)
	r.place(b)
	var rows [][]string
	for _, row := range b.Block.Rows {
		rows = append(rows, sheetRow(row).Cells)
	}
	for _, x := range p.Bindings {
		c := ColumnReport{Heading: x.Heading, Column: x.Column.Name, Unit: string(x.Unit),
			Samples: samplesOf(rows, x.Index)}
		if b.info.Workbook && (x.Column.Parse == "date" || x.Column.Parse == "moment") {
			readable(c.Samples, b.info.Date1904)
		}
		if c.Unit == "" && x.Only != "" {
			c.Unit = string(x.Only)
		}
		if c.Unit == "" && x.Column.HasUnit {
			c.Unit = string(x.Column.Bare)
		}
		switch x.Column.Parse {
		case "stretches", "story", "fishlist":
			c.As = map[string]string{"stretches": "stretches in words", "story": "strikes in words",
				"fishlist": "fish in words"}[x.Column.Parse]
		}
		r.Columns = append(r.Columns, c)
	}
	for _, u := range p.Unknown {
		c := ColumnReport{Heading: u.Heading, Samples: samplesOf(rows, u.Index), As: together(p, u)}
		if _, column, ok := t.Nearest(u.Heading); ok && c.As == "" {
			c.Nearest = column.Name
		}
		r.Columns = append(r.Columns, c)
	}
}

// place is where the block stands in its sheet.
func (r *SheetReport) place(b *table) {
	r.Shape, r.From = string(b.Block.Shape), b.Plan.Row
	if n := len(b.Block.Heads); n > 0 {
		r.From = b.Block.Grid.Rows[b.Block.Heads[0]].Num
	}
	for _, row := range b.Block.Rows {
		if r.From == 0 || row.Num < r.From {
			r.From = row.Num
		}
		r.To = max(r.To, row.Num)
	}
	if b.Block.Open {
		r.To = 0
	}
}

// together says what a column is that is read only together with others, or that
// counts do not rest on.
func together(p *plan.Block, u plan.Unknown) string {
	same := func(x plan.Unknown) bool { return x.Index == u.Index }
	switch {
	case slices.ContainsFunc(p.Spread, same):
		return "a line and its lure"
	case p.Lures != nil && same(*p.Lures):
		return "a line for each of its lures"
	case slices.ContainsFunc(p.Rods, same):
		return "a line and what struck it"
	case slices.ContainsFunc(p.Catch, same) && len(p.Figures) > 0:
		counts := make([]string, len(p.Figures))
		for i, name := range p.Figures {
			counts[i] = meaning.Words(name)
		}
		return "in one cell: " + strings.Join(counts, ", ")
	case slices.ContainsFunc(p.Catch, same):
		return "a count of its species"
	case u.Aside != "":
		return "kept by name: " + u.Aside
	}
	return ""
}

func samplesOf(rows [][]string, index int) []string {
	var found []string
	for _, row := range rows {
		if len(found) == samples {
			break
		}
		if index < len(row) && strings.TrimSpace(row[index]) != "" {
			found = append(found, strings.TrimSpace(row[index]))
		}
	}
	return found
}

// readable shows a workbook's stored dates and times as people read them.
func readable(cells []string, date1904 bool) {
	for i, c := range cells {
		v, err := strconv.ParseFloat(c, 64)
		if err != nil {
			continue
		}
		if m, err := unit.FromSerial(v, date1904); err == nil {
			cells[i] = m.String()
		}
	}
}

// Unknown lists the headings that were not understood; their cells are kept by name.
func (r *SheetReport) Unknown() []string {
	var headings []string
	for _, c := range r.Columns {
		if c.Column == "" && c.As == "" {
			headings = append(headings, c.Heading)
		}
	}
	return headings
}
