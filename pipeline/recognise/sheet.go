package recognise

import (
	"cmp"
	"slices"
	"strings"
	"time"

	"wakeledger/pipeline/unit"
)

// Binding ties a column of a sheet to the column that it was understood as.
type Binding struct {
	Index   int    // of the cell in the row, from 0
	Heading string // as logged; the two parts of a heading of two rows with a space between
	Column  *Column
	Unit    unit.Unit // stated in the heading; "" where it states none
	Only    unit.Unit // the only unit in which the numbers seen are possible, "" where nothing tells; Layout.Notes say so
	Carried bool      // written once for the rows under it; Layout.Notes say so
}

// Unknown is a column whose heading was not understood. Its cells are kept by
// this name.
type Unknown struct {
	Index   int
	Heading string
}

// Layout is how a sheet was understood.
type Layout struct {
	Kind       Kind
	Why        string     // in plain words
	Header     int        // index of the header's last row among the rows looked at
	Rows       [][]string // the header's one or two rows, as logged
	Bindings   []Binding
	Unknown    []Unknown
	Catch      []Unknown  // those of Unknown that hold how many of a species were hooked
	Caught     bool       // those of Catch were landed
	CatchBlank bool       // a row in which all of Catch are blank had none
	Tagged     bool       // T in the column of kept fish is tagged, so released
	Spread     []Unknown  // those of Unknown that are places in the spread, with the lure that ran there
	Refused    string     // why a sheet with a header cannot be read, "" else
	Seen       int        // of the rows looked at below the header, those of this table
	Years      unit.Years // in which dates without a year are, see Dated; zero where nothing tells
	Month      time.Month // of dates that are a day's number alone, 0 where there are none
	Hashed     bool       // rows that start with # are comments, those with a number after it too
	Given      []Given    // values that stand above the table and hold for each of its rows
	Notes      []string   // what was concluded from the cells, for the user to see

	name     string   // of the sheet
	kinds    []Kind   // of the tables above of the same trip
	above    []string // texts above the header
	yearless bool     // some dates have no year
}

// Lookahead is how many rows of a sheet are needed to recognise it.
const Lookahead = 40

// Sheet finds the header among the first rows of a sheet and binds its columns.
// It reports false where no row of the first 20, nor two together, hold at least
// two known headings.
func (t *Table) Sheet(name string, rows [][]string) (Layout, bool) {
	h, ok := t.findHeader(rows)
	if !ok {
		return Layout{}, false
	}
	return t.layout(h, name, rows)
}

// layout binds the columns of a header that was found.
func (t *Table) layout(h header, name string, rows [][]string) (Layout, bool) {
	l := Layout{Header: h.last, name: name, above: texts(rows[:h.first])}
	for _, row := range rows[h.first : h.last+1] {
		l.Rows = append(l.Rows, slices.Clone(row)) // the caller's room may be used again
	}
	body := t.cut(&l, rows[h.last+1:])
	l.Seen = len(body)
	if events(body, len(h.headings)) {
		l.Refused = "each of its rows is an event (lines in, a strike, lines up): give it a row for each leg with its start and end, and one for each strike"
		return l, false
	}
	t.settle(h.headings, body)
	t.against(&l, h.headings, body)
	t.effort(&l, h.headings, body)
	t.dayNumbers(&l, h.headings, body)
	t.catch(&l, h.headings, body)
	t.spread(&l, h.headings, body)
	l.Kind, l.Why = kindOf(&l, h.headings, body)
	l.bind(h.headings)
	if len(l.Bindings) < 2 {
		return l, false
	}
	t.concluded(&l, rows[:h.first], body)
	l.Hashed = hashed(rows)
	return l, true
}

// concluded is what the cells and the rows above the table say of the columns.
func (t *Table) concluded(l *Layout, above, body [][]string) {
	t.given(l, l.name, above)
	t.section(l, above)
	t.dayless(l)
	l.runSpread()
	l.unsigned(body)
	l.onlyUnits(body)
	l.carried(body)
	l.yearless = l.yearless || slices.ContainsFunc(l.Bindings, func(b Binding) bool {
		return b.Column.Parse == "date" && slices.ContainsFunc(column(body, b.Index), yearless)
	})
}

func texts(rows [][]string) []string {
	var all []string
	for _, row := range rows {
		for _, c := range row {
			if c = strings.TrimSpace(c); c != "" {
				all = append(all, c)
			}
		}
	}
	return all
}

// bind gives each heading the first of its candidates that the kind allows and
// that no other heading has taken. A spelling that is known comes before one that
// was told by its words. Of two headings for one quantity the one of
// more words is the more exact; else a column's plainest name, then the left one, comes first.
func (l *Layout) bind(hs []heading) {
	order := make([]int, 0, len(hs))
	for i, h := range hs {
		if h.text != "" {
			order = append(order, i)
		}
	}
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(plainest(hs[b]), plainest(hs[a])) })
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(exactness(hs[b]), exactness(hs[a])) })
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(dressed(hs[a]), dressed(hs[b])) })
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(guessed(hs[a]), guessed(hs[b])) })
	taken := map[string]bool{}
	for _, i := range order {
		h := hs[i]
		c := pick(h.candidates, l.Kind, taken)
		if c == nil {
			l.Unknown = append(l.Unknown, Unknown{Index: i, Heading: h.text})
			continue
		}
		taken[c.Name] = true
		l.Bindings = append(l.Bindings, Binding{Index: i, Heading: h.text, Column: c, Unit: h.unit})
	}
	slices.SortFunc(l.Bindings, func(a, b Binding) int { return cmp.Compare(a.Index, b.Index) })
	slices.SortFunc(l.Unknown, func(a, b Unknown) int { return cmp.Compare(a.Index, b.Index) })
}

// plainest puts a column's first spelling before its others: Species before Kind.
func plainest(h heading) int {
	if len(h.candidates) > 0 && h.candidates[0].Aliases[0] == h.name {
		return 1
	}
	return 0
}

// dressed puts the weight of a fish that is no longer whole behind its round weight.
func dressed(h heading) int {
	if h.means("scale_kg") && speaksOf(normalise(h.text), "dressed", "gutted", "gilled") {
		return 1
	}
	return 0
}

func guessed(h heading) int {
	if h.loose {
		return 1
	}
	return 0
}

func exactness(h heading) int {
	if len(h.candidates) == 0 || !h.candidates[0].HasUnit {
		return 0
	}
	return strings.Count(h.name, " ")
}

func pick(candidates []*Column, k Kind, taken map[string]bool) *Column {
	for _, c := range candidates {
		if c.In(k) && !taken[c.Name] {
			return c
		}
	}
	return nil
}

func (l *Layout) binds(names ...string) bool {
	return slices.ContainsFunc(l.Bindings, func(b Binding) bool { return slices.Contains(names, b.Column.Name) })
}

// hashed tells a log in which # begins comments: a few rows start so, one of
// them with words after it. In a log that numbers its rows #1, #2, #3 most do.
func hashed(rows [][]string) bool {
	words, numbers, filled := 0, 0, 0
	for _, row := range rows {
		c := cellOf(row, 0)
		rest, hash := strings.CutPrefix(c, "#")
		switch {
		case c == "":
		case !hash:
			filled++
		case rest == "" || rest[0] < '0' || rest[0] > '9':
			words++
		default:
			numbers++
		}
	}
	return words > 0 && 3*numbers < filled
}
