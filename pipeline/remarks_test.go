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
		{"bites that no count has", "Date,Hours trolled,Rods,Bites,Caught,Got away\n" +
			"2026-05-09,3,5,2,two mahi,\n2026-05-10,4,5,1,nothing,one short bite\n" +
			"2026-05-11,4,5,3,two mahi,\"a kingfish threw the hook\"\n" +
			"2026-05-12,4,5,can't read it,1 blackfin,one missed\n" +
			"2026-05-13,4,5,,1 blackfin,two missed\n",
			map[string]float64{"SELECT count(*) FROM strike": 11,
				"SELECT count(*) FROM strike WHERE outcome = 'missed'": 4}},
		{"hits and misses beside a list", "Date,In,Out,Rods,kn,Hits,Misses,Fish,Best\n" +
			"2026-05-09,06:10,11:40,4,7,3,1,2 yellowfin,41 lb (scale)\n2026-05-10,06:10,11:40,4,7,0,0,,\n" +
			"2026-05-11,06:10,11:40,4,7,6,2,\"1 wahoo, 2 mahi\",33 lb wahoo scale\n",
			map[string]float64{"SELECT count(*) FROM strike": 9,
				"SELECT count(*) FROM strike WHERE outcome = 'landed'": 5}},
		{"hours in remarks", "Date,Hours trolled,Lines,Knots,Strikes,Lost,Landed,Other fish,Remarks\n" +
			"2026-05-09,4,9,7.5,2,2,0,,calm\n" +
			"2026-05-10,,7,8,6,2,4,,\"no hours. The lines went over at a quarter past six in the morning, and " +
			"we pulled them at ten minutes to noon\"\n" +
			"2026-05-11,4,7,6.5,2,0,2,,the hours include half an hour with the lines in the boat\n" +
			"2026-05-12,,,,,,,9 black rockfish,No tuna trip. Trolled nothing at all.\n",
			map[string]float64{"SELECT round(sum(hours) * 60) FROM leg": 785, "SELECT count(*) FROM trip": 3,
				"SELECT count(*) FROM strike": 10}},
		{"one day, with and without a clock", "Day,Where,Lines in,Lines up,Hrs,Rods,Kts,Bites,Boxed,Notes\n" +
			"2026-05-09,rigs,6:15,9:45,,4,7,5,4,\n2026-05-10,rigs,7:15,9:45,,4,7,a bunch,2,\n" +
			"\"\"\"\",south,,,2,5,7,3,1,same trip after lunch\n2026-05-16,rigs,6:15,9:45,,4,7,1,1,\n" +
			"2026-05-23,rigs,,,4,4,7,1,1,\n2026-05-30,rigs,6:00,9:00,,4,7,1,1,\n",
			map[string]float64{"SELECT count(*) FROM trip": 5, "SELECT sum(hours) FROM leg": 18.5,
				"SELECT count(*) FROM strike": 13}},
		{"stretches written with each bite", "Day,Bite,Time,Fish,How it ended,At supper\n" +
			"2026-05-09,1,7:41,king,landed,\"Lines in 7:25 to 10:30, 6 rods. Then 11:05 to 12:20, 4 rods\"\n" +
			"2026-05-09,2,8:10,,missed,\"Lines in 7:25 to 10:30, 6 rods. Then 11:05 to 12:20, 4 rods\"\n" +
			"2026-05-09,3,11:32,dolphin,landed,\"Lines in 7:25 to 10:30, 6 rods. Then 11:05 to 12:20, 4 rods\"\n" +
			"2026-05-10,1,7:43,dolphin,landed,\"Lines in 7:10 to 2:00, 6 rods\"\n" +
			"2026-05-11,1,7:43,dolphin,lost,\"Lines in 7:10 to 1:10, 6 rods\"\n",
			map[string]float64{"SELECT count(*) FROM leg": 4, "SELECT count(*) FROM trip": 3,
				"SELECT round(sum(hours) * 60) FROM leg": 260 + 410 + 360}},
		{"a word that the log explains", "Dropped = never came tight. Pulled = was on and came off.,,,,,,\n" +
			"Date,Lines in,Lines up,Lines,Hits,Dropped,Pulled,Boated,Let go\n2026-05-09,06:20,07:30,5,2,1,1,0,\n" +
			"2026-05-10,06:20,07:30,5,4,1,0,3,1 aku\n2026-05-11,06:20,07:30,5,2,0,1,1,1 kawakawa\n",
			map[string]float64{"SELECT count(*) FROM strike WHERE outcome = 'missed'": 2,
				"SELECT count(*) FROM strike WHERE outcome = 'lost'":     2,
				"SELECT count(*) FROM strike WHERE outcome = 'released'": 2}},
		{"two times in one cell", "Trip #,Date,Lines In,Lines Out,# Lines,Speed,Bites,Hookups,Landed\n" +
			"1,2026-05-09,6:15,10:45,4,6.5,3,2,2\n2,2026-05-10,5:50,9:20,4,7,2,1,1\n" +
			"3,2026-05-16,6 to 10:30,,5,7,\"2, one stuck\",,1\n4,2026-05-17,5:45 - 1:15,,5,7.5,4,3,3\n" +
			"5,2026-05-23,6:30 to 8:30 & 9:30 to 1:00,,6,7,4 (2 stuck),,1\n" +
			"6,2026-05-24,6:10,11:00,6,7,\"1, didnt stick\",,\n",
			map[string]float64{"SELECT round(sum(hours) * 60) FROM leg": 270 + 210 + 270 + 450 + 330 + 290,
				"SELECT count(*) FROM strike": 16, "SELECT count(*) FROM strike WHERE hooked": 9}},
		{"another way under what became of it", "Date,Time,Fish,Length cm,What became of it\n" +
			"2026-05-09,07:10,wahoo,110,home\n2026-05-09,07:30,wahoo,90,let go\n2026-05-10,08:10,pargo,52,bottom\n" +
			"2026-05-11,08:10,wahoo,95,home\n2026-05-12,08:10,bonito,,lost\n",
			map[string]float64{"SELECT count(*) FROM strike WHERE outcome = 'landed'": 2,
				"SELECT count(*) FROM strike": 4}},
		{"rows that stand for several", "Date,Time,Event,Lines,Kts,x,Result,Fish\n2026-05-09,0600,LINES IN,6,7,,,\n" +
			",0630,STRIKE,,,3,MISS,\n,0700,STRIKE,,,,ABOARD,albacore\n,0730,STRIKE,,,2,OFF,\n,0900,LINES OUT,,,,,\n" +
			"2026-05-10,0600,LINES IN,6,7,,,\n,0630,STRIKE,,,3,REL,albacore\n,0900,LINES OUT,,,,,\n",
			map[string]float64{"SELECT count(*) FROM strike": 9}},
		{"lost and missed", "Date,Lines in,Lines up,Kts,What we got,Lost/missed\n" +
			"2026-05-09,6:30,11:15,7,2 yft (62 and 58 in),1 missed\n2026-05-10,6:15,12:00,7.5,skunked,\n" +
			"2026-05-11,6:40,11:10,7,1 yft 71 lb on the scale; 1 wahoo,lost a big one at the boat\n" +
			"2026-05-12,6:30,10:30,8,1 mahi released,2 missed\n2026-05-13,7:00,11:00,7,\"3 yft, kept 2\",\n",
			map[string]float64{"SELECT count(*) FROM strike": 12,
				"SELECT count(*) FROM strike WHERE outcome = 'missed'":   3,
				"SELECT count(*) FROM strike WHERE outcome = 'released'": 2}},
		{"all let go", "Date,Lines in,Lines out,Lines,Knots,Strikes,Lost,Landed,Released,Remarks\n" +
			"2026-05-09,07:00,12:00,4,8,4,1,2,0,nice day\n2026-05-10,07:00,12:00,4,8,4,1,3,,all released\n" +
			"2026-05-11,07:00,12:00,4,8,3,1,2,,both released\n",
			map[string]float64{"SELECT count(*) FROM strike WHERE outcome = 'released'": 5,
				"SELECT count(*) FROM strike WHERE outcome = 'landed'": 2}},
		{"one let go", "Date,Lines in,Lines out,Lines,Knots,Bites,Landed,Species,Remarks\n" +
			"2026-05-09,07:00,12:00,4,8,2,2,mahi,let one go\n2026-05-10,07:00,12:00,4,8,4,2,mahi,calm\n" +
			"2026-05-11,07:00,12:00,4,8,4,2,mahi,released one\n",
			map[string]float64{"SELECT count(*) FROM strike WHERE outcome = 'released'": 1,
				"SELECT count(*) FROM strike": 10}},
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
