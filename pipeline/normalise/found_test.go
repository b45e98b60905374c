package normalise_test

import (
	"os"
	"path/filepath"
	"reflect"
	"strings"
	"testing"

	"wakeledger/pipeline/normalise"
)

// readText reads a text log.
func readText(t *testing.T, name, text string) reading {
	t.Helper()
	path := filepath.Join(t.TempDir(), name)
	if err := os.WriteFile(path, []byte(text), 0o600); err != nil {
		t.Fatal(err)
	}
	got, err := readFile(path, normalise.Settings{})
	if err != nil {
		t.Fatal(err)
	}
	return got
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
	if len(got.problems) != 2 || len(got.entries) != 5 {
		t.Errorf("%d entries, set aside %v: expected 5, and rows 7 and 8", len(got.entries), got.problems)
	}
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
// a date alone that is missing is not filled in.
func TestLeftOut(t *testing.T) {
	head := "Date,Boat,From,To,Species,Scale kg\n2026-07-04,Wren,09:00,17:00,Wahoo,18\n"
	rest := "2026-07-06,Wren,09:10,17:00,,\n2026-07-08,Wren,09:20,17:00,Wahoo,15\n2026-07-09,Wren,09:20,17:00,Wahoo,15\n2026-07-10,Wren,09:20,17:00,,\n"
	got := readText(t, "log.csv", head+",,,,Wahoo,21\n"+rest)
	expect(t, "second fish", []any{got.entries[place{row: 3}]["date"], got.entries[place{row: 3}]["start_s"]}, "2026-07-04", int64(32400))
	got = readText(t, "log.csv", head+",Wren,09:30,17:00,Wahoo,21\n"+rest)
	expect(t, "no date", got.field("date", 3), any(nil))
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

// Days that cannot be read are set aside, and make no trips.
func TestDayNoTrip(t *testing.T) {
	got := readText(t, "log.csv", "Day,In,Out,Speed\n3rd of the month,06:00,08:00,8\n4th,06:00,08:00,8\n")
	if len(got.entries) != 0 || len(got.problems) != 2 {
		t.Errorf("entries %v, set aside %v: expected both rows to be set aside", got.entries, got.problems)
	}
}
