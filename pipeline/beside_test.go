package pipeline

import (
	"context"
	"database/sql"
	"encoding/csv"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/xuri/excelize/v2"

	"wakeledger/pipeline/layout"
	"wakeledger/pipeline/meaning"
)

const (
	bookTrips = "Trip no,Date,Cast off,Moored,Engine " +
		"h,Notes\n1,2026-06-03,05:30,14:00,8.5,calm\n2,2026-06-05,05:40,13:00,7.3,\n3,2026-06-09,05:30,12:30,7.0,\n" +
		"4,2026-06-12,06:00,12:00,6.0,\n"
	bookRuns = "Run no,Trip no,Date,Lines in,Lines " +
		"up,Knots,Lines\n1,1,2026-06-03,06:00,08:00,7.5,4\n2,1,2026-06-03,09:00,11:00,8.5,4\n" +
		"3,2,2026-06-05,06:00,09:00,7.5,5\n" +
		"4,3,2026-06-09,06:00,08:30,12,3\n5,4,2026-06-12,07:00,10:00,7,5\n"
	bookStrikes = "No,Run,Result,Species,Length " +
		"cm\n1,1,Lost,,\n2,2,Boated,Albacore,81\n3,3,Missed,,\n4,4,Boated,Wahoo,120\n5,5,Released,Bigeye,70\n"
)

// withBoat is a table with a last column that names one boat in each row.
func withBoat(table, boat string) string {
	lines := strings.Split(strings.TrimSuffix(table, "\n"), "\n")
	for i := range lines {
		if lines[i] += "," + boat; i == 0 {
			lines[i] = strings.TrimSuffix(lines[i], boat) + "Boat"
		}
	}
	return strings.Join(lines, "\n") + "\n"
}

// written is a folder of files, name and text by turns, and their paths.
func written(t *testing.T, files ...string) []string {
	t.Helper()
	dir := t.TempDir()
	var paths []string
	for i := 0; i < len(files); i += 2 {
		p := filepath.Join(dir, files[i])
		if err := os.WriteFile(p, []byte(files[i+1]), 0o600); err != nil {
			t.Fatal(err)
		}
		paths = append(paths, p)
	}
	return paths
}

func season(t *testing.T) *Season {
	t.Helper()
	s, err := Open(context.Background(), "", Config{Boat: "Tern", Zone: "UTC", Units: "metric",
		Now: func() time.Time { return time.Date(2026, 11, 1, 12, 0, 0, 0, time.UTC) }})
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { s.DB.Close() })
	return s
}

// Files that share days or numbers are tables of one book; two of one hand, two boats' and
// those with nothing in common are not.
func TestBeside(t *testing.T) {
	s := season(t)
	no := func(string) bool { return false }
	months := strings.ReplaceAll(bookRuns, "2026-06", "2026-07")
	const key = "Column,Code,Meaning\nResult,Lost,hooked and gone\nResult,Boated,in the box\nResult,Missed,never " +
		"hooked\nRun,,what run it was in\nSpecies,,as seen\n"
	for _, c := range []struct {
		what  string
		files []string
		want  []string // beside the first
	}{
		{"an exported workbook", []string{"Trips.csv", bookTrips, "Runs.csv", bookRuns, "Strikes.csv", bookStrikes},
			[]string{"Runs.csv", "Strikes.csv"}},
		{"a file a month", []string{"June.csv", bookRuns, "July.csv", months}, nil},
		{"nothing in common", []string{"Trips.csv", bookTrips, "Fuel.csv",
			"Bought,Litres,Paid\n2026-01-03,120,y\n2026-02-07,122,y\n2026-03-01,99,n\n"}, nil},
		{"no day at all", []string{"Trips.csv", bookTrips, "Fish.csv",
			"Species,Length cm,Kept\nWahoo,120,y\nWahoo,122,y\nWahoo,99,n\n"}, []string{"Fish.csv"}},
		{"no day but in its name", []string{"Trips.csv", bookTrips, "9 June.csv",
			"Species,Length cm,Kept\nWahoo,120,y\nWahoo,122,y\nWahoo,99,n\n"}, nil},
		{"no day, and logs of two boats", []string{"Tern.csv", withBoat(bookTrips, "Tern"), "Skua.csv",
			withBoat(strings.ReplaceAll(bookTrips, "Cast", "Set"), "Skua"), "Fish.csv",
			"Species,Length cm,Kept\nWahoo,120,y\nWahoo,122,y\nWahoo,99,n\n"}, nil},
		{"the same numbers on other days", []string{"Runs.csv", bookRuns, "Trips.csv",
			strings.ReplaceAll(bookTrips, "2026-06", "2025-09")}, nil},
		{"a key to codes", []string{"Strikes.csv", bookStrikes, "Codes.csv", key}, []string{"Codes.csv"}},
		{"one key to two boats", []string{"Tern.csv", withBoat(bookStrikes, "Tern"), "Skua.csv",
			strings.ReplaceAll(withBoat(bookStrikes, "Skua"), ",Length cm", ",Fork"), "Codes.csv", key},
			[]string{"Codes.csv"}},
		{"numbers of stretches beside times of one day", []string{"legs.csv", exportedLegs, "bites.csv", exportedBites},
			[]string{"bites.csv"}},
		{"two boats", []string{"Trips.csv", withBoat(bookTrips, "Tern"), "Runs.csv", withBoat(bookRuns, "Skua")}, nil},
	} {
		paths := written(t, c.files...)
		if got := s.beside(paths, no)[paths[0]]; !slices.Equal(got, c.want) {
			t.Errorf("%s: %v beside the first, expected %v", c.what, got, c.want)
		}
	}
}

// exportedLegs and exportedBites are tables of a database, with instants and numbers.
const (
	exportedLegs = "leg_id,trip_id,started_at,ended_at,method,rods,speed_kn,note\n" +
		"101,1,2026-02-08T07:32:00-05:00,2026-02-08T08:32:00-05:00,troll,7,7.4,\n" +
		"102,1,2026-02-08T09:00:00-05:00,2026-02-08T11:00:00-05:00,bottom,4,0,\n" +
		"103,2,2026-02-15T06:30:00-05:00,2026-02-15T09:00:00-05:00,troll,6,7,\n" +
		"104,3,2026-02-27T07:00:00-05:00,2026-02-27T10:00:00-05:00,troll,6,6.5,\n" +
		"105,99,2026-01-01T00:00:00-05:00,2026-01-01T00:01:00-05:00,troll,9,9,TEST ROW ignore\n"
	exportedBites = "bite_id,leg_id,at,outcome,species,length_in,note\n" +
		"1001,101,2026-02-08T07:54:00-05:00,KEPT,mahi,30,\n1002,101,2026-02-08T08:10:00-05:00,LOST,wahoo,,\n" +
		"1004,102,2026-02-08T09:48:00-05:00,KEPT,grouper,25,\n1005,102,2026-02-08T10:41:00-05:00,KEPT,snapper,19,\n" +
		"1006,103,2026-02-15T08:01:00-05:00,RELEASED,sailfish,,\n1009,104,2026-02-27T08:48:00-05:00,MISSED,,,\n" +
		"1010,104,2026-02-27T09:15:00-05:00,KEPT,mahi,33,\n"
)

// An export by numbers: bites of a stretch on the bottom are none, nor is a row that was a test, and
// a number is no clock.
func TestExportedTables(t *testing.T) {
	ctx := context.Background()
	s, err := Open(ctx, "", Config{Boat: "Tern", Zone: "UTC-5", Units: "us"})
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { s.DB.Close() })
	if _, err := s.Load(ctx, written(t, "legs.csv", exportedLegs, "bites.csv", exportedBites)); err != nil {
		t.Fatal(err)
	}
	if hours, strikes := hoursOf(t, s); hours != 6.5 || strikes != 5 {
		t.Errorf("%.2f hours and %d strikes on a leg, expected 6.5 and 5", hours, strikes)
	}
	if n := totalOf(t, s, "SELECT count(*) FROM strike"); n != 5 {
		t.Errorf("%.0f strikes, expected 5", n)
	}
	if n := totalOf(t, s, "SELECT count(*) FROM strike WHERE hour(strike_at) = 8"); n != 3 {
		t.Errorf("%.0f strikes between 8 and 9, expected 3", n)
	}
}

// hoursOf are the hours of a season's legs and its strikes.
func hoursOf(t *testing.T, s *Season) (hours float64, strikes int) {
	t.Helper()
	ctx := context.Background()
	if err := s.Derive(ctx); err != nil {
		t.Fatal(err)
	}
	legs, err := s.DB.Query(ctx, "SELECT coalesce(sum(hours), 0), (SELECT count(*) FROM strike WHERE leg_id IS NOT "+
		"NULL) FROM leg")
	if err != nil {
		t.Fatal(err)
	}
	defer legs.Close()
	for legs.Next() {
		if err := legs.Scan(&hours, &strikes); err != nil {
			t.Fatal(err)
		}
	}
	return hours, strikes
}

// The tables of one book are read as one: engine hours are not trolled beside the runs', and a
// strike is of the run that it numbers. Loading some of them again changes nothing; a changed
// one that comes alone is read beside the others as before.
func TestBookOfFiles(t *testing.T) {
	ctx := context.Background()
	s := season(t)
	paths := written(t, "Trips.csv", bookTrips, "Runs.csv", bookRuns, "Strikes.csv", bookStrikes)
	if _, err := s.Load(ctx, paths); err != nil {
		t.Fatal(err)
	}
	if hours, strikes := hoursOf(t, s); hours != 12.5 || strikes != 5 {
		t.Errorf("%.2f hours and %d strikes on a leg, expected 12.5 and 5", hours, strikes)
	}
	again, err := s.Load(ctx, paths[:1])
	if err != nil || again[0].Known != Unchanged {
		t.Errorf("trips alone again: known %v, error %v, expected unchanged", again[0].Known, err)
	}
	if err := os.WriteFile(paths[0], []byte(bookTrips+"5,2026-06-20,06:00,12:00,6.0,\n"), 0o600); err != nil {
		t.Fatal(err)
	}
	if _, err := s.Load(ctx, paths[:1]); err != nil {
		t.Fatal(err)
	}
	if hours, strikes := hoursOf(t, s); hours != 12.5 || strikes != 5 {
		t.Errorf("after a change: %.2f hours and %d strikes on a leg, expected 12.5 and 5", hours, strikes)
	}
}

// Bites whose days have no year are of the season that the file of days beside them tells, and the days do not
// lack bites then. Without that file they are of no year: the question says so.
func TestDaysWithoutAYearBeside(t *testing.T) {
	ctx := context.Background()
	const days = "Date,Hrs lines in,Rods,Knots\n5/6/26,6,5,7\n5/9/26,5.5,5,7\n5/14/26,4,4,8\n5/20/26,6,5,7\n" +
		"6/2/26,3,4,8\n"
	const bites = "Date,Time,Fish,What happened\n5/6,8:45,wahoo,boated\n5/6,9:10,wahoo,missed\n" +
		"5/9,10:00,dorado,boated\n5/14,7:50,wahoo,lost\n5/20,11:20,dorado,boated\n6/2,9:00,wahoo,missed\n"
	s := season(t)
	paths := written(t, "days.csv", days, "bites.csv", bites)
	reports, err := s.Load(ctx, paths)
	if err != nil {
		t.Fatal(err)
	}
	if hours, strikes := hoursOf(t, s); hours != 24.5 || strikes != 6 {
		t.Errorf("%.1f hours and %d strikes on a leg, expected 24.5 and 6", hours, strikes)
	}
	for _, r := range reports {
		for _, q := range r.Questions {
			t.Errorf("%s asks: %s", r.Name, q.Text)
		}
	}
	alone := season(t)
	reports, err = alone.Load(ctx, paths[1:])
	if err != nil {
		t.Fatal(err)
	}
	if q := reports[0].Questions; len(q) == 0 || !strings.Contains(q[0].Text, "no year") {
		t.Errorf("bites alone: asked %v, expected what year they are of", q)
	}
}

// savedAs is a workbook of one sheet, or of two with an empty one, of a table's text.
func savedAs(t *testing.T, path, table string, sheets int) string {
	t.Helper()
	f := excelize.NewFile()
	defer f.Close()
	for i, line := range strings.Split(strings.TrimSuffix(table, "\n"), "\n") {
		for j, cell := range strings.Split(line, ",") {
			var v any = cell
			if day, err := time.Parse("2006-01-02", cell); err == nil {
				v = day
			}
			at, err := excelize.CoordinatesToCellName(j+1, i+1)
			if err == nil && cell != "" {
				err = f.SetCellValue("Sheet1", at, v)
			}
			if err != nil {
				t.Fatal(err)
			}
		}
	}
	if sheets > 1 {
		if _, err := f.NewSheet("Tackle"); err != nil {
			t.Fatal(err)
		}
	}
	if err := f.SaveAs(path); err != nil {
		t.Fatal(err)
	}
	return path
}

// TestTwoKeepers holds that a workbook of runs and another's of fish, whose days are written once, are one book:
// fish that remarks beside the runs name are those of the other. One of several sheets is a book of its own.
func TestTwoKeepers(t *testing.T) {
	const runs = "Date,Run,Lines in,Lines up,Rods,Knots,Hits,Remarks\n2026-06-03,1,06:00,08:00,4,7,2,wahoo at 6.40\n" +
		",2,08:30,10:00,4,7.5,0,\n2026-06-05,1,06:00,09:00,5,7,1,\n2026-06-09,1,06:10,09:00,5,8,2,wahoo at 7.10\n" +
		"2026-06-12,1,06:00,08:30,5,8,0,\n2026-06-14,1,06:00,08:30,4,7,1,\n2026-06-20,1,06:20,08:30,4,7,1,\n"
	const fish = "Date,Time,Fish,cm,kg,What happened\n2026-06-03,06:43,wahoo,,,let go\n,07:10,bonito,61,,kept\n" +
		"2026-06-05,08:02,bonito,58,,kept\n2026-06-09,07:14,wahoo,,,pulled the hook\n,08:20,bonito,,3.1,kept\n" +
		"2026-06-14,07:20,bonito,60,,let go\n2026-06-20,07:50,wahoo,110,,kept\n"
	for sheets, want := range map[int][]string{1: {"hers.xlsx"}, 2: nil} {
		ctx, s, dir := context.Background(), season(t), t.TempDir()
		paths := []string{savedAs(t, filepath.Join(dir, "his.xlsx"), runs, 1),
			savedAs(t, filepath.Join(dir, "hers.xlsx"), fish, sheets)}
		if got := s.beside(paths, func(string) bool { return false })[paths[0]]; !slices.Equal(got, want) {
			t.Errorf("%d sheets: %v beside the first, expected %v", sheets, got, want)
		}
		if sheets > 1 {
			continue
		}
		if _, err := s.Load(ctx, paths); err != nil {
			t.Fatal(err)
		}
		if hours, strikes := hoursOf(t, s); hours != 16.5 || strikes != 7 {
			t.Errorf("%.2f hours and %d strikes on a leg, expected 16.5 and 7", hours, strikes)
		}
		if n := totalOf(t, s, "SELECT count(*) FROM fish"); n != 6 {
			t.Errorf("%.0f fish at the boat, expected 6", n)
		}
	}
}

// A key may be a text beside the tables, with a line for each heading and codes on the lines under it. A
// text that tells of fishing under a few such words is none.
func TestKeyAsText(t *testing.T) {
	ctx := context.Background()
	const key = "My log, how to read it\n\nruns.csv\n  run     the run's number, a new one each time\n" +
		"  down, up   by the kitchen clock\n  how     D = dragging lures   J = jigging  (J is not counted)\n" +
		"hits.csv\n  hit     counted through\n  end     a = touched, never hooked\n          b = hooked and lost\n" +
		"          c = boated and kept\n          d = boated and let go\n"
	const runs = "run,date,down,up,how,knots,lines\n1,2026-06-03,06:00,09:00,D,7,4\n2,2026-06-04,06:00,08:00,D,8,4\n" +
		"3,2026-06-05,06:00,10:00,D,7,4\n4,2026-06-06,06:00,10:00,D,7,4\n"
	const hits = "hit,run,when,end,fish\n1,1,06:40,c,wahoo\n2,1,07:40,a,\n3,3,08:10,b,\n4,3,09:10,d,wahoo\n" +
		"5,4,09:10,c,wahoo\n"
	s := season(t)
	if _, err := s.Load(ctx, written(t, "key.txt", key, "runs.csv", runs, "hits.csv", hits)); err != nil {
		t.Fatal(err)
	}
	if hours, strikes := hoursOf(t, s); hours != 13 || strikes != 5 {
		t.Errorf("%.2f hours and %d strikes, expected 13 and 5", hours, strikes)
	}
	if n := totalOf(t, s, "SELECT count(*) FROM strike WHERE outcome = 'landed'"); n != 2 {
		t.Errorf("%.0f fish kept, expected 2", n)
	}
	if n := totalOf(t, s, "SELECT count(*) FROM strike WHERE outcome = 'missed'"); n != 1 {
		t.Errorf("%.0f missed bites, expected 1", n)
	}
	const prose = "run     with the kids\nup      early on Saturday\nhow     nobody knows\nWent out at six.\n" +
		"Two wahoo by eight.\nThen it blew up.\nHome by ten.\n"
	var sheets []*layout.Sheet
	for _, p := range written(t, "runs.csv", runs, "prose.txt", prose) {
		x, err := s.tablesIn(p)
		if err != nil {
			t.Fatal(err)
		}
		sheets = append(sheets, x...)
	}
	if len(sheets) != 2 || meaning.IsKey(sheets[1], sheets) {
		t.Errorf("prose that begins three lines with headings is no key")
	}
}

// A good fish on a list of its own is the one that a remark tells with the same weight, and not one more; one of
// another weight is.
func TestFishOfAListAndOfARemark(t *testing.T) {
	ctx := context.Background()
	const runs = "Date,In,Up,Lines,Knots,Remarks\n2026-06-01,06:30,10:10,4,7,wahoo 14.5 kg and lost another\n" +
		"2026-06-02,06:10,11:00,4,7,missed one on the long rigger\n2026-06-03,06:20,11:30,4,7,nothing\n" +
		"2026-06-04,06:20,11:30,4,7,\"dorado 8.1 kg, one came off\"\n"
	s := season(t)
	dir := t.TempDir()
	f := excelize.NewFile()
	defer f.Close()
	for name, table := range map[string]string{"Sheet1": runs,
		"Fish": "Date,Fish,Length cm,Kg\n2026-06-01,wahoo,128,14.5\n2026-06-04,dorado,98,8.4\n"} {
		if _, err := f.NewSheet(name); err != nil {
			t.Fatal(err)
		}
		rows, err := csv.NewReader(strings.NewReader(table)).ReadAll()
		if err != nil {
			t.Fatal(err)
		}
		for i, row := range rows {
			if err := f.SetSheetRow(name, fmt.Sprintf("A%d", i+1), &row); err != nil {
				t.Fatal(err)
			}
		}
	}
	path := filepath.Join(dir, "log.xlsx")
	if err := f.SaveAs(path); err != nil {
		t.Fatal(err)
	}
	if _, err := s.Load(ctx, []string{path}); err != nil {
		t.Fatal(err)
	}
	if err := s.Derive(ctx); err != nil {
		t.Fatal(err)
	}
	rows, err := s.DB.Query(ctx, "SELECT species_logged, length_cm, scale_kg FROM fish "+
		"ORDER BY species_logged, scale_kg")
	if err != nil {
		t.Fatal(err)
	}
	defer rows.Close()
	var got []string
	for rows.Next() {
		var name string
		var length, kg sql.NullFloat64
		if err := rows.Scan(&name, &length, &kg); err != nil {
			t.Fatal(err)
		}
		got = append(got, fmt.Sprint(name, " ", length.Float64, " ", kg.Float64))
	}
	if s := strings.Join(got, ", "); s != "dorado 0 8.1, dorado 98 8.4, wahoo 128 14.5" {
		t.Errorf("fish: %s", s)
	}
}

// A list of fish without a day, that names the numbers of another file's rows under another heading, has its days from
// there; one whose numbers are none of these does not.
func TestFishOfNumberedRows(t *testing.T) {
	const runs = "No,Date,Lines in,Lines up,Rods,Knots,Short strikes\n1,2026-06-01,06:00,08:00,4,7,1\n" +
		"2,2026-06-01,08:30,10:00,5,6,0\n3,2026-06-02,06:00,08:00,4,7,2\n4,2026-06-03,06:10,08:00,4,7,0\n" +
		"5,2026-06-03,08:20,10:00,5,6,0\n6,2026-06-04,06:00,09:00,5,6,1\n"
	const fish = "Pass,Time,Fish,Result\n1,07:10,wahoo,landed\n1,,mahi,released\n2,09:10,mahi,lost\n" +
		"3,07:00,wahoo,landed\n4,,wahoo,lost\n5,09:20,mahi,landed\n"
	for list, want := range map[string]int{fish: 10, strings.ReplaceAll(fish, "\n", "\n7"): 4} {
		s := season(t)
		if _, err := s.Load(context.Background(), written(t, "runs.csv", runs, "fish.csv", list)); err != nil {
			t.Fatal(err)
		}
		if _, strikes := hoursOf(t, s); strikes != want {
			t.Errorf("%d strikes on a leg, expected %d", strikes, want)
		}
	}
}
