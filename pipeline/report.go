package pipeline

import (
	"slices"
	"strconv"
	"strings"

	"wakeledger/pipeline/normalise"
	"wakeledger/pipeline/recognise"
	"wakeledger/pipeline/sheet"
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
	SetAside  int64 // rows, and cells of rows that are kept
	Skipped   map[normalise.Skip]int64
	Notes     []string
}

// ColumnReport is how one column was understood.
type ColumnReport struct {
	Heading string
	Column  string   // the season file's name; "" where the heading was not understood
	Unit    string   // of cells that state none
	As      string   // what its cells are where it has no column of its own: a place in the spread, or a count of a species; "" else
	Nearest string   // what a heading that was not understood may be
	Samples []string // up to three cells, as logged
}

const samples = 3

// describe fills in how the sheet was understood from its layout and first rows.
func (r *SheetReport) describe(t *recognise.Table, l recognise.Layout, info sheet.Info, first [][]string) {
	r.Kind, r.Why, r.HeaderRow = string(l.Kind), l.Why, l.Header+1
	r.Notes = append(r.Notes, l.Notes...)
	body := first[l.Header+1 : l.Header+1+l.Seen]
	for _, b := range l.Bindings {
		c := ColumnReport{Heading: b.Heading, Column: b.Column.Name, Unit: string(b.Unit), Samples: samplesOf(body, b.Index)}
		if info.Workbook && (b.Column.Parse == "date" || b.Column.Parse == "moment") {
			readable(c.Samples, info.Date1904)
		}
		if c.Unit == "" && b.Only != "" {
			c.Unit = string(b.Only)
		}
		if c.Unit == "" && b.Column.HasUnit {
			c.Unit = string(b.Column.Bare)
		}
		r.Columns = append(r.Columns, c)
	}
	for _, u := range l.Unknown {
		c := ColumnReport{Heading: u.Heading, Samples: samplesOf(body, u.Index)}
		c.As = together(l, u)
		if _, column, ok := t.Nearest(u.Heading); ok && c.As == "" {
			c.Nearest = column.Name
		}
		r.Columns = append(r.Columns, c)
	}
}

// together says what a column is that is read only together with others.
func together(l recognise.Layout, u recognise.Unknown) string {
	switch {
	case slices.Contains(l.Spread, u):
		return "a line and its lure"
	case slices.Contains(l.Catch, u):
		return "a count of its species"
	}
	return ""
}

// guess fills in what may be the header of a sheet that was not understood: the
// row with the most words among the first.
func (r *SheetReport) guess(t *recognise.Table, above int, first [][]string) {
	best, words := -1, 0
	for i, row := range first {
		n := 0
		for _, c := range row {
			if _, err := strconv.ParseFloat(strings.TrimSpace(c), 64); err != nil && strings.TrimSpace(c) != "" {
				n++
			}
		}
		if n > words {
			best, words = i, n
		}
	}
	if best < 0 {
		return
	}
	r.HeaderRow = above + best + 1
	for i, h := range first[best] {
		if strings.TrimSpace(h) == "" {
			continue
		}
		c := ColumnReport{Heading: strings.TrimSpace(h), Samples: samplesOf(first[best+1:], i)}
		if _, column, ok := t.Nearest(h); ok {
			c.Nearest = column.Name
		}
		r.Columns = append(r.Columns, c)
	}
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
