package pipeline

import (
	"errors"
	"fmt"
	"path/filepath"
	"slices"
	"strings"

	"wakeledger/pipeline/layout"
	"wakeledger/pipeline/meaning"
	"wakeledger/pipeline/normalise"
	"wakeledger/pipeline/record"
	"wakeledger/pipeline/sheet"
)

// mostRows is how many rows of a sheet its plan is inferred from; the logs of nearly all
// boats are shorter.
const mostRows = 3000

// understood is a log's plan, and what each of its blocks is read from.
type understood struct {
	book     sheet.Book
	log      *meaning.Log
	blocks   []*table
	others   []*table // of the files that are read beside the log
	evidence *normalise.Evidence
	problems []record.Problem // rows that could not be read at all
	passed   []Passed         // sheets that hold no record
	answers  *answers
}

// table is one block of a log on its way in.
type table struct {
	*meaning.Understood
	no     int // of the log's blocks
	info   sheet.Info
	pos    record.Pos
	report SheetReport
}

// understand takes a log's sheets apart and infers what its blocks mean.
func (s *Season) understand(book sheet.Book, path string, a *answers) (*understood, error) {
	u := &understood{book: book, evidence: &normalise.Evidence{}, answers: a}
	file := filepath.Base(path)
	var sheets []*layout.Sheet
	for i, info := range book.Sheets() {
		g, err := layout.Read(book, i, mostRows)
		var wide *layout.TooWide
		if errors.As(err, &wide) {
			return nil, &sheet.Refusal{File: file, Reason: wide.Error(), Err: err}
		}
		if err != nil {
			return nil, err
		}
		u.problems = append(u.problems, g.Problems...)
		if len(g.Rows) > 0 && !info.Hidden {
			sheets = append(sheets, layout.Take(g, s.likeness()))
		}
	}
	sheets, copies := layout.Copies(sheets)
	for _, c := range copies {
		u.passed = append(u.passed, Passed{c.Grid.Info.Name,
			fmt.Sprintf("it says the same as %q, cell for cell: not read "+
				"again", c.Of.Grid.Info.Name)})
	}
	said, err := s.cfg.Mapping.said(file, s.lexicon)
	if err != nil {
		return nil, err
	}
	if err := s.cfg.Mapping.fits(file, sheets); err != nil {
		return nil, err
	}
	beside := s.besideSheets(path, len(book.Sheets()))
	u.log = s.lexicon.Infer(file, slices.Concat(sheets, beside), a.beside(said), s.cfg.Switches)
	for _, b := range parted(u.log, sheets) {
		u.others = append(u.others, &table{Understood: b, info: b.Block.Grid.Info,
			pos: record.Pos{File: b.Block.Grid.Info.Name}})
		u.observe(b)
	}
	for i, b := range u.log.Blocks {
		x := &table{Understood: b, no: i, info: b.Block.Grid.Info,
			pos: record.Pos{File: file, Sheet: b.Block.Grid.Info.Name}}
		x.report.describe(x, s.lexicon)
		u.observe(b)
		u.blocks = append(u.blocks, x)
	}
	for _, x := range u.blocks {
		x.report.decide(x, u.evidence, s.settings())
	}
	for _, x := range sheets {
		switch name := x.Grid.Info.Name; {
		case slices.Contains(u.log.Keys, x):
			u.passed = append(u.passed, Passed{name, "read as a key to headings and codes of other sheets"})
		case !slices.ContainsFunc(u.log.Blocks, func(b *meaning.Understood) bool { return b.Block.Grid == x.Grid }):
			u.passed = append(u.passed, Passed{name, "no table found, not read"})
		}
	}
	if s.cfg.Why {
		for b, w := range u.log.Why() {
			for _, x := range u.blocks {
				if x.Understood == b {
					x.report.Votes = w
				}
			}
		}
	}
	u.evidence.Rest = func() error { return u.observeRest(path) }
	return u, nil
}

// likeness is what a sheet is taken apart by.
func (s *Season) likeness() layout.Likeness {
	return layout.Likeness{Label: s.lexicon.Label, Key: s.lexicon.Key, Event: s.lexicon.Event,
		Hourly: s.lexicon.Hourly}
}

// observe takes what a block's headings and cells say of units, days and decimals.
func (u *understood) observe(b *meaning.Understood) {
	if b.Plan.Kind == "" || b.Proof {
		return
	}
	u.evidence.Headings(b.Plan)
	for _, row := range b.Block.Rows {
		r := sheetRow(row)
		u.evidence.Observe(b.Plan, &r)
	}
}

// headings are those of the log's tables, in lower case, each once.
func (u *understood) headings() []string {
	var out []string
	for _, b := range u.blocks {
		if b.Plan.Kind == "" || b.Proof {
			continue
		}
		for _, l := range b.Block.Labels {
			if h := strings.ToLower(strings.TrimSpace(l.Full())); h != "" {
				out = append(out, h)
			}
		}
	}
	slices.Sort(out)
	return slices.Compact(out)
}

// sheetRow is a row of a block as the reader takes it.
func sheetRow(row layout.Row) sheet.Row {
	r := sheet.Row{Num: row.Num, Cells: make([]string, len(row.Cells)), Merged: row.Merged}
	for i, c := range row.Cells {
		r.Cells[i] = c.Text
	}
	return r
}

// observeRest reads what lies beyond the rows looked at once more, as a book of its own:
// the first is being read meanwhile.
func (u *understood) observeRest(path string) error {
	for _, b := range u.blocks {
		if !b.Block.Open {
			continue
		}
		book, err := sheet.Open(path, sheet.Options{})
		if err != nil {
			return err
		}
		defer book.Close()
		rows, err := book.Rows(b.Plan.Sheet)
		if err != nil {
			return err
		}
		defer rows.Close()
		for rows.Next() {
			if rows.Row().Num > b.Plan.Row {
				u.evidence.Observe(b.Plan, rows.Row())
			}
		}
		if err := rows.Err(); err != nil {
			return err
		}
	}
	return nil
}

// rows are a block's rows: those that were looked at, or, where the block goes on
// beyond them, the sheet's from the first row under the heading.
func (u *understood) rows(b *table) (sheet.Rows, error) {
	if !b.Block.Open {
		return &lookedAt{rows: b.Block.Rows}, nil
	}
	rows, err := u.book.Rows(b.Plan.Sheet)
	if err != nil {
		return nil, err
	}
	return &below{Rows: readAhead(rows), after: b.Plan.Row}, nil
}

// lookedAt is rows that were read already.
type lookedAt struct {
	rows []layout.Row
	row  sheet.Row
}

func (m *lookedAt) Next() bool {
	if len(m.rows) == 0 {
		return false
	}
	m.row, m.rows = sheetRow(m.rows[0]), m.rows[1:]
	return true
}
func (m *lookedAt) Row() *sheet.Row { return &m.row }
func (m *lookedAt) Err() error      { return nil }
func (m *lookedAt) Close() error    { return nil }

// below is the rows below a heading.
type below struct {
	sheet.Rows
	after int
	begun bool
}

func (b *below) Next() bool {
	for b.Rows.Next() {
		if b.begun || b.Rows.Row().Num > b.after {
			b.begun = true
			return true
		}
	}
	return false
}
