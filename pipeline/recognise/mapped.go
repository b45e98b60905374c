package recognise

import (
	"fmt"
	"slices"
	"strings"

	"wakeledger/pipeline/unit"
)

// Mapping is what a user says of one sheet; what it leaves out is recognised.
type Mapping struct {
	Kind    Kind              // "" where it is not said
	Header  int               // index of the header row among the rows looked at, -1 where it is not said
	Columns map[string]Mapped // by heading as logged
}

// Mapped is what a heading means. An empty Column keeps its cells by name.
type Mapped struct {
	Column string
	Unit   unit.Unit // of cells that state none; "" where it is not said
}

// SheetAs is Sheet under a mapping. Its error names the heading, column or unit
// of the mapping that is wrong.
func (t *Table) SheetAs(m Mapping, name string, rows [][]string) (Layout, error) {
	l, ok := t.Sheet(name, rows)
	if m.Header >= len(rows) {
		return l, fmt.Errorf("header-row %d: the sheet's first rows are fewer", m.Header+1)
	}
	if m.Header >= 0 && (!ok || m.Header != l.Header) {
		l = Layout{Header: m.Header, Rows: rows[m.Header : m.Header+1], Kind: l.Kind}
	} else if !ok {
		return l, fmt.Errorf("no header was found: say which row it is with header-row")
	}
	hs := t.mappedHeadings(&l)
	body := t.cut(&l, rows[l.Header+1:])
	l.Seen, l.name, l.above = len(body), name, texts(rows[:l.Header])
	t.settle(hs, body)
	l.Notes, l.Catch, l.Spread, l.Month, l.Years, l.yearless = nil, nil, nil, 0, unit.Years{}, false
	l.Caught, l.CatchBlank, l.Tagged = false, false, false
	t.against(&l, hs, body)
	t.effort(&l, hs, body)
	t.dayNumbers(&l, hs, body)
	t.catch(&l, hs, body)
	t.spread(&l, hs, body)
	l.Kind, l.Why = kindOf(&l, hs, body)
	switch {
	case m.Kind != "":
		l.Kind, l.Why = m.Kind, "the mapping says so"
	case !ok:
		return l, fmt.Errorf("say its kind: trips, legs, lines, strikes, fish or flat")
	}
	l.Bindings, l.Unknown, l.Given = nil, nil, nil
	l.bind(hs)
	for heading, to := range m.Columns {
		if err := t.rebind(&l, heading, to); err != nil {
			return l, err
		}
		mapped := func(u Unknown) bool { return strings.EqualFold(u.Heading, heading) }
		l.Catch, l.Spread = slices.DeleteFunc(l.Catch, mapped), slices.DeleteFunc(l.Spread, mapped)
	}
	t.concluded(&l, rows[:l.Header], body)
	return l, nil
}

// mappedHeadings are the headings of a layout's header, two rows joined.
func (t *Table) mappedHeadings(l *Layout) []heading {
	texts := map[int]string{}
	last := 0
	for _, b := range l.Bindings {
		texts[b.Index] = b.Heading
		last = max(last, b.Index)
	}
	for _, u := range l.Unknown {
		texts[u.Index] = u.Heading
		last = max(last, u.Index)
	}
	if len(texts) == 0 {
		for i, c := range l.Rows[0] {
			texts[i] = strings.TrimSpace(c)
			last = max(last, i)
		}
	}
	hs := make([]heading, last+1)
	for i, text := range texts {
		if text != "" {
			hs[i] = t.heading(text)
		}
	}
	return hs
}

// rebind ties a heading to the column that the mapping names.
func (t *Table) rebind(l *Layout, text string, to Mapped) error {
	index := -1
	keep := l.Bindings[:0:0]
	for _, b := range l.Bindings {
		if strings.EqualFold(b.Heading, text) {
			index = b.Index
		} else if b.Column.Name != to.Column {
			keep = append(keep, b)
		} else {
			l.Unknown = append(l.Unknown, Unknown{Index: b.Index, Heading: b.Heading})
		}
	}
	unknown := l.Unknown[:0:0]
	for _, u := range l.Unknown {
		if strings.EqualFold(u.Heading, text) {
			index = u.Index
		} else {
			unknown = append(unknown, u)
		}
	}
	if index < 0 {
		return fmt.Errorf("the sheet has no heading %q", text)
	}
	l.Bindings, l.Unknown = keep, unknown
	if to.Column == "" {
		l.Unknown = append(l.Unknown, Unknown{Index: index, Heading: text})
		return nil
	}
	c, err := t.columnFor(to, l.Kind)
	if err != nil {
		return fmt.Errorf("%q: %w", text, err)
	}
	l.Bindings = append(l.Bindings, Binding{Index: index, Heading: text, Column: c, Unit: to.Unit})
	return nil
}

func (t *Table) columnFor(to Mapped, k Kind) (*Column, error) {
	known := false
	for _, c := range t.Columns {
		if c.Name != to.Column {
			continue
		}
		known = true
		if !c.In(k) {
			continue
		}
		if to.Unit != "" && (!c.HasUnit || to.Unit.Dimension() != c.Dimension) {
			return nil, fmt.Errorf("%s is not in %s", c.Name, to.Unit)
		}
		return c, nil
	}
	if known {
		return nil, fmt.Errorf("a sheet of %s has no column %s", k, to.Column)
	}
	return nil, fmt.Errorf("no column is called %s", to.Column)
}

// Kinds lists the kinds of sheet.
func Kinds() []Kind { return []Kind{Trips, Legs, Lines, Strikes, FishRow, Flat} }
