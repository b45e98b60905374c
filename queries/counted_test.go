package queries_test

import (
	"context"
	"maps"
	"os"
	"path/filepath"
	"testing"

	"wakeledger/pipeline"
)

// Beside counts of bites, of those that were missed and of those that were lost, what is left came to the boat: the
// fish of the row's list, or its own fish and those below it. Where a row counts nothing, its list has the fish and its
// remarks the bites that were missed or lost.
func TestFishAmongCountedBites(t *testing.T) {
	for name, c := range map[string]struct {
		log  string
		want map[string]int
	}{
		"a list": {"Date,In,Out,Lines,Speed kn,Catch,Notes,Bites,Missed,Lost\n" +
			"2026-05-02,06:00,08:00,4,7,\"1 dorado, 1 wahoo\",,4,1,1\n" +
			"2026-05-09,06:00,08:00,4,8,1 skipjack let go,calm,1,0,0\n" +
			"2026-05-16,06:00,09:00,5,7,none,,2,1,1\n2026-05-23,06:00,08:00,4,7,none,,0,0,0\n",
			map[string]int{"landed": 2, "released": 1, "missed": 2, "lost": 2}},
		"remarks": {"Date,In,Out,Lines,Speed kn,Catch,Notes\n" +
			"2026-05-02,06:00,08:00,4,7,\"1 dorado, 1 wahoo\",\"lost a wahoo at the boat, 2 missed strikes, calm\"\n" +
			"2026-05-09,06:00,08:00,4,8,1 skipjack let go,calm\n" +
			"2026-05-16,06:00,09:00,5,7,none,pulled the hook on a dorado\n" +
			"2026-05-23,06:00,08:00,4,7,2 dorado,birds\n",
			map[string]int{"landed": 4, "released": 1, "missed": 2, "lost": 2}},
		"own fish": {"Date,In,Out,Lines,Speed kn,Bites,Missed,Lost,Species,Length cm,Result\n" +
			"2026-05-02,06:00,08:00,4,7,4,0,1,wahoo,104,kept\n,,,,,,,,dorado,80,kept\n" +
			"2026-05-09,06:00,08:00,4,8,2,1,0,dorado,78,released\n2026-05-16,06:00,09:00,5,7,2,1,1,,,\n" +
			"2026-05-23,06:00,08:00,4,7,0,0,0,,,\n",
			map[string]int{"landed": 2, "released": 1, "missed": 2, "lost": 2, "not logged": 1}},
		"misses beside a fish a row": {"Date,In,Out,Lines,Speed kn,Missed,Species,Length cm,Result,Lure\n" +
			"2026-05-02,06:00,08:00,4,7,1,wahoo,104,kept,plug\n2026-05-02,06:00,08:00,4,7,1,dorado,80,kept,jet\n" +
			"2026-05-02,06:00,08:00,4,7,1,dorado,,lost,jet\n2026-05-09,06:00,08:00,4,8,2,dorado,78,released,plug\n" +
			"2026-05-09,06:00,08:00,4,8,2,wahoo,,lost,jet\n2026-05-16,06:00,09:00,4,7,1,,,,\n" +
			"2026-05-23,06:00,08:00,4,7,0,wahoo,90,kept,plug\n2026-05-23,06:00,08:00,4,7,0,wahoo,99,kept,jet\n" +
			"2026-05-30,06:00,08:00,4,7,1,wahoo,,lost,jet\n",
			map[string]int{"landed": 4, "released": 1, "missed": 5, "lost": 3}},
	} {
		t.Run(name, func(t *testing.T) {
			file := filepath.Join(t.TempDir(), "log.csv")
			if err := os.WriteFile(file, []byte(c.log), 0o600); err != nil {
				t.Fatal(err)
			}
			s := open(t, pipeline.Config{Boat: "Tansy Reach", Zone: "UTC"})
			load(t, s, file)
			rows, err := s.DB.Query(context.Background(), "SELECT outcome, count(*) FROM strike GROUP BY ALL")
			if err != nil {
				t.Fatal(err)
			}
			defer rows.Close()
			got := map[string]int{}
			for rows.Next() {
				var outcome string
				var n int
				if err := rows.Scan(&outcome, &n); err != nil {
					t.Fatal(err)
				}
				got[outcome] = n
			}
			if !maps.Equal(got, c.want) {
				t.Errorf("%v, expected %v", got, c.want)
			}
		})
	}
}
