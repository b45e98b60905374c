package queries_test

import (
	"context"
	"os"
	"path/filepath"
	"testing"

	"wakeledger/pipeline"
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
			rows, err := s.DB.Query(context.Background(), "SELECT count(*), count(*) FILTER (WHERE outcome = 'landed') FROM strike")
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
