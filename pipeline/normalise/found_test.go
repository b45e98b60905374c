package normalise_test

import (
	"maps"
	"os"
	"path/filepath"
	"reflect"
	"slices"
	"strconv"
	"strings"
	"testing"

	"wakeledger/pipeline/entry"
	"wakeledger/pipeline/normalise"
	"wakeledger/pipeline/plan"
	"wakeledger/pipeline/record"
	"wakeledger/pipeline/sheet"
	"wakeledger/pipeline/unit"
)

// place is an entry's place in its log. part is 0 for a row's own entry, and counts
// the lines that it describes beside it.
type place struct{ row, part int64 }

type cells map[string]any

type reading struct {
	entries  map[place]cells
	problems []record.Problem
	doubts   []record.Problem
	sides    []normalise.Side // entries beside those of the rows
}

// readText reads the rows of a text log's blocks.
func readText(t *testing.T, name, text string) reading {
	t.Helper()
	path := filepath.Join(t.TempDir(), name)
	if err := os.WriteFile(path, []byte(text), 0o600); err != nil {
		t.Fatal(err)
	}
	book, err := sheet.Open(path, sheet.Options{})
	if err != nil {
		t.Fatal(err)
	}
	defer book.Close()
	x, err := normalise.Take(name, book, 1000)
	if err != nil {
		t.Fatal(err)
	}
	got := reading{entries: map[place]cells{}}
	for _, u := range x.Log.Data() {
		r, err := x.Reader(u, normalise.Settings{})
		if err != nil {
			t.Fatal(err)
		}
		for _, row := range u.Block.Rows {
			got.row(r, normalise.RowOf(row))
		}
	}
	return got
}

func (g *reading) row(r *normalise.Reader, row *sheet.Row) {
	values, _, problems := r.Row(row)
	g.problems = append(g.problems, problems...)
	for _, s := range r.Sides() {
		s.Values = maps.Clone(s.Values)
		g.sides = append(g.sides, s)
	}
	if values == nil {
		return
	}
	g.doubts = append(g.doubts, r.Doubts()...)
	at := place{values[0].Int, 0}
	g.entries[at] = asCells(r.Fields(), values)
	for values, ok := r.Line(); ok; values, ok = r.Line() {
		at.part++
		line := asCells(r.Fields(), values)
		delete(line, "part") // a name for the line, which a place that is blank makes no less
		g.entries[at] = line
	}
}

func asCells(fields []entry.Field, values []entry.Value) cells {
	c := cells{}
	for i, f := range fields[1:] {
		v := values[i+1]
		if !v.Known {
			continue
		}
		switch f.Type {
		case entry.Text:
			c[f.Name] = v.Text
		case entry.Real:
			c[f.Name] = v.Real
		case entry.Day:
			c[f.Name] = unit.Date(v.Int).String()
		case entry.Flag:
			c[f.Name] = strconv.FormatBool(v.Int == 1)
		default:
			c[f.Name] = v.Int
		}
	}
	return c
}

// beside gives one field of the entries of a kind beside those of the rows, in order, where they have it.
func (g reading) beside(kinds []plan.Kind, name string) (values []any) {
	for _, s := range g.sides {
		if v := s.Values[name]; v.Known && slices.Contains(kinds, s.Kind) {
			values = append(values, v.Int)
		}
	}
	return values
}

// field gives one field of each row of a text log, in order.
func (g reading) field(name string, rows ...int64) (values []any) {
	for _, row := range rows {
		values = append(values, g.entries[place{row: row}][name])
	}
	return values
}

func expect(t *testing.T, what string, got []any, want ...any) {
	t.Helper()
	if !reflect.DeepEqual(got, want) {
		t.Errorf("%s: %v, expected %v", what, got, want)
	}
}

// A speed with two ends near each other is their middle, each time with a word; far
// apart it is none, and what is no range stays a problem.
func TestSpeedBetween(t *testing.T) {
	got := readText(t, "log.csv",
		"Date,In,Out,Speed (kn)\n2026-07-04,06:00,08:00,8\n2026-07-05,06:00,08:00,7-8\n2026-07-06,06:00,08:00,7-8\n"+
			"2026-07-07,06:00,08:00,6.5 to "+
			"7\n2026-07-08,06:00,08:00,6-12\n2026-07-09,06:00,08:00,8-7\n2026-07-10,06:00,08:00,39-41\n")
	expect(t, "speed", got.field("speed_kn", 2, 3, 4, 5, 6), 8.0, 7.5, 7.5, 6.75, nil)
	var doubtful []int
	for _, d := range got.doubts {
		doubtful = append(doubtful, d.Pos.Row)
	}
	if !reflect.DeepEqual(doubtful, []int{3, 4, 5, 6}) {
		t.Errorf("doubts %v: expected one each for rows 3 to 6", got.doubts)
	}
	if len(got.problems) != 2 || len(got.entries) != 7 { // the stretch stays, without its speed
		t.Errorf("%d entries, set aside %v: expected 7, and the speeds of rows 7 and 8", len(got.entries), got.problems)
	}
	expect(t, "what is no range", got.field("speed_kn", 7, 8), nil, nil)
	slashed := readText(t, "log.csv", "Date,In,Out,Speed (kn)\n2026-07-04,06:00,08:00,8\n2026-07-05,06:00,08:00,7/8\n"+
		"2026-07-06,06:00,08:00,6.5/7\n2026-07-07,06:00,08:00,8/13\n2026-07-08,06:00,08:00,8/7\n"+
		"2026-07-09,06:00,08:00,8\n2026-07-10,06:00,08:00,6 / 7\n2026-07-11,06:00,08:00,8\n2026-07-12,06:00,08:00,7\n")
	expect(t, "with a slash", slashed.field("speed_kn", 3, 4, 5, 6, 8), 7.5, 6.75, nil, nil, nil)
	if len(slashed.doubts) != 2 || len(slashed.problems) != 3 {
		t.Errorf("told %v, set aside %v: expected two and three", slashed.doubts, slashed.problems)
	}
	expect(t, "its stretch", got.field("end_s", 7, 8), int64(28800), int64(28800))
}

// A column for each place in the spread makes a line of each lure; the row's effort
// and what it counts stand once, in its own entry.
func TestSpread(t *testing.T) {
	got := readText(t, "log.csv", "Date,In,Out,Kts,Port long,Stbd "+
		"short,Shotgun,Bites\n2026-07-04,06:00,08:00,8,Blue tube,Black jet,,2\n2026-07-05,06:00,08:00,8,'',Green "+
		"jet,Bird,0\n2026-07-06,06:00,08:00,8,,-,,1\n")
	own := []any{}
	for row := int64(2); row <= 4; row++ {
		e := got.entries[place{row: row}]
		own = append(own, e["lines_out"], e["strikes_n"], e["line"], e["extra"])
	}
	expect(t, "rows", own, int64(2), int64(2), nil, nil, int64(3), int64(0), nil, nil, nil, int64(1), nil, nil)
	var lines []string
	for row := int64(2); row <= 4; row++ {
		for part := int64(1); part <= 3; part++ {
			e, ok := got.entries[place{row: row, part: part}]
			if !ok {
				continue
			}
			lines = append(lines, e["line"].(string)+"="+e["lure"].(string))
			if e["start_s"] != int64(21600) || e["end_s"] != int64(28800) || e["strikes_n"] != nil ||
				e["speed_kn"] != nil || e["lines_out"] != nil {
				t.Errorf("row %d part %d is %v: expected its effort alone beside its line", row, part, e)
			}
		}
	}
	if s := strings.Join(lines, "; "); s != "Port long=Blue tube; Stbd short=Black jet; Port long=Blue tube; Stbd "+
		"short=Green jet; Shotgun=Bird" {
		t.Errorf("lines: %s", s)
	}
}

// What became of a fish is taken from its notes where a clause says just that.
func TestNoted(t *testing.T) {
	got := readText(t, "log.csv", "Date,Time,Fish,Length cm,Notes\n2026-07-04,06:40,Wahoo,120,\"released, 25 "+
		"min\"\n2026-07-04,07:40,Wahoo,121,on ice\n2026-07-04,08:40,Wahoo,122,\"nearly lost, a kept promise\"\n"+
		"2026-07-04,09:40,Wahoo,123,\"kept, released\"\n2026-07-04,10:40,Wahoo,124,not released\n")
	expect(t, "outcome", got.field("outcome", 2, 3, 4, 5, 6), "released", "landed", nil, nil, nil)
}

// Where the sheet says what became of its fish, or counts them, the notes do not.
func TestNotedBeside(t *testing.T) {
	got := readText(t, "log.csv", "Date,Time,Fish,Length "+
		"cm,Kept,Notes\n2026-07-04,06:40,Wahoo,120,yes,released\n2026-07-04,06:50,Wahoo,120,no,x\n")
	expect(t, "outcome", got.field("outcome", 2, 3), nil, nil)
}

// A second fish of a day, written with the day and hours left out, is of the row above;
// a date alone that is missing is taken from there too, which is told.
func TestLeftOut(t *testing.T) {
	head := "Date,Boat,From,To,Species,Scale kg\n2026-07-04,Wren,09:00,17:00,Wahoo,18\n"
	rest := "2026-07-06,Wren,09:10,17:00,,\n2026-07-08,Wren,09:20,17:00,Wahoo,15\n" +
		"2026-07-09,Wren,09:20,17:00,Wahoo,15\n2026-07-10,Wren,09:20,17:00,,\n"
	got := readText(t, "log.csv", head+",,,,Wahoo,21\n"+rest)
	expect(t, "second fish", []any{got.entries[place{row: 3}]["date"], got.entries[place{row: 3}]["start_s"]},
		"2026-07-04", int64(32400))
	got = readText(t, "log.csv", head+",Wren,09:30,17:00,Wahoo,21\n"+rest)
	expect(t, "a day forgotten", got.field("date", 3), any("2026-07-04"))
	if len(got.doubts) != 1 || got.doubts[0].Pos.Row != 3 || !strings.Contains(got.doubts[0].Reason, "2026-07-04") {
		t.Errorf("doubts %v: expected one, of the day that was taken from above", got.doubts)
	}
}

// Fish counted by species were landed where the sheet says so, or counts those that
// got away; where noughts are written a blank is not known.
func TestCaught(t *testing.T) {
	row := "2026-07-04,06:00,08:00,"
	for _, c := range []struct {
		what, head, cells, field string
		want                     []any
	}{
		{"nothing said", "Albies,YFT", "3,0;,;1,2", "hooked_n", []any{int64(3), nil, int64(3)}},
		{"missed beside", "Albies,YFT,Missed", "3,0,1;,,1;1,2,0", "landed_n", []any{int64(3), nil, int64(3)}},
		{"no noughts", "Albies,YFT,Lost", "3,,1;,,1;,2,", "landed_n", []any{int64(3), int64(0), int64(2)}},
	} {
		text := "Date,In,Out," + c.head + "\n"
		for _, cells := range strings.Split(c.cells, ";") {
			text += row + cells + "\n"
		}
		expect(t, c.what, readText(t, "log.csv", text).field(c.field, 2, 3, 4), c.want...)
	}
	lost := readText(t, "log.csv", "Date,In,Out,Lines,Pulled,Broke off,YFT\n"+row+
		"4,1,,2\n"+row+"4,1,2,\n"+row+"4,,,1\n"+
		row+"4,,1,1\n")
	expect(t, "lost in two ways", lost.field("lost_n", 2, 3, 4, 5), int64(1), int64(3), nil, int64(1))
	got := readText(t, "log.csv", "Fish caught\nDate,In,Out,Albies,YFT\n"+row+"3,0\n")
	expect(t, "a title", got.field("landed_n", 3), int64(3))
}

// TestLiveBait holds that what a live bait took is a bite of the stretch that its row names, and none where the row
// names no stretch.
func TestLiveBait(t *testing.T) {
	got := readText(t, "log.csv", "Date,Leg,Fish,Result,Lure\n2026-07-04,1,wahoo,landed,live mackerel\n"+
		"2026-07-04,2,tuna,landed,blue feather\n2026-07-05,1,wahoo,lost,pink squid\n")
	expect(t, "bites of stretches", got.field("species_logged", 2, 3, 4), "wahoo", "tuna", "wahoo")
	got = readText(t, "log.csv", "Date,Fish,Result,Lure\n2026-07-04,kingfish,landed,livey\n"+
		"2026-07-04,tuna,landed,blue feather\n2026-07-05,wahoo,lost,pink squid\n")
	expect(t, "bites", got.field("species_logged", 2, 3, 4), nil, "tuna", "wahoo")
}

// Days that are no dates name the trip: its hours stay, and no date is made up.
func TestDayNoDate(t *testing.T) {
	got := readText(t, "log.csv", "Day,In,Out,Speed\n3rd of the month,06:00,08:00,8\n4th,06:00,08:00,8\n")
	expect(t, "trips", got.field("trip", 2, 3), "3rd of the month", "4th")
	expect(t, "dates", got.field("date", 2, 3), nil, nil)
}

// TestFigures holds that cells of several counts are read as the log says they are written, one figure
// alone too, and that all of a kind let go are as many as were boated.
func TestFigures(t *testing.T) {
	const said = "species columns: strikes/hooked/landed. A single number = all of them " +
		"landed\n\nDate,In,Out,Rods,Mahi,Wahoo,Let go\n"
	const rows = "2026-07-04,06:00,08:00,4,3/2/2,,1 mahi\n2026-07-05,06:00,08:00,4,2,2/1/0,all the " +
		"mahi\n2026-07-06,06:00,08:00,4,,4/2/1,wahoo\n"
	got := readText(t, "log.csv", said+rows)
	expect(t, "strikes", got.field("strikes_n", 4, 5, 6), int64(3), int64(4), int64(4))
	expect(t, "hooked", got.field("hooked_n", 4, 5, 6), int64(2), int64(3), int64(2))
	expect(t, "landed and kept, as more were landed than that", got.field("landed_n", 4, 5, 6), int64(1), int64(0),
		int64(0))
	expect(t, "let go", got.field("released_n", 4, 5, 6), int64(1), int64(2), int64(1))

	odd := readText(t, "log.csv", said+strings.Replace(rows, "4/2/1", "1/2/1", 1)) // more hooked than struck
	expect(t, "an odd cell", odd.field("strikes_n", 4, 6), int64(3), nil)
	alone := readText(t, "log.csv", strings.Replace(said, ". A single number = all of them landed", "", 1)+rows)
	expect(t, "a figure alone that nobody explains", alone.field("strikes_n", 4, 5), int64(3), nil)
	unsaid := readText(t, "log.csv", strings.TrimPrefix(said, "species columns: strikes/hooked/landed. ")+rows)
	expect(t, "figures that nobody explains", unsaid.field("strikes_n", 4, 5, 6), nil, nil, nil)
}

// TestAfternoons holds that ends before their starts are of the afternoon where most are, and of the
// next night where few are.
func TestAfternoons(t *testing.T) {
	const head = "Date,In,Up,Rods,Knots\n"
	const h = int64(3600)
	rows := "2026-07-04,06:00:00,01:00:00,4,7\n2026-07-05,06:30:00,02:00:00,4,7\n2026-07-06,07:00:00,11:00:00,4,7\n" +
		"2026-07-07,06:00:00,03:00:00,4,7\n2026-07-08,05:40:00,01:20:00,4,7\n"
	got := readText(t, "log.csv", head+rows)
	expect(t, "most", got.field("end_s", 2, 4, 6), 13*h, 11*h, 13*h+1200)
	night := readText(t, "log.csv", head+rows+"2026-07-09,19:00:00,02:00:00,4,7\n")
	expect(t, "a night among them", night.field("end_s", 2, 7), 25*h, 26*h)
	few := readText(t, "log.csv", head+strings.ReplaceAll(strings.ReplaceAll(rows, "02:00:00", "12:00:00"), "03:00:00",
		"13:00:00"))
	expect(t, "few", few.field("end_s", 2, 3), 25*h, 12*h)
}

// TestNeverPastOne holds that ends before their starts are of the afternoon where no clock of a long log is past one,
// with starts of the small hours, and of the next day where one is.
func TestNeverPastOne(t *testing.T) {
	const h = int64(3600)
	rows := "Date,In,Up,Rods,Knots\n2026-07-04,6:00,1:00,4,7\n2026-07-05,6:30,9:00,4,7\n2026-07-06,7:00,11:00,4,7\n" +
		"2026-07-07,10:00,1:40,4,7\n2026-07-08,5:40,10:20,4,7\n2026-07-09,1:20,4:10,4,7\n2026-07-10,6:00,1:30,4,7\n" +
		"2026-07-11,6:10,1:15,4,7\n2026-07-12,6:10,11:15,4,7\n2026-07-13,6:10,12:15,4,7\n"
	got := readText(t, "log.csv", rows)
	expect(t, "none past one", got.field("end_s", 2, 3, 5), 13*h, 9*h, 13*h+2400)
	expect(t, "a start of the afternoon", got.field("start_s", 2, 7), 6*h, 13*h+1200)
	one := readText(t, "log.csv", rows+"2026-07-14,12:30,16:15,4,7\n")
	expect(t, "one past one", one.field("end_s", 2, 3), 25*h, 9*h)
}

// TestAfternoonColumns holds that clock times of columns of the afternoon are of it, as their heading says or as most
// second stretches would else be before the first, and that what is near noon, or by a clock of 24 hours, stays.
func TestAfternoonColumns(t *testing.T) {
	const h = int64(3600)
	legs := []plan.Kind{plan.Legs, plan.Flat}
	headed := readText(t, "log.csv", "Date,Morning lines in,Morning lines up,Afternoon lines in,Afternoon lines up\n"+
		"2026-07-04,6:00,9:30,1:15,4:45\n2026-07-05,6:10,10:00,12:20,2:10\n2026-07-06,6:00,9:00,11:30,3:00\n"+
		"2026-07-07,5:50,9:15,1:30,4:00\n")
	expect(t, "in, by the heading", headed.beside(legs, "start_s"), 13*h+900, 12*h+1200, 11*h+1800, 13*h+1800)
	expect(t, "up, by the heading", headed.beside(legs, "end_s"), 16*h+2700, 14*h+600, 15*h, 16*h)
	whole := readText(t, "log.csv", "Date,AM in,AM up,PM in,PM up\n2026-07-04,6:00,9:30,13:15,16:45\n"+
		"2026-07-05,6:10,10:00,12:20,14:10\n2026-07-06,6:00,9:00,22:30,23:30\n2026-07-07,5:50,9:15,1:30,16:00\n")
	expect(t, "by a clock of 24 hours", whole.beside(legs, "start_s"), 13*h+900, 12*h+1200, 22*h+1800, h+1800)
	const head = "Date,Lines in,Lines up,Knots,Lines in,Lines up,Knots\n"
	plain := readText(t, "log.csv", head+"2026-07-04,6:00,9:30,7,1:15,4:45,6\n2026-07-05,6:10,10:00,7,12:20,2:10,6\n"+
		"2026-07-06,6:00,9:00,7,2:30,3:00,6\n2026-07-07,5:50,9:15,7,1:30,4:00,6\n")
	expect(t, "second", plain.beside(legs, "start_s"), 13*h+900, 12*h+1200, 14*h+1800, 13*h+1800)
	expect(t, "its end", plain.beside(legs, "end_s"), 16*h+2700, 14*h+600, 15*h, 16*h)
}

// TestFishOfEachStretch holds that fish listed for each of a row's stretches are others, though they are of one kind.
func TestFishOfEachStretch(t *testing.T) {
	const head = "Date,AM in,AM up,AM bites,AM fish,PM in,PM up,PM bites,PM fish\n"
	got := readText(t, "log.csv", head+"2026-07-04,6:00,9:30,2,wahoo released,1:15,4:45,1,wahoo 52 in\n"+
		"2026-07-05,6:10,10:00,2,mahi,1:20,2:10,3,\"mahi 30 in, mahi 33 in\"\n"+
		"2026-07-06,6:00,9:00,2,\"skipjack, mahi 27 in 6 lb\",1:30,3:00,0,none\n"+
		"2026-07-07,6:00,9:00,3,\"wahoo 41 in, 2 mahi\",1:30,3:00,1,mahi 22 in\n")
	fish := 0
	for _, s := range got.sides {
		if s.Kind == plan.Fish {
			fish++
		}
	}
	if fish != 11 {
		t.Errorf("%d fish, expected 11: %v", fish, got.sides)
	}
}

// TestOthersAboard holds that fish named under a heading of others are counted with those of the columns of
// species, and let go where their words say so.
func TestOthersAboard(t *testing.T) {
	got := readText(t, "log.csv", "Fecha,Largado,Recogido,Picadas,Fallos,Bonitos a bordo,Otros a "+
		"bordo\n2026-07-04,06:00,08:00,5,1,4,\n2026-07-05,06:00,08:00,4,1,1,2 listados\n"+
		"2026-07-06,06:00,08:00,2,,1,1 dorado\n2026-07-07,06:00,08:00,3,,3,\n")
	expect(t, "boated", got.field("landed_n", 2, 3, 4, 5), int64(4), int64(3), int64(2), int64(3))
	other := readText(t, "log.csv",
		"Date,In,Up,Bites,Albies,Tuna,Other\n2026-07-04,06:00,08:00,2,2,0,\n2026-07-05,06:00,08:00,1,0,1,tuna let "+
			"go\n2026-07-06,06:00,08:00,3,2,1,1 wahoo\n")
	expect(t, "a heading that says of no fate", other.field("strikes_n", 2, 3, 4), int64(2), int64(1), int64(3))
	expect(t, "and its fish", other.field("landed_n", 2, 3, 4), int64(2), int64(1), int64(3))
}

// TestStopAmongStretches holds that a day of two stretches is trolled though its words tell of a stop on
// live bait too, whose fish is none of the troll's.
func TestStopAmongStretches(t *testing.T) {
	const diary = "Fri Jun 5 2026. Lines in 6:00, four lines, 7 kt. One wahoo 7:10, boated. Lines up 9:00 and we " +
		"soaked live bait till 10:30.\nLines in 11:00, four lines, 8 kt, up 13:00. Nothing more.\n\n" +
		"Sun Jun 7 2026. Lines in 6:30, five lines, 8 kt. One mahi 8:10, boated, 12 lb. Lines up 11:00.\n\nTue Jun " +
		"9 2026. At anchor on live bait all day, no trolling. Four snapper, all kept for supper.\n"
	got := readText(t, "diary.txt", diary)
	for row, want := range map[int64]bool{1: true, 4: true, 6: false} {
		if _, read := got.entries[place{row: row}]; read != want {
			t.Errorf("the day of line %d: read %v, expected %v", row, read, want)
		}
	}
}

// Of a fish that is named with its length, both are kept; what says "the same" of lines is as above.
func TestNamedWithItsLength(t *testing.T) {
	got := readText(t, "log.csv", "Date,In,Out,Lines,Mahi,Wahoo,Lost,Longest (cm)\n2026-07-04,06:00,08:00,"+
		"4,2,1,0,Wahoo 121\n"+
		"2026-07-05,06:00,08:00,id.,1,1,1,Mahi-mahi 88.5 cm\n2026-07-06,06:00,08:00,idem,,2,1,Wahoo\n"+
		"2026-07-07,06:00,08:00,5,1,,1,"+
		"Mahi 74\n")
	expect(t, "length", got.field("length_cm", 2, 3, 4, 5), 121.0, 88.5, nil, 74.0)
	expect(t, "species", got.field("species_logged", 2, 3, 4), "Wahoo", "Mahi-mahi", "Wahoo")
	expect(t, "lines", got.field("lines_out", 2, 3, 4, 5), int64(4), int64(4), int64(4), int64(5))
}

// A trip of several days in one cell is of the first of them, with a doubt.
func TestFirstOfSomeDays(t *testing.T) {
	got := readText(t, "log.csv", "Date,In,Out,Speed\n2026-07-04,06:00,08:00,8\n2026-07-05,06:00,08:00,8\n"+
		"2026-07-06,06:00,08:00,8\n7/13-14/26,06:00,08:00,8\n2026-07-18/19,06:00,08:00,8\n")
	expect(t, "dates", got.field("date", 2, 5, 6), "2026-07-04", "2026-07-13", "2026-07-18")
	if len(got.doubts) != 2 {
		t.Errorf("doubts %v", got.doubts)
	}
}

// A clock time behind the name of a weekday is of the row's day or of the next of that name; one that comes too late
// is set aside.
func TestWeekdayBeforeClock(t *testing.T) {
	got := readText(t, "log.csv", "Date,Time,Fish,Outcome\n2026-07-04,Sat 5:40 pm,Wahoo,landed\n"+
		"2026-07-04,Sunday 6:15 am,Wahoo,lost\n2026-07-04,Fri 6:15 am,Wahoo,lost\n")
	expect(t, "time_s", got.field("time_s", 2, 3, 4), int64(17*3600+40*60), int64((24+6)*3600+15*60), nil)
}

// Stretches told in words of an evening and of the next morning are of two days.
func TestStretchesOfNextMorning(t *testing.T) {
	got := readText(t, "log.csv", "Date,Times trolled,Fish\n"+
		"2026-07-04,\"Lines in 5:30 pm, out 7:10 pm, 4 rods, 7 knots. "+
		"The following morning: lines in 6:40 am, out 9:00 am.\",wahoo\n"+
		"2026-07-11,\"Lines in 6:30 am, out 9:10 am, 4 rods, 7 knots. Again: lines in 1:40 pm, out 3:00 pm.\",\n"+
		"2026-07-18,\"Lines in 6:30 am, out 9:10 am, 4 rods, 7 knots. Again: lines in 1:40 pm, out 3:00 pm.\",wahoo\n")
	var starts []any
	for _, p := range got.sides {
		if v := p.Values["start_s"]; v.Known {
			starts = append(starts, v.Int/60)
		}
	}
	expect(t, "starts", starts, int64(1050), int64(1440+400), int64(390), int64(820), int64(390), int64(820))
}

// TestSomeBites holds that a question mark under bites is no nought: it is set aside, to be asked about, and a dash is
// not.
func TestSomeBites(t *testing.T) {
	got := readText(t, "log.csv", "Date,In,Out,Lines,Knots,Bites\n2026-07-04,06:00,08:00,4,8,2\n"+
		"2026-07-05,06:00,08:00,4,8,?\n2026-07-06,06:00,08:00,4,8,-\n2026-07-07,06:00,08:00,4,8,1\n")
	expect(t, "bites", got.field("strikes_n", 2, 3, 4, 5), int64(2), nil, nil, int64(1))
	if len(got.problems) != 1 || got.problems[0].Pos.Row != 3 {
		t.Errorf("set aside: %v", got.problems)
	}
}

// TestPauseOfEachLine holds that the time for which all lines were up is taken off each line of a stretch.
func TestPauseOfEachLine(t *testing.T) {
	got := readText(t, "log.csv", "Date,Lines in,Lines out,Speed kn,R1 short,R2 long,Notes\n"+
		"2024-02-13,7:25,12:50,6,red diver,blue diver,\n2024-02-19,5:50,9:20,7.5,lumo skirt,pink skirt,Lou drove\n"+
		"2024-02-25,6:55,12:30,8,cedar plug,black skirt,all lines up 8:55-9:25 for a swim\n")
	for part := range int64(3) {
		if off := got.entries[place{4, part}]["stopped_s"]; off != 1800.0 {
			t.Errorf("part %d: %v s taken off", part, off)
		}
	}
}
