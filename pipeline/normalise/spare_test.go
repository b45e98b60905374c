package normalise

import (
	"strings"
	"testing"

	"wakeledger/testdata/memory"
)

// TestACellIsSetAsideAlone holds that a row is kept without a cell that cannot be read,
// which is told of, and not without its trip, boat, zone or date: without them it would
// be another's.
func TestACellIsSetAsideAlone(t *testing.T) {
	flat, legs, lines := "Date|Start|End|Lure|Strikes|Landed|Species|", "Date|Start|End|", "Trip|Leg|Line|"
	flatRow, legRow, lineRow := "2026-06-03|06:00|08:00|jet|2|1|Wahoo|", "2026-06-03|06:00|08:00|", "1|2|3|"
	fish, fishRow := "Date|Species|Length (cm)|", "2026-06-03|Wahoo|120|"
	boat, boatRow := "Start|End|Speed|Date|", "06:00|08:00|8|2026-06-03|"
	for _, c := range []struct {
		head, row, heading, usual, cell string
		kept                            bool
	}{
		{flat, flatRow, "Weight (lb)", "28", "28, 17", true}, {flat, flatRow, "Weight", "17", "17", true},
		{flat, flatRow, "Kept?", "yes", "perhaps", true}, {flat, flatRow, "Girth (cm)", "60", "900", true},
		{flat, flatRow, "Hooked", "1", "a few", true}, {flat, flatRow, "Speed", "8", "fast", true},
		{flat, flatRow, "Missed", "1", "-1", true}, {flat, flatRow, "Rods", "5", "some", true},
		{legs, legRow, "SST (C)", "21", "warm", true}, {legs, legRow, "Lat", "33.1", "33.1?", true},
		{legs, legRow, "Notes", "calm", "#REF!", true}, {legs, legRow, "Speed", "12", "120", true},
		{legs, legRow, "Lines out", "2", "2.5", true},
		{lines, lineRow, "Drag (kg)", "8", "tight", true}, {lines, lineRow, "Lure weight (g)", "99", "9999", true},
		{fish, fishRow, "Girth (cm)", "60", "900", true}, {fish, fishRow, "Kept?", "no", "perhaps", true},
		{boat, boatRow, "Time zone", "UTC", "ship's", false}, {boat, boatRow, "Boat", "Wren", "#REF!", false},
		{boat, boatRow, "Trip", "4", "#N/A", false},
	} {
		got := log{text: under(c.head+c.heading, c.row+c.usual, c.row+c.cell)}.last(t)
		if len(got.problems) != 1 || got.problems[0].Cell != c.cell || got.problems[0].Column != c.heading {
			t.Errorf("%q under %q: problems %v, expected one of the cell", c.cell, c.heading, got.problems)
			continue
		}
		if kept, said := len(got.values) > 0, strings.HasSuffix(got.problems[0].Reason, keptReason); kept != c.kept ||
			said != c.kept {
			t.Errorf("%q under %q: kept %t, expected %t: %v", c.cell, c.heading, kept, c.kept, got)
		}
	}
	both := log{text: under(flat+"Rods|Weight (lb)", flatRow+"5|28",
		strings.Replace(flatRow, "2026-06-03", "some day", 1)+"5|28, 17")}.last(t)
	if len(both.values) > 0 || len(both.problems) != 2 || strings.Contains(both.problems[1].Reason, "kept") {
		t.Errorf("a row with a cell that it needs: %v, expected both cells told of and neither row nor word of its "+
			"being kept", both)
	}
	counts := log{text: under(flat+"Weight (lb)", flatRow+"28", flatRow+"28, 17")}.last(t).values
	if counts["strikes_n"] != "2" || counts["landed_n"] != "1" ||
		counts["end_s"] != "28800" || counts["scale_kg"] != "" {
		t.Errorf("the rest of the row: %v", counts)
	}
}

// TestAGuessIsNoReading holds that a weight or length that calls itself a guess is not
// logged, in rows of every kind, and that it is told of as a doubt.
func TestAGuessIsNoReading(t *testing.T) {
	for _, head := range []string{"Date|Species|Girth (cm)|Weight (lb)", "Date|Outcome|Species|Weight (lb)",
		"Date|Start|End|Strikes|Weight (lb)"} {
		for _, cell := range []string{"~250", "90 est", "abt 40", "approx 12", "est 90", "est. 90 lb", "40 lb?"} {
			row := map[byte]string{'S': "2026-06-03|Wahoo|60|", 'O': "2026-06-03|lost|Wahoo|"}[head[5]]
			if strings.Contains(head, "Start") {
				row = "2026-06-03|06:00|08:00|1|"
			}
			x, u := only(t, memory.Lines("log", head+"\n"+row+"90\n"+row+cell))
			r, err := x.Reader(u, Settings{})
			if err != nil {
				t.Fatal(err)
			}
			values, _, problems := r.Row(RowOf(u.Block.Rows[1]))
			if len(problems) > 0 || shown(r.Fields(), values)["scale_kg"] != "" || values == nil {
				t.Errorf("%s, %q: %v, problems %v; expected a row without a weight", head, cell,
					shown(r.Fields(), values), problems)
			}
			if d := r.Doubts(); len(d) != 1 || d[0].Cell != cell || !strings.Contains(d[0].Reason, "not logged") {
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
		want Skip
	}{
		{"2026-06-04|||||the Shelf|nothing", false, NoStrike}, {"2026-06-04||||||", false, NotASkip},
		{"2026-06-04|||Wahoo|||", true, NotASkip},
		{"2026-06-04|07:10|||||", true, NotASkip}, {"2026-06-04||missed||||", true, NotASkip},
		{"2026-06-04||||3||", true, NotASkip},
	} {
		got := log{text: head + c.row, name: "strikes"}.read(t)[1]
		if kept := len(got.values) > 0; kept != c.kept || got.skip != c.want || !kept && c.want == NotASkip &&
			(len(got.problems) != 1 || !got.told("no strike")) {
			t.Errorf("%s: %v, expected to be kept: %t, passed over: %q", c.row, got, c.kept, c.want)
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

// TestLeading holds which remarks behind a count leave it a count.
func TestLeading(t *testing.T) {
	for text, want := range map[string]float64{"5 (4 + center)": 5, "0 + 4 snapper": 0, "6 rods": 6, "4 then 7": -1,
		"4 / 8": -1, "4-8": -1, "12": -1, "rods 4": -1} {
		got, ok := leading(text)
		if !ok {
			got = -1
		}
		if got != want {
			t.Errorf("%q: %v, expected %v", text, got, want)
		}
	}
}
