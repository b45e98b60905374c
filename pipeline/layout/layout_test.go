package layout

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"wakeledger/testdata/memory"
)

// known are the labels of these tests: the package has none of its own.
var known = strings.Split("date trip start end lines speed bites landed notes boat skipper angler species length "+
	"weight time outcome rod lure", " ")

var like = Likeness{
	Label: func(text string) float64 {
		if slices.Contains(known, strings.ToLower(strings.TrimRight(text, ": "))) {
			return 1
		}
		return 0
	},
	Key: func(text string) bool { return slices.Contains([]string{"date", "trip"}, strings.ToLower(text)) },
	Event: func(text string) string {
		if slices.Contains([]string{"up", "picked up", "lines in"}, text) {
			return text
		}
		return ""
	},
}

// take takes lines of cells between bars apart.
func take(t testing.TB, text string) *Sheet {
	t.Helper()
	g, err := Read(memory.Book{memory.Lines("log", text)}, 0, 1000)
	if err != nil {
		t.Fatal(err)
	}
	return Take(g, like)
}

// shown are a sheet's blocks in words: shape, labels, and the row numbers with the first
// cell of each.
func shown(s *Sheet) string {
	var out []string
	for _, b := range s.Blocks {
		var labels, rows []string
		for _, l := range b.Labels {
			labels = append(labels, l.Full())
		}
		for _, r := range b.Rows {
			first := ""
			if f := r.filled(0, len(r.Cells)); len(f) > 0 {
				first = r.Cells[f[0]].Text
			}
			rows = append(rows, fmt.Sprintf("%d=%s", r.Num, first))
		}
		out = append(out, fmt.Sprintf("%s [%s] %s", b.Shape, strings.Join(labels, ","), strings.Join(rows, " ")))
	}
	return strings.Join(out, "; ")
}

const leg = "Date|Start|End|Lines\n"

func TestTables(t *testing.T) {
	for _, c := range []struct{ what, text, want string }{
		{"a heading of one row", leg + "3/6/26|06:00|08:00|4\n4/6/26|06:10|08:20|5",
			"table [Date,Start,End,Lines] 2=3/6/26 3=4/6/26"},
		{"under a title", "My log||\n\n" + leg + "3/6/26|06:00|08:00|4", "table [Date,Start,End,Lines] 4=3/6/26"},
		{"groups over names", "|In the water|||Fish|\nDate|Start|End|Lines|Bites|Landed\n3/6/26|06:00|08:00|4|2|1",
			"table [Date,In the water Start,In the water End,In the water Lines,Fish Bites,Fish Landed] 3=3/6/26"},
		{"names over units", "Date|Start|Speed|Length\n|24hr|kn|cm\n3/6/26|06:00|8|120",
			"table [Date,Start 24hr,Speed kn,Length cm] 3=3/6/26"},
		{"groups, names and units",
			"|Times||Fish|\nDate|Start|End|Species|Length\nd/m/y|24hr|24hr||cm\n3/6/26|06:00|08:00|Wahoo|120",
			"table [Date d/m/y,Times Start 24hr,Times End 24hr,Fish Species,Fish Length cm] 4=3/6/26"},
		{"one below the other", leg + "3/6/26|06:00|08:00|4\n\nDate|Species|Length\n3/6/26|Wahoo|120",
			"table [Date,Start,End,Lines] 2=3/6/26; table [Date,Species,Length] 5=3/6/26"},
		{"side by side",
			"Date|Start|End||Date|Species|Length\n3/6/26|06:00|08:00||5/6/26|Wahoo|120\n" +
				"4/6/26|06:00|08:00||6/6/26|Wahoo|90", "table [Date,Start,End] 2=3/6/26 3=4/6/26; table " +
				"[Date,Species,Length] 2=5/6/26 3=6/6/26"},
		{"a gap before a column is no second table",
			"Date|Start|End||Notes\n3/6/26|06:00|08:00||calm\n4/6/26|06:00|08:00||calm too",
			"table [Date,Start,End,Notes] 2=3/6/26 3=4/6/26"},
		{"pages with the heading again", leg + "3/6/26|06:00|08:00|4\n\n" + leg + "4/6/26|06:00|08:00|5",
			"table [Date,Start,End,Lines] 2=3/6/26; table [Date,Start,End,Lines] 5=4/6/26"},
		{"headings of no known word", "Raised|Came on|On deck|Put back\n5|4|2|1\n6|3|2|1\n4|2|2|0\n1|1|1|0",
			"table [Raised,Came on,On deck,Put back] 2=5 3=6 4=4 5=1"},
		{"notes at the foot", leg + "3/6/26|06:00|08:00|4\n4/6/26|06:00|08:00|4\nNotes:|sharks about",
			"table [Date,Start,End,Lines] 2=3/6/26 3=4/6/26; form [Notes] 4=sharks about"},
		{"a template that nobody filled in", "Date:||Boat:|\nStart:||End:|\nNotes:|", ""},
		{"a heading over nothing", leg, "table [Date,Start,End,Lines] "},
		{"rows of a key beneath", leg + "3/6/26|06:00|08:00|4\n|tape: wahoo|120 cm|\n4/6/26|06:10|08:20|5\n|tape: " +
			"tuna|90 cm|\n|tape: mahi|80 cm|\n5/6/26|06:10|08:20|5",
			"table [Date,Start,End,Lines] 2=3/6/26 4=4/6/26 7=5/6/26; records [Date,tape,cm] 3=3/6/26 5=4/6/26 " +
				"6=4/6/26"},
		{"a key in two rows alone", leg + "3/6/26|06:00|08:00|4\n|tape: wahoo|120 cm|\n4/6/26|06:10|08:20|5\n|tape: " +
			"tuna|90 cm|",
			"table [Date,Start,End,Lines] 2=3/6/26 3=tape: wahoo 4=4/6/26 5=tape: tuna"},
		{"nothing", "", ""},
		{"texts of no shape", "a|b\nc", ""},
	} {
		if got := shown(take(t, c.text)); got != c.want {
			t.Errorf("%s:\n got      %s\n expected %s", c.what, got, c.want)
		}
	}
}

// TestPairs holds that two rows of which a column without a heading says what each holds are one record.
func TestPairs(t *testing.T) {
	const head = "Date||Start|Speed|Rod|Notes\n"
	for rows, want := range map[string]string{
		"3/6|lure|6:10|7|plug|\n|bite||||\n4/6|lure|6:20|7|jet|\n|bite|||wahoo|\n5/6|||||ashore\n" +
			"6/6|lure|7:00|8|plug|\n|bite|||mahi|\n": "" +
			"table [Date,Start,Speed,Rod,Notes,Rod bite] 2=3/6 4=4/6 6=5/6 7=6/6",
		"3/6|lure|6:10|7|plug|\n4/6|bite|6:20|7|jet|\n5/6|lure|7:00|8|plug|\n6/6|bite|7:00|8|plug|\n": "table [Date,," +
			"Start,Speed,Rod,Notes] 2=3/6 3=4/6 4=5/6 5=6/6",
	} {
		if got := shown(take(t, head+rows)); got != want {
			t.Errorf("%s", got)
		}
	}
}

func TestForms(t *testing.T) {
	for _, c := range []struct{ what, text, want string }{
		{"labels beside values", "Date|3/6/26|Boat|Wren\nStart|06:00|End|08:00", "form [Date,Boat,Start,End] 1=3/6/26"},
		{"labels with colons", "Date:|3/6/26\nHappened:|two on the jet", "form [Date,Happened] 1=3/6/26"},
		{"key: value in one cell", "Date: 3/6/26\nLines: 4", "form [Date,Lines] 1=3/6/26"},
		{"records of keys", "Date: 3/6/26\nLines: 4\nBites: 2\n\nDate: 4/6/26\nLines: 5\nBites: 0",
			"records [Date,Lines,Bites] 1=3/6/26 5=4/6/26"},
		{"a record without one key", "Date: 3/6/26\nLines: 4\nBites: 2\n\nDate: 4/6/26\nBites: 0\n\nDate: " +
			"5/6/26\nLines: 5\nBites: 1", "records [Date,Lines,Bites] 1=3/6/26 5=4/6/26 8=5/6/26"},
		{"a key twice in one record", "Date: 3/6/26\nLines: 4\nBites: 2\nLines: 5\n\nDate: 4/6/26\nLines: 5\nBites: 0",
			"records [Date,Lines,Bites,Lines 2] 1=3/6/26 6=4/6/26"},
		{"records of a day with their labels", "Date: 2026-06-03\nStart: 06:00\nEnd: 08:00\nLines: 4\nBites: 1\n" +
			"Length: 90\n\nDate: 2026-06-05\nStart: 06:00\nEnd: 09:00\nLines: 4\nBites: 1\nLength: 80\n\n" +
			"Date: 2026-06-09\n" +
			"Start: 06:00\nEnd: 08:00\nLines: 5\nBites: 2\nLength: 95",
			"records [Date,Start,End,Lines,Bites,Length] 1=2026-06-03 8=2026-06-05 15=2026-06-09"},
		{"what labels mean", "Legs: Date|the day\nLegs: Start|when lines went in\nLegs: End|\nLines: Rod|its name", ""},
		{"a sentence with a colon", "We learned one thing that day: never leave the spread alone with the boy", ""},
	} {
		if got := shown(take(t, c.text)); got != c.want {
			t.Errorf("%s:\n got      %s\n expected %s", c.what, got, c.want)
		}
	}
}

// TestAcross holds that a sheet whose labels stand in its first column has a record in
// each of the others, with the number of its column.
func TestAcross(t *testing.T) {
	text := "Date|3/6/26|4/6/26|5/6/26\nStart|06:00|06:10|06:20\nEnd|08:00|08:10|08:20\nLines|4|5|4\n" +
		"Skipper|Ansa|Olin|Ansa\nBites|2|0|1"
	s := take(t, text)
	if got := shown(s); got != "records [Date,Start,End,Lines,Skipper,Bites] 2=3/6/26 3=4/6/26 4=5/6/26" {
		t.Fatal(got)
	}
	if c := s.Blocks[0].Rows[1].Cells; c[3].Text != "5" || c[4].Text != "Olin" {
		t.Errorf("the second record is %v", c)
	}
	const numbers = "Date|3/6/26|4/6/26|5/6/26\nIn|0600|0610|0620\nHours|2|3|2.5\nLines|4|5|4\nBites|2|0|1"
	if got := shown(take(t, numbers)); got != "records [Date,In,Hours,Lines,Bites] 2=3/6/26 3=4/6/26 4=5/6/26" {
		t.Errorf("numbers alone under days: %s", got)
	}
}

func TestDiary(t *testing.T) {
	s := take(t, "Usual spread is 5 lines\nSat 3 June 2026\n0610 lines in\n0725 - wahoo, lost at the boat\nhe took "+
		"the jet\n1105 lines up\n4 June 2026\n06:00 lines in\n07:40 nothing yet\n11:00 up")
	if got := shown(s); got != "records [date,time,event] 3=3 June 2026 4=3 June 2026 6=3 June 2026 8=4 June 2026 "+
		"9=4 June 2026 10=4 June 2026" {
		t.Fatal(got)
	}
	if c := s.Blocks[0].Rows[1].Cells; c[1].Text != "0725" || c[2].Text != "wahoo, lost at the boat he took the jet" {
		t.Errorf("an entry of two lines is %v", c)
	}
	if len(s.Notes) != 1 || s.Notes[0].Text != "Usual spread is 5 lines" {
		t.Errorf("above the first day: %v", s.Notes)
	}
	s = take(t, "3 June 2026\n06:10 lines in\n7h of sun\n07:25 strike\nrain\n08:00 strike on the left long\n9h up\n"+
		"4 June 2026\n06:00 lines in\n11h up")
	if got := shown(s); got != "records [date,time,event] 2=3 June 2026 3=3 June 2026 4=3 June 2026 5=3 June 2026 "+
		"6=3 June 2026 7=3 June 2026 9=4 June 2026 10=4 June 2026" {
		t.Error(got)
	}
	if b := s.Blocks[0]; b.Rows[1].Cells[1].Text != "" || b.Rows[5].Cells[1].Text != "9h" {
		t.Errorf("hours alone: %v", b.Rows)
	}
	if s := take(t, "0610 lines in\n0725 strike\n0800 strike\n0900 strike\n1105 lines up"); len(s.Blocks) > 0 &&
		s.Blocks[0].Shape == Records {
		t.Error("times under no day are taken for a diary")
	}
}

// TestOutings holds that a heading with its day at its end begins an outing, whose number its entries have,
// and that a watch's span is no entry, but where what stands under it lies outside of it.
func TestOutings(t *testing.T) {
	const text = "Kept by the mate\n\nCruise no. 1   Sunday 3 May 2026\nCrew: two hands\n0400-0800\nSea slight\n" +
		"0510 gear in\n0640 bite, missed\n0800-1200\n0915 gear up\n\nYARD DAY   Tuesday 5 May 2026\nPaint\n\n" +
		"Cruise no. 2   Saturday 9 May 2026 to Sunday 10 May 2026\nSaturday 9 May\n0400-0800\n0500 gear in\n" +
		"0730 gear up\nSunday 10 May\n0400-0800\n0530 gear in\n0745 gear up"
	s := take(t, text)
	if len(s.Blocks) != 1 {
		t.Fatal(shown(s))
	}
	got := ""
	for _, r := range s.Blocks[0].Rows {
		for _, i := range []int{3, 0, 1, 2} {
			got += r.Cells[i].Text + " "
		}
		got += "\n"
	}
	want := "1 3 May 2026 0510 gear in \n1 3 May 2026 0640 bite, missed \n1 3 May 2026 0915 gear up \n" +
		"2 2026-05-09 0500 gear in \n2 2026-05-09 0730 gear up \n2 2026-05-10 0530 gear in \n" +
		"2 2026-05-10 0745 gear up \n"
	if got != want {
		t.Errorf("got:\n%s\nexpected:\n%s", got, want)
	}
	notes := ""
	for _, n := range s.Notes {
		notes += n.Text + ". "
	}
	if notes != "Kept by the mate. Crew: two hands. Sea slight. Paint. " {
		t.Errorf("beside the entries: %s", notes)
	}
	spans := take(t, "3 May 2026\n0400-0800\n0910 gear in\n1015 bite\n4 May 2026\n0400-0800\n0910 gear in\n1100 up\n"+
		"5 May 2026\n0400-0800\n0915 gear in\n1100 up")
	if n := len(spans.Blocks[0].Rows); n != 9 {
		t.Errorf("spans that hold no entries are %d rows with the entries, expected 9", n)
	}
	for _, line := range []string{"lost 2 on 3 May 2026, sad", "3 May 2026", "May 3 2026", "Left at 3 with 4"} {
		if h, ok := headOf(line); ok {
			t.Errorf("%q is taken for the heading of an outing: %v", line, h)
		}
	}
}

// TestNotes takes the notes of a telephone by the day of their title, or by when they were written: the day before
// where a clock time in them came later, or they say so.
func TestNotes(t *testing.T) {
	const text = "Notes, exported\n\n-----\nRules\n01/05/2026 20:10\n\n4 lines always\n\n-----\n3/5 with Bo\n" +
		"03/05/2026 19:40\n\n8h-11h 6 kn\nnothing\n\n-----\n" +
		"Untitled\n05/05/2026 09:10\n\n8h-13h 6 kn\n\n-----\n(no title)\n" +
		"07/05/2026 21:10\n\nyesterday there was one tuna more\n\n-----\nIslands 13 to 14/5\n15/05/2026 08:00\n\n" +
		"day 13. 9h-12h 7 kn\none wahoo\nday 14. 8h-10h 6 kn"
	s := take(t, text)
	got := ""
	for _, r := range s.Blocks[0].Rows {
		got += r.Cells[0].Text[5:] + " " + r.Cells[1].Text + "\n"
	}
	want := "05-03 8h-11h 6 kn. nothing\n05-04 8h-13h 6 kn\n05-06 yesterday there was one tuna more\n" +
		"05-13 9h-12h 7 kn. one wahoo\n05-14 8h-10h 6 kn\n"
	if got != want || len(s.Notes) != 3 {
		t.Errorf("got:\n%s\nexpected:\n%s%v", got, want, s.Notes)
	}
}

// TestSections holds that lines that part a table by number give each row under them that number.
func TestSections(t *testing.T) {
	const text = "Date|Start|End\nCruise 1: north|\n3/6/26|06:00|08:00\n|09:00|10:00\nCruise 2: home|\n" +
		"9/6/26|06:00|08:00"
	s := take(t, text)
	if got := shown(s); got != "table [Date,Start,End,cruise] 3=3/6/26 4=09:00 6=9/6/26" {
		t.Fatal(got)
	}
	for i, want := range []string{"1", "1", "2"} {
		if got := s.Blocks[0].Rows[i].Cells[3].Text; got != want {
			t.Errorf("row %d is of cruise %q, expected %s", i, got, want)
		}
	}
	if len(s.Notes) != 2 || s.Notes[1].Text != "Cruise 2: home" {
		t.Errorf("the lines themselves: %v", s.Notes)
	}
	falling := strings.Replace(text, "Cruise 2", "Cruise 1", 1)
	if got := shown(take(t, falling)); strings.Contains(got, "cruise]") {
		t.Errorf("numbers that do not rise: %s", got)
	}
}

// TestJournal takes mails line by line: the day of the body, of the subject, of the mail, or the
// day before where the mail was sent before what it tells.
func TestJournal(t *testing.T) {
	mail := "From: Ansa\nTo: me\nDate: %s\nSubject: %s\n\n%s\n"
	text := fmt.Sprintf(mail, "Sun, 10 May 2026 21:05 +0200", "log",
		"sat 5/9\n633 lines in\n90 lb wahoo\npicked up 7:40") +
		fmt.Sprintf(mail, "Thu, 14 May 2026 07:05", "log 5/13", "up 1015. quiet\nfuel 520 gal") +
		fmt.Sprintf(mail, "Wed, May 20, 2026 at 9:05 AM", "log", "0610 lines in\nup 1930")
	s := take(t, text)
	if len(s.Blocks) != 1 {
		t.Fatal(shown(s))
	}
	got := ""
	for _, r := range s.Blocks[0].Rows {
		got += r.Cells[0].Text[5:] + " " + r.Cells[1].Text + " " + r.Cells[2].Text + "\n"
	}
	want := "05-09 633 lines in\n05-09  90 lb wahoo\n05-09 7:40 picked up\n05-13 1015 up, quiet\n05-13  fuel 520 " +
		"gal\n05-19 0610 lines in\n05-19 1930 up\n"
	if got != want {
		t.Errorf("told:\n%sexpected:\n%s", got, want)
	}
}

// TestNumberedTitles holds that lines which number outings above their days give each entry down to the next one its
// trip, over a night too, and that lines which number something else do not.
func TestNumberedTitles(t *testing.T) {
	const text = "Cruise 1\n3/6/26\n0610 lines in\n0700 wahoo lost\n0900 lines up\nCruise 2\n9/6/26\n1710 lines in\n" +
		"1900 lines up\n10/6/26\n0550 lines in\n0800 lines up\nCruise 3\n20/6/26\n0600 lines in\n0830 lines up"
	for said, want := range map[string]string{text: "1 1 1 2 2 2 2 3 3",
		strings.NewReplacer("Cruise 2", "Squid 4").Replace(text): "",
		strings.ReplaceAll(text, "Cruise 3", "Cruise 2"):         ""} {
		got := ""
		for _, b := range take(t, said).Blocks {
			for _, r := range b.Rows {
				if len(r.Cells) > 3 {
					got += r.Cells[3].Text + " "
				}
			}
		}
		if strings.TrimSpace(got) != want {
			t.Errorf("%.40q...: trips %q, expected %q", said, got, want)
		}
	}
}

// TestAbove holds that titles are those of the table below them, and no other's.
func TestAbove(t *testing.T) {
	s := take(t, "Season of the Wren\n"+leg+"3/6/26|06:00|08:00|4\n\n\nDate|Species|Length\n3/6/26|Wahoo|120")
	if len(s.Blocks) != 2 || !slices.Equal(s.Blocks[0].Above, []string{"Season of the Wren"}) ||
		len(s.Blocks[1].Above) > 0 {
		t.Errorf("%+v", s.Blocks)
	}
}

// TestTitleBetween holds that a text between a blank row and the next table's heading is the title of
// that table, and no row of the one above; right under its rows it is one of them.
func TestTitleBetween(t *testing.T) {
	const fish = "\nDate|Species|Length\n3/6/26|Wahoo|120"
	s := take(t, leg+"3/6/26|06:00|08:00|4\n\nPart 2, fish of the day"+fish)
	if len(s.Blocks) != 2 || len(s.Blocks[0].Rows) != 1 ||
		!slices.Equal(s.Blocks[1].Above, []string{"Part 2, fish of the day"}) {
		t.Errorf("%s, above the second %q", shown(s), s.Blocks[len(s.Blocks)-1].Above)
	}
	s = take(t, leg+"3/6/26|06:00|08:00|4\nblown out"+fish)
	if len(s.Blocks) != 2 || len(s.Blocks[0].Rows) != 2 || len(s.Blocks[1].Above) > 0 {
		t.Errorf("%s, above the second %q", shown(s), s.Blocks[len(s.Blocks)-1].Above)
	}
}

// TestProseParted holds that prose with a blank line before each day is a paragraph a day, whatever
// its lines look like when they are parted at their commas.
func TestProseParted(t *testing.T) {
	s := take(t, "The book of 2026\n\nFri Jun 5. Out at first light| four rods| north bank.\nstart| end| and up\nas "+
		"ever. One wahoo.\n\nSun Jun 7. Six rods till noon along the same bank.\n\n"+
		"Tue Jun 9. Nothing in the morning and nothing later on,\nso home we went.")
	if len(s.Blocks) != 1 || s.Blocks[0].Shape != Prose || len(s.Blocks[0].Rows) != 3 ||
		!strings.HasSuffix(s.Blocks[0].Rows[0].Cells[1].Text, "One wahoo.") {
		t.Errorf("%s", shown(s))
	}
}

// TestOpen holds that only a table that reaches the last of the rows looked at goes on.
func TestOpen(t *testing.T) {
	text := leg + strings.Repeat("3/6/26|06:00|08:00|4\n", 20)
	for most, want := range map[int]bool{10: true, 1000: false} {
		g, err := Read(memory.Book{memory.Lines("log", text)}, 0, most)
		if err != nil {
			t.Fatal(err)
		}
		if s := Take(g, like); len(s.Blocks) != 1 || s.Blocks[0].Open != want {
			t.Errorf("%d rows looked at: %+v", most, s.Blocks)
		}
	}
}

// FuzzTake takes any text apart: no panic, labels in their columns, and no row in two
// tables one below the other.
func FuzzTake(f *testing.F) {
	f.Add(leg + "3/6/26|06:00|08:00|4\n\nNotes:|x")
	f.Add("Date: 3/6/26\nLines: 4\n\nDate: 4/6/26\nLines: 5")
	f.Add("|Times||Fish|\nDate|Start|End|Species|Length\nd/m/y|24hr|24hr||cm")
	f.Add("3 June 2026\n0610 in\n0725 x\n0800 y\n0900 z\n1105 up")
	f.Fuzz(func(t *testing.T, text string) {
		s := take(t, text)
		for i := range s.Blocks {
			b := &s.Blocks[i]
			for _, l := range b.Labels {
				if l.Col < 0 || b.Shape == Table && l.Col >= s.Grid.Width {
					t.Errorf("label %+v in a sheet %d wide", l, s.Grid.Width)
				}
			}
			for _, r := range b.Rows {
				if r.Num < 1 || b.Shape == Table && len(r.filled(0, len(r.Cells))) == 0 {
					t.Errorf("row %+v", r)
				}
			}
		}
	})
}

// TestTitlesAreNoGroups holds that a title beside a remark, or a comment, stands over no headings.
func TestTitlesAreNoGroups(t *testing.T) {
	const rows = "Date|Start|End|Lines|Bites|Notes\n2026-06-03|06:00|08:00|5|1|calm\n" +
		"2026-06-04|06:00|08:00|5|2|calm\n2026-06-05|06:00|08:00|5|0|wind"
	const want = "table [Date,Start,End,Lines,Bites,Notes] "
	for _, above := range []string{"Motor vessel Rosalind 2026 page one||||all times local|\n",
		"# what we wrote down each day|times local, lines out||||\n"} {
		if got := shown(take(t, above+rows)); !strings.Contains(got, want) {
			t.Errorf("under %q: %s", above, got)
		}
	}
	if got := shown(take(t, "Trip|||Gear|||\n"+rows)); !strings.Contains(got, "Trip Date") {
		t.Errorf("groups are lost: %s", got)
	}
}

// TestDayNames holds that a day may begin with its name in full, with accents or hyphens.
func TestDayNames(t *testing.T) {
	for text, want := range map[string]string{"Sábado, 7 de Maio. Mar chão": "7 de Maio",
		"Quinta-feira, 12 de Maio. Vento": "12 de Maio", "Miércoles 3/5 calma": "3/5", "Saturday 3/5 calm": "3/5",
		"Sa 3.5.2024 ruhig": "3.5.2024"} {
		if m := dayFirst.FindStringSubmatch(text); m == nil || m[2] != want {
			t.Errorf("%q: %q", text, m)
		}
	}
}

// TestLooseText holds what commas do to sentences and lists of a text file: a title and lines that
// explain words are notes, and what stands behind the last heading is one text.
func TestLooseText(t *testing.T) {
	const rows = "3/6/26,06:00,08:00,wahoo kept\n4/6/26,06:10,08:20,wahoo kept 8.5 kg,2 mahi,tuna " +
		"lost\n5/6/26,06:00,09:00,mahi lost,1 tuna"
	for _, c := range []struct{ what, text, want, tail string }{
		{"legend and list", "log of the season, kept by the mate, at night\ndate,start,end,bites\nk kept / l lost / " +
			"m missed, no hook\nkg = port scale, abt = by eye\n" + rows,
			"table [date,start,end,bites] 5=3/6/26 6=4/6/26 7=5/6/26", "wahoo kept 8.5 kg, 2 mahi, tuna lost"},
		{"headings that explain themselves", "date,start,end,landed (y = yes),bites (n = " +
			"none)\n3/6/26,06:00,08:00,y,1\n4/6/26,06:00,08:00,n,2\n5/6/26,06:00,08:00,n,2",
			"table [date,start,end,landed (y = yes),bites (n = none)] 2=3/6/26 3=4/6/26 4=5/6/26", ""},
		{"remarks without a heading",
			"date,start,end,bites\n3/6/26,06:00,08:00,2,calm\n4/6/26,06:10,08:20,5,rough\n" +
				"5/6/26,06:00,09:00,1,calm again",
			"table [date,start,end,bites,] 2=3/6/26 3=4/6/26 4=5/6/26", ""},
		{"a column without a heading",
			"date,start,end,bites\n3/6/26,06:00,08:00,,2\n4/6/26,06:10,08:20,one,5\n5/6/26,06:00,09:00,two,1",
			"table [date,start,end,bites,] 2=3/6/26 3=4/6/26 4=5/6/26", ""},
	} {
		s := memory.Lines("", strings.ReplaceAll(c.text, ",", "|"))
		s.Info.Separator = ","
		g, err := Read(memory.Book{s}, 0, 1000)
		if err != nil {
			t.Fatal(err)
		}
		taken := Take(g, like)
		if got := shown(taken); got != c.want {
			t.Errorf("%s:\n got      %s\n expected %s", c.what, got, c.want)
			continue
		}
		if c.tail != "" {
			if got := taken.Blocks[0].Rows[1].Cells[3].Text; got != c.tail || len(taken.Notes) != 3 {
				t.Errorf("%s: the list is %q, notes %v", c.what, got, taken.Notes)
			}
		}
	}
}

// TestComments holds that a comment above a table of a text file is one text, with its commas.
func TestComments(t *testing.T) {
	s := memory.Lines("", "# aku = skipjack in the box| iced. rats = small ones| put back\nDate|Start|End|aku|rats\n"+
		"2026-06-03|06:00|08:00|5|1\n2026-06-04|06:00|08:00|5|2\n2026-06-05|06:00|08:00|5|0")
	s.Info.Separator = ","
	g, err := Read(memory.Book{s}, 0, 1000)
	if err != nil {
		t.Fatal(err)
	}
	want := "# aku = skipjack in the box, iced. rats = small ones, put back"
	if b := Take(g, like).Blocks; len(b) != 1 || len(b[0].Above) != 1 || b[0].Above[0] != want {
		t.Errorf("above the table stands %q, expected %q", b[0].Above, want)
	}
}

// TestTablesOfADocument holds that a table ends where the file says so, whatever lines stand below it, and that
// headings come again at the beginning of another, over one row too.
func TestTablesOfADocument(t *testing.T) {
	const text = "Trip 1|||\nDate|Start|End|Bites\n2026-06-03|06:00|08:00|1\n2026-06-04|06:00|08:00|2\n" +
		"2026-06-05|06:00|08:00|0\n" +
		"a fine week|||\nlines to be changed|||\nTrip 2|||\nDate|Start|End|Bites\n2026-06-09|06:00|09:00|3\nrain|||"
	s := memory.Lines("", text)
	for _, i := range []int{1, 2, 3, 4} {
		s.All[i].Table = 1
	}
	s.All[8].Table, s.All[9].Table = 2, 2
	g, err := Read(memory.Book{s}, 0, 1000)
	if err != nil {
		t.Fatal(err)
	}
	taken := Take(g, like)
	if got, want := shown(taken), "table [Date,Start,End,Bites] 3=2026-06-03 4=2026-06-04 5=2026-06-05; table "+
		"[Date,Start,End,Bites] 10=2026-06-09"; got != want {
		t.Errorf("got      %s\nexpected %s", got, want)
	}
	if above := taken.Blocks[1].Above; len(above) != 3 || above[0] != "Trip 2" {
		t.Errorf("above the second table stand %q", above)
	}
}

// TestStacked holds that sheets of paper of one outing each, one below the other, are parted by kind, and that what
// the first line of each names is of all rows under it.
func TestStacked(t *testing.T) {
	text := "K | kept: in the box\nL | lost"
	for i, day := range []string{"3/6/26", "9/6/26", "12/6/26"} {
		text += fmt.Sprintf("\n\nTrip | T%d | Date | %s\nCrew | Ann and Ben\nStart | End | Lines\n06:00 | 08:00 | 4\n"+
			"09:00 | 10:00 | 5", i+1, day)
		if i != 1 {
			text += "\nSpecies | Length | Fate\nwahoo | 120 | K"
		}
		text += "\nNotes: | calm"
	}
	s := take(t, text)
	const want = "records [Trip,Date,Crew,Notes] 4=T1 13=T2 20=T3; table [Start,End,Lines,Trip,Date] 7=06:00 8=09:00 " +
		"16=06:00 17=09:00 23=06:00 24=09:00; table [Species,Length,Fate,Trip,Date] 10=wahoo 26=wahoo"
	if got := shown(s); got != want {
		t.Fatalf("%s\nexpected %s", got, want)
	}
	legs := s.Blocks[1]
	for i, want := range []string{"T1", "T1", "T2", "T2", "T3", "T3"} {
		if got := legs.Rows[i].Cells[legs.Labels[3].Col].Text; got != want {
			t.Errorf("row %d is of %q, expected %s", i, got, want)
		}
	}
	if len(s.Notes) != 2 || s.Notes[0].Text != "K  kept: in the box" {
		t.Errorf("%v", s.Notes)
	}
	loose := strings.Replace(text, "Trip | T2", "07:00 | 08:00 | 3\nTrip | T2", 1)
	loose = strings.Replace(loose, "Start | End | Lines", "", 1)
	if got := shown(take(t, loose)); strings.Contains(got, "Lines,Trip") {
		t.Errorf("rows under no heading: %s", got)
	}
	two := text[:strings.Index(text, "Trip | T3")]
	if got := shown(take(t, two)); strings.Contains(got, "Lines,Trip,Date") {
		t.Errorf("two of them: %s", got)
	}
}

// TestOpenedByNumbers holds that lines which number an outing and name its day open its sheet of paper, and that a
// column of numbered words without a heading is numbers under that word.
func TestOpenedByNumbers(t *testing.T) {
	text := ""
	for i, day := range []string{"sábado 6 de mayo", "domingo 7 de mayo", "lunes 8 de mayo"} {
		text += fmt.Sprintf("\nTRIP %d | %s\nCrew | Ann\n", i+1, day)
		if i == 2 {
			text += "Stayed in the harbour\n"
			continue
		}
		text += "  | Start | End | Lines | Where\nPass 1 | 06:00 | 08:00 | 4 | bank\n" +
			"Pass 2 (noon) | 09:00 | 10:00 | 5 | reef\n"
	}
	const pass = "Pass 1 | 06:00 | 08:00 | 4 | bank\n"
	text += "\nTRIP 4 | martes 9 de mayo\nCrew | Ann\n  | Start | End | Lines | Where\n" + pass
	s := take(t, text)
	if got := shown(s); !strings.HasPrefix(got, "records [TRIP,date,Crew,notes]") ||
		!strings.Contains(got, "table [Pass,Start,End,Lines,Where,TRIP,date] ") {
		t.Fatal(got)
	}
	legs := s.Blocks[1]
	for i, want := range []string{"1 1", "2 1", "1 2", "2 2", "1 4"} {
		r := legs.Rows[i]
		if got := r.Cells[0].Text + " " + r.Cells[legs.Labels[5].Col].Text; got != want {
			t.Errorf("row %d is pass and trip %s, expected %s", i, got, want)
		}
	}
	if len(s.Notes) != 2 || s.Notes[0].Text != "(noon)" {
		t.Errorf("%v", s.Notes)
	}
	if got := shown(take(t, text[:strings.Index(text, "TRIP 3")])); strings.Contains(got, "TRIP,date") {
		t.Errorf("two of them: %s", got)
	}
}

// TestStretchLines holds that lines of labels which come again in an outing, but for their first word, are a stretch
// each, also where nothing is written behind a label, and that what stands behind an outing's day is its place.
func TestStretchLines(t *testing.T) {
	text := ""
	for i, day := range []string{"domenica 7 luglio", "sabato 13 / domenica 14 luglio", "lunedì 15 luglio"} {
		text += fmt.Sprintf("\nUscita %d | %s |  | la secca\n", i+1, day)
		if text += "giù | 06:00 | su | 08:00 | canne | 4\n"; i == 1 {
			text += "dopo | 09:00 | su |  | canne | 5\n"
		}
		text += "ora | pesce | cm\n06:40 | alalunga | 60\n07:10 | tonno | 90\nmangiate | 2\n"
	}
	s := take(t, text)
	got := shown(s)
	for _, want := range []string{"records [Uscita,date,place,mangiate] ", "records [Uscita,date,giù,su,canne] ",
		"table [ora,pesce,cm,Uscita,date] "} {
		if !strings.Contains(got, want) {
			t.Fatalf("%q is not in %s", want, got)
		}
	}
	if got := joined(s.Blocks[1].Rows[2]); got != "2, sabato 13 / domenica 14 luglio, 09:00, 5" {
		t.Errorf("the second stretch is %q", got)
	}
}

// TestNumbered holds that cells which number outings in a column of other words number the rows under them, and
// that others are none.
func TestNumbered(t *testing.T) {
	const text = "Date|Start|End\n3/6/26|trip 1|\n|06:00 out|4\n|07:00 up|\n9/6/26|trip 2|\n|06:10 out|4\n|x|\n" +
		"12/6/26|trip 3|\n|06:15 out|5\n|y|"
	s := take(t, text)
	if got := shown(s); !strings.HasPrefix(got, "table [Date,Start,End,trip]") {
		t.Fatal(got)
	}
	b := s.Blocks[0]
	for i, want := range strings.Split("1 1 1 2 2 2 3 3 3", " ") {
		if got := b.Rows[i].Cells[b.Labels[3].Col].Text; got != want {
			t.Errorf("row %d is of trip %q, expected %s", i, got, want)
		}
	}
	if b.Rows[0].Cells[1].Look != Blank || len(s.Notes) != 3 {
		t.Errorf("%+v, beside it %v", b.Rows[0], s.Notes)
	}
	for _, other := range []string{strings.Replace(text, "trip 2", "trip 1", 1),
		strings.ReplaceAll(text, "trip", "line")} {
		if got := shown(take(t, other)); strings.Contains(got, "End,") {
			t.Errorf("%s", got)
		}
	}
}

// TestLinesAboveATable holds that the lines of a day's sheet that tell of stretches are a record of their own, and
// that the colon of a clock time parts no label from its value.
func TestLinesAboveATable(t *testing.T) {
	const table = "\ntime|species|outcome|length\n9:10|tuna|kept|80\n10:20|tuna|lost|\n"
	for text, want := range map[string]string{
		"Sunday June 4, 2023\nFlat calm\nFished 7:15 to 9:40, 5 lines\nEvening: 4:10 pm to 6:00 pm\n" + table: "" +
			"table [time,species,outcome,length] 7=9:10 8=10:20; records [date,what happened] 2=June 4, 2023",
		"Sunday June 4, 2023\nLeft 5:10, home late\n" + table: "table [time,species,outcome,length] 5=9:10 6=10:20",
		"Sunday June 4, 2023\nStart: 7:15\nEnd: 9:40\n" + table: "" +
			"table [time,species,outcome,length] 6=9:10 7=10:20; form [Start,End] 2=7:15",
	} {
		g, err := Read(memory.Book{memory.Lines("log", text)}, 0, 1000)
		if err != nil {
			t.Fatal(err)
		}
		g.Info.Workbook = true
		if got := shown(Take(g, like)); got != want {
			t.Errorf("%q\n  read %s\n  want %s", text, got, want)
		}
	}
}

// TestLastRowIsNoHeading holds that a last row of words that may be headings is one of the table right above it, and a
// heading where something stands below it.
func TestLastRowIsNoHeading(t *testing.T) {
	const log = "Date|Lines|Speed|Notes\n6/5|4|7|calm\n\n|Species|Outcome|Lure\n|YT|kept|plug\n%|length|bites|rod"
	for text, want := range map[string]int{strings.Replace(log, "%", "", 1): 0,
		strings.Replace(log, "%", "\n", 1) + "\n|40|2|1\n|44|1|2": 1} {
		n := 0
		for _, b := range take(t, text).Blocks {
			for _, l := range b.Labels {
				if l.Text == "length" {
					n++
				}
			}
		}
		if n != want {
			t.Errorf("%s\n%d headings of the last words, expected %d", text, n, want)
		}
	}
}

// TestExplainedAtTheFoot holds that a row of codes at the foot of a table is no row of it.
func TestExplainedAtTheFoot(t *testing.T) {
	const rows = "date|time|what|notes\n2025-05-03|08:00|g|\n2025-05-03|09:00|a|calm\n2025-05-03|12:00|s|\n"
	g, err := Read(memory.Book{memory.Lines("log", rows+"|||g=lines in a=bite s=all up / 1=missed 2=kept")}, 0, 1000)
	if err != nil {
		t.Fatal(err)
	}
	g.Info.Workbook = false
	s := Take(g, like)
	if len(s.Blocks) != 1 || len(s.Blocks[0].Rows) != 3 || len(s.Notes) != 1 {
		t.Errorf("%s, %v", shown(s), s.Notes)
	}
}
