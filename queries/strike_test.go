package queries_test

import (
	"context"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"wakeledger/pipeline"
	"wakeledger/queries"
)

// A flat table that counts strikes for each stretch, with further fish in rows of their own:
// they are among those counted where the counts have room for them.
func TestFurtherFishOfAStretch(t *testing.T) {
	const head = "Date,In,Out,Lines,Speed kn,Strikes,Hooked,Landed,Species,Length cm\n"
	const rest = "2026-05-09,06:10,09:00,4,8.4,1,1,1,yellowfin tuna,88\n2026-05-16,06:10,09:00,4,8.8,0,0,0,,\n"
	const first = "2026-05-02,06:00,08:00,4,8.2,2,2,2,yellowfin tuna,104\n"
	const second = "2026-05-02,08:30,10:30,4,9.0,1,0,0,,\n"
	const fish = ",,,,,yellowfin tuna,98\n"
	for _, c := range []struct {
		name, rows      string
		strikes, landed int
	}{
		{"the day again", first + "2026-05-02,,," + fish + second, 4, 3},
		{"no day", first + ",,," + fish + second, 4, 3},
		{"the stretch's times", first + "2026-05-02,06:00,08:00," + fish + second, 4, 3},
		{"below the last stretch of the day", second + first + "2026-05-02,,," + fish, 4, 3},
		{"no room in the counts", first + second + "2026-05-02,,," + fish, 5, 4},
		{"more than the counts", first + "2026-05-02,,," + fish + "2026-05-02,,," + fish + second, 6, 5},
		{"below a stretch without counts", first + "2026-05-02,08:30,10:30,4,9.0,,,,,\n2026-05-02,,," + fish, 4, 4},
	} {
		t.Run(c.name, func(t *testing.T) {
			file := filepath.Join(t.TempDir(), "log.csv")
			if err := os.WriteFile(file, []byte(head+c.rows+rest), 0o600); err != nil {
				t.Fatal(err)
			}
			s := open(t, pipeline.Config{Boat: "Tansy Reach", Zone: "UTC"})
			load(t, s, file)
			rows, err := s.DB.Query(context.Background(), "SELECT count(*), count(*) FILTER (WHERE outcome = "+
				"'landed') FROM strike")
			if err != nil {
				t.Fatal(err)
			}
			defer rows.Close()
			var strikes, landed int
			if !rows.Next() {
				t.Fatal(rows.Err())
			}
			if err := rows.Scan(&strikes, &landed); err != nil {
				t.Fatal(err)
			}
			if strikes != c.strikes || landed != c.landed {
				t.Errorf("%d strikes, %d landed; expected %d and %d", strikes, landed, c.strikes, c.landed)
			}
		})
	}
}

// Fish of a stretch that counts its bites stand on its own row and on those below it, each with how many
// there were; what the first row says of an outcome is said of its own fish. A stretch with a speed and
// lines of its own whose times nobody wrote has its bites, and no other has them.
func TestFishBelowTheirStretch(t *testing.T) {
	const log = "No,Date,In,Out,Stopped min,Rods,Knots,Bites,Result,Qty,Fish,Length cm\n" +
		"1,2026-05-02,06:00,08:00,30,4+1 teaser,7,6,kept,2,albacore,\n" +
		",,,,,,,,lost,1,wahoo,\n" +
		",,,,,,,,kept,2,albacore,61 / 64\n" +
		",,09:00,10:00,,6,7,2,,,,\n" +
		"2,2026-05-09,,,,4,14,2,lost,1,wahoo,\n" +
		",,09:00,11:00,,6,7,1,kept,1,albacore,70\n" +
		"2,2026-05-10,06:00,07:00,,6,7,0,,,,\n" +
		"3,2026-05-16,06:00,08:00,,5,7,1,released,1,albacore,58\n" +
		"4,2026-05-23,06:00,08:00,,5,7,0,,,,\n4,2026-05-23,08:30,09:00,,5,7,0,,,,\n" +
		"5,2026-05-24,06:00,08:00,,5,7,0,,,,\n6,2026-05-30,06:00,08:00,,5,7,0,,,,\n"
	file := filepath.Join(t.TempDir(), "log.csv")
	if err := os.WriteFile(file, []byte(log), 0o600); err != nil {
		t.Fatal(err)
	}
	s := open(t, pipeline.Config{Boat: "Tansy Reach", Zone: "UTC", Units: "metric"})
	load(t, s, file)
	var got string
	row, err := s.DB.Query(context.Background(), `SELECT concat_ws(' ', (SELECT count(*) FROM trip), (SELECT sum(hours) FROM leg),
		(SELECT min(lines_out) FROM leg), (SELECT list(n ORDER BY outcome) FROM (SELECT outcome || count(*) AS n, outcome FROM strike GROUP BY outcome)),
		(SELECT list(length_cm ORDER BY length_cm) FROM fish WHERE length_cm IS NOT NULL),
		(SELECT count(*) FROM strike JOIN leg USING (leg_id) WHERE leg.start_at::DATE = '2026-05-09'))`)
	if err != nil {
		t.Fatal(err)
	}
	defer row.Close()
	if !row.Next() {
		t.Fatal(row.Err())
	}
	if err := row.Scan(&got); err != nil {
		t.Fatal(err)
	}
	const want = "6 14.0 4 [landed5, lost2, not logged4, released1] [58.0, 61.0, 64.0, 70.0] 1"
	if got != want {
		t.Errorf("%s\nwant %s", got, want)
	}
}

// A list of fish that its trips' counts tell of already: those whose words name another way of fishing, where
// they are the ones too many, were not trolled; and the clock alone of a fish of a long trip does not tell
// of which day it was.
func TestFishAmongCounts(t *testing.T) {
	const runs = "Trip,Date,In,Out,Lines,Bites,Missed,Lost,Kept\n1,2026-05-02,06:00,09:00,4,2,0,1,1\n" +
		"2,2026-05-09,06:00,09:00,4,1,0,0,1\n2,2026-05-10,06:00,09:00,4,3,0,0,3\n" +
		"3,2026-05-16,06:00,09:00,4,2,0,0,2\n" +
		"4,2026-05-17,06:00,09:00,4,1,0,0,1\n5,2026-05-23,06:00,09:00,5,1,0,0,1\n6,2026-05-24,06:00,09:00,4,1,0,0,1\n"
	const fish = "Trip,Time,Fish,How many,Result,Lure,Remarks\n1,06:20,wahoo,1,lost,plug,\n" +
		"1,06:40,wahoo,1,kept,plug,\n" +
		"1,,grouper,2,kept,squid,bottom on the way in\n2,06:30,wahoo,1,kept,plug,\n2,06:50,albacore,1,kept,plug,\n" +
		"2,07:30,albacore,1,kept,plug,\n2,08:10,albacore,1,kept,plug,\n3,06:30,wahoo,1,kept,plug,\n" +
		"3,07:30,wahoo,%s,kept,plug,%s\n" +
		"4,07:30,wahoo,1,kept,plug,\n5,07:50,wahoo,1,kept,plug,\n6,08:30,wahoo,1,kept,plug,\n"
	for _, c := range []struct {
		last, remark string
		strikes      int // 0: it is asked about
	}{{"1", "", 11}, {"1", "bottom was close", 11}, {"2", "", 0}} {
		dir := t.TempDir()
		trips, caught := filepath.Join(dir, "runs.csv"), filepath.Join(dir, "fish.csv")
		for path, text := range map[string]string{trips: runs, caught: fmt.Sprintf(fish, c.last, c.remark)} {
			if err := os.WriteFile(path, []byte(text), 0o600); err != nil {
				t.Fatal(err)
			}
		}
		s := open(t, pipeline.Config{Boat: "Tansy Reach", Zone: "UTC"})
		said := fmt.Sprint(load(t, s, trips, caught)[1].Sheets[0].Notes)
		if told := strings.Contains(said, "words for another way of fishing"); told != (c.strikes > 0) {
			t.Errorf("%+v: that rows are left out is told: %v", c, told)
		}
		rows, err := s.DB.Query(context.Background(), "SELECT count(*) FROM strike")
		if err != nil {
			t.Fatal(err)
		}
		n := 0
		if rows.Next() {
			err = rows.Scan(&n)
		}
		rows.Close()
		asked := len(answer(t, s, queries.AskQuestions))
		if err != nil || c.strikes > 0 && (n != c.strikes || asked > 0) || c.strikes == 0 && asked == 0 {
			t.Errorf("%+v: %d strikes, %d questions, %v", c, n, asked, err)
		}
	}
}

// Several fish in one row of a flat table stand beside the other rows of their stretch, which
// tell strikes of their own.
func TestSeveralFishInARow(t *testing.T) {
	const log = "Date,In,Out,Lines,Speed kn,Time,Fish,Outcome,Weight kg,Length cm,Remarks\n" +
		"2026-05-02,06:00,08:00,4,8.2,06:20,2 albacore,landed,9.3 + 8.7,,\n" +
		",,,,,06:50,albacore,lost,,,\n" +
		"2026-05-03,06:00,08:00,4,8.2,06:20,albacore,landed,9.9,80,girth 56\n" +
		"2026-05-04,06:00,08:00,4,8.2,06:20,albacore,landed,9.8,81,\n" +
		",,,,,06:50,wahoo,lost,,,\n" +
		"2026-05-05,06:00,08:00,4,8.2,06:20,albacore,landed,9.8 + 9.1,,\n"
	file := filepath.Join(t.TempDir(), "log.csv")
	if err := os.WriteFile(file, []byte(log), 0o600); err != nil {
		t.Fatal(err)
	}
	s := open(t, pipeline.Config{Boat: "Tansy Reach", Zone: "UTC", Units: "metric"})
	load(t, s, file)
	rows, err := s.DB.Query(context.Background(), `SELECT (SELECT count(*) FROM strike), (SELECT count(*) FROM strike WHERE outcome = 'lost'),
		(SELECT list(scale_kg ORDER BY scale_kg)::VARCHAR FROM fish WHERE scale_kg IS NOT NULL), (SELECT max(girth_cm) FROM fish), (SELECT count(*) FROM set_aside)`)
	if err != nil {
		t.Fatal(err)
	}
	defer rows.Close()
	var strikes, lost, aside int
	var weights string
	var girth float64
	if !rows.Next() {
		t.Fatal(rows.Err())
	}
	if err := rows.Scan(&strikes, &lost, &weights, &girth, &aside); err != nil {
		t.Fatal(err)
	}
	if strikes != 7 || lost != 2 || weights != "[8.7, 9.3, 9.8, 9.9]" || girth != 56 || aside != 1 {
		t.Errorf("%d strikes, %d lost, weights %s, girth %v, %d set aside; expected 7, 2, [8.7, 9.3, 9.8, 9.9], 56 "+
			"and two weights for one fish", strikes, lost, weights, girth, aside)
	}
}

// A code that could be short for another way of fishing is asked about, and read as it is answered.
func TestCodesOfWays(t *testing.T) {
	const log = "Leg,Trip,Date,In,Out,Rods,SOG kt,Mode,Bites\n" +
		"A,T1,2026-05-02,06:00,08:00,6,7,SPR,1\nB,T1,2026-05-02,08:10,09:00,6,12,HS,1\n" +
		"A,T2,2026-05-03,06:00,08:00,4,7,SPR,0\nB,T2,2026-05-03,09:00,10:00,4,7,SPR,2\n" +
		"C,T2,2026-05-03,11:00,12:00,4,,KITE,\n"
	file := filepath.Join(t.TempDir(), "log.csv")
	if err := os.WriteFile(file, []byte(log), 0o600); err != nil {
		t.Fatal(err)
	}
	s := open(t, pipeline.Config{Boat: "Tansy Reach", Zone: "UTC"})
	load(t, s, file)
	asked := answer(t, s, queries.AskQuestions)
	if len(asked) != 1 || asked[0].About != "Mode" || !strings.Contains(asked[0].Text, `"spr"`) {
		t.Fatalf("asked %+v, expected one question about Mode", asked)
	}
	s = open(t, pipeline.Config{Boat: "Tansy Reach", Zone: "UTC"})
	if err := s.Answer(context.Background(), []string{file}, map[string]string{asked[0].ID: "1"}); err != nil {
		t.Fatal(err)
	}
	load(t, s, file)
	legs := 0
	for _, e := range answer(t, s, queries.AskTrips) {
		legs += int(e.Legs)
	}
	if left := answer(t, s, queries.AskQuestions); legs != 4 || len(left) != 0 {
		t.Errorf("answered: %d legs, still asked %+v; expected 4 legs and no question", legs, left)
	}
}

// TestFishOfNumberedStretches: fish that name nothing but the number of their stretch are of that
// stretch, in the same log before others of its folder; a number that two stretches have is none.
func TestFishOfNumberedStretches(t *testing.T) {
	const legs = "Trip,Date,Run,In,Up,Rods,Knots,Bites,Hooked,Boated\n" +
		"1,2026-05-02,1,06:00,08:00,4,7,2,1,1\n1,2026-05-02,2,08:30,10:30,4,8,0,0,0\n" +
		"2,2026-05-03,3,06:00,09:00,4,7,3,2,2\n3,2026-05-09,4,06:00,09:00,4,7,1,0,0\n" +
		"4,2026-05-16,5,06:00,09:00,4,7,2,2,1\n"
	for _, c := range []struct {
		name, legs, fish string
		strikes, landed  int
	}{
		{"each of a run", legs, "1,wahoo,110,11.2\n3,mahi,96,\n3,wahoo,121,14\n5,wahoo,99,8\n", 8, 4},
		{"a run that is not there", legs, "1,wahoo,110,11.2\n9,mahi,96,\n3,wahoo,121,14\n5,wahoo,99,8\n", 9, 5},
	} {
		t.Run(c.name, func(t *testing.T) {
			dir := t.TempDir()
			var files []string
			for name, text := range map[string]string{"runs.csv": c.legs,
				"kept.csv": "Run,Species,Length cm,Scale kg\n" + c.fish} {
				files = append(files, filepath.Join(dir, name))
				if err := os.WriteFile(files[len(files)-1], []byte(text), 0o600); err != nil {
					t.Fatal(err)
				}
			}
			s := open(t, pipeline.Config{Boat: "Tansy Reach", Zone: "UTC"})
			load(t, s, files...)
			var strikes, landed int
			rows, err := s.DB.Query(context.Background(), "SELECT count(*), count(*) FILTER (WHERE outcome = "+
				"'landed') FROM strike")
			if err != nil {
				t.Fatal(err)
			}
			defer rows.Close()
			if !rows.Next() {
				t.Fatal(rows.Err())
			}
			if err := rows.Scan(&strikes, &landed); err != nil {
				t.Fatal(err)
			}
			if strikes != c.strikes || landed != c.landed {
				t.Errorf("%d strikes, %d landed; expected %d and %d", strikes, landed, c.strikes, c.landed)
			}
		})
	}
}

// TestTripsSpelledTwoWays: a trip that one table calls "01" is the one that another calls "1" or "Trip 1".
func TestTripsSpelledTwoWays(t *testing.T) {
	dir := t.TempDir()
	var files []string
	for name, text := range map[string]string{
		"runs.csv": "Trip,Date,Lines in,Lines out,Rods,Knots\nF-01,2026-05-02,07:00,11:00,5,8\n" +
			"F-02,2026-05-03,07:00,10:00,5,9\n03,2026-05-04,07:10,10:00,5,9\n",
		"bites.csv": "Trip,Time,Fish,Result\nf-1,08:00,wahoo,landed\nF-2,08:30,wahoo,lost\n" +
			"Trip 3,09:00,mahi,missed\n"} {
		files = append(files, filepath.Join(dir, name))
		if err := os.WriteFile(files[len(files)-1], []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	s := open(t, pipeline.Config{Boat: "Tansy Reach", Zone: "UTC"})
	load(t, s, files...)
	rows, err := s.DB.Query(context.Background(),
		"SELECT (SELECT count(*) FROM trip), (SELECT count(*) FROM strike WHERE leg_id IS NOT NULL)")
	if err != nil {
		t.Fatal(err)
	}
	defer rows.Close()
	if !rows.Next() {
		t.Fatal(rows.Err())
	}
	var trips, strikes int
	if err := rows.Scan(&trips, &strikes); err != nil {
		t.Fatal(err)
	}
	if trips != 3 || strikes != 3 {
		t.Errorf("%d trips, %d strikes on their stretches; expected 3 and 3", trips, strikes)
	}
}

// TestFurtherStretches: the counts of a row's second stretch are read as those of its first, where fish brought to
// the boat count those let go too.
func TestFurtherStretches(t *testing.T) {
	file := filepath.Join(t.TempDir(), "log.csv")
	log := "let go = out of those landed\n\nDate,In 1,Out 1,Lines 1,Kn 1,Bites 1,Landed 1,Let go 1," +
		"In 2,Out 2,Lines 2,Kn 2,Bites 2,Landed 2,Let go 2\n" +
		"2026-07-04,06:00,08:00,4,7,3,2,1,08:30,10:00,4,7,4,3,1\n" +
		"2026-07-05,06:00,08:00,4,7,2,1,0,08:30,10:00,5,7,1,1,1\n" +
		"2026-07-06,06:00,08:00,4,7,0,0,0,08:30,10:00,5,7,3,2,1\n"
	if err := os.WriteFile(file, []byte(log), 0o600); err != nil {
		t.Fatal(err)
	}
	s := open(t, pipeline.Config{Boat: "Tansy Reach", Zone: "UTC"})
	load(t, s, file)
	rows, err := s.DB.Query(context.Background(), "SELECT count(*), count(*) FILTER (WHERE outcome = 'landed'), "+
		"count(*) FILTER (WHERE outcome = 'released') FROM strike")
	if err != nil {
		t.Fatal(err)
	}
	defer rows.Close()
	if !rows.Next() {
		t.Fatal(rows.Err())
	}
	var strikes, landed, released int
	if err := rows.Scan(&strikes, &landed, &released); err != nil {
		t.Fatal(err)
	}
	if strikes != 13 || landed != 5 || released != 4 {
		t.Errorf("%d strikes, %d landed, %d let go; expected 13, 5 and 4", strikes, landed, released)
	}
}

// A sheet of a row a bite, in which hours stand on the row of a first bite: those beneath are of its stretch,
// but of none where its own row told no bite, and its bites may be those above.
func TestBitesBeneathHours(t *testing.T) {
	const head = "Date,Hours,Lines,Speed kn,Species,Result\n2026-05-01,4,5,7,wahoo,landed\n"
	const day = "2026-05-02,2,3,14,wahoo,lost\n2026-05-02,,,,wahoo,landed\n2026-05-02,3,6,7,mahi,landed\n" +
		"2026-05-02,,,,mahi,lost\n2026-05-02,,,,mahi,landed\n"
	for _, c := range []struct {
		name, rows string
		want       string
	}{
		{"two stretches", day, "7 kn 4, 14 kn 2"},
		{"a first stretch with nothing", "2026-05-02,2,3,14,nothing,\n2026-05-02,3,6,7,mahi,lost\n" +
			"2026-05-02,,,,mahi,landed\n", "7 kn 3"},
		{"hours first, then the bites", "2026-05-02,2,3,14,,\n2026-05-02,3,6,7,,\n2026-05-02,,,,mahi,landed\n",
			"7 kn 1, not logged 1"},
	} {
		t.Run(c.name, func(t *testing.T) {
			file := filepath.Join(t.TempDir(), "log.csv")
			if err := os.WriteFile(file, []byte(head+c.rows), 0o600); err != nil {
				t.Fatal(err)
			}
			s := open(t, pipeline.Config{Boat: "Tansy Reach", Zone: "UTC"})
			load(t, s, file)
			rows, err := s.DB.Query(context.Background(), "SELECT coalesce(l.speed_kn::INTEGER || ' kn', "+
				"'not logged'), count(*) FROM strike LEFT JOIN leg l USING (leg_id) GROUP BY l.speed_kn "+
				"ORDER BY l.speed_kn NULLS LAST")
			if err != nil {
				t.Fatal(err)
			}
			defer rows.Close()
			var got []string
			for rows.Next() {
				var speed string
				var n int
				if err := rows.Scan(&speed, &n); err != nil {
					t.Fatal(err)
				}
				got = append(got, fmt.Sprintf("%s %d", speed, n))
			}
			if list := strings.Join(got, ", "); rows.Err() != nil || list != c.want {
				t.Errorf("%q, %v; expected %q", list, rows.Err(), c.want)
			}
		})
	}
}

// Counts of missed bites beside a list of the fish that were on: both count, unless the list has missed ones too.
func TestMissesBesideAList(t *testing.T) {
	const legs = "Trip,Date,Lines in,Lines up,Lines,Knots,Short strikes\n1,2026-05-01,06:00,09:00,5,7,2\n" +
		"2,2026-05-02,06:00,09:00,5,7,1\n3,2026-05-03,06:00,09:00,4,7,0\n4,2026-05-04,06:00,09:00,4,7,1\n"
	const fish = "Trip,Time,Fish,Result\n1,07:10,wahoo,landed\n2,07:20,wahoo,pulled hook\n2,08:00,mahi,released\n" +
		"4,08:30,wahoo,landed\n"
	for rows, want := range map[string]int{fish: 8, fish + "1,08:50,,missed\n": 5} {
		dir := t.TempDir()
		s := open(t, pipeline.Config{Boat: "Tansy Reach", Zone: "UTC"})
		load(t, s, writeText(t, dir, "legs.csv", legs), writeText(t, dir, "fish.csv", rows))
		n := 0
		for _, x := range answer(t, s, queries.AskTrips) {
			n += int(x.Strikes)
		}
		if n != want {
			t.Errorf("%d strikes, expected %d", n, want)
		}
	}
}
