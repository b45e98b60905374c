package pipeline

import (
	"wakeledger/pipeline/entry"
	"wakeledger/pipeline/normalise"
)

// source yields the entries of a table's rows below its header, and keeps what
// was set aside or passed over.
type source struct {
	rows     *normalise.Tables
	reader   *normalise.Reader
	problems spool
	doubts   spool // of rows that are kept
	skipped  map[normalise.Skip]int64
	progress *progress
}

func (s *source) Fields() []entry.Field { return s.reader.Fields() }

func (s *source) Next() ([]entry.Value, bool, error) {
	if values, ok := s.reader.Line(); ok {
		return values, true, nil
	}
	for s.rows.Next() {
		row := s.rows.Row()
		s.progress.row(row)
		values, skip, problems := s.reader.Row(row)
		if err := s.problems.add(problems...); err != nil {
			return nil, false, err
		}
		switch {
		case values == nil && len(problems) > 0: // else only cells of it were set aside
		case skip != normalise.NotASkip:
			s.skipped[skip]++
		default:
			if err := s.doubts.add(s.reader.Doubts()...); err != nil {
				return nil, false, err
			}
			return values, true, nil
		}
	}
	return nil, false, s.rows.Err()
}

// problemSource yields rows for the table of what is set aside.
type problemSource struct {
	problems *spool
	values   []entry.Value
}

var problemFields = []entry.Field{
	{Name: "sheet", Type: entry.Text}, {Name: "row", Type: entry.Int},
	{Name: "column", Type: entry.Text}, {Name: "cell", Type: entry.Text}, {Name: "reason", Type: entry.Text},
}

func (s *problemSource) Fields() []entry.Field { return problemFields }

func (s *problemSource) Next() ([]entry.Value, bool, error) {
	p, ok, err := s.problems.next()
	if !ok || err != nil {
		return nil, false, err
	}
	known := func(t string) entry.Value { return entry.Value{Known: true, Text: t} }
	s.values = append(s.values[:0], known(p.Pos.Sheet), entry.OfInt(int64(p.Pos.Row)), known(p.Column), known(p.Cell), known(p.Reason))
	return s.values, true, nil
}
