package pipeline

import (
	"os"
	"path/filepath"
	"testing"
)

// TestRemarksThatCount holds what remarks change of their rows once a season is put together: bites that the counts
// lack, bites missed that no column counts, a speed, and a day of a list of bites on which nothing struck.
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
