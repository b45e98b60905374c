package plan

import (
	"math"
	"slices"
	"strings"
	"testing"

	"wakeledger/pipeline/unit"
)

func all(t *testing.T) []*Column {
	t.Helper()
	columns, err := Columns()
	if err != nil {
		t.Fatal(err)
	}
	return columns
}

// TestColumns holds the catalogue's own rules.
func TestColumns(t *testing.T) {
	for _, c := range all(t) {
		if len(c.Kinds) == 0 || len(c.Aliases) == 0 {
			t.Errorf("%s: no kinds or no spellings", c.Name)
		}
		for _, k := range c.Kinds {
			if !slices.Contains(Kinds(), k) {
				t.Errorf("%s: %q is no kind of block", c.Name, k)
			}
		}
		if c.HasUnit != (c.Parse == "quantity") {
			t.Errorf("%s: has a unit: %t, is read as %s", c.Name, c.HasUnit, c.Parse)
		}
		if (c.Parse == "quantity" || c.Parse == "count") && (math.IsNaN(c.Min) || math.IsNaN(c.Max)) &&
			c.Name != "letout_kn" || c.Min > c.Max {
			t.Errorf("%s: %g to %g is no range", c.Name, c.Min, c.Max)
		}
		if (c.US == "") != (c.Metric == "") && c.Metric == "" {
			t.Errorf("%s: a unit of one system alone", c.Name)
		}
		for _, u := range []unit.Unit{c.Bare, c.US, c.Metric} {
			if u != "" && !c.Possible(inUnit(t, c.Max, c.Unit, u)*0.5, u) {
				t.Errorf("%s: half of its most is not possible in %s", c.Name, u)
			}
		}
	}
}

func inUnit(t *testing.T, v float64, from, to unit.Unit) float64 {
	t.Helper()
	w, err := unit.Convert(v, from, to)
	if err != nil {
		t.Fatal(err)
	}
	return w
}

// TestSpellings holds that they are in the form in which headings are looked up, that no
// column has one twice, and that two columns of one name in one kind of block share none.
func TestSpellings(t *testing.T) {
	type key struct {
		name, parse, alias string
		kind               Kind
	}
	seen := map[key]bool{}
	for _, c := range all(t) {
		for _, a := range c.Aliases {
			if a != strings.ToLower(a) || a != strings.Join(strings.Fields(a), " ") ||
				strings.ContainsAny(a, "?#()/-.,'") {
				t.Errorf("%s: %q is not in normal form", c.Name, a)
			}
			for _, k := range c.Kinds {
				if x := (key{c.Name, c.Parse, a, k}); seen[x] {
					t.Errorf("%s, read as %s in %s: %q stands twice", c.Name, c.Parse, k, a)
				} else {
					seen[x] = true
				}
			}
		}
	}
}

func TestParseColumn(t *testing.T) {
	good := append(strings.Split("scale_kg,quantity,mass,kg,,lb,kg,0.05,2000,yes,fish strikes", ","), "weight|?round")
	c, err := parseColumn(good)
	if err != nil || !c.Key || !c.Doubtful["round"] || c.Doubtful["weight"] ||
		!slices.Equal(c.Aliases, []string{"weight", "round"}) || !slices.Equal(c.Kinds, []Kind{Fish, Strikes}) {
		t.Fatalf("%+v %v", c, err)
	}
	for _, k := range Kinds() {
		if want := k == Fish || k == Strikes || k == Events; c.In(k) != want { // what strikes have, events may tell
			t.Errorf("in %s: %t", k, c.In(k))
		}
	}
	for _, v := range []struct {
		value float64
		unit  unit.Unit
		want  bool
	}{{2000, unit.Kilogram, true}, {2001, unit.Kilogram, false}, {4000, unit.Pound, true}, {5000, unit.Pound, false},
		{0, unit.Kilogram, false}, {50, unit.Knot, false}} {
		if c.Possible(v.value, v.unit) != v.want {
			t.Errorf("%g %s: possible %t", v.value, v.unit, !v.want)
		}
	}
	for i, text := range map[int]string{2: "heft", 3: "kn", 4: "cm", 5: "kn", 6: "m", 7: "some", 8: "many"} {
		bad := slices.Clone(good)
		bad[i] = text
		if c, err := parseColumn(bad); err == nil {
			t.Errorf("%q in place of %q: %+v, and no error", text, good[i], c)
		}
	}
}

func TestBlock(t *testing.T) {
	date, trip, story := &Column{Name: "date", Parse: "date"}, &Column{Name: "trip", Parse: "text"},
		&Column{Name: "notes", Parse: "story"}
	b := &Block{Bindings: []Binding{{Index: 3, Column: story}, {Index: 1, Column: date},
		{Index: 2, Column: date, Set: 1}}, Given: []Given{{Column: trip}}}
	if !b.Binds("trip", "date") || b.Binds("trip") || b.Find("date").Index != 1 || b.Find("boat") != nil ||
		!b.Gives("trip") || b.Gives("date") || b.Stories() != 1 {
		t.Errorf("%+v", b)
	}
}
