package meaning

import (
	"fmt"
	"slices"
	"strings"
	"sync"
	"testing"

	"wakeledger/pipeline/layout"
	"wakeledger/pipeline/plan"
	"wakeledger/pipeline/species"
	"wakeledger/testdata/memory"
)

var known = sync.OnceValues(func() (*Lexicon, error) {
	fish, err := species.Default()
	if err != nil {
		return nil, err
	}
	return Default(fish)
})

func lexicon(t testing.TB) *Lexicon {
	t.Helper()
	l, err := known()
	if err != nil {
		t.Fatal(err)
	}
	return l
}

func nothingSaid(string, int) Said { return Said{} }

// gridOf is lines of cells between bars as a sheet.
func gridOf(t testing.TB, index int, sheets ...memory.Sheet) *layout.Grid {
	t.Helper()
	g, err := layout.Read(memory.Book(sheets), index, 1000)
	if err != nil {
		t.Fatal(err)
	}
	return g
}

// inferred is a log of several sheets, each a name and its lines of cells.
func inferred(t testing.TB, file string, off Switches, sheets ...string) *Log {
	t.Helper()
	return inferredAs(t, file, nothingSaid, off, sheets...)
}

// inferredAs is the same where a user said something of the headings.
func inferredAs(t testing.TB, file string, said func(string, int) Said, off Switches, sheets ...string) *Log {
	t.Helper()
	l := lexicon(t)
	var all []memory.Sheet
	for i := 0; i < len(sheets); i += 2 {
		all = append(all, memory.Lines(sheets[i], sheets[i+1]))
	}
	var taken []*layout.Sheet
	for i := range all {
		taken = append(taken, layout.Take(gridOf(t, i, all...),
			layout.Likeness{Label: l.Label, Key: l.Key, Event: l.Event, Hourly: l.Hourly}))
	}
	return l.Infer(file, taken, said, off)
}

// planOf is the plan of a log's one block with data; nil where it has none.
func planOf(t testing.TB, name, text string) *plan.Block {
	t.Helper()
	data := inferred(t, "log", nil, name, text).Data()
	if len(data) > 1 {
		t.Fatalf("%d blocks with data in %q", len(data), text)
	}
	if len(data) == 0 {
		return nil
	}
	return data[0].Plan
}

// summary is a plan in one line: kind, columns with their units in the order of the
// sheet, and ? before those that are kept by name.
func summary(p *plan.Block) string {
	if p == nil {
		return ""
	}
	var cells []string
	at := map[string]int{}
	add := func(i int, s string) {
		cells = append(cells, s)
		at[s] = i
	}
	for _, x := range p.Bindings {
		s := x.Column.Name
		if x.Column.Parse == "stretches" || x.Column.Parse == "story" || x.Column.Parse == "fishlist" {
			s = x.Column.Parse
		}
		if x.Unit != "" {
			s += "/" + string(x.Unit)
		}
		add(x.Index, s)
	}
	for _, u := range p.Unknown {
		add(u.Index, "?"+u.Heading)
	}
	slices.SortStableFunc(cells, func(a, b string) int { return at[a] - at[b] })
	return string(p.Kind) + ": " + strings.Join(cells, " ")
}

// bound is what each heading of a plan is taken for.
func bound(p *plan.Block) map[string]string {
	m := map[string]string{}
	if p == nil {
		return m
	}
	for _, b := range p.Bindings {
		m[b.Heading] = fmt.Sprintf("%s/%s %s set %d carried %t", b.Column.Name,
			b.Column.Parse, b.Unit, b.Set, b.Carried)
	}
	for _, u := range p.Unknown {
		m[u.Heading] = "kept by name"
	}
	return m
}

// made is a group of columns that were assigned already: "start_s=06:00 07:00|end_s=...",
// each with a word of its heading for its meaning but those with a question mark.
func made(t testing.TB, spec string) (*group, assigned) {
	t.Helper()
	g, a := &group{cache: map[string]float64{}}, assigned{}
	for j, column := range strings.Split(spec, "|") {
		name, cells, _ := strings.Cut(column, "=")
		name, bare := strings.CutPrefix(name, "?")
		heading := name
		if n, h, ok := strings.Cut(name, ":"); ok {
			name, heading = n, h
		}
		sheet := gridOf(t, 0, memory.Lines("", "x|"+strings.ReplaceAll(cells, " ", "\nx|")))
		var rows []layout.Cell
		for _, r := range sheet.Rows {
			rows = append(rows, r.Cells[1])
		}
		c := candidate{column: lexicon(t).named(name, "")}
		if name == "fishlist" {
			c.column = lexicon(t).named("notes", name)
		}
		if !bare {
			c.votes = []vote{{"words", 3}}
		}
		g.values, g.cands = append(g.values, newValues(layout.Label{Col: j, Text: heading}, rows, false, false)),
			append(g.cands, []candidate{c})
		g.rows = len(rows)
		g.ofThose = append(g.ofThose, strings.HasPrefix(heading, "of_those"))
		a[name] = append(a[name], j)
	}
	g.written = g.values
	return g, a
}
