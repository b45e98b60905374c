package pipeline

import (
	"fmt"
	"path/filepath"
	"strings"

	"wakeledger/pipeline/normalise"
	"wakeledger/pipeline/recognise"
	"wakeledger/pipeline/record"
	"wakeledger/pipeline/sheet"
	"wakeledger/pipeline/unit"
)

// plan is how one sheet of a book will be read.
type plan struct {
	index     int
	info      sheet.Info
	pos       record.Pos
	known     bool
	layout    recognise.Layout
	headerRow int  // rows before the last one of the header
	blank     int  // blank rows above the first that is not
	prose     bool // not understood, and its first rows hold no number
	report    SheetReport
}

// plan recognises every sheet of a book and gathers the file's evidence from
// their first rows; the rest is read only if a cell is ambiguous.
func (s *Season) plan(book sheet.Book, path string) ([]plan, *normalise.Evidence, error) {
	s.columns.Names = func(name string) bool {
		m := s.species.Find(name, s.cfg.Ocean)
		return m.Found || len(m.Candidates) > 0
	}
	file := filepath.Base(path)
	ev := &normalise.Evidence{}
	var plans []plan
	for i, info := range book.Sheets() {
		p := plan{index: i, info: info, pos: record.Pos{File: file, Sheet: info.Name}}
		first, err := p.firstRows(book)
		if err != nil {
			return nil, nil, err
		}
		if len(first) == 0 {
			continue // an empty sheet holds nothing to lose
		}
		if err := p.recognise(s.columns, s.cfg.Mapping, first); err != nil {
			return nil, nil, fmt.Errorf("%s: mapping: %w", p.pos, err)
		}
		if p.known {
			ev.First(s.columns, p.layout, p.pos, first)
		}
		plans = append(plans, p)
	}
	ev.Rest = func() error { return s.observeAll(path, plans, ev) }
	return plans, ev, nil
}

// firstRows are the rows by which a sheet is recognised, from the first that is
// not blank.
func (p *plan) firstRows(book sheet.Book) ([][]string, error) {
	rows, err := book.Rows(p.index)
	if err != nil {
		return nil, err
	}
	defer rows.Close()
	var first [][]string
	for len(first) < recognise.Lookahead && rows.Next() {
		cells := append([]string(nil), rows.Row().Cells...)
		if len(first) == 0 && strings.TrimSpace(strings.Join(cells, "")) == "" {
			p.blank++
			continue
		}
		first = append(first, cells)
	}
	return first, rows.Err()
}

func (p *plan) recognise(t *recognise.Table, m Mapping, first [][]string) error {
	p.report = SheetReport{Name: p.info.Name, Notes: p.info.Notes}
	if said, ok := m.find(p.pos.File, p.info.Name); ok {
		as, err := said.layout()
		if err != nil {
			return err
		}
		as.Header = said.HeaderRow - 1 - p.blank
		if p.layout, err = t.SheetAs(as, p.info.Name, first); err != nil {
			return err
		}
		p.known = true
	} else {
		p.layout, p.known = t.Sheet(p.info.Name, first)
	}
	if p.known {
		p.layout.Dated(p.pos.File)
		p.headerRow = p.blank + p.layout.Header
		p.report.describe(t, p.layout, p.info, first)
		p.report.HeaderRow += p.blank
	}
	if !p.known {
		p.prose = !hasNumber(first)
		p.report.guess(t, p.blank, first)
	}
	return nil
}

// hasNumber tells rows that may be data: a cell is a number, or several rows begin with one.
func hasNumber(rows [][]string) bool {
	begin := 0
	for _, row := range rows {
		for i, cell := range row {
			cell = strings.TrimSpace(cell)
			if _, err := unit.ParseNumber(cell, unit.MarkUnknown); err == nil {
				return true
			}
			if i == 0 && cell != "" && cell[0] >= '0' && cell[0] <= '9' {
				begin++
			}
		}
	}
	return begin > 2
}

// observeAll reads a file once more, as a book of its own: the first is being
// read meanwhile.
func (s *Season) observeAll(path string, plans []plan, ev *normalise.Evidence) error {
	book, err := sheet.Open(path, sheet.Options{})
	if err != nil {
		return err
	}
	defer book.Close()
	for _, p := range plans {
		if !p.known {
			continue
		}
		rows, err := book.Rows(p.index)
		if err != nil {
			return err
		}
		err = ev.Tables(normalise.NewTables(rows, s.columns, p.layout, p.pos, p.headerRow+1), p.layout)
		rows.Close()
		if err != nil {
			return err
		}
	}
	return nil
}

// below is the plan of a table below p's in its sheet. A mapping may say how it is
// read, by the row of its header.
func (p *plan) below(s *Season, l recognise.Layout, looked [][]string, row int) (plan, error) {
	q := plan{index: p.index, info: p.info, pos: p.pos, known: true, layout: l}
	q.report = SheetReport{Name: p.info.Name}
	for _, said := range s.cfg.Mapping.Sheets {
		if said.Log != p.pos.File || said.Sheet != p.info.Name || said.HeaderRow != row {
			continue
		}
		as, err := said.layout()
		if err != nil {
			return q, err
		}
		as.Header = l.Header
		if q.layout, err = s.columns.SheetAs(as, p.info.Name, looked); err != nil {
			return q, err
		}
		q.layout.Dated(p.pos.File)
	}
	q.report.describe(s.columns, q.layout, p.info, looked)
	q.report.HeaderRow = row
	return q, nil
}
