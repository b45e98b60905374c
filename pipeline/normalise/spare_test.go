package normalise

import (
	"strings"
	"testing"

	"wakeledger/pipeline/plan"
	"wakeledger/pipeline/record"
	"wakeledger/pipeline/sheet"
	"wakeledger/pipeline/species"
)

// TestACellIsSetAsideAlone holds that a row of effort is kept without a cell that it
// can do without, which is told of, and not without one that it needs.
func TestACellIsSetAsideAlone(t *testing.T) {
	flat, legs, lines := "Date|Start|End|Lure|Strikes|Landed|Species|", "Date|Start|End|", "Trip|Leg|Line|"
	flatRow, legRow, lineRow := "2026-06-03|06:00|08:00|jet|2|1|Wahoo|", "2026-06-03|06:00|08:00|", "1|2|3|"
	fish, fishRow := "Date|Species|Length (cm)|", "2026-06-03|Wahoo|120|"
	for _, c := range []struct {
		head, row, heading, cell string
		kept                     bool
	}{
		{flat, flatRow, "Weight (lb)", "28, 17", true}, {flat, flatRow, "Weight", "17", true}, {flat, flatRow, "Kept", "perhaps", true}, {flat, flatRow, "Girth (cm)", "thick", true},
		{flat, flatRow, "Hooked", "a few", false}, {flat, flatRow, "Speed", "fast", false}, {flat, flatRow, "Missed", "-1", false}, {flat, flatRow, "Rods", "some", false},
		{legs, legRow, "SST (C)", "warm", true}, {legs, legRow, "Lat", "33.1?", true}, {legs, legRow, "Notes", "#REF!", true}, {legs, legRow, "Speed", "120", false}, {legs, legRow, "Lines out", "2.5", false},
		{lines, lineRow, "Drag (kg)", "tight", true}, {lines, lineRow, "Lure weight (g)", "9999", true},
		{fish, fishRow, "Girth (cm)", "thick", false}, {fish, fishRow, "Kept", "perhaps", false},
	} {
		got := log{text: c.head + c.heading + "\n" + c.row + c.cell}.read(t)[0]
		if len(got.problems) != 1 || got.problems[0].Cell != c.cell || got.problems[0].Column != c.heading {
			t.Errorf("%q under %q: problems %v, expected one of the cell", c.cell, c.heading, got.problems)
			continue
		}
		if kept, said := len(got.values) > 0, strings.HasSuffix(got.problems[0].Reason, keptReason); kept != c.kept || said != c.kept {
			t.Errorf("%q under %q: kept %t, expected %t: %v", c.cell, c.heading, kept, c.kept, got)
		}
	}
	both := log{text: flat + "Rods|Weight (lb)\n" + flatRow + "some|28, 17"}.read(t)[0]
	if len(both.values) > 0 || len(both.problems) != 2 || strings.Contains(both.problems[1].Reason, "kept") {
		t.Errorf("a row with a cell that it needs: %v, expected both cells told of and neither row nor word of its being kept", both)
	}
	counts := log{text: flat + "Weight (lb)\n" + flatRow + "28, 17"}.read(t)[0].values
	if counts["strikes_n"] != "2" || counts["landed_n"] != "1" || counts["end_s"] != "28800" || counts["scale_kg"] != "" {
		t.Errorf("the rest of the row: %v", counts)
	}
}

// TestAGuessIsNoReading holds that a weight or length that calls itself a guess is not
// logged, in rows of every kind, and that it is told of as a doubt.
func TestAGuessIsNoReading(t *testing.T) {
	table, err := recognise.Default()
	if err != nil {
		t.Fatal(err)
	}
	list, err := species.Default()
	if err != nil {
		t.Fatal(err)
	}
	for _, head := range []string{"Date|Species|Girth (cm)|Weight (lb)", "Date|Outcome|Species|Weight (lb)", "Date|Start|End|Strikes|Weight (lb)"} {
		for _, cell := range []string{"~250", "90 est", "abt 40", "approx 12", "est 90", "est. 90 lb", "40 lb?"} {
			row := map[byte]string{'S': "2026-06-03|Wahoo|60|", 'O': "2026-06-03|lost|Wahoo|"}[head[5]]
			if strings.Contains(head, "Start") {
				row = "2026-06-03|06:00|08:00|1|"
			}
			rows := [][]string{strings.Split(head, "|"), strings.Split(row+"90", "|"), strings.Split(row+cell, "|")}
			l, ok := table.Sheet("log", rows)
			if !ok {
				t.Fatalf("%s: not recognised", head)
			}
			r, err := New(l, sheet.Info{}, record.Pos{File: "log"}, &Evidence{}, Settings{Species: list})
			if err != nil {
				t.Fatal(err)
			}
			values, _, problems := r.Row(&sheet.Row{Num: 3, Cells: rows[2]})
			if len(problems) > 0 || shown(r.Fields(), values)["scale_kg"] != "" || values == nil {
				t.Errorf("%s, %q: %v, problems %v; expected a row without a weight", head, cell, shown(r.Fields(), values), problems)
			}
			if d := r.Doubts(); len(d) != 1 || d[0].Cell != cell || !strings.Contains(d[0].Reason, "guess") {
				t.Errorf("%s, %q: doubts %v, expected one", head, cell, d)
			}
		}
	}
}

// TestADayIsNoStrike holds that a row of strikes that tells of none is set aside, and
// that any of what a strike is known by keeps it.
func TestADayIsNoStrike(t *testing.T) {
	head := "Date|Time|Outcome|Species|Line|Area|Notes\n2026-06-03|06:40|lost|||the Shelf|\n"
	for _, c := range []struct {
		row  string
		kept bool
	}{
		{"2026-06-04|||||the Shelf|nothing", false}, {"2026-06-04||||||", false}, {"2026-06-04|||Wahoo|||", true},
		{"2026-06-04|07:10|||||", true}, {"2026-06-04||missed||||", true}, {"2026-06-04||||3||", true},
	} {
		got := log{text: head + c.row, name: "strikes"}.read(t)[1]
		if kept := len(got.values) > 0; kept != c.kept || !kept && (len(got.problems) != 1 || !strings.Contains(got.problems[0].Reason, "no strike")) {
			t.Errorf("%s: %v, expected to be kept: %t", c.row, got, c.kept)
		}
	}
}

// TestTaggedIsReleased holds that T beside Y and N in a column of kept fish is a fish
// that was let go, and nothing that can be read elsewhere.
func TestTaggedIsReleased(t *testing.T) {
	head, row := "Date|Species|Length (cm)|Kept?\n", "2026-06-03|Wahoo|120|"
	got := log{text: head + row + "Y\n" + row + "N\n" + row + "T"}.read(t)
	if got[0].values["kept"] != "true" || got[1].values["kept"] != "false" || got[2].values["kept"] != "false" {
		t.Errorf("%v", got)
	}
	if got := (log{text: head + row + "Y\n" + row + "T"}).read(t)[1]; len(got.problems) != 1 {
		t.Errorf("T beside Y alone: %v", got)
	}
}
