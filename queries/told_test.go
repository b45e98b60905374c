package queries_test

import (
	"context"
	"os"
	"path/filepath"
	"testing"

	"wakeledger/pipeline"
)

// TestToldOfBites holds that a fish that a remark let go is none of those that a list of what was kept names, and may
// be one of a list of fish; that one whose measures a remark tells is the one that the list names; and that a bite has
// the speed of its row's stretches, or that of its own remark.
func TestToldOfBites(t *testing.T) {
	const rows = "2024-05-04,06:00-08:00,6.5,4,1 skipjack,\"Let a skipjack go, too small.\"\n" +
		"2024-05-05,06:00-08:00 and 10:00-12:00,7,4,1 wahoo,Lost a mahi on the second run.\n" +
		"2024-05-06,06:00-08:00,6.5,4,,Missed one.\n2024-05-07,06:00-08:00,6.5,4,1 mahi,The mahi: 92 cm.\n"
	const bites = "Date,Lines in,Lines out,Rods,Kn,Time,Species,Result,Remarks\n" +
		"2024-06-04,06:00,10:00,4,,06:30,wahoo,kept,we were doing 9 kn\n,,,,,07:30,mahi,lost,\n" +
		"2024-06-05,06:00,10:00,5,8,06:30,wahoo,kept,\n,,,,,07:30,mahi,lost,right in the corner\n"
	for _, c := range []struct{ name, log, want string }{
		{"kept", "Date,Trolled,Knots,Rods,For the kitchen,Remarks\n" + rows,
			"[landed 6.5, landed 6.5, landed 7.0, lost 7.0, missed 6.5, released 6.5]"},
		{"fish", "Date,Trolled,Knots,Rods,Fish,Remarks\n" + rows,
			"[landed 6.5, landed 7.0, lost 7.0, missed 6.5, released 6.5]"},
		{"remarks", bites, "[landed 8.0, landed 9.0, lost 8.0, lost ?]"},
	} {
		file := filepath.Join(t.TempDir(), c.name+".csv")
		if err := os.WriteFile(file, []byte(c.log), 0o600); err != nil {
			t.Fatal(err)
		}
		s := open(t, pipeline.Config{Boat: "Tansy Reach", Zone: "UTC", Units: "metric"})
		load(t, s, file)
		rows, err := s.DB.Query(context.Background(), `SELECT list(outcome || coalesce(' ' || speed, ' ?')
			ORDER BY outcome, speed NULLS LAST)::VARCHAR
			FROM (SELECT s.outcome, coalesce(s.speed_kn, l.speed_kn) AS speed FROM strike s LEFT JOIN leg l USING (leg_id))`)
		if err != nil {
			t.Fatal(err)
		}
		defer rows.Close()
		got := ""
		if !rows.Next() {
			t.Fatal(rows.Err())
		}
		if err := rows.Scan(&got); err != nil {
			t.Fatal(err)
		}
		if got != c.want {
			t.Errorf("%s: %s, expected %s", c.name, got, c.want)
		}
	}
}
