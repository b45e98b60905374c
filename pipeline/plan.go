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
			ev.Headings(p.layout)
			for _, r := range first[p.layout.Header+1:] {
				ev.Observe(p.layout, &sheet.Row{Cells: r})
			}
		}
		plans = append(plans, p)
	}
	ev.Rest = func() error { return observeAll(path, plans, ev) }
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

func hasNumber(rows [][]string) bool {
	for _, row := range rows {
		for _, cell := range row {
			if _, err := unit.ParseNumber(strings.TrimSpace(cell), unit.MarkUnknown); err == nil {
				return true
			}
		}
	}
	return false
}

// observeAll reads a file once more, as a book of its own: the first is being
// read meanwhile.
func observeAll(path string, plans []plan, ev *normalise.Evidence) error {
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
		for n := 0; rows.Next(); n++ {
			if n > p.headerRow {
				ev.Observe(p.layout, rows.Row())
			}
		}
		if err := rows.Err(); err != nil {
			rows.Close()
			return err
		}
		rows.Close()
	}
	return nil
}
