package recognise

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"wakeledger/pipeline/unit"
)

// rowsOf splits lines at bars into cells.
func rowsOf(text string) [][]string {
	var rows [][]string
	for _, line := range strings.Split(strings.Trim(text, "\n"), "\n") {
		cells := strings.Split(line, "|")
		for i := range cells {
			cells[i] = strings.TrimSpace(cells[i])
		}
		rows = append(rows, cells)
	}
	return rows
}

// summary is a layout in one line: kind, header row, columns with their units.
func summary(l Layout) string {
	var b strings.Builder
	fmt.Fprintf(&b, "%s %d:", l.Kind, l.Header)
	for _, x := range l.Bindings {
		fmt.Fprintf(&b, " %s", x.Column.Name)
		if x.Unit != "" {
			fmt.Fprintf(&b, "/%s", x.Unit)
		}
	}
	for _, u := range l.Unknown {
		fmt.Fprintf(&b, " ?%s", u.Heading)
	}
	return b.String()
}

func TestSheet(t *testing.T) {
	table := defaultTable(t)
	for _, c := range []struct{ what, name, rows, want string }{
		{"trips", "Sheet1", "Trip|Date|Skipper|Port\n1|2026-06-03|Ansa|Hollin Quay", "trips 0: trip date captain port"},
		{"legs with lines out as times", "", "Date|Lines in|Lines out|Speed\n2026-06-03|06:10|16:40|12", "legs 0: date start_s end_s speed_kn"},
		{"legs with lines out as counts", "", "Date|Start|Stop|Lines out\n2026-06-03|06:10|16:40|4", "legs 0: date start_s end_s lines_out"},
		{"lines out as bare times", "", "Date|Lines in|Lines out\n2026-06-03|610|1640\n2026-06-04|600|900", "legs 0: date start_s end_s"},
		{"back as a time", "", "Trip|Date|Depart|Back\n1|2026-06-03|05:00|16:40", "trips 0: trip date depart_s return_s"},
		{"back as a distance", "", "Trip|Rod|Lure|Back\n1|2|Cope|100\n1|3|Cope|150", "lines 0: trip line lure setback_m"},
		{"weight of a lure", "", "Trip|Line|Lure|Weight|Setback\n1|2|Cope|8|60", "lines 0: trip line lure lure_weight_g setback_m"},
		{"weight of lure and fish", "", "Date|Start|End|Lure|Weight|Fish|Weight\n2026-06-03|06:00|08:00|Cope|8|Wahoo|34", "flat 0: date start_s end_s lure lure_weight_g species scale_kg"},
		{"weight of lure and fish by unit", "", "Date|Start|End|Fish|Wt lb|Lure|Wt oz\n2026-06-03|06:00|08:00|Wahoo|34|Cope|8", "flat 0: date start_s end_s species scale_kg/lb lure lure_weight_g/oz"},
		{"weight of lure by the cells' units", "", "Date|Start|End|Lure|Colour|Wt\n2026-06-03|06:00|08:00|Cope|pink|8 oz", "flat 0: date start_s end_s lure colour lure_weight_g"},
		{"weight in a weigh-in book with lures", "", "Date|Angler|Lure|Weight (lb)|Fish\n2026-06-03|Ansa|Cope|88|Wahoo", "fish 0: date angler lure scale_kg/lb species"},
		{"fish counted", "", "Date|Hours|Rods|Fish\n2026-06-03|4|5|2", "flat 0: date duration_s/h lines_out landed_n"},
		{"fish named", "", "Date|Fish|Length\n2026-06-03|Wahoo|44", "fish 0: date species length_cm"},
		{"strikes with their number", "", "Trip|Strike|Time|Outcome\n1|1|06:40|lost", "strikes 0: trip strike time_s outcome"},
		{"bites as times", "Bites", "Trip|Bite|Fish|Rod\n1|06:40|Wahoo|2", "strikes 0: trip time_s species line"},
		{"the trip's hours are no effort", "", "Date|Captain|Depart|Return|Hours\n2026-06-03|Ansa|05:00|15:00|10", "trips 0: date captain depart_s return_s ?Hours"},
		{"hours trolled are", "", "Date|Depart|Return|Hours trolled|Speed\n2026-06-03|05:00|15:00|6|12", "flat"},
		{"position of the boat", "", "Date|Start|End|Position\n2026-06-03|06:00|08:00|32 15.2N 127 30.1W", "legs 0: date start_s end_s lat"},
		{"position of a line", "", "Trip|Position|Lure|Drag\n1|long left|Cope|18", "lines 0: trip line lure drag_kg"},
		{"day of the month is a date, day of the trip a name", "", "Day|Start|End\n1|06:00|08:00\n2|06:00|08:00", "legs 0: trip start_s end_s"},
		{"two headings for one quantity", "", "Date|Weight|Scale weight|Fish\n2026-06-03|40|38|Wahoo", "fish 0: date scale_kg species ?Weight"},
		{"the plainest name of two", "", "Kind|Date|Species|Length\nlong|2026-06-03|Wahoo|112", "fish 0: date species length_cm ?Kind"},
		{"an estimate is no scale's", "", "Date|Fish|Weight (est)|Length\n2026-06-03|Wahoo|40|44", "fish 0: date species length_cm ?Weight (est)"},
		{"header on row 7", "", "My log|\n|\nby me|\n|\n|\n|\nDate|Start|End\n2026-06-03|06:00|08:00", "legs 6: date start_s end_s"},
		{"group over name", "", "Date|Lines||Fish|\n|In|Out|Species|Length (in)\n2026-06-03|06:00|08:00|Wahoo|44", "flat 1: date start_s end_s species length_cm/in"},
		{"name over unit", "", "Date|Fish|Length|Weight\n||cm|kg\n2026-06-03|Wahoo|112|14", "fish 1: date species length_cm/cm scale_kg/kg"},
		{"title over header", "", "Fish|||\nDate|Species|Length|Weight\n2026-06-03|Wahoo|112|14", "fish 1: date species length_cm scale_kg"},
		{"data under a header is no second header", "", "Species|Kept|Length\nWahoo|kept|fork\nWahoo|kept|44", "fish 0: species kept length_cm"},
		{"a time span in one cell", "", "Date|Time|Speed\n2026-06-03|0610-0755|12\n2026-06-03|8:00 - 9:30|12", "legs 0: date start_s speed_kn"},
		{"line in and line out as times", "", "Date|Line in|Line out\n2026-06-03|06:10|07:55\n2026-06-03|08:10|09:55", "legs 0: date start_s end_s"},
		{"rods that are no count stay a count", "", "Date|Start|End|Rods\n2026-06-03|06:10|07:55|some\n2026-06-03|08:10|09:55|few", "legs 0: date start_s end_s lines_out"},
		{"caught on a day", "", "Species|Caught on|Length\nWahoo|2026-06-03|112", "fish 0: species date length_cm"},
		{"caught on a lure", "", "Species|Caught on|Length|Date\nWahoo|Cope|112|2026-06-03", "fish 0: species lure length_cm date"},
		{"two texts in one column", "", "Trip|Line|Lure/colour|Drag\n1|2|Cope blue|18", "lines 0: trip line lure drag_kg"},
		{"when as days", "", "When|Fish|Long\n1/18/25|Wahoo|5' 4\"\n1/25/25|Wahoo|4'9\"", "fish 0: date species length_cm"},
		{"when as times", "", "Trip|When|Fish|Outcome\n1|06:40|Wahoo|lost\n1|07:40|Wahoo|lost", "strikes 0: trip time_s species outcome"},
		{"long is a longitude", "", "Date|Start|End|Lat|Long\n2026-06-03|06:00|08:00|32.25|-117.5", "legs 0: date start_s end_s lat lon"},
		{"degrees and minutes without a hemisphere", "", "Date|Start|End|Lat|Long\n2026-06-03|06:00|08:00|28 10.5|88 22.0", "legs 0: date start_s end_s ?Lat ?Long"},
		{"degrees and minutes under one", "", "Date|Start|End|Lat N|Long W\n2026-06-03|06:00|08:00|28 10.5|88 22.0", "legs 0: date start_s end_s lat lon"},
		{"days without a year", "", "Day|Start|End|Speed\n3-Jul|06:00|08:00|8\n4-Jul|06:00|08:00|8", "legs 0: date start_s end_s speed_kn"},
		{"a trip's number under Day", "", "Day|Start|End\nDay 1|06:00|08:00\nday 2|06:00|08:00", "legs 0: trip start_s end_s"},
		{"days that are no dates", "", "Day|Start|End|Speed\n3rd|06:00|08:00|8\n4th|06:00|08:00|8", "legs 0: date start_s end_s speed_kn"},
		{"weekdays beside a date", "", "Date|Day|Start|End\n2026-07-04|Sat|06:00|08:00\n2026-07-05|Sun|06:00|08:00", "legs 0: date start_s end_s ?Day"},
		{"a lure in a column for each place", "", "Date|In|Out|Kts|Port long|Stbd short|Shotgun\n2026-07-04|06:00|08:00|8|Blue tube|Black jet|\n2026-07-05|06:00|08:00|8|Blue tube|Black jet|Bird", "flat 0: date start_s end_s speed_kn/kn ?Port long ?Stbd short ?Shotgun"},
		{"where a strike was in the spread", "", "Date|Time|Where|Fish|Result\n2026-07-04|06:40|short corner|Wahoo|lost\n2026-07-04|07:40|stinger|Wahoo|boated", "strikes 0: date time_s line species outcome"},
		{"a ground called as a place in the spread", "", "Date|In|Out|Where\n2026-07-04|06:00|08:00|corner\n2026-07-05|06:00|08:00|outside corner", "legs 0: date start_s end_s area"},
		{"where a leg was", "", "Date|In|Out|Where\n2026-07-04|06:00|08:00|the ledge", "legs 0: date start_s end_s area"},
		{"what happened in sentences", "", "Date|In|Out|What happened\n2026-07-04|06:00|08:00|2 boated, 1 pulled\n2026-07-05|06:00|08:00|nothing\n2026-07-06|06:00|08:00|1 boated", "legs 0: date start_s end_s notes"},
		{"what happened in a word", "", "Date|Time|Fish|What happened\n2026-07-04|06:40|Wahoo|pulled hook\n2026-07-05|06:40|Wahoo|boated", "strikes 0: date time_s species outcome"},
		{"a strike's lure weight and distance", "", "Date|Time|Lure|Lure weight|Dist|Result\n2026-07-04|06:40|Jet|140 g|45 m|lost", "strikes 0: date time_s lure lure_weight_g setback_m outcome"},
		{"a strike's lure weight by its unit", "", "Date|Time|Fish|Lure|Weight|Result|Lbs\n2026-07-04|06:40|Wahoo|Jet|8 oz|lost|", "strikes 0: date time_s species lure lure_weight_g outcome scale_kg/lb"},
		{"a strike's fish in pounds and ounces", "", "Date|Time|Fish|Weight|Lure|Result\n2026-07-04|06:40|Wahoo|12 lb 8 oz|Jet|landed\n2026-07-04|07:40|Wahoo||Jet|lost", "strikes 0: date time_s species scale_kg lure outcome"},
		{"days of the sheet's month", "Jan 26", "Day|Start|End|Speed\n4|06:00|08:00|8\n11|06:00|08:00|8", "legs 0: date start_s end_s speed_kn"},
		{"a set is no September", "Set 2", "Day|Start|End|Speed\n4|06:00|08:00|8\n11|06:00|08:00|8", "legs 0: trip start_s end_s speed_kn"},
		{"time in before time out", "", "Date|Time in|Time out|Speed\n2026-06-03|06:00|08:00|8\n2026-06-04|06:00|09:00|8", "legs 0: date start_s end_s speed_kn"},
		{"time out before time in", "", "Trip|Date|Time out|Time in\n1|2026-06-03|05:00|15:00\n2|2026-06-04|05:10|14:00", "trips 0: trip date depart_s return_s"},
		{"from and to as places", "", "Trip|Date|From|To\nT1|2026-06-03|marina|bay\nT2|2026-06-04|marina|marina", "trips 0: trip date port ?To"},
		{"lures counted", "", "Date|Start|End|Lures\n2026-06-03|06:00|08:00|5\n2026-06-03|08:00|09:00|5", "legs 0: date start_s end_s lines_out"},
		{"lures named", "", "Date|Start|End|Lures\n2026-06-03|06:00|08:00|Cope", "flat 0: date start_s end_s lure"},
		{"gear that says how many lines", "", "Date|Start|End|Gear\n2026-06-03|06:00|08:00|4 lines", "legs 0: date start_s end_s lines_out"},
		{"gear that does not", "", "Date|Start|End|Gear\n2026-06-03|06:00|08:00|light", "legs 0: date start_s end_s ?Gear"},
		{"distance of a lure", "", "Trip|Line|Lure|Dist.\n1|2|Cope|45 m", "lines 0: trip line lure setback_m"},
		{"distance run", "", "Date|Start|End|Lure|Distance (nm)\n2026-06-03|06:00|08:00|Cope|22", "flat 0: date start_s end_s lure ?Distance (nm)"},
		{"distance of who knows what", "", "Date|Start|End|Lure|Distance\n2026-06-03|06:00|08:00|Cope|22", "flat 0: date start_s end_s lure ?Distance"},
		{"line class beside an angler", "", "Date|Angler|Species|Line (kg)|Weight (kg)\n2026-06-03|Ansa|Wahoo|24|14", "fish 0: date angler species scale_kg/kg ?Line (kg)"},
		{"skirt for want of a lure", "", "Trip|Rod|Skirt|Drag\n1|2|Cope|18", "lines 0: trip line lure drag_kg"},
		{"skirt beside a lure", "", "Trip|Rod|Skirt|Lure|Drag\n1|2|pink|Cope|18", "lines 0: trip line colour lure drag_kg"},
		{"minutes of a fight", "", "Date|Start|End|Species|Minutes\n2026-06-03|06:00|08:00|Wahoo|9", "flat 0: date start_s end_s species fight_s/min"},
		{"a log of events", "", "Date|Time|What|Lure\n2026-06-03|06:00|lines in|\n2026-06-03|07:10|strike|Cope\n2026-06-03|12:00|lines up|", ""},
		{"the first of two tables", "", "Date|Start|End|Speed\n2026-06-03|06:00|08:00|8\n|||\nFISH|||\nDate|Species|Length cm|Girth cm|Weight kg\n2026-06-03|Wahoo|112|60|14", "legs 0: date start_s end_s speed_kn"},
		{"no header", "", "a|b\n1|2", ""}, {"one known heading alone", "", "Date|Sandwiches\n2026-06-03|2", ""}, {"nothing", "", "", ""},
	} {
		l, ok := table.Sheet(c.name, rowsOf(c.rows))
		got := ""
		if ok {
			got = summary(l)
		}
		if c.want == "flat" && ok { // only that it counts as effort
			if !l.binds("duration_s") || l.Kind != Legs && l.Kind != Flat {
				t.Errorf("%s: %s", c.what, got)
			}
			continue
		}
		if got != c.want {
			t.Errorf("%s:\n got      %s\n expected %s", c.what, got, c.want)
		}
	}
}

// TestHeaderTooFarDown holds that the header is looked for among 20 rows.
func TestHeaderTooFarDown(t *testing.T) {
	table := defaultTable(t)
	for _, c := range []struct {
		above int
		want  bool
	}{{19, true}, {20, false}} {
		rows := append(make([][]string, c.above), []string{"Date", "Start", "End"}, []string{"2026-06-03", "06:00", "08:00"})
		if _, ok := table.Sheet("", rows); ok != c.want {
			t.Errorf("header under %d rows: found %t", c.above, ok)
		}
	}
}

func TestOnlyUnits(t *testing.T) {
	table := defaultTable(t)
	for _, c := range []struct {
		heading, cells string
		want           unit.Unit
	}{
		{"SST", "67 68.5", unit.Fahrenheit}, {"SST", "21 22.5", unit.Celsius}, {"SST", "30 31", ""}, {"SST", "68F 69F", ""},
		{"Length", "62 48", ""}, {"Length", "290 310", unit.Centimetre}, {"Drag", "12 18", ""}, {"Lure wt", "300 450", unit.Gram}, {"Lure wt", "8 12", ""}, {"SST (F)", "60", ""},
	} {
		rows := [][]string{{"Trip", "Line", "Start", "End", c.heading}}
		for _, cell := range strings.Fields(c.cells) {
			rows = append(rows, []string{"1", "2", "06:00", "08:00", cell})
		}
		l, ok := table.Sheet("", rows)
		b := l.Bindings[len(l.Bindings)-1]
		if !ok || b.Heading != c.heading && c.heading != "Length" || b.Heading == c.heading && b.Only != c.want {
			t.Errorf("%s over %s: only %q is possible, expected %q", c.heading, c.cells, b.Only, c.want)
		}
		if noted := strings.Contains(strings.Join(l.Notes, "\n"), "possible only in"); noted != (b.Only != "") {
			t.Errorf("%s over %s: the notes do not tell: %q", c.heading, c.cells, l.Notes)
		}
	}
}

func TestGiven(t *testing.T) {
	table := defaultTable(t)
	for _, c := range []struct{ name, rows, want string }{
		{"", "Boat: Sorrel\nDate|46177\nStart|End\n06:00|08:00", "boat=Sorrel date=46177"},
		{"", "Boat|Sorrel|Skipper|Ansa\n|\nDate|Start|End\n2026-06-03|06:00|08:00", "boat=Sorrel captain=Ansa"},
		{"2026-06-03", "Start|End\n06:00|08:00", "date=2026-06-03"},
		{"3 Jun 2026", "Date|Start|End\n2026-06-03|06:00|08:00", ""},
		{"June", "Start|End\n06:00|08:00", ""},
		{"", "Boat|Start|End\nSorrel|06:00|08:00", ""},
		{"", "Date: whenever\nStart|End\n06:00|08:00", ""},
	} {
		l, ok := table.Sheet(c.name, rowsOf(c.rows))
		var got []string
		for _, g := range l.Given {
			got = append(got, g.Column.Name+"="+g.Text)
		}
		if !ok || strings.Join(got, " ") != c.want {
			t.Errorf("%q in %q: given %q, expected %q", c.rows, c.name, got, c.want)
		}
	}
}

func TestCarried(t *testing.T) {
	table := defaultTable(t)
	for _, c := range []struct {
		what, dates string
		want        bool
	}{
		{"once for the rows under it", "a - - b - c", true},
		{"on each row", "a a b c", false},
		{"on each row, one forgotten", "a a - b", false},
		{"one a day, one forgotten", "a b c d - e f g", false},
		{"never", "- - -", false},
	} {
		rows := [][]string{{"Date", "Start", "End"}}
		for _, d := range strings.Fields(c.dates) {
			date := map[string]string{"-": ""}[d]
			if d != "-" {
				date = "2026-06-0" + string('1'+d[0]-'a')
			}
			rows = append(rows, []string{date, "06:00", "08:00"})
		}
		l, _ := table.Sheet("", rows)
		if got := l.Bindings[0].Carried; got != c.want {
			t.Errorf("%s: carried %t", c.what, got)
		}
	}
}

func TestHashed(t *testing.T) {
	for _, c := range []struct {
		first string
		want  bool
	}{{"# words;1;2;3;#2;4", true}, {"#1;#2;#3", false}, {"# words;#1;#2", false}, {"1;2;#2", false}} {
		var rows [][]string
		for _, s := range strings.Split(c.first, ";") {
			rows = append(rows, []string{s, "x"})
		}
		if got := hashed(rows); got != c.want {
			t.Errorf("%s: %t", c.first, got)
		}
	}
}

func FuzzSheet(f *testing.F) {
	table := defaultTable(f)
	f.Add("Trips", "Trip|Date|Skipper\n1|2026-06-03|Ansa")
	f.Add("2026-06-03", "Boat: x\nDate|Lines||\n|In|Out|cm\n||06:00|3")
	f.Add("", "# a\n|Weight|Lure|Weight\n\n8|x|9")
	f.Fuzz(func(t *testing.T, name, text string) {
		rows := rowsOf(text)
		l, ok := table.Sheet(name, rows)
		if !ok {
			return
		}
		if l.Header < 0 || l.Header >= len(rows) || len(l.Rows) < 1 || len(l.Rows) > 2 || l.Kind == "" || l.Why == "" {
			t.Fatalf("layout %+v of %d rows", l, len(rows))
		}
		var names []string
		for _, b := range l.Bindings {
			names = append(names, b.Column.Name)
			if b.Index < 0 || !b.Column.In(l.Kind) || b.Heading == "" {
				t.Errorf("binding %+v in a sheet of %s", b, l.Kind)
			}
		}
		for _, g := range l.Given {
			names = append(names, g.Column.Name)
		}
		slices.Sort(names)
		if len(slices.Compact(slices.Clone(names))) != len(names) {
			t.Errorf("a column is bound twice: %q", names)
		}
	})
}

// TestDoubtful holds that a spelling marked with ? in columns.csv is its column only
// where cells state what they are.
func TestDoubtful(t *testing.T) {
	table := defaultTable(t)
	for _, c := range []struct {
		heading, cell, want string
	}{
		{"Gear", "4 lines", "lines_out"}, {"Gear", "4", ""}, {"Tackle", "2 rods", "lines_out"},
		{"Round", "42\"", "girth_cm"}, {"Round", "42", ""}, {"Distance", "45 m", "setback_m"}, {"Distance", "45", ""},
	} {
		l, _ := table.Sheet("", [][]string{{"Date", "Start", "End", "Lure", "Species", c.heading}, {"2026-06-03", "06:00", "08:00", "Cope", "Wahoo", c.cell}})
		got := ""
		for _, b := range l.Bindings {
			if b.Index == 5 {
				got = b.Column.Name
			}
		}
		if got != c.want {
			t.Errorf("%s over %q is understood as %q, expected %q", c.heading, c.cell, got, c.want)
		}
	}
}

// TestDated holds where the year of dates without one is looked for, and that what
// contradicts itself settles nothing.
func TestDated(t *testing.T) {
	table := defaultTable(t)
	for _, c := range []struct {
		file, sheet, title string
		from, to           int
	}{
		{"log 2025.csv", "", "", 2025, 2025}, {"log.xlsx", "2025", "", 2025, 2025}, {"log.xlsx", "", "Season 2025", 2025, 2025},
		{"log 2025-26.csv", "", "", 2025, 2026}, {"log 2025-26.csv", "", "spring 2026", 2026, 2026}, {"log.csv", "", "season 25/26", 2025, 2026},
		{"log 2025.csv", "", "Season 2026", 0, 0}, {"log 2005-06.csv", "", "", 0, 0}, {"log.csv", "", "", 0, 0}, {"log.csv", "", "founded 1998, season 2025", 0, 0},
	} {
		l, _ := table.Sheet(c.sheet, [][]string{{c.title}, {"Date", "Start", "End"}, {"3-Jul", "06:00", "08:00"}})
		l.Dated(c.file)
		if l.Years != (unit.Years{From: c.from, To: c.to}) {
			t.Errorf("%q %q %q: %v, expected %d to %d", c.file, c.sheet, c.title, l.Years, c.from, c.to)
		}
	}
}

// TestTitleDay holds that the day of a table is one that a title begins with.
func TestTitleDay(t *testing.T) {
	for title, want := range map[string]string{
		"Trip 7/5/25 - the Fingers": "7/5/25", "12 July 2026": "12 July 2026", "Date: 2026-06-03, calm": "2026-06-03", "Log of Saturday, June 25, 2026": "Saturday, June 25, 2026",
		"My log, printed 3 Jan 2026": "", "Trip 4": "", "July 2026": "",
	} {
		if got, _ := titleDay([][]string{{title}}); got != want {
			t.Errorf("%q: %q, expected %q", title, got, want)
		}
	}
	if day, ok := titleDay([][]string{{"3 July 2026"}, {"4 July 2026"}}); ok {
		t.Errorf("two days: %q", day)
	}
}
