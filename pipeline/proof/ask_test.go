package proof

import (
	"slices"
	"strings"
	"testing"

	"wakeledger/pipeline/layout"
	"wakeledger/pipeline/meaning"
	"wakeledger/pipeline/record"
	"wakeledger/pipeline/species"
	"wakeledger/testdata/memory"
)

// inferred is a log of sheets, each a name and its lines of cells.
func inferred(t testing.TB, sheets ...string) *meaning.Log {
	t.Helper()
	fish, err := species.Default()
	if err != nil {
		t.Fatal(err)
	}
	l, err := meaning.Default(fish)
	if err != nil {
		t.Fatal(err)
	}
	var book memory.Book
	for i := 0; i < len(sheets); i += 2 {
		book = append(book, memory.Lines(sheets[i], sheets[i+1]))
	}
	var taken []*layout.Sheet
	for i := range book {
		g, err := layout.Read(book, i, 1000)
		if err != nil {
			t.Fatal(err)
		}
		taken = append(taken, layout.Take(g,
			layout.Likeness{Label: l.Label, Key: l.Key, Event: l.Event, Hourly: l.Hourly}))
	}
	return l.Infer("log", taken, func(string, int) meaning.Said { return meaning.Said{} }, nil)
}

// asked are the questions of a log whose blocks with data came to stats, in their order.
func asked(t testing.TB, l *meaning.Log, stats ...Stats) []Question {
	t.Helper()
	var subjects []Subject
	for i, u := range l.Data() {
		s := Stats{}
		if i < len(stats) {
			s = stats[i]
		}
		subjects = append(subjects, Subject{Understood: u, Stats: &s})
	}
	return Questions(l, subjects)
}

func kinds(qs []Question) []string {
	var out []string
	for _, q := range qs {
		out = append(out, q.Kind)
	}
	return out
}

const (
	legs  = "Date|Start|End|Lines|Speed\n3/6/26|06:00|08:00|4|8\n14/6/26|06:10|09:00|5|9\n15/6/26|06:10|09:00|5|9"
	windy = "Date|Start|End|Lines|Speed|Wind\n3/6/26|06:00|08:00|4|8|NE " +
		"12\n14/6/26|06:10|09:00|5|9|calm\n15/6/26|06:10|09:00|5|9|calm"
	days = "Date|Start|End|Lines|Strikes|Landed|Released\n3/6/26|06:00|08:00|4|5|2|1\n" +
		"14/6/26|06:10|09:00|5|6|3|2\n15/6/26|06:10|09:00|5|2|1|0"
	strikes = "Date|Time|Outcome|Species\n3/6/26|06:40|lost|Wahoo\n14/6/26|07:10|landed|Wahoo\n" +
		"15/6/26|07:10|landed|Mahi"
)

// fine is what a block in order came to.
var fine = Stats{Stretches: 10, Hours: 30, Strikes: 8, ByCount: 8}

func with(change func(*Stats)) Stats {
	s := fine
	change(&s)
	return s
}

// TestTemplate holds that a table of nothing but its rows' own numbers is an empty form, and no table
// that was left: one with a word in it is.
func TestTemplate(t *testing.T) {
	const empty = "No|In|Up|Lines|Knots|Where\n1|||||\n2|||||\n3|||||"
	nothing := Stats{Aside: []record.Problem{{Pos: record.Pos{File: "log", Row: 2}},
		{Pos: record.Pos{File: "log", Row: 3}}, {Pos: record.Pos{File: "log", Row: 4}}}}
	for sheet, want := range map[string]bool{empty: false,
		strings.Replace(empty, "3|||||", "3|||||north bank", 1): true} {
		if got := slices.Contains(kinds(asked(t, inferred(t, "Blank", sheet, "June", legs), nothing, fine)),
			"left over"); got != want {
			t.Errorf("asked %v, expected %v: %s", got, want, sheet)
		}
	}
}

// TestAsked holds that each question is asked when it should be, and not when all is in
// order.
func TestAsked(t *testing.T) {
	aside := func(column string, col int) Stats {
		return with(func(s *Stats) {
			s.Aside = []record.Problem{{Pos: record.Pos{File: "log", Row: 3, Col: col}, Column: column,
				Cell: "x", Reason: "not understood"}}
		})
	}
	for _, c := range []struct {
		kind, sheet string
		when, not   Stats
	}{
		{"no effort", days, Stats{Strikes: 4, ByCount: 4}, fine},
		{"no lines", legs, with(func(s *Stats) { s.NoLines, s.NoLinesH = 10, 30 }),
			with(func(s *Stats) { s.NoLines = 2 })},
		{"few lines", legs, with(func(s *Stats) { s.NoLines, s.NoLinesH = 4, 12 }),
			with(func(s *Stats) { s.NoLines = 2 })},
		{"few speeds", legs, with(func(s *Stats) { s.NoSpeed = 6 }), with(func(s *Stats) { s.NoSpeed = 5 })},
		{"no strikes", legs, Stats{Stretches: 5, Hours: 9}, Stats{Stretches: 4, Hours: 9}},
		{"no end", legs, with(func(s *Stats) { s.Half = []Half{{2, "", "end_s", 21600}} }),
			with(func(s *Stats) { s.Half = nil })},
		{"overlap", legs, with(func(s *Stats) { s.Overlaps = []Overlap{{2, 3}} }), fine},
		{"own hours", legs, with(func(s *Stats) { s.Own, s.OwnClock = 28, 30 }),
			with(func(s *Stats) { s.Own, s.OwnClock = 29.9, 30 })},
		{"word", windy, aside("Speed", 5), aside("Wind", 6)}, // no total rests on the wind
		{"aside", legs, aside("", 0), fine},
	} {
		l := inferred(t, "log", c.sheet)
		if got := kinds(asked(t, l, c.when)); !slices.Contains(got, c.kind) {
			t.Errorf("%s is not asked: %v", c.kind, got)
		}
		if got := kinds(asked(t, l, c.not)); slices.Contains(got, c.kind) {
			t.Errorf("%s is asked for nothing", c.kind)
		}
	}
}

// TestAskedOfCells holds the questions that a log's cells alone give rise to.
func TestAskedOfCells(t *testing.T) {
	heads := "Date|Start|End|Lines|Speed\n"
	for _, c := range []struct{ kind, when, not string }{
		{"ranges", heads + "3/6/26|06:00|08:00|4|7-9\n14/6/26|06:10|09:00|5|5-7\n15/6/26|06:10|09:00|5|8",
			heads + "3/6/26|06:00|08:00|4|8-9\n14/6/26|06:10|09:00|5|8.5\n15/6/26|06:10|09:00|5|8"},
		{"inclusive", days,
			"Date|Start|End|Lines|Strikes|Landed|Released\n3/6/26|06:00|08:00|4|5|1|2\n14/6/26|06:10|09:00|5|6|1|2\n" +
				"15/6/26|06:10|09:00|5|2|1|0"},
		{"caught", "Date|Start|End|Lines|Wahoo|Mahi\n3/6/26|06:00|08:00|4|2|0\n14/6/26|06:10|09:00|5|0|1",
			"Date|Start|End|Lines|Missed|Wahoo|Mahi\n3/6/26|06:00|08:00|4|1|2|0\n14/6/26|06:10|09:00|5|0|0|1"},
		{"column",
			"Date|Start|End|Lines|Zark\n3/6/26|06:00|08:00|4|2\n14/6/26|06:10|09:00|5|0\n15/6/26|06:10|09:00|5|1",
			days},
		{"left over", legs + "\n\nZark|Quib|Fenn\n1|2|3\n4|5|6\n7|8|9\n2|2|1", legs},
		{"total",
			"Date|Start|End|Lines|Bites\n3/6/26|06:00|08:00|4|5\n14/6/26|06:10|09:00|5|6\n15/6/26|06:10|09:00|5|2\n" +
				"Total||||31", "Date|Start|End|Lines|Bites\n3/6/26|06:00|08:00|4|5\n14/6/26|06:10|09:00|5|6\n" +
				"15/6/26|06:10|09:00|5|2\nTotal||||13"},
	} {
		if got := kinds(asked(t, inferred(t, "log", c.when), fine)); !slices.Contains(got, c.kind) {
			t.Errorf("%s is not asked: %v", c.kind, got)
		}
		if got := kinds(asked(t, inferred(t, "log", c.not), fine)); slices.Contains(got, c.kind) {
			t.Errorf("%s is asked for nothing", c.kind)
		}
	}
}

// TestBitesOfEither holds that a speed for each of two stretches is no word that is asked about: what it
// leaves open is said once.
func TestBitesOfEither(t *testing.T) {
	s := with(func(s *Stats) {
		s.Aside = []record.Problem{{Pos: record.Pos{File: "log", Row: 3, Col: 5}, Column: "Speed", Cell: "8 / 14",
			Reason: record.OfEither + "; the rest of the row is kept"}}
	})
	if got := kinds(asked(t, inferred(t, "log", legs), s)); slices.Contains(got, "word") ||
		!slices.Contains(got, "aside") {
		t.Errorf("%v is asked", got)
	}
}

// TestLetGoAmong holds that nothing is asked of fish let go where each row that names some counts them.
func TestLetGoAmong(t *testing.T) {
	const head = "Date|Start|End|Lines|Bites|Boated|Fish\n3/6/26|06:00|08:00|4|2|2|mahi 70 cm; cobia let go\n" +
		"14/6/26|06:10|09:00|5|1|1|cobia let go\n15/6/26|06:10|09:00|5|2|"
	for last, want := range map[string]bool{"2|mahi let go; wahoo 90 cm": false, "1|mahi let go; wahoo 90 cm": true} {
		if got := slices.Contains(kinds(asked(t, inferred(t, "log", head+last), fine)), "freed"); got != want {
			t.Errorf("%s: asked %t", last, got)
		}
	}
}

// TestNextStart holds that a stretch without an end may have ended when the next of its day began.
func TestNextStart(t *testing.T) {
	for from, want := range map[int64]int{25200: 2, 18000: 1} {
		s := with(func(s *Stats) {
			s.Half = []Half{{2, "9", "end_s", 21600}}
			s.spans = map[string][]span{"9": {{from: from, to: 28800, row: 3}}}
		})
		for _, q := range asked(t, inferred(t, "log", legs), s) {
			if q.Kind == "no end" && (len(q.Choices) != want || want == 2 && q.Choices[1] != asCell("07:00")) {
				t.Errorf("the next at %d: %v", from, q.Choices)
			}
		}
	}
}

// TestUnreadTexts holds that texts beside the tables are asked about where several of them
// speak of bites, and that prices and the weather are not.
func TestUnreadTexts(t *testing.T) {
	for text, want := range map[string]bool{"812 hook up, came off": true, "fuel 212 dollars, wind NE 12": false} {
		l := inferred(t, "log", legs)
		for n := range fewTexts {
			if got := slices.Contains(kinds(asked(t, l, fine)), "left over"); got {
				t.Errorf("%d texts %q are asked about", n, text)
			}
			l.Sheets[0].Notes = append(l.Sheets[0].Notes, layout.Note{Row: 20 + n, Text: text})
		}
		if got := slices.Contains(kinds(asked(t, l, fine)), "left over"); got != want {
			t.Errorf("%d texts %q: asked about %t", fewTexts, text, got)
		}
	}
}

// TestNothingRead holds that a file of which nothing is read is asked about, in one question of its own.
func TestNothingRead(t *testing.T) {
	ids := map[string]bool{}
	for _, text := range []string{"Season\nDate: 6/15/26\nIn 6:10 out 11:30 4 lines\n3 bites 1 landed\nDate: 6/16/26",
		"We went out on the 15th, lines in 6:10, four lines"} {
		got := asked(t, inferred(t, "", text))
		if len(got) != 1 || got[0].Kind != "left over" || ids[got[0].ID] {
			t.Errorf("%q: asked %v", text, kinds(got))
		}
		ids[got[0].ID] = true
	}
}

// TestTotalOfTrolling holds that a total of what was trolled alone agrees with the rows.
func TestTotalOfTrolling(t *testing.T) {
	const rows = "Date|How|Start|End|Lines|Bites\n3/6/26|troll|06:00|08:00|4|5\n14/6/26|bottom|06:10|09:00|5|6\n" +
		"15/6/26|troll|06:10|09:00|5|2\n16/6/26|troll|06:10|09:00|5|4\n"
	for total, want := range map[string]bool{"Total|||||11": false, "Total|||||17": false, "Total|||||15": true} {
		if got := slices.Contains(kinds(asked(t, inferred(t, "Days", rows+total), Stats{Rows: 4})),
			"total"); got != want {
			t.Errorf("%s: asked %t", total, got)
		}
	}
}

// TestTotalOfRowsWithLines holds that a total agrees that is of the rows that were not passed over as not trolled.
func TestTotalOfRowsWithLines(t *testing.T) {
	const rows = "Date|Leg|Hours|Lines|Bites\n3/6/26|1|1.5|0|0\n3/6/26|2|2|5|6\n14/6/26|1|3|4|1\n" +
		"14/6/26|2|1|0|0\nTotal||5||7"
	for _, untrolled := range [][]int64{{2, 5}, nil} {
		got := kinds(asked(t, inferred(t, "Days", rows), Stats{Rows: 4, Untrolled: untrolled}))
		if slices.Contains(got, "total") != (untrolled == nil) {
			t.Errorf("%d rows passed over: asked %v", len(untrolled), got)
		}
	}
}

// TestTotalOfHours holds that a total of hours agrees with rows that say theirs by clock times or about, and that hours
// of no day which it counts are asked about no more.
func TestTotalOfHours(t *testing.T) {
	const rows = "Date|Hours|Rods|Bites\n3/6/26|abt 4|4|5\n14/6/26|7:30 to 2|5|6\n?|5|5|2\n16/6/26|3|5|4\n"
	fished := Stats{Rows: 4, Stretches: 4, Hours: 18.5, Worked: []Worked{{2, "2026-06-03"}, {3, "2026-06-14"}, {4, ""},
		{5, "2026-06-16"}}, Dayless: []int64{4},
		Fished: map[string]bool{"2026-06-03": true}}
	for total, want := range map[string][2]bool{"TOTAL|18.5||": {false, false}, "TOTAL|8||": {false, true},
		"TOTAL|22||": {true, true}} {
		got := kinds(asked(t, inferred(t, "Days", rows+total), fished))
		if is := [2]bool{slices.Contains(got, "total"), slices.Contains(got, "dayless")}; is != want {
			t.Errorf("%s: asked %v", total, got)
		}
	}
}

// TestTwoTellings holds that counts are held against rows of strikes.
func TestTwoTellings(t *testing.T) {
	l := inferred(t, "Days", days, "Strikes", strikes)
	counts := with(func(s *Stats) { s.ByCount, s.Strikes = 13, 13 })
	for listed, want := range map[int]bool{3: true, 13: false} {
		qs := asked(t, l, counts, Stats{Strikes: listed, Listed: listed})
		if got := slices.Contains(kinds(qs), "two tellings"); got != want {
			t.Errorf("13 counted, %d listed: asked %t", listed, got)
		}
	}
}

// TestCountsOfOthers holds that counts of missed or lost bites alone, beside a list that has none such, are no second
// telling of it.
func TestCountsOfOthers(t *testing.T) {
	l := inferred(t, "Days", days, "Strikes", strikes)
	for _, c := range []struct {
		counts Stats
		rows   Stats
		want   bool
	}{
		{Stats{ByCount: 9, Lost: 9}, Stats{Listed: 3, Held: 3, Boated: 2}, false},
		{Stats{ByCount: 9, Lost: 9, Hooked: 4}, Stats{Listed: 3, Held: 3, Boated: 3}, false},
		{Stats{ByCount: 9, Lost: 9, Hooked: 4}, Stats{Listed: 3, Held: 3, Boated: 2}, true}, // one was lost
		{Stats{ByCount: 9, Lost: 9}, Stats{Listed: 3, Held: 2, Boated: 2}, true},            // one was missed
		{Stats{ByCount: 9, Lost: 9}, Stats{Listed: 3, Held: 3, Unsaid: []int64{4}}, true},
		{Stats{ByCount: 9, Lost: 7, Landed: 2}, Stats{Listed: 3, Held: 3, Boated: 3}, true},
	} {
		c.counts.Stretches, c.counts.Hours, c.counts.Strikes, c.rows.Strikes = 10, 30, c.counts.ByCount, c.rows.Listed
		if got := slices.Contains(kinds(asked(t, l, c.counts, c.rows)), "two tellings"); got != c.want {
			t.Errorf("%+v beside %+v: asked %t", c.counts, c.rows, got)
		}
	}
}

// TestMissedAreNotListed holds that a list of what was hooked is no second telling of counts of bites, where it has
// lost ones and never more than are counted.
func TestMissedAreNotListed(t *testing.T) {
	l := inferred(t, "Days", days, "Strikes", strikes)
	for _, c := range []struct {
		hooked, onDay int // that the counts tell
		held, boated  int // of six that are listed
		want          bool
	}{
		{0, 9, 6, 4, false},
		{0, 9, 6, 6, true}, // no lost ones
		{0, 9, 5, 4, true}, // one was missed
		{0, 5, 6, 4, true}, // more on one day than are counted
		{7, 9, 6, 4, true},
	} {
		counts := Stats{ByCount: 9, Hooked: c.hooked, Told: map[string]*Told{"day 1": {Bites: c.onDay}}, Stretches: 10,
			Hours: 30, Strikes: 9}
		rows := Stats{Listed: 6, Held: c.held, Boated: c.boated, Strikes: 6,
			Told: map[string]*Told{"day 1": {Listed: Fates{Held: c.held}}}}
		if got := slices.Contains(kinds(asked(t, l, counts, rows)), "two tellings"); got != c.want {
			t.Errorf("%+v: asked %t", c, got)
		}
	}
}

// TestAgrees holds that a total that is the sum of its rows is told.
func TestAgrees(t *testing.T) {
	l := inferred(t, "log",
		"Date|Start|End|Lines|Bites\n3/6/26|06:00|08:00|4|5\n14/6/26|06:10|09:00|5|6\n15/6/26|06:10|09:00|5|2\n"+
			"Total||||13")
	asked(t, l, fine)
	if len(l.Agreed) != 1 || !strings.Contains(l.Agreed[0], "13") {
		t.Errorf("%q", l.Agreed)
	}
}

// TestIDs holds that a question keeps its id in next year's log of the same hand, and
// that no two questions of a log share one.
func TestIDs(t *testing.T) {
	bad := with(func(s *Stats) {
		s.NoLines, s.NoLinesH, s.NoSpeed, s.Own, s.OwnClock = 10, 30, 6, 20, 30
	})
	worse := bad
	worse.NoLinesH, worse.Own, worse.Hours = 90, 60, 99
	ids := func(sheet string, s Stats) map[string]string {
		m := map[string]string{}
		for _, q := range asked(t, inferred(t, "log", sheet), s) {
			if other, ok := m[q.ID]; ok {
				t.Errorf("%s and %s have the id %s", q.Kind, other, q.ID)
			}
			m[q.ID] = q.Kind
		}
		return m
	}
	this := ids(legs, bad)
	next := ids(strings.ReplaceAll(strings.ReplaceAll(legs, "/6/26", "/7/27"), "|06:10", "|07:20"), worse)
	if len(this) < 3 || len(this) != len(next) {
		t.Fatalf("%v, next year %v", this, next)
	}
	for id, kind := range this {
		if next[id] != kind {
			t.Errorf("%s was %s, and is %q", id, kind, next[id])
		}
	}
	for id, kind := range ids(strings.Replace(legs, "Lines", "Rods out", 1), bad) {
		if _, ok := this[id]; ok {
			t.Errorf("%s of another hand has the id of this one's", kind)
		}
	}
}

// TestOrder holds that what moves hours and strikes most comes first.
func TestOrder(t *testing.T) {
	qs := asked(t, inferred(t, "log", legs), with(
		func(s *Stats) { s.NoLines, s.NoLinesH, s.NoSpeed, s.Overlaps = 10, 30, 6, []Overlap{{2, 3}} }))
	if got := kinds(qs); !slices.Equal(got, []string{"overlap", "no lines", "few speeds"}) {
		t.Errorf("%v", got)
	}
	for _, q := range qs {
		if q.Text == "" || len(q.Effect) == 0 || q.Brief == "" {
			t.Errorf("%+v", q)
		}
	}
}

func TestOverEdge(t *testing.T) {
	for text, want := range map[string]bool{"7-9": true, "5 to 6.5": true, "8+": true, "8-9": false, "8.5": false,
		"12": false, "14-17 kn": true, "fast": false} {
		if overEdge(text) != want {
			t.Errorf("%q: over an edge %t", text, !want)
		}
	}
}

// TestClocksLeft holds that a log without hours is asked about them where a column of clock times means nothing, and
// not where such a column is known to be of something else.
func TestClocksLeft(t *testing.T) {
	fish := "Date|Zork|Species|Length cm\n3/6/26|06:10|Wahoo|110\n4/6/26|07:20|Wahoo|121\n5/6/26|06:40|Dorado|88"
	for head, want := range map[string]bool{"Zork": true, "High tide": false} {
		qs := asked(t, inferred(t, "Fish", strings.Replace(fish, "Zork", head, 1)), Stats{Listed: 3})
		if got := slices.Contains(kinds(qs), "no effort"); got != want {
			t.Errorf("%s: asked %t: %v", head, got, kinds(qs))
		}
	}
}
