package pipeline

import (
	"fmt"
	"strings"

	"wakeledger/pipeline/entry"
	"wakeledger/pipeline/normalise"
	"wakeledger/pipeline/recognise"
	"wakeledger/pipeline/record"
	"wakeledger/pipeline/sheet"
)

// plan is how one sheet of a book will be read.
type plan struct {
	index     int
	info      sheet.Info
	pos       record.Pos
	known     bool
	layout    recognise.Layout
	headerRow int // the sheet's number of it
	filled    int // rows that are not blank, among the first
	report    SheetReport
}

// plan recognises every sheet of a book and gathers the file's evidence from
// their first rows; the rest is read only if a cell is ambiguous.
func (s *Season) plan(book sheet.Book, file string) ([]plan, *normalise.Evidence, error) {
	ev := &normalise.Evidence{}
	var plans []plan
	for i, info := range book.Sheets() {
		p := plan{index: i, info: info, pos: record.Pos{File: file, Sheet: info.Name}}
		first, err := p.firstRows(book)
		if err != nil {
			return nil, nil, err
		}
		if p.filled == 0 {
			continue // an empty sheet holds nothing to lose
		}
		p.recognise(s.columns, first)
		if p.known {
			ev.Headings(p.layout)
			for _, r := range first[p.layout.Header+1:] {
				ev.Observe(p.layout, &sheet.Row{Cells: r})
			}
		}
		plans = append(plans, p)
	}
	ev.Rest = func() error { return observeAll(book, plans, ev) }
	return plans, ev, nil
}

func (p *plan) firstRows(book sheet.Book) ([][]string, error) {
	rows, err := book.Rows(p.index)
	if err != nil {
		return nil, err
	}
	defer rows.Close()
	var first [][]string
	for len(first) < recognise.Lookahead && rows.Next() {
		cells := append([]string(nil), rows.Row().Cells...)
		if strings.TrimSpace(strings.Join(cells, "")) != "" {
			p.filled++
		}
		first = append(first, cells)
	}
	return first, rows.Err()
}

func (p *plan) recognise(t *recognise.Table, first [][]string) {
	p.report = SheetReport{Name: p.info.Name, Notes: p.info.Notes}
	p.layout, p.known = t.Sheet(p.info.Name, first)
	if !p.known {
		return
	}
	p.headerRow = p.layout.Header
	p.report.Kind, p.report.Why = string(p.layout.Kind), p.layout.Why
	for _, u := range p.layout.Unknown {
		p.report.Unknown = append(p.report.Unknown, u.Heading)
	}
}

// unread is the problem of a sheet that was not understood.
func (p *plan) unread() []record.Problem {
	p.report.SetAside = 1
	return []record.Problem{{Pos: p.pos, Reason: fmt.Sprintf(
		"the sheet was not understood: none of its first rows has two headings that are known, such as date, start, end, speed or species")}}
}

func observeAll(book sheet.Book, plans []plan, ev *normalise.Evidence) error {
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

// source yields the entries of a sheet's rows below its header, and keeps what
// was set aside or passed over.
type source struct {
	rows     sheet.Rows
	reader   *normalise.Reader
	header   int
	seen     int
	problems []record.Problem
	skipped  map[normalise.Skip]int64
}

func (s *source) Fields() []entry.Field { return s.reader.Fields() }

func (s *source) Next() ([]entry.Value, bool, error) {
	for s.rows.Next() {
		s.seen++
		if s.seen <= s.header+1 {
			continue
		}
		values, skip, problems := s.reader.Row(s.rows.Row())
		switch {
		case len(problems) > 0:
			s.problems = append(s.problems, problems...)
		case skip != normalise.NotASkip:
			s.skipped[skip]++
		default:
			return values, true, nil
		}
	}
	return nil, false, s.rows.Err()
}

// problemSource yields rows for the table of what is set aside.
type problemSource struct {
	problems []record.Problem
	values   []entry.Value
}

var problemFields = []entry.Field{
	{Name: "sheet", Type: entry.Text}, {Name: "row", Type: entry.Int},
	{Name: "column", Type: entry.Text}, {Name: "cell", Type: entry.Text}, {Name: "reason", Type: entry.Text},
}

func (s *problemSource) Fields() []entry.Field { return problemFields }

func (s *problemSource) Next() ([]entry.Value, bool, error) {
	if len(s.problems) == 0 {
		return nil, false, nil
	}
	p := s.problems[0]
	s.problems = s.problems[1:]
	known := func(t string) entry.Value { return entry.Value{Known: true, Text: t} }
	s.values = append(s.values[:0], known(p.Pos.Sheet), entry.OfInt(int64(p.Pos.Row)), known(p.Column), known(p.Cell), known(p.Reason))
	return s.values, true, nil
}
