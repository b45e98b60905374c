package meaning

import (
	"strings"
	"testing"

	"wakeledger/pipeline/unit"
	"wakeledger/testdata/memory"
)

// TestOnlyUnits holds that numbers that are possible in one unit alone are of that one.
func TestOnlyUnits(t *testing.T) {
	for _, c := range []struct {
		heading, cells string
		want           unit.Unit
	}{
		{"SST", "67 68.5", unit.Fahrenheit}, {"SST", "21 22.5", unit.Celsius},
		{"SST", "30 31", ""}, {"SST", "68F 69F", ""},
		{"Drag", "12 18", ""}, {"Lure wt", "300 450", unit.Gram}, {"Lure wt", "8 12", ""}, {"SST (F)", "60 61", ""},
	} {
		text := "Trip|Line|Start|End|Lure|" + c.heading
		for _, cell := range strings.Fields(c.cells) {
			text += "\n1|2|06:00|08:00|jet|" + cell
		}
		p := planOf(t, "", text)
		for _, b := range p.Bindings {
			if b.Heading == c.heading && b.Only != c.want {
				t.Errorf("%s over %s: only %q is possible, expected %q", c.heading, c.cells, b.Only, c.want)
			}
		}
		if noted := strings.Contains(strings.Join(p.Notes, "\n"), "possible only in"); noted != (c.want != "") {
			t.Errorf("%s over %s: the notes are %q", c.heading, c.cells, p.Notes)
		}
	}
}

// TestGiven holds what stands once for all rows of a table, and what does not.
func TestGiven(t *testing.T) {
	const heads = "Start|End|Lines\n06:00|08:00|4\n09:00|10:00|4"
	for _, c := range []struct{ name, rows, want string }{
		{"", "Boat: Sorrel\nDate|3 Jun 2026\n" + heads, "boat=Sorrel date=3 Jun 2026"},
		{"2026-06-03", heads, "date=2026-06-03"},
		{"3 Jun 2026", "Date|" + strings.ReplaceAll(heads, "\n", "\n2026-06-03|"), ""},
		{"June", heads, ""},
		{"", "Trip of 3 June 2026, Marram\n" + heads, "date=3 June 2026"},
		{"", "Date: whenever\n" + heads, ""},
		{"", "Usual spread 5 lines at 8 kn\n" + heads, "speed_kn=8 kn"},
	} {
		var got []string
		if p := planOf(t, c.name, c.rows); p != nil {
			for _, g := range p.Given {
				got = append(got, g.Column.Name+"="+g.Text)
			}
		}
		want := c.want
		if strings.Join(got, " ") != want && strings.Join(got, " ") != want+" lines_out=5" {
			// the table has its own lines: a usual number is for blanks
			t.Errorf("%q in %q: given %q, expected %q", c.rows, c.name, got, want)
		}
	}
}

func TestCarried(t *testing.T) {
	for _, c := range []struct {
		what, dates string
		want        bool
	}{
		{"once for the rows under it", "a - - b - c", true},
		{"on each row", "a a b c", false},
		{"on each row, one forgotten", "a a - b", false},
		{"on each row at first, then once", "a a b - c - d - e", true},
		{"on each row, forgotten thrice", "a a - b b - c c -", false},
		{"one a day, one forgotten", "a b c d - e f g", false},
	} {
		text := "Date|Start|End|Lines"
		for i, d := range strings.Fields(c.dates) {
			date := ""
			if d != "-" {
				date = "2026-06-0" + string('1'+d[0]-'a')
			}
			text += "\n" + date + "|0" + string(rune('1'+i)) + ":00|0" + string(rune('1'+i)) + ":30|4"
		}
		if b := planOf(t, "", text).Find("date"); b == nil || b.Carried != c.want {
			t.Errorf("%s: %+v", c.what, b)
		}
	}
}

func TestHashed(t *testing.T) {
	for _, c := range []struct {
		first string
		want  bool
	}{{"# words;1;2;3;#2;4", true}, {"#1;#2;#3", false}, {"# words;#1;#2", false}, {"1;2;#2", false}} {
		if got := hashed(gridOf(t, 0, memory.Lines("", strings.ReplaceAll(c.first, ";", "|x\n")+"|x"))); got != c.want {
			t.Errorf("%s: %t", c.first, got)
		}
	}
}

// TestYears holds where the year of dates without one is looked for, and that what
// contradicts itself settles nothing.
func TestYears(t *testing.T) {
	for _, c := range []struct {
		file, sheet, title string
		from, to           int
	}{
		{"log 2025.csv", "", "", 2025, 2025}, {"log.xlsx", "2025", "", 2025, 2025},
		{"log.xlsx", "", "Season 2025", 2025, 2025},
		{"log 2025-26.csv", "", "", 2025, 2026}, {"log 2025-26.csv", "", "spring 2026", 2026, 2026},
		{"log.csv", "", "season 25/26", 2025, 2026},
		{"log 2025.csv", "", "Season 2026", 0, 0}, {"log 2005-06.csv", "", "", 0, 0}, {"log.csv", "", "", 0, 0},
		{"log.csv", "", "founded 1998, season 2025", 0, 0},
	} {
		p := inferred(t, c.file, nil, c.sheet, c.title+
			"\nDate|Start|End\n3-Jul|06:00|08:00\n4-Jul|06:00|08:00").Data()[0].Plan
		if want := (unit.Years{From: c.from, To: c.to}); p.Years != want && want != (unit.Years{}) ||
			want == (unit.Years{}) && c.title != "Season 2026" && p.Years != want {
			t.Errorf("%q %q %q: %v, expected %d to %d", c.file, c.sheet, c.title, p.Years, c.from, c.to)
		}
	}
}

// TestTitleDay holds that the day of a table is one that a title begins with.
func TestTitleDay(t *testing.T) {
	for title, want := range map[string]string{
		"Trip 7/5/25 - the Fingers": "7/5/25", "12 July 2026": "12 July 2026", "Date: 2026-06-03, calm": "2026-06-03",
		"Log of Saturday, June 25, 2026": "Saturday, June 25, 2026",
		"My log, printed 3 Jan 2026":     "", "Trip 4": "", "July 2026": "",
	} {
		if got := titleDay([]string{title}); !strings.HasPrefix(got, want) || (got == "") != (want == "") {
			t.Errorf("%q: %q, expected %q", title, got, want)
		}
	}
	if day := titleDay([]string{"3 July 2026", "4 July 2026"}); day != "" {
		t.Errorf("two days: %q", day)
	}
}

// TestLegend holds that a log's own words for its headings and codes are used.
func TestLegend(t *testing.T) {
	l := readLegend([]string{"Res: 0 missed / 1 lost / 2 landed", "Q = lines quit; B = bites", "We saw birds all day.",
		"WET  first line in the water", "a table  of  words"})
	if l.more("WET") != "first line in the water" || l.more("a table") != "" {
		t.Errorf("%+v", l.words)
	}
	numbered := readLegend([]string{"2. Ended: G = gaffed; W = worked loose; T = turned loose.",
		"4. Knots by the log."})
	if c := numbered.codes["ended"]; c["w"] != "worked loose" || len(c) != 3 {
		t.Errorf("a numbered line: %+v", numbered)
	}
	said := readLegend([]string{"touched: all that bite. " +
		"brought up: what reaches the deck (some go back). gone: unhooked"})
	if said.more("Brought up") != "what reaches the deck" || said.more("touched") != "all that bite" {
		t.Errorf("sentences: %+v", said.words)
	}
	if c := l.codes["res"]; c["0"] != "missed" || c["2"] != "landed" || l.more("Q") != "lines quit" ||
		l.more("B") != "bites" || len(l.codes) != 1 {
		t.Errorf("%+v", l)
	}
	for text, want := range map[string]int{"0 missed / 1 lost / 2 landed": 3, "M = missed, L = lost": 2,
		"K = kept, or given away   F = freed at the boat   G = gone": 3, "calm and warm": 0, "1 lost": 0} {
		if got := codesIn(text); len(got) != want {
			t.Errorf("%q: %v", text, got)
		}
	}
	const rows = "Date|Time|Res|Species\n3/6/26|06:40|0|\n14/6/26|07:10|2|Wahoo\n15/6/26|07:10|1|Wahoo\n" +
		"16/6/26|07:10|2|Mahi"
	coded := planOf(t, "", "Res: 0 missed / 1 lost / 2 landed\n\n"+rows)
	b := coded.Find("outcome")
	if b == nil || b.Heading != "Res" || b.Codes["1"] != "lost" {
		t.Errorf("with a legend: %s", summary(coded))
	}
	if bare := planOf(t, "", rows); bare.Binds("outcome") {
		t.Errorf("without one: %s", summary(bare))
	}
	// a heading that names the codes is theirs
	const named = "Date|Time|End K F G|Species|Kg|S or " +
		"E\n3/6/26|06:40|G||4|S\n14/6/26|07:10|K|Wahoo|9|E\n15/6/26|07:10|F|Wahoo|8|E\n16/6/26|07:10|K|Mahi|5|S"
	byName := planOf(t, "", "End:  K = kept   F = freed at the boat   G = gone, hooked before\nAll fish at the "+
		"fork. Mass in kg: S = club scale, E = guessed. None = guessed.\n\n"+named)
	for name, want := range map[string]string{"outcome": "freed at the boat", "weighed": "guessed"} {
		b := byName.Find(name)
		if code := map[string]string{"outcome": "f", "weighed": "e"}[name]; b == nil || b.Codes[code] != want {
			t.Errorf("%s: %v in %s", name, b, summary(byName))
		}
	}
	if codes := byName.Find("weighed").Codes; codes[""] != "guessed." {
		t.Errorf("no letter means %q", codes[""])
	}
	headed := planOf(t, "",
		"Zk = bites\n\nDate|Start|End|Zk\n3/6/26|06:00|08:00|2\n14/6/26|06:10|09:00|0\n15/6/26|07:00|11:30|3")
	if !headed.Binds("strikes_n") {
		t.Errorf("a heading of the legend: %s", summary(headed))
	}
}

// TestLinked holds that a column by which rows of one table name rows of another is
// found by its cells.
func TestLinked(t *testing.T) {
	legs := "Zk|Date|Start|End|Lines\nA1|3/6/26|06:00|08:00|4\nA2|14/6/26|06:10|09:00|4\nA3|15/6/26|07:00|11:30|5"
	strikes := "Zk|Time|Outcome|Species\nA1|06:40|lost|Wahoo\nA1|07:10|landed|Wahoo\nA3|08:10|landed|Mahi"
	l := inferred(t, "log", nil, "Legs", legs, "Strikes", strikes)
	for _, u := range l.Data() {
		if b := u.Plan.Find("leg"); b == nil || b.Heading != "Zk" {
			t.Errorf("%s: %s", u.Plan.Name, summary(u.Plan))
		}
	}
	other := inferred(t, "log", nil, "Legs", legs, "Strikes", strings.ReplaceAll(strikes, "\nA", "\nB"))
	for _, u := range other.Data() {
		if u.Plan.Binds("leg") {
			t.Errorf("cells that name nothing: %s", summary(u.Plan))
		}
	}
}

// TestHoursOnlyHere holds that the hours of a trip of which only the coarser table tells are kept, unless the finer one
// has a day of its own, which may be the same one mistyped.
func TestHoursOnlyHere(t *testing.T) {
	const days = "Date|Hours|Bites|Landed\n3/6/26|5|3|1\n14/6/26|6.8|2|1\n15/6/26|4.5|0|0\n21/6/26|4|2|1"
	const legs = "Date|Start|End|Lines|Speed\n3/6/26|06:00|08:00|4|8\n3/6/26|09:00|12:00|4|9\n" +
		"14/6/26|06:10|13:00|4|9\n15/6/26|07:00|11:30|5|8"
	for more, want := range map[string]int{"": 1, "\n22/6/26|07:00|11:00|5|8": 0} {
		l := inferred(t, "log", nil, "Days", days, "Legs", legs+more)
		if p := blockOf(l, "Days").Plan; !p.NoEffort || len(p.OnlyHere) != want || want == 1 && !p.OnlyHere[5] {
			t.Errorf("with %q: no effort %t, but for rows %v", more, p.NoEffort, p.OnlyHere)
		}
	}
}

// TestFinerHours holds that hours that two tables tell are counted once, as the finer tells.
func TestFinerHours(t *testing.T) {
	days := "Date|Start|End|Bites|Landed|Skipper|Boat\n3/6/26|06:00|12:00|3|1|Ansa|Wren\n" +
		"14/6/26|06:10|13:00|2|1|Ansa|Wren\n15/6/26|07:00|11:30|0|0|Olin|Wren"
	legs := "Date|Start|End|Lines|Speed\n3/6/26|06:00|08:00|4|8\n3/6/26|09:00|12:00|4|9\n14/6/26|06:10|13:00|4|9\n" +
		"15/6/26|07:00|11:30|5|8"
	l := inferred(t, "log", nil, "Days", days, "Legs", legs)
	for _, u := range l.Data() {
		if want := u.Plan.Name == "Days"; u.Plan.NoEffort != want {
			t.Errorf("%s: its hours are left out: %t", u.Plan.Name, u.Plan.NoEffort)
		}
	}
}
