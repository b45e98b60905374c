package meaning

import (
	"slices"
	"strings"
	"testing"

	"wakeledger/pipeline/layout"
	"wakeledger/pipeline/plan"
)

// TestCandidates holds what one column is likeliest to be by its heading's words, its
// cells and its units, whatever stands beside it.
func TestCandidates(t *testing.T) {
	l := lexicon(t)
	for _, c := range []struct{ heading, cells, want string }{
		{"Start", "06:00 06:10 07:00", "start_s"}, {"Hora de inicio", "06:00 06:10 07:00", "start_s"},
		{"Lines up", "11:00 12:10 13:00", "end_s"}, {"Lines dry", "11:00 12:10 13:00", "end_s"},
		{"Lines out", "4 5 4", "lines_out"}, {"Lines out", "11:00 12:10 13:00", "end_s"}, {"Fish", "2 0 1", "landed_n"},
		{"Fish", "wahoo mahi wahoo", "species"},
		{"Weight", "22 31 18", "scale_kg"}, {"Speed", "8 9.5 12", "speed_kn"}, {"Hours", "4 3.5 6", "duration_s"},
		{"Rod hours", "20 14 30", "line_hours"}, {"Hrs pulling baits", "7:30-14:00 5 6 7 4 5 6", "duration_s"},
		{"Zark", "06:00 06:10 07:00", ""}, {"Zark", "wahoo mahi yellowfin", "species"},
		{"Zark", "lost landed missed", "outcome"}, {"Zark", "3/6/26 14/6/26 15/6/26", "date"},
		{"Wahoo", "2 0 1", "catch"}, {"Long rigger", "jet plug jet", "spread"},
		{"Long rigger", "lost landed lost", "rod"}, {"Fuel", "20 31 18", "aside"},
		{"kg", "heavy 3.1 big 4.2 small 3.9 - no", "scale_kg"}, {"kg", "heavy 3.1 big small", ""},
	} {
		got := l.candidates(valuesOf(t, c.heading, strings.Fields(c.cells)...), "", nil)
		if is := meaningOf(got[0]); is != c.want {
			t.Errorf("%s over %s: %s, expected %s", c.heading, c.cells, is, c.want)
		}
		for i := range got {
			sum := 0.0
			for _, v := range got[i].votes {
				sum += v.Weight
			}
			if i > 0 && got[i].score > got[i-1].score || got[i].column != nil && sum-got[i].score > 1e-9 {
				t.Errorf("%s: candidate %d of %.2f, its votes add up to %.2f", c.heading, i, got[i].score, sum)
			}
		}
		if !slices.ContainsFunc(got, func(x candidate) bool { return x.column == nil }) {
			t.Errorf("%s: that it means nothing is no candidate", c.heading)
		}
	}
}

// TestUnitsSpeak holds that a unit in the heading or the cells speaks for what it measures.
func TestUnitsSpeak(t *testing.T) {
	vote := func(heading, name string, cells ...string) float64 {
		for _, c := range lexicon(t).candidates(valuesOf(t, heading, cells...), "", nil) {
			for _, v := range c.votes {
				if c.column.Name == name && v.Evidence == "unit" {
					return v.Weight
				}
			}
		}
		return 0
	}
	if in, bare, cells := vote("Length (in)", "length_cm", "44", "40"), vote("Length", "length_cm", "44", "40"),
		vote("Length", "length_cm", "44in", "40in"); in <= 0 || bare != 0 || cells <= 0 {
		t.Errorf("in the heading %.1f, nowhere %.1f, in the cells %.1f", in, bare, cells)
	}
}

// TestEverySpelling holds that each spelling of the catalogue speaks for its column.
func TestEverySpelling(t *testing.T) {
	l := lexicon(t)
	n := 0
	for _, c := range l.Columns {
		for _, a := range c.Aliases {
			if s, ok := l.said(layout.Label{Text: a}).columns[c]; !ok || s.weight < doubtful-3*second {
				t.Errorf("%s, read as %s: %q says %.1f of it", c.Name, c.Parse, a, s.weight)
			}
			n++
		}
	}
	if n < 500 {
		t.Errorf("%d spellings alone", n)
	}
}

// TestSaid holds that what a user says stands above all evidence.
func TestSaid(t *testing.T) {
	l := lexicon(t)
	rows := "Date|Start|End|Zark\n3/6/26|06:00|08:00|4\n14/6/26|06:10|09:00|5\n15/6/26|06:10|09:00|5"
	infer := func(said Said) *plan.Block {
		s := inferred(t, "log", nil, "s", rows).Sheets
		return l.Infer("log", s, func(string, int) Said { return said }, nil).Data()[0].Plan
	}
	for name, to := range map[string]*plan.Column{"lines_out": l.named("lines_out", ""),
		"strikes_n": l.named("strikes_n", "")} {
		if p := infer(Said{Kind: plan.Flat, Columns: map[string]*SaidColumn{"zark": {Column: to}}}); p.Find(
			name) == nil || p.Find(name).Heading != "Zark" || p.Kind != plan.Flat {
			t.Errorf("said to be %s: %s", name, summary(p))
		}
	}
	if p := infer(Said{Columns: map[string]*SaidColumn{"end": {}}}); p.Binds("end_s") {
		t.Errorf("said to be nothing: %s", summary(p))
	}
}

// FuzzInfer understands any text: no panic, each heading bound or kept by name once, to a
// meaning that its block may have.
func FuzzInfer(f *testing.F) {
	f.Add("Trips", "Trip|Date|Skipper\n1|2026-06-03|Ansa")
	f.Add("2026-06-03", "Boat: x\nDate|Lines||\n|In|Out|cm\n||06:00|3")
	f.Add("", "# a\n|Weight|Lure|Weight\n\n8|x|9")
	f.Add("", unknownWords)
	f.Fuzz(func(t *testing.T, name, text string) {
		for _, u := range inferred(t, "log", nil, name, text).Data() {
			seen := map[int]bool{}
			for _, b := range u.Plan.Bindings {
				if b.Column == nil || seen[b.Index] || b.Column.Name != "kept" && !b.Column.In(u.Plan.Kind) {
					t.Errorf("%+v in a block of %s", b, u.Plan.Kind)
				}
				seen[b.Index] = true
			}
			for _, x := range u.Plan.Unknown {
				if seen[x.Index] {
					t.Errorf("%+v is kept by name and bound", x)
				}
			}
			if u.Plan.Why == "" {
				t.Error("no reason")
			}
		}
	})
}

// TestWeightByFormula holds that weights by a formula of several cells are of no scale, and that those which another
// unit makes of one cell may be.
func TestWeightByFormula(t *testing.T) {
	for formula, want := range map[string]string{"=C2*D2^2/800": "", "=$B2*2.2046": "scale_kg"} {
		v := valuesOf(t, "Weight lb", "22", "31", "18", "40")
		for i := range v.Rows {
			v.Rows[i].Formula = formula
		}
		v = newValues(v.Label, v.Rows, true, false)
		if got := meaningOf(lexicon(t).candidates(v, "", nil)[0]); got != want {
			t.Errorf("%s: %q, expected %q", formula, got, want)
		}
	}
}

// TestTripsOfSomeFish holds that numbers which never go down, and of which there are many, are no counts, even where
// some trips have no fish: they are those of trips.
func TestTripsOfSomeFish(t *testing.T) {
	for cells, want := range map[string]string{"1 2 2 3 3 3 4 6 6 7 8 9 9 11": "trip",
		"1 2 2 3 1 3 4 1 6 2 1 1 2 1": "count"} {
		v := valuesOf(t, "Nr", strings.Fields(cells)...)
		if got := meaningOf(lexicon(t).candidates(v, "", nil)[0]); got != want {
			t.Errorf("%s: %s, expected %s", cells, got, want)
		}
	}
}
