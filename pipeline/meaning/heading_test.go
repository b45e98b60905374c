package meaning

import (
	"strings"
	"testing"

	"wakeledger/pipeline/unit"

	"wakeledger/pipeline/layout"
)

func TestHeading(t *testing.T) {
	table := lexicon(t)
	for _, c := range []struct {
		text string
		name string // the first column meant, "" for none
		unit unit.Unit
	}{
		{"Length (in)", "length_cm", unit.Inch}, {"Length, in", "length_cm", unit.Inch},
		{"Length in inches", "length_cm", unit.Inch},
		{`Girth "`, "girth_cm", unit.Inch}, {`Length"`, "length_cm", unit.Inch},
		{"Length/cm", "length_cm", unit.Centimetre},
		{"Length (fork, in)", "length_cm", unit.Inch}, {"Length (FL) (cm)", "length_cm", unit.Centimetre},
		{"Girth [CM]", "girth_cm", unit.Centimetre},
		{"SST F", "sea_temp_c", unit.Fahrenheit}, {"SST °F", "sea_temp_c", unit.Fahrenheit},
		{"Water temp (deg C)", "sea_temp_c", unit.Celsius},
		{"water_temp_f", "sea_temp_c", unit.Fahrenheit}, {"Speed kts", "speed_kn", unit.Knot},
		{"Speed (km/h)", "speed_kn", unit.KilometrePerHour},
		{"SpeedMph", "speed_kn", unit.MilePerHour}, {"Knots", "speed_kn", unit.Knot}, {"SOG", "speed_kn", ""},
		{"Wt lbs", "scale_kg", unit.Pound}, {"Wt#", "scale_kg", unit.Pound}, {"Weight (#)", "scale_kg", unit.Pound},
		{"Weight at dock - kg", "scale_kg", unit.Kilogram},
		{"Lure oz", "lure_weight_g", unit.Ounce}, {"Lure (oz)", "lure_weight_g", unit.Ounce},
		{"LureWeight", "lure_weight_g", ""}, {"Lure", "lure", ""},
		{"Back (yds)", "setback_m", unit.Yard}, {"Setback ft", "setback_m", unit.Foot},
		{"Fight (mins)", "fight_s", unit.Minute},
		{"Wind (kn)", "wind", ""}, {"Sea state (ft)", "sea_state", unit.Foot}, {"Leader lb", "leader", ""},
		{"Trip #", "trip", ""}, {"# Lines", "lines_out", ""}, {"Lines #", "lines_out", ""},
		{"Hook-ups", "hooked_n", ""}, {"H/U", "hooked_n", ""}, {"Skipper:", "captain", ""},
		{"  START   TIME (local) ", "start_s", ""}, {"Día", "date", ""},
		{"AVG SPD (KTS)", "speed_kn", unit.Knot}, {"# BITES", "strikes_n", ""}, {"Total landed", "landed_n", ""},
		{"Yds back", "setback_m", unit.Yard}, {"Min. fought", "fight_s", unit.Minute},
		{"Leader material & lb", "leader", ""}, {"If lost - why", "loss_cause", ""},
		{"Av. speed kn", "speed_kn", unit.Knot}, {"Number of rods", "lines_out", ""},
		{"Fuel used", "", ""}, {"In", "start_s", ""}, {"", "", ""}, {strings.Repeat("length ", 30), "", ""},
	} {
		h := table.heading(c.text)
		got := ""
		if len(h.candidates) > 0 {
			got = h.candidates[0].Name
		}
		if got != c.name || h.unit != c.unit {
			t.Errorf("%q is understood as %q in %q, expected %q in %q", c.text, got, h.unit, c.name, c.unit)
		}
	}
}

func TestNearest(t *testing.T) {
	table := lexicon(t)
	for _, c := range []struct{ heading, spelling, column string }{
		{"Lenght", "length", "length_cm"}, {"Spede", "speed", "speed_kn"}, {"Skiper", "skipper", "captain"},
		{"Sea tempp", "sea temp", "sea_temp_c"},
		{"Grith", "girth", "girth_cm"}, {"Speices", "species", "species"}, {"Moon", "", ""},
		{"Fuel used", "", ""}, {"", "", ""},
	} {
		spelling, column, ok := table.Nearest(c.heading)
		if ok != (c.column != "") || spelling != c.spelling || ok && column.Name != c.column {
			t.Errorf("nearest to %q is %q, expected %q of %s", c.heading, spelling, c.spelling, c.column)
		}
	}
}

// TestLettersOfTwo holds that headings are known whose letters are written as one: nœuds, Größe.
func TestLettersOfTwo(t *testing.T) {
	for text, want := range map[string]string{"Nœuds": "noeuds", "GRÖSSE / Größe": "grosse grosse", "Fær": "faer"} {
		if got := normalise(text); got != want {
			t.Errorf("%q: %q, expected %q", text, got, want)
		}
	}
	p := planOf(t, "", "Date|Début|Fin|Lignes|Nœuds|Touches\n2026-06-03|06:00|08:00|4|7,5|2\n"+
		"2026-06-04|06:10|09:00|5|8|0\n2026-06-05|06:00|09:00|4|6,5|1")
	if b := p.Find("speed_kn"); b == nil || b.Heading != "Nœuds" {
		t.Errorf("no speed: %s", summary(p))
	}
}

func FuzzHeading(f *testing.F) {
	table := lexicon(f)
	for _, s := range []string{"Length (in)", "Wt#", "Speed/kn", "LureWeight", "Weight (est)", "(", "°F",
		"# #", "Lines in", "\u0130(lb)["} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, text string) {
		h := table.heading(text)
		if n := normalise(text); n != normalise(n) {
			t.Errorf("%q: normal form %q is not stable", text, n)
		}
		for _, c := range h.candidates {
			if h.unit != "" && c.HasUnit && c.Dimension != h.unit.Dimension() {
				t.Errorf("%q: %s in %s", text, c.Name, h.unit)
			}
		}
		if spelling, c, ok := table.Nearest(text); ok && (c == nil || spelling == "") {
			t.Errorf("%q: nearest to nothing", text)
		}
	})
}

// TestFalseFriends holds that headings with the words of a column, but another
// meaning, are not taken for it.
func TestFalseFriends(t *testing.T) {
	table := lexicon(t)
	for _, text := range []string{
		"Fuel used", "Fuel (gal)", "Engine hours", "Start engine hours", "Hours run", "Generator hours", "Depth (ft)",
		"Water depth", "Water colour", "Water clarity",
		"Current (kn)", "Current speed", "Tide", "High water", "Air temp", "Air temp (F)", "Barometer", "Moon",
		"Sunrise", "Time of sunset", "Boat length", "Lure length (in)",
		"Rod length", "Max speed", "Top speed (kn)", "Distance run (nm)", "Miles", "Bait cost", "Crew share", "Photo",
		"Tag number", "Number of photos", "Weight of ice (lb)",
		"Ice (lb)", "Price/lb", "Price per kg", "Est length", "Calculated weight (kg)", "Trolling motor", "Birds",
		"Bird count", "Whales", "Cloud", "Total cost", "Reel", "Drag type", "Age", "Trips", "Boats", "Witness",
	} {
		h := table.heading(text)
		for _, c := range h.candidates {
			if c.Name != "angler" || text != "Reel" { // who reeled: the trade says both
				t.Errorf("%q is understood as %s", text, c.Name)
			}
		}
	}
}

// TestGuessedByHeading holds that a column of guesses is no scale's and no tape's,
// whatever else its heading says.
func TestGuessedByHeading(t *testing.T) {
	for _, heading := range []string{"Weight (est)", "Est. weight lb", "Estimated wt", "Approx weight"} {
		p := planOf(t, "", "Date|Fish|"+heading+
			"|Length (in)\n2026-06-03|Wahoo|40|44\n2026-06-04|Wahoo|30|41\n2026-06-05|Wahoo|35|42")
		if p == nil || p.Binds("scale_kg") || !p.Binds("length_cm") {
			t.Errorf("%s: %s", heading, summary(p))
		}
	}
	p := planOf(t, "", "Date|Fish|Lbs (~ = guess)|Length (in)\n2026-06-03|Wahoo|40|44\n2026-06-04|Wahoo|~30|41\n"+
		"2026-06-05|Wahoo|35|42")
	if !p.Binds("scale_kg") {
		t.Errorf("a mark for guesses in the heading: %s", summary(p))
	}
}

// TestRates holds that so many an hour are no count, and a speed is no rate.
func TestRates(t *testing.T) {
	for heading, want := range map[string]bool{"Fish/hr": true, "Bites per hour": true,
		"Strikes per 100 line-hours": true, "Picadas por hora": true, "km/h": false, "Speed (km/h)": false,
		"nm per hour": false, "Hours": false} {
		if got := isRate(heading); got != want {
			t.Errorf("%q: %v, expected %v", heading, got, want)
		}
	}
}

// TestRunningNumbers holds that numbers that begin again at one on each page count nothing.
func TestRunningNumbers(t *testing.T) {
	values := func(cells ...string) *Values {
		var rows []layout.Cell
		for _, c := range cells {
			rows = append(rows, layout.Cell{Text: c, Look: layout.Number})
		}
		return newValues(layout.Label{Text: "Nr."}, rows, true, false)
	}
	if !values("1", "2", "3", "1", "2", "1", "2", "3", "4", "1").restarts() {
		t.Error("the fish of three trips, numbered on each, are counts")
	}
	for _, v := range []*Values{values("1", "1", "3", "1", "2", "1", "1", "1", "0", "2"), values("1", "2", "3", "1"),
		values("1", "1", "1", "1", "3"), values("1", "2", "3", "4")} {
		if v.restarts() {
			t.Errorf("%v are running numbers", v.numbers)
		}
	}
}
