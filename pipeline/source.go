package pipeline

import (
	"slices"

	"wakeledger/pipeline/entry"
	"wakeledger/pipeline/normalise"
	"wakeledger/pipeline/plan"
	"wakeledger/pipeline/proof"
	"wakeledger/pipeline/record"
	"wakeledger/pipeline/sheet"
)

// source yields the entries of a table's rows below its header, and keeps what
// was set aside or passed over.
type source struct {
	rows     sheet.Rows
	reader   *normalise.Reader
	problems spool
	doubts   spool // of rows that are kept
	skipped  map[normalise.Skip]int64
	sides    []normalise.Side
	kind     plan.Kind
	stats    *proof.Stats // nil for a log that is too long to be held against itself
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
		s.sides = append(s.sides, s.reader.Sides()...)
		if skip == normalise.NotASkip {
			s.note(values, problems)
			if err := s.doubts.add(s.reader.Doubts()...); err != nil { // of rows told by their sides alone too
				return nil, false, err
			}
		}
		switch {
		// set aside, or told by its sides alone
		case values == nil && skip == normalise.NotASkip || skip == normalise.Again:
		case skip != normalise.NotASkip:
			s.skipped[skip]++
			if s.stats != nil && (skip == normalise.Elsewise || skip == normalise.LeftOut) {
				s.stats.Untrolled = append(s.stats.Untrolled, int64(row.Num))
			}
		default:
			return values, true, nil
		}
	}
	if err := s.rows.Err(); err != nil {
		return nil, false, err
	}
	open := s.reader.Finish()
	if s.stats != nil {
		s.stats.Aside = append(s.stats.Aside, open...)
	}
	return nil, false, s.problems.add(open...)
}

// note takes what a row came to into the block's ledger.
func (s *source) note(values []entry.Value, problems []record.Problem) {
	if s.stats == nil {
		return
	}
	s.stats.Aside = append(s.stats.Aside, problems...)
	if values != nil {
		r := proof.Row{Kind: s.kind, Num: values[0].Int, Values: map[string]entry.Value{}}
		for i, f := range s.reader.Fields() {
			if values[i].Known {
				r.Values[f.Name] = values[i]
			}
		}
		s.stats.Add(r)
	}
	for _, x := range s.reader.Sides() {
		s.stats.Add(proof.Row{Kind: x.Kind, Num: x.Row, Values: x.Values})
	}
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
	s.values = append(s.values[:0], known(p.Pos.Sheet), entry.OfInt(int64(p.Pos.Row)), known(p.Column),
		known(p.Cell), known(p.Reason))
	return s.values, true, nil
}

// sideSource yields what rows tell beside their own entries, of one kind.
type sideSource struct {
	fields []entry.Field
	sides  []normalise.Side
	values []entry.Value
}

// newSideSource is nil where there are none of the kind.
func newSideSource(kind plan.Kind, all []normalise.Side) *sideSource {
	s := &sideSource{fields: []entry.Field{{Name: "row", Type: entry.Int}, {Name: "part", Type: entry.Int}}}
	seen := map[string]bool{}
	for _, x := range all {
		if x.Kind != kind {
			continue
		}
		s.sides = append(s.sides, x)
		for name := range x.Values {
			seen[name] = true
		}
	}
	if len(s.sides) == 0 {
		return nil
	}
	names := make([]string, 0, len(seen))
	for name := range seen {
		names = append(names, name)
	}
	slices.Sort(names)
	for _, name := range names {
		s.fields = append(s.fields, entry.Field{Name: name, Type: normalise.TypeOf(name)})
	}
	return s
}

func (s *sideSource) Fields() []entry.Field { return s.fields }

func (s *sideSource) Next() ([]entry.Value, bool, error) {
	if len(s.sides) == 0 {
		return nil, false, nil
	}
	x := s.sides[0]
	s.sides = s.sides[1:]
	s.values = append(s.values[:0], entry.OfInt(x.Row), entry.OfInt(x.Part))
	for _, f := range s.fields[2:] {
		s.values = append(s.values, x.Values[f.Name])
	}
	return s.values, true, nil
}
