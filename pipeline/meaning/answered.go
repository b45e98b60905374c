package meaning

import (
	"slices"

	"wakeledger/pipeline/layout"
	"wakeledger/pipeline/plan"
)

// Answered is what the log's owner said that a heading means: the nth of its text among
// the labels of its hand. "" is nothing that is known here.
type Answered func(heading string, nth int, labels []string) (means string, ok bool)

// labels are the headings by which the group's hand is known.
func (g *group) labels() []string {
	var out []string
	for _, v := range g.values {
		out = append(out, normalise(v.Label.Full()))
	}
	return out
}

// nth is which of the columns of one heading a column is, from 0.
func (g *group) nth(column int) int {
	n := 0
	for _, v := range g.values[:column] {
		if headingOf(v.Label) == headingOf(g.values[column].Label) {
			n++
		}
	}
	return n
}

// Hand is the headings by which the hand of a block is known.
func (u *Understood) Hand() []string { return u.b.group.labels() }

const answeredWeight = 20 // more than all evidence against it

// answered leaves a column the meaning that its owner gave it. A block whose records
// cannot hold it keeps the cells by name.
func (t *Lexicon) answered(cands []candidate, heading, means string) []candidate {
	said := vote{"answered", answeredWeight}
	none := candidate{}
	if means == "" {
		none.score, none.votes = answeredWeight, []vote{said}
		return []candidate{none}
	}
	var out []candidate // a meaning may have a column for each kind of record
	take := func(c candidate) {
		if slices.ContainsFunc(out, func(o candidate) bool { return o.column == c.column }) {
			return
		}
		if c.unit == "" {
			c.unit = unitAmong(heading, c.column.Dimension)
		}
		c.score, c.votes = answeredWeight, append(slices.Clone(c.votes), said)
		out = append(out, c)
	}
	for _, c := range cands {
		if c.column != nil && meaningOf(c) == means {
			take(c)
		}
	}
	for _, x := range []*plan.Column{catchColumn, spreadColumn} {
		if x.Name == means {
			take(candidate{column: x})
		}
	}
	for _, x := range t.Columns {
		if x.Name == means || x.Parse == means {
			take(candidate{column: x})
		}
	}
	if len(out) == 0 {
		return cands
	}
	return append(out, none)
}

// Usual sets the usual value of a column for the rows that say nothing themselves.
func (l *Log) Usual(column, text string) {
	c := l.lexicon.named(column, "")
	for _, u := range l.Data() {
		if !u.tellsHours() {
			continue
		}
		u.Plan.Given = slices.DeleteFunc(u.Plan.Given,
			func(g plan.Given) bool { return g.Column.Name == column && g.Default })
		if c != nil && c.In(u.Plan.Kind) {
			u.Plan.Given = append(u.Plan.Given, plan.Given{Heading: Words(column),
				Column: c, Text: text, Default: true})
			u.b.note("%s: %s where a row says nothing, as you answered", Words(column), text)
		}
	}
}

// Means gives a bound column of a block another meaning.
func (l *Log) Means(u *Understood, index int, name string) {
	c := l.lexicon.named(name, "")
	u.Plan.Bindings = slices.Clone(u.Plan.Bindings)
	for i := range u.Plan.Bindings {
		if b := &u.Plan.Bindings[i]; b.Index == index && c != nil {
			b.Column = c
			u.b.note("%s: %s, as you answered", b.Heading, Words(name))
		}
	}
}

// tellsHours tells a block whose rows tell of hours with lines in the water.
func (u *Understood) tellsHours() bool {
	return u.Plan.Binds("start_s", "duration_s", "line_hours") || u.Plan.Kind == plan.Events
}

// Text is a row's cells, to know it again.
func Text(r layout.Row) string {
	s := ""
	for _, c := range r.Cells {
		s += c.Text + "\x1f"
	}
	return s
}
