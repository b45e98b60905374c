package recognise

import (
	"slices"
	"testing"
)

func defaultTable(t testing.TB) *Table {
	t.Helper()
	table, err := Default()
	if err != nil {
		t.Fatal(err)
	}
	return table
}

// example is a cell that a column of a kind of parse holds; those of one
// heading with several meanings differ.
func example(c *Column) string {
	switch c.Name {
	case "lure_weight_g":
		return "8 oz"
	case "scale_kg":
		return "60 lb"
	case "trip":
		return "3" // under Day, words are no trip's name
	}
	if c.HasUnit {
		return "12 " + string(c.Unit)
	}
	return map[string]string{
		"text": "some words", "zone": "UTC-9", "date": "2026-06-03", "moment": "06:10", "count": "3",
		"latitude": "32.25", "longitude": "-127.5", "position": "32 15.2N 127 30.1W", "outcome": "lost",
		"species": "Yellowfin", "kept": "yes", "tagcapture": "T", "released": "no", "bool": "yes", "tangle": "no", "span": "06:10-07:55",
		"lengthkind": "fork", "weightstate": "round",
	}[c.Parse]
}

// frames are the columns by which each kind is told.
var frames = map[Kind][]string{
	Trips:   {"trip", "date", "captain", "port"},
	Legs:    {"trip", "date", "start_s", "end_s"},
	Lines:   {"trip", "line", "drag_kg", "hooks"},
	Strikes: {"trip", "time_s", "outcome"},
	FishRow: {"trip", "species", "length_cm", "girth_cm"},
	Flat:    {"date", "start_s", "end_s", "line", "outcome"},
}

// TestEveryAliasResolves puts each spelling of columns.csv into a sheet of each
// kind in which its column may stand, over cells that the column holds.
func TestEveryAliasResolves(t *testing.T) {
	table := defaultTable(t)
	n := 0
	for _, c := range table.Columns {
		for _, k := range c.Kinds {
			for _, alias := range c.Aliases {
				if b, ok := beside[alias]; ok && k == b.kind || c.doubtful[alias] && !c.HasUnit {
					continue // TestBeside, TestDoubtful
				}
				if got := table.resolve(t, c, k, alias); got != c.Name {
					t.Errorf("%s: %q in a sheet of %s is understood as %q", c.Name, alias, k, got)
				}
				n++
			}
		}
	}
	t.Logf("%d spellings in the sheets in which they may stand", n)
}

// beside are spellings whose meaning the other headings settle, by kind of sheet:
// minutes beside a strike's outcome are its fight's, a skirt where no lure is named
// is the lure, a strike's weight is its fish's unless it stands right after the lure.
var beside = map[string]struct {
	kind Kind
	want string
}{
	"minutes": {Flat, "fight_s"}, "mins": {Flat, "fight_s"}, "skirt": {Lines, "lure"}, "skirts": {Lines, "lure"},
	"weight": {Strikes, "scale_kg"}, "wt": {Strikes, "scale_kg"}, "wgt": {Strikes, "scale_kg"},
}

func TestBeside(t *testing.T) {
	table := defaultTable(t)
	for alias, b := range beside {
		i := slices.IndexFunc(table.Columns, func(c *Column) bool { return c.Name == b.want })
		if got := table.resolve(t, table.Columns[i], b.kind, alias); got != b.want {
			t.Errorf("%q in a sheet of %s is understood as %q, expected %s", alias, b.kind, got, b.want)
		}
	}
}

// resolve says what alias is understood as beside the frame of kind k.
func (t *Table) resolve(tb testing.TB, c *Column, k Kind, alias string) string {
	tb.Helper()
	head, cells := []string{alias}, []string{example(c)}
	for _, name := range frames[k] {
		if name == c.Name {
			continue
		}
		i := slices.IndexFunc(t.Columns, func(x *Column) bool { return x.Name == name && x.In(k) })
		head = append(head, t.Columns[i].Aliases[0])
		cells = append(cells, example(t.Columns[i]))
	}
	l, ok := t.Sheet(string(k), [][]string{head, cells, cells, cells})
	if !ok || l.Kind != k {
		return "a sheet of " + string(l.Kind)
	}
	for _, b := range l.Bindings {
		if b.Index == 0 {
			return b.Column.Name
		}
	}
	return ""
}

// TestColumns holds the table's own rules.
func TestColumns(t *testing.T) {
	kinds := []Kind{Trips, Legs, Lines, Strikes, FishRow, Flat}
	for _, c := range defaultTable(t).Columns {
		if len(c.Kinds) == 0 || len(c.Aliases) == 0 {
			t.Errorf("%s: no kinds or no spellings", c.Name)
		}
		for _, k := range c.Kinds {
			if !slices.Contains(kinds, k) {
				t.Errorf("%s: %q is no kind of sheet", c.Name, k)
			}
		}
		aliases := slices.Clone(c.Aliases)
		slices.Sort(aliases)
		if len(slices.Compact(aliases)) != len(c.Aliases) {
			t.Errorf("%s: a spelling stands twice", c.Name)
		}
		if c.HasUnit && c.Min > c.Max {
			t.Errorf("%s: %g to %g is no range", c.Name, c.Min, c.Max)
		}
	}
}
