package pipeline

import (
	"os"
	"path/filepath"
	"testing"
)

// TestRemarksThatCount holds what remarks change of their rows once a season is put together: bites that the counts
// lack, bites missed that no column counts, a speed, and a day of a list of bites on which nothing struck; and what
// words in cells of days, hours and weights tell.
func TestRemarksThatCount(t *testing.T) {
	for _, c := range []struct {
		name, log string
		want      map[string]float64
	}{
		{"not counted", "Date,Lines in,Lines out,Lines,Knots,Bites,Boated,Remarks\n" +
			"2026-05-01,07:00,12:00,4,8,2,1,\"plus missed one, not counted\"\n" +
			"2026-05-02,07:00,12:00,4,8,1,1,had 3 bonito for bait\n" +
			"2026-05-03,07:00,12:00,4,8,,,missed two - not in the count\n",
			map[string]float64{"SELECT count(*) FROM strike": 6,
				"SELECT count(*) FROM strike WHERE outcome = 'landed'": 2}},
		{"no column", "Date,Lines in,Lines out,Lines,Knots,Boated,Lost,Remarks\n" +
			"2026-05-01,07:00,12:00,4,8,1,0,two hits that did not stick; calm\n2026-05-02,07:00,12:00,4,8,1,1,\n" +
			"2026-05-03,07:00,12:00,4,8,0,0,missed one\n",
			map[string]float64{"SELECT count(*) FROM strike": 6,
				"SELECT count(*) FROM strike WHERE outcome = 'missed'": 3}},
		{"speeds", "Date,Lines in,Lines out,Lines,Bites,Boated,Lost,Remarks\n" +
			"2026-05-01,07:00,12:00,4,1,1,0,7 kn today\n" +
			"2026-05-02,07:00,12:00,4,1,1,0,ran home at 20 kn\n2026-05-03,07:00,12:00,4,1,0,1,ran them at 9 kn\n",
			map[string]float64{"SELECT count(*) FROM leg WHERE speed_kn IS NULL": 1,
				"SELECT max(speed_kn) FROM leg": 9}},
		{"quiet days", "Date,Time,Lure,Fish,What happened\n" +
			"2026-05-01,07:10,pink squid,wahoo,landed\n2026-05-02,,,,no bites\n" +
			"2026-05-03,09:10,pink squid,,missed\n2026-05-03,10:10,cedar plug,mahi,lost\n2026-05-04,,,,nothing\n",
			map[string]float64{"SELECT count(*) FROM trip": 4, "SELECT count(*) FROM strike": 3}},
		{"a trip without hours", "Date,Hours trolled,Lines,Knots,Bites,Boated\n" +
			"2026-05-01,5,5,7,3,3\n2026-05-02,half day,5,7,0,0\n2026-05-03,?,5,7,0,0\n2026-05-04,4,5,7,1,1\n",
			map[string]float64{"SELECT count(*) FROM trip": 4, "SELECT sum(hours) FROM leg": 9}},
		{"the day after", "Date,Hours trolled,Lines,Knots,Bites,Boated\n" +
			"2026-05-09,5,5,7,3,3\n2026-05-16,4,5,7,0,0\n2nd day,4,5,7,1,1\n2026-05-23,4,5,7,1,1\nnext day,4,5,7,1,1\n",
			map[string]float64{"SELECT count(*) FROM trip": 4, "SELECT sum(hours) FROM leg": 21,
				"SELECT count(*) FROM trip WHERE date = '2026-05-24'": 1}},
		{"a speed behind the hours", "Date,Hours trolled,Lines,Bites,Boated\n" +
			"2026-05-09,5,5,3,3\n2026-05-10,\"3 1/4 fast, 14 kts\",5,1,1\n2026-05-11,2 1/2,5,1,1\n2026-05-12,3,5,1,1\n",
			map[string]float64{"SELECT sum(hours) FROM leg": 13.75, "SELECT max(speed_kn) FROM leg": 14}},
		{"weights of those counted", "Date,Hours trolled,Lines,Bites,Boated,Scale kg\n" +
			"2026-05-09,5,5,3,3,7.6 + 7.7\n2026-05-10,5,5,1,1,8.2\n2026-05-11,5,5,1,1,4.0 + 5.0\n",
			map[string]float64{"SELECT sum(scale_kg) FROM fish": 23.5, "SELECT count(*) FROM strike": 5}},
	} {
		path := filepath.Join(t.TempDir(), "log.csv")
		if err := os.WriteFile(path, []byte(c.log), 0o644); err != nil {
			t.Fatal(err)
		}
		s := openSeason(t)
		if _, err := s.Load(t.Context(), []string{path}); err != nil {
			t.Fatal(err)
		}
		for query, want := range c.want {
			if got := totalOf(t, s, query); got != want {
				t.Errorf("%s: %s: %v, expected %v", c.name, query, got, want)
			}
		}
	}
}
