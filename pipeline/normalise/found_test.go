package normalise_test

import (
	"os"
	"path/filepath"
	"reflect"
	"strconv"
	"strings"
	"testing"

	"wakeledger/pipeline/entry"
	"wakeledger/pipeline/normalise"
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
	got := readText(t, "log.csv", "Date,In,Out,Speed (kn)\n2026-07-04,06:00,08:00,8\n2026-07-05,06:00,08:00,7-8\n2026-07-06,06:00,08:00,7-8\n"+
		"2026-07-07,06:00,08:00,6.5 to 7\n2026-07-08,06:00,08:00,6-12\n2026-07-09,06:00,08:00,8-7\n2026-07-10,06:00,08:00,39-41\n")
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
	expect(t, "its stretch", got.field("end_s", 7, 8), int64(28800), int64(28800))
}

// A column for each place in the spread makes a line of each lure; the row's effort
// and what it counts stand once, in its own entry.
func TestSpread(t *testing.T) {
	got := readText(t, "log.csv", "Date,In,Out,Kts,Port long,Stbd short,Shotgun,Bites\n2026-07-04,06:00,08:00,8,Blue tube,Black jet,,2\n2026-07-05,06:00,08:00,8,'',Green jet,Bird,0\n2026-07-06,06:00,08:00,8,,-,,1\n")
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
			if e["start_s"] != int64(21600) || e["end_s"] != int64(28800) || e["strikes_n"] != nil || e["speed_kn"] != nil || e["lines_out"] != nil {
				t.Errorf("row %d part %d is %v: expected its effort alone beside its line", row, part, e)
			}
		}
	}
	if s := strings.Join(lines, "; "); s != "Port long=Blue tube; Stbd short=Black jet; Port long=Blue tube; Stbd short=Green jet; Shotgun=Bird" {
		t.Errorf("lines: %s", s)
	}
}

// What became of a fish is taken from its notes where a clause says just that.
func TestNoted(t *testing.T) {
	got := readText(t, "log.csv", "Date,Time,Fish,Length cm,Notes\n2026-07-04,06:40,Wahoo,120,\"released, 25 min\"\n2026-07-04,07:40,Wahoo,121,on ice\n2026-07-04,08:40,Wahoo,122,\"nearly lost, a kept promise\"\n"+
		"2026-07-04,09:40,Wahoo,123,\"kept, released\"\n2026-07-04,10:40,Wahoo,124,not released\n")
	expect(t, "outcome", got.field("outcome", 2, 3, 4, 5, 6), "released", "landed", nil, nil, nil)
}

// Where the sheet says what became of its fish, or counts them, the notes do not.
func TestNotedBeside(t *testing.T) {
	got := readText(t, "log.csv", "Date,Time,Fish,Length cm,Kept,Notes\n2026-07-04,06:40,Wahoo,120,yes,released\n2026-07-04,06:50,Wahoo,120,no,x\n")
	expect(t, "outcome", got.field("outcome", 2, 3), nil, nil)
}

// A second fish of a day, written with the day and hours left out, is of the row above;
// a date alone that is missing is taken from there too, which is told.
func TestLeftOut(t *testing.T) {
	head := "Date,Boat,From,To,Species,Scale kg\n2026-07-04,Wren,09:00,17:00,Wahoo,18\n"
	rest := "2026-07-06,Wren,09:10,17:00,,\n2026-07-08,Wren,09:20,17:00,Wahoo,15\n2026-07-09,Wren,09:20,17:00,Wahoo,15\n2026-07-10,Wren,09:20,17:00,,\n"
	got := readText(t, "log.csv", head+",,,,Wahoo,21\n"+rest)
	expect(t, "second fish", []any{got.entries[place{row: 3}]["date"], got.entries[place{row: 3}]["start_s"]}, "2026-07-04", int64(32400))
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
	got := readText(t, "log.csv", "Fish caught\nDate,In,Out,Albies,YFT\n"+row+"3,0\n")
	expect(t, "a title", got.field("landed_n", 3), int64(3))
}

// Days that are no dates name the trip: its hours stay, and no date is made up.
func TestDayNoDate(t *testing.T) {
	got := readText(t, "log.csv", "Day,In,Out,Speed\n3rd of the month,06:00,08:00,8\n4th,06:00,08:00,8\n")
	expect(t, "trips", got.field("trip", 2, 3), "3rd of the month", "4th")
	expect(t, "dates", got.field("date", 2, 3), nil, nil)
}
