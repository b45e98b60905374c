package layout

import (
	"fmt"
	"strings"

	"wakeledger/pipeline/record"
	"wakeledger/pipeline/sheet"
)

// Row is one row of a grid, with the number that its sheet gives it.
type Row struct {
	Num    int
	Table  int // as in sheet.Row
	Cells  []Cell
	Merged map[int]string // as in sheet.Row
	Struck bool           // as in sheet.Row
}

// at is a cell of the row; a blank one beyond its end.
func (r *Row) at(i int) Cell {
	if i < len(r.Cells) {
		return r.Cells[i]
	}
	return Cell{}
}

// filled are the indexes of the cells from lo to hi that are not blank.
func (r *Row) filled(lo, hi int) []int {
	var out []int
	for i := lo; i < min(hi, len(r.Cells)); i++ {
		if r.Cells[i].Look != Blank {
			out = append(out, i)
		}
	}
	return out
}

// tableEnd is the row behind the table that a row stands in, where the file says so; else a limit.
func (g *Grid) tableEnd(r, limit int) int {
	table := g.Rows[r].Table
	for end := r; table > 0 && end < limit; end++ {
		if g.Rows[end].Table != table {
			return end
		}
	}
	return limit
}

// Grid is the cells of one sheet, or of its first rows.
type Grid struct {
	Index int // of the sheet in its book
	Info  sheet.Info
	Rows  []Row // blank ones left out
	Width int
	More  bool // the sheet has rows beyond these

	Problems []record.Problem // rows among these that could not be read

	cells int
}

const (
	// mostAcross is how many cells of a row may hold something. Nobody's log has a tenth of
	// that; what each heading may mean is weighed beside all others.
	mostAcross = 1000
	// mostCells bounds what is held of one sheet.
	mostCells = 300_000
)

// TooWide is the error of Read for a sheet with a row that no log has.
type TooWide struct {
	Sheet string
	Row   int
	Cells int
}

func (e *TooWide) Error() string {
	where := fmt.Sprintf("row %d", e.Row)
	if e.Sheet != "" {
		where = e.Sheet + ", " + where
	}
	return fmt.Sprintf("%s: %d cells hold something, more than the %d that are read: take out what is no log", where,
		e.Cells, mostAcross)
}

// Read reads at most most rows of a sheet.
func Read(book sheet.Book, index, most int) (*Grid, error) {
	g := &Grid{Index: index, Info: book.Sheets()[index]}
	rows, err := book.Rows(index)
	if err != nil {
		return nil, err
	}
	defer rows.Close()
	for rows.Next() {
		if len(g.Rows) == most || g.cells > mostCells {
			g.More = true
			return g, nil
		}
		if n := g.add(rows.Row()); n > mostAcross {
			return nil, &TooWide{g.Info.Name, rows.Row().Num, n}
		}
	}
	return g, rows.Err()
}

// add takes a row over; rows that hold nothing, or could not be read, are left to
// the reading proper. It returns how many cells hold something.
func (g *Grid) add(from *sheet.Row) (filled int) {
	if from.Problem != nil {
		g.Problems = append(g.Problems, *from.Problem)
		return 0
	}
	for _, text := range from.Cells {
		if strings.TrimSpace(text) != "" {
			filled++
		}
	}
	if filled == 0 || filled > mostAcross {
		return filled
	}
	row := Row{Num: from.Num, Table: from.Table, Struck: from.Struck}
	some := false
	for i, text := range from.Cells {
		c := Cell{Text: strings.TrimSpace(strings.ReplaceAll(text, "\u00a0", " ")),
			Spaced: strings.HasPrefix(text, " ")}
		var class sheet.Class
		if i < len(from.Class) {
			class = from.Class[i]
		}
		c.Look, c.Formula, c.Comment = lookOf(c.Text, class), from.Formula[i], from.Comment[i]
		row.Cells = append(row.Cells, c)
		some = some || c.Look != Blank
	}
	if from.Merged != nil {
		row.Merged = map[int]string{}
		for i, v := range from.Merged {
			row.Merged[i] = v
		}
	}
	if some {
		g.Rows = append(g.Rows, row)
		g.Width = max(g.Width, len(row.Cells))
		g.cells += len(row.Cells)
	}
	return filled
}
