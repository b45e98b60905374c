package recognise

import (
	"slices"
	"strings"
	"testing"
)

// read lays out a sheet given as lines of cells parted by |.
func read(t *testing.T, table *Table, lines string) (Layout, map[string]Binding) {
	t.Helper()
	var rows [][]string
	for _, line := range strings.Split(lines, "\n") {
		rows = append(rows, strings.Split(line, "|"))
	}
	l, ok := table.Sheet("log", rows)
	if !ok {
		t.Fatalf("not recognised: %s", lines)
	}
	bound := map[string]Binding{}
	for _, b := range l.Bindings {
		bound[b.Column.Name] = b
	}
	return l, bound
}

// TestHeadingsAgainstTheirCells looks up what one heading is taken for beside a leg's
// start and end, by its cells and its neighbours.
func TestHeadingsAgainstTheirCells(t *testing.T) {
	table, err := Default()
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		beside, heading, cells string
		column, unit           string // "" kept by name
	}{
		{"Hook-ups", "Fish no", "1,2,3,4", "", ""}, {"Hook-ups", "Fish no", "2,1,0,1", "landed_n", ""}, {"Hook-ups", "Fish #", "1,2,3", "", ""},
		{"Hook-ups", "Fish", "1,2,3,4,5,6", "", ""}, {"Hook-ups", "Fish", "1,2,3", "landed_n", ""}, {"Hook-ups", "Fish no", "1,2", "landed_n", ""},
		{"Avg Wt", "Count", "34,61,22", "landed_n", ""}, {"Species", "Count", "3,6,2", "landed_n", ""}, {"Line", "Count", "34,61,22", "count_s", "s"},
		{"Let out speed", "Count", "34,61,22", "", ""}, {"Area", "Count", "34,61,22", "", ""},
		{"Species", "Avg Wt", "17,19,16", "", ""}, {"Species", "Average weight (lb)", "17,19,16", "", ""}, {"Species", "Biggest (lb)", "17,19,16", "", ""},
		{"Species", "Heaviest kg", "17,19,16", "", ""}, {"Species", "Total weight (kg)", "17,19,16", "", ""}, {"Species", "Avg speed", "7,9,6", "speed_kn", ""},
		{"Species", "Weight (kg)", "17,19,16", "scale_kg", "kg"}, {"Species", "Mass (kg)", "17,19,16", "scale_kg", "kg"},
		{"Species", "Round lb", "717,619,516", "scale_kg", "lb"}, {"Species", "Dressed lb", "717,619,516", "scale_kg", "lb"}, {"Species", "Round", "68,70,61", "", ""},
		{"Species", "Rig / spot", "drillship,weed line,shelf", "area", ""}, {"Species", "Rig", "single,double,double", "hooks", ""},
		{"Species", "Jig strikes", "2,0,1", "strikes_n", ""}, {"Species", "Back (ft)", "180,60,300", "setback_m", "ft"},
		{"Lure", "Bait/lure weight", "180 g,60 g,90 g", "lure_weight_g", ""}, {"Line", "lead oz", "4,2,4", "lure_weight_g", "oz"}, {"Line", "jig", "feather white,feather red,cedar", "lure", ""},
		{"Line", "fathoms out", "20,12,35", "setback_m", "fathom"}, {"Line", "Setback (fm)", "20,12,35", "setback_m", "fathom"}, {"Line", "Setback", "20 fathoms,12 fathoms,8 fathoms", "setback_m", ""},
	} {
		lines := "Date|Start|End|" + c.beside + "|" + c.heading
		beside := map[string]string{"Hook-ups": "5", "Avg Wt": "17", "Species": "Wahoo", "Line": "port", "Let out speed": "3", "Area": "the Shelf", "Lure": "cedar"}[c.beside]
		for i, cell := range strings.Split(c.cells, ",") {
			lines += "\n2026-06-0" + string(rune('1'+i)) + "|06:00|08:00|" + beside + "|" + cell
		}
		l, _ := read(t, table, lines)
		column, unit := "", ""
		for _, b := range l.Bindings {
			if b.Heading == c.heading {
				column, unit = b.Column.Name, string(b.Unit)
				if unit == "" && column == "count_s" {
					unit = string(b.Column.Bare)
				}
			}
		}
		if column != c.column || unit != c.unit {
			t.Errorf("%s beside %s over %s: taken for %q in %q, expected %q in %q", c.heading, c.beside, c.cells, column, unit, c.column, c.unit)
		}
	}
}

// TestRoundBeforeDressed holds that of two weights the round one is the fish's.
func TestRoundBeforeDressed(t *testing.T) {
	table, err := Default()
	if err != nil {
		t.Fatal(err)
	}
	for _, heads := range []string{"Dressed weight (lb)|Round weight (lb)", "Round lb|Dressed lb", "Dressed lb|Round lb"} {
		_, bound := read(t, table, "Date|Time|Outcome|Species|"+heads+"\n2026-06-01|06:00|landed|Wahoo|60|70\n2026-06-02|06:00|lost|Wahoo||")
		if got := bound["scale_kg"].Heading; !strings.HasPrefix(got, "Round") {
			t.Errorf("%s: the weight is %q", heads, got)
		}
	}
}

// TestFishKeptAndLetGo holds that a sum of those kept and let go is told from a count
// of its own.
func TestFishKeptAndLetGo(t *testing.T) {
	table, err := Default()
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct{ rows, landed, released string }{
		{"2|1|1;1|0|1;0|0|0", "Kept", "Let go"}, {"2|1|1;1|0|1;|||", "Kept", "Let go"}, {"2|2|1;1|0|1;0|0|0", "Fish", "Let go"}, {"1|1|0;0|0|0;0|0|0", "Fish", "Let go"},
	} {
		lines := "Date|Start|End|Hits|Fish|Kept|Let go"
		for i, r := range strings.Split(c.rows, ";") {
			lines += "\n2026-06-0" + string(rune('1'+i)) + "|06:00|08:00|3|" + r
		}
		l, bound := read(t, table, lines)
		if bound["landed_n"].Heading != c.landed || bound["released_n"].Heading != c.released {
			t.Errorf("%s: landed %q, released %q, expected %q and %q", c.rows, bound["landed_n"].Heading, bound["released_n"].Heading, c.landed, c.released)
		}
		if said := slices.ContainsFunc(l.Notes, func(n string) bool { return strings.Contains(n, "the sum of") }); said != (c.landed == "Kept") {
			t.Errorf("%s: notes %q", c.rows, l.Notes)
		}
	}
	for cells, want := range map[string]bool{"Y,N,T": true, "y,n,t": true, "Y,Y,T": false, "T,T,T": false, "kept,T,Y": false} {
		lines := "Date|Species|Length (cm)|Kept?"
		for _, c := range strings.Split(cells, ",") {
			lines += "\n2026-06-01|Wahoo|120|" + c
		}
		if l, _ := read(t, table, lines); l.Tagged != want {
			t.Errorf("kept %s: tagged %t, expected %t", cells, l.Tagged, want)
		}
	}
}
