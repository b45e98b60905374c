package normalise

import (
	"strings"
	"testing"

	"wakeledger/pipeline/meaning"
	"wakeledger/pipeline/plan"
	"wakeledger/pipeline/record"
	"wakeledger/pipeline/sheet"
	"wakeledger/testdata/memory"
)

func TestRowsThatArePassedOver(t *testing.T) {
	const head = "Date|Start|End|Rods|Area|Notes"
	for _, c := range []struct {
		row  string
		want Skip
	}{
		{"|||||", Blank}, {"", Blank}, {" | |", Blank}, {head, Header}, {"DATE|start|End||area|", Header},
		// a word alone where a number stands
		{"Totals|||9||", Totals}, {"|Total||9||", Totals}, {"Total hours|||9||", Totals}, {"|||Sum||", Comment},
		{"# lost a rod", Comment}, {"# lost a rod|and|a reel", Comment}, {"// no", Comment},
		{"went home for ice|||||", Comment}, {"|||||and the hook was bent", Comment},
		// a day with nothing of effort or strikes was none out
		{"2026-06-03|06:00|08:00|4||", NotASkip}, {"2026-06-03|06:00|08:00|4|Total|", NotASkip},
		{"2026-06-03|06:00|08:00|4||Total bust", NotASkip}, {"2026-06-03|||||", NotGone},
		{"#N/A|06:00|08:00|4||", NotASkip}, {"|06:00||||", NotASkip}, {"soon|||||", Comment},
	} {
		got := log{text: under(head, "2026-06-02|06:00|08:00|4||", c.row)}.last(t)
		if got.skip != c.want {
			t.Errorf("%q is passed over as %q, expected %q: %v", c.row, got.skip, c.want, got.problems)
		}
		if c.want == NotASkip && len(got.values) == 0 && len(got.problems) == 0 {
			t.Errorf("%q is lost", c.row)
		}
	}
}

// TestNamesThatLookLikeNotes holds that a lone name is kept where it can be one.
func TestNamesThatLookLikeNotes(t *testing.T) {
	for _, c := range []struct{ text, column string }{
		{"Date|Species|Length (cm)\n2026-06-03|Wahoo|120\n|Yellowfin tuna|", "species_logged"},
		{"Trip|Date|Captain\nA|2026-06-03|Ansa\nThe long one||", "trip"},
	} {
		if got := (log{text: c.text}).read(t)[1]; got.values[c.column] == "" {
			t.Errorf("%q: %v", c.text, got)
		}
	}
	note := log{text: "Trip|Date|Captain\nA|2026-06-03|Ansa\nAsk the yard about the shaft||"}.read(t)[1]
	if note.skip != Comment {
		t.Errorf("a sentence below the trips: %v", note)
	}
}

func TestNumberedRows(t *testing.T) {
	numbered := log{text: "Trip|Date|Start|End\n#1|2026-06-03|06:00|08:00\n#2|2026-06-04|06:00|08:00"}.read(t)
	if numbered[0].values["trip"] != "#1" || numbered[1].values["trip"] != "#2" {
		t.Errorf("%v", numbered)
	}
	commented := log{
		text: "# trips by number\nTrip|Date|Start|End\n1|2026-06-03|06:00|08:00\n#2|2026-06-04|06:00|08:00\n" +
			"3|2026-06-05|06:00|08:00\n4|2026-06-06|06:00|08:00"}.read(t)
	if commented[1].skip != Comment || commented[2].values["trip"] != "3" {
		t.Errorf("%v", commented)
	}
}

// TestWhatARowNeeds holds what each kind of row cannot do without.
func TestWhatARowNeeds(t *testing.T) {
	for _, c := range []struct{ text, reason string }{
		{"Date|Start|End|Rods\n2026-06-03|||4", "a leg needs"},
		{"Date|Start|End|Line|Lure\n2026-06-03|||1|Cope", "what struck"},
		{"Trip|Line|Lure|Notes|Drag (lb)\n1||||", "a line needs"},
		{"Captain|Port|Date|Depart\nAnsa|Hollin Quay||", "a trip needs"},
		{"Trip|Date|Time|Outcome|Notes|Angler\n||||x|Ansa", "a strike needs"},
		{"Date|Species|Length (cm)|Angler\n2026-06-03|||Ansa", "a fish needs"},
	} {
		got := log{text: c.text}.read(t)[0]
		if len(got.problems) != 1 || !strings.Contains(got.problems[0].Reason, c.reason) ||
			got.problems[0].Pos.Col != 0 {
			t.Errorf("%q: %v, expected %q", c.text, got, c.reason)
		}
	}
}

// TestFaultsKnowTheirPlace holds that each bad cell of a row is told by file,
// sheet, row, column, heading and text.
func TestFaultsKnowTheirPlace(t *testing.T) {
	got := log{text: "Legs of June\n" + under("Date|Start|End|Speed (kn)", "2026-06-03|06:00|08:00|12",
		"2026-06-03|06:00|08:00|fast\n2026-06-03|six|08:00|99"), name: "June"}.read(t)[8:]
	for i, want := range [][]record.Problem{
		{{Pos: record.Pos{File: "log", Sheet: "June", Row: 11, Col: 4}, Column: "Speed (kn)", Cell: "fast"}},
		// without a start it is no leg, whatever its speed
		{{Pos: record.Pos{File: "log", Sheet: "June", Row: 12, Col: 2}, Column: "Start", Cell: "six", Whole: true}},
	} {
		if len(got[i].problems) != len(want) {
			t.Fatalf("row %d: %v", i, got[i].problems)
		}
		for j, p := range got[i].problems {
			if p.Reason == "" {
				t.Errorf("%v: no reason", p)
			}
			p.Reason = ""
			if p != want[j] {
				t.Errorf("got %+v, expected %+v", p, want[j])
			}
		}
	}
}

// TestFilledDown holds what stands for blank cells: the corner of a merged area
// in key columns only, and what is written once for the rows under it.
func TestFilledDown(t *testing.T) {
	merged := log{text: "Trip|Date|Start|End|Line|Strikes\n1|2026-06-03|06:00|08:00|1|2\n||||2|",
		merged: map[int]map[int]string{2: {0: "1", 1: "2026-06-03", 2: "06:00", 3: "08:00", 5: "2"}}}.read(t)[1].values
	if merged["trip"] != "1" || merged["date"] != "2026-06-03" || merged["start_s"] != "21600" ||
		merged["end_s"] != "28800" || merged["strikes_n"] != "" {
		t.Errorf("merged: %v", merged)
	}
	once := log{
		text: "Trip|Date|Start|End|Speed\n1|2026-06-03|06:00|08:00|8\n||08:10|09:00|\n2||06:00|07:00|9\n" +
			"||07:10|08:00|9"}.read(t)
	if v := once[1].values; v["trip"] != "1" || v["date"] != "2026-06-03" || v["speed_kn"] != "" {
		t.Errorf("written once: %v", v)
	}
	if v := once[2].values; v["trip"] != "2" || v["date"] != "" {
		t.Errorf("a new trip took the old one's date: %v", v)
	}
	repeated := log{text: "Date|Start|End\n2026-06-03|06:00|08:00\n2026-06-03|08:10|09:00\n|09:10|10:00"}.read(t)
	if v := repeated[2].values; v["date"] != "2026-06-03" { // TestLeftOut holds that it is told
		t.Errorf("a date forgotten: %v", v)
	}
	given := log{text: "Boat: Sorrel\nDate|2026-06-03\nStart|End|Lines\n06:00|08:00|4"}.read(t)[0].values
	if given["boat"] != "Sorrel" || given["date"] != "2026-06-03" {
		t.Errorf("above the table: %v", given)
	}
}

// TestBitesOfHands holds that a second stretch of a trip that is written once is of its day, that a bite whose stretch
// has no speed takes that of its remark, and that one cell tells a length and a girth.
func TestBitesOfHands(t *testing.T) {
	got := log{text: "Charter|Day|In|Up|Rods|Knots|Bite at|Fish|Length (cm)|Fate|Remarks\n" +
		"7|2026-07-04|06:00|09:00|5|8|07:10|Wahoo|130x62|kept|\n||||||07:40|Dorado|90|lost|\n" +
		"||09:30|11:00|5||10:00|Wahoo|110x4|kept|we ran at 7 kn\n8|2026-07-04|12:00|14:00|5|8||||none|\n" +
		"9|2026-07-05|06:00|09:00|5|8|07:00|Dorado|88|lost|\n||||||08:00|Dorado|80|kept|wind 15 kn\n" +
		"10|2026-07-06|06:00|09:00|5|8|07:00|Dorado|85|kept|"}.read(t)
	if v := got[0].values; v["length_cm"] != "130" || v["girth_cm"] != "62" || v["strike_speed_kn"] != "" {
		t.Errorf("length and girth: %v", v)
	}
	if v := got[2].values; v["date"] != "2026-07-04" || v["strike_speed_kn"] != "7" || v["girth_cm"] != "" {
		t.Errorf("a second stretch: %v, aside %v", v, got[2].problems)
	}
	if v := got[5].values; v["strike_speed_kn"] != "" {
		t.Errorf("the wind's speed: %v", v)
	}
}

// FuzzRow reads rows of any text: no panic, and each is an entry, passed over or
// set aside with a reason.
func FuzzRow(f *testing.F) {
	f.Add("Date|Start|End|Position|Line|Strikes|Weight\n2026-06-03|06:00|25:00|32N 127W|\"|y|6'2\"", false)
	f.Add("# x\nBoat: a\nDate|Species|Length|SST|Kept\n03/04/2026|ahi|74|1,234|✓\n#1|''|~|N|", true)
	f.Add("Trip|Lines||Lon W\n|In|Out|\n1|0.25|46000.5|S", true)
	f.Fuzz(func(t *testing.T, text string, workbook bool) {
		s := memory.Lines("x", text)
		s.Info.Workbook = workbook
		x, err := Take("log", memory.Book{s}, 1000)
		if err != nil {
			t.Fatal(err)
		}
		for _, u := range x.Log.Data() {
			fuzzed(t, x, u, s.All)
		}
	})
}

func fuzzed(t *testing.T, x Taken, u *meaning.Understood, rows []sheet.Row) {
	t.Helper()
	r, err := x.Reader(u, Settings{})
	if err != nil {
		t.Fatal(err)
	}
	for i := range rows {
		values, skip, problems := r.Row(&rows[i])
		outcomes := 0
		for _, is := range []bool{len(values) > 0, skip != NotASkip, len(values) == 0 && len(problems) > 0,
			len(values) == 0 && len(r.Sides()) > 0 && len(problems) == 0} {
			if is {
				outcomes++
			}
		}
		event := u.Plan.Kind == plan.Events // whose rows may change the stretch that is open, and tell nothing else
		if outcomes != 1 && !(event && outcomes == 0) || len(values) > 0 && len(values) != len(r.Fields()) {
			t.Errorf("%q: values %v, passed over %q, problems %v", rows[i].Cells, values, skip, problems)
		}
		for _, p := range problems {
			if p.Reason == "" || p.Pos.Row != i+1 {
				t.Errorf("%q: problem %+v", rows[i].Cells, p)
			}
		}
	}
}
