package pipeline

import (
	"context"
	"errors"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// answerCases are logs that leave one question of a kind open, and what each answer makes of
// a total.
var answerCases = []struct {
	kind, log, total string
	open             float64
	answers          map[string]float64
}{
	{"own hours",
		"Date,Start,End,Hours,Lines,Bites\n2026-07-04,07:00,09:00,1.5,4,1\n2026-07-05,07:00,09:00,1.5,4,0\n" +
			"2026-07-06,07:00,10:00,2.5,4,2\n",
		"SELECT sum(hours) FROM leg", 7, map[string]float64{"your hours": 5.5, "the clock times": 7}},
	{"overlap",
		"Date,Start,End,Lines,Bites\n2026-07-04,07:00,09:00,4,1\n2026-07-05,07:00,09:00,4,1\n" +
			"2026-07-05,07:30,09:00,4,2\n2026-07-06,07:00,09:00,4,2\n",
		"SELECT count(*) FROM strike", 6, map[string]float64{"count the later": 5, "count both": 6}},
	{"inclusive",
		"Date,Start,End,Lines,Hooked,Landed,Released\n2026-07-04,07:00,09:00,4,5,2,1\n" +
			"2026-07-05,07:00,09:00,4,4,2,1\n2026-07-06,07:00,09:00,4,1,1,0\n",
		"SELECT count(*) FILTER (WHERE outcome = 'landed') FROM strike", 5, map[string]float64{"yes": 3, "no": 5}},
	{"no lines", "Date,Start,End,Speed " +
		"(kn),Bites\n2026-07-04,07:00,09:00,8,1\n2026-07-05,07:00,09:00,8,0\n2026-07-06,07:00,08:00,8,2\n",
		"SELECT sum(line_hours) FROM effort", 0, map[string]float64{"6": 30, "leave": 0}},
	{"two tellings",
		"Date,Start,End,Lines,Bites\n2026-07-04,07:00,09:00,4,2\n2026-07-05,07:00,09:00,4,1\n" +
			"2026-07-06,07:00,09:00,4,2\n\n" +
			"Date,Time,Outcome,Species\n2026-07-04,07:30,landed,wahoo\n2026-07-05,07:30,lost,wahoo\n" +
			"2026-07-06,07:30,missed,\n",
		"SELECT count(*) FROM strike", -1, map[string]float64{"1": 5, "2": 3}},
	{"column",
		"Date,Start,End,Lines,Zz\n2026-07-04,07:00,09:00,4,2\n2026-07-05,07:00,09:00,4,0\n" +
			"2026-07-06,07:00,08:00,4,3\n2026-07-07,07:00,08:00,4,1\n",
		"SELECT count(*) FROM strike", 0, map[string]float64{"bites": 6, "none of these": 0}},
	{"column", "Date,Species,Length (cm),Zz\n2026-07-04,wahoo,120,y\n2026-07-05,wahoo,150,n\n2026-07-06,wahoo,130,y\n",
		"SELECT count(*) FILTER (WHERE outcome = 'released') FROM strike", 0,
		map[string]float64{"whether the fish was let go": 2, "whether the fish was kept": 1, "none of these": 0}},
	{"column",
		"Date,Start,End,Lines,Wahoo,Zz,Mahi\n2026-07-04,07:00,09:00,4,2,1,0\n2026-07-05,07:00,09:00,4,0,0,1\n" +
			"2026-07-06,07:00,08:00,4,3,1,1\n2026-07-07,07:00,08:00,4,1,2,0\n",
		"SELECT count(*) FROM strike", 8, map[string]float64{"a count of its species": 12, "none of these": 8}},
	{"caught",
		"Date,Start,End,Lines,Wahoo,Mahi\n2026-07-04,07:00,09:00,4,2,1\n2026-07-05,07:00,09:00,4,0,0\n" +
			"2026-07-06,07:00,08:00,4,3,1\n2026-07-07,07:00,08:00,4,1,2\n",
		"SELECT count(*) FILTER (WHERE outcome = 'landed') FROM strike", 0,
		map[string]float64{"yes": 10, "hooked, some lost": 0}},
	// a code that a comment explains, in words that are no way of fishing here
	{"word",
		"# gear L = trolling lures  Z = zarking the ledge\nDate,Start,End,Lines,gear,Bites\n" +
			"2026-07-04,07:00,09:00,4,L,1\n" +
			"2026-07-05,07:00,09:30,4,Z,3\n2026-07-06,07:00,08:00,4,L,0\n2026-07-07,07:00,08:00,4,Z,1\n" +
			"2026-07-08,07:00,08:00,4,L,1\n2026-07-09,07:00,08:00,4,L,2\n",
		"SELECT sum(hours) FROM leg", 8.5, map[string]float64{"trolled": 8.5, "not trolled: leave it out": 5}},
	{"no end",
		"Date,Start,End,Lines,Bites\n2026-07-04,07:00,09:00,4,1\n2026-07-05,07:00,,4,2\n2026-07-06,07:00,08:00,4,2\n",
		"SELECT sum(hours) FROM leg", 3, map[string]float64{"09:30": 5.5, "leave": 3, "leave the hours out": 3}},
	{"long",
		"Date,Start,End,Lines,Bites\n2026-07-04,07:00,09:00,4,1\n2026-07-05,12:05,01:20,4,2\n" +
			"2026-07-06,07:00,08:00,4,2\n",
		"SELECT sum(hours) FROM leg", 4.25, map[string]float64{"1": 4.25, "13:50": 4.75, "2": 16.25,
			"no, the next day at 01:20": 16.25}},
	// several at once
	{"long ones",
		"Date,Start,End,Lines,Bites\n2026-07-04,07:00,16:00,4,1\n2026-07-05,08:00,01:30,4,2\n" +
			"2026-07-06,09:00,01:00,4,2\n2026-07-07,10:00,02:00,4,2\n2026-07-08,11:00,03:00,4,2\n" +
			"2026-07-09,07:00,10:00,4,1\n2026-07-10,07:00,10:00,4,1\n2026-07-11,07:00,10:00,4,1\n",
		"SELECT sum(hours) FROM leg", 35.5, map[string]float64{"1": 35.5, "2": 83.5, "no, the next day": 83.5}},
	// the end of the row's second stretch, not that of its first
	{"long", "Date,AM start,AM end,AM lines,PM start,PM end,PM lines\n2026-07-04,07:00,09:00,4,13:00,15:00,4\n" +
		"2026-07-06,07:00,09:00,4,12:05,01:20,4\n2026-07-08,07:00,08:00,4,13:00,14:00,5\n2026-07-10,07:00,08:00,4,,,\n",
		"SELECT sum(hours) FROM leg", 10.25, map[string]float64{"1": 10.25, "2": 22.25}},
	{"year",
		"Date,Start,End,Lines,Bites\n2026-07-04,07:00,09:00,4,1\n2025-07-05,07:00,09:00,4,2\n" +
			"2026-07-06,07:00,08:00,4,2\n2026-07-07,07:00,08:00,4,0\n2026-07-08,07:00,08:00,4,1\n",
		"SELECT count(DISTINCT year(date)) FROM trip", 2, map[string]float64{"1": 1, "2": 2}},
	{"order",
		"Date,Start,End,Lines,Bites\n3/4/2026,07:00,09:00,4,1\n5/4/2026,07:00,09:00,4,2\n6/5/2026,07:00,08:00,4,2\n",
		"SELECT count(*) FILTER (WHERE month(date) = 4) FROM trip", 0, map[string]float64{"the day first": 2, "2": 0}},
	{"word", "Date,Start,End,Speed " +
		"(kn),Lines,Bites\n2026-07-04,07:00,09:00,8,4,1\n2026-07-05,07:00,09:00,8,4,2\n" +
		"2026-07-06,07:00,08:00,becalmed,4,0\n2026-07-07,07:00,09:00,7,4,2\n",
		"SELECT sum(hours) FROM leg", 7, map[string]float64{"not trolling: leave it out": 6,
			"not trolling: leave it out: 6.0 h, 24.0 line-hours": 6, "not known": 7, "leave": 7, "5.5": 7}},
	{"word",
		"Date,Start,End,Lines,Bites\n2026-07-04,07:00,09:00,5,1\n2026-07-05,07:00,08:00,5 o 6,2\n" +
			"2026-07-06,07:00,08:00,4,2\n",
		"SELECT sum(line_hours) FROM effort", 14, map[string]float64{"1": 19, "2": 20, "not known": 14, "4": 18}},
	{"word",
		"Date,Time,Outcome,Species\n2026-07-04,07:30,landed,wahoo\n2026-07-05,07:30,zonked,wahoo\n" +
			"2026-07-06,07:30,lost,wahoo\n2026-07-07,07:30,missed,\n2026-07-08,07:30,zonked,wahoo\n",
		"SELECT count(*) FILTER (WHERE outcome = 'lost') FROM strike", 1,
		map[string]float64{"landed": 1, "hooked and lost": 3}},
	{"blank",
		"Date,Time,Outcome,Species\n2026-07-04,07:30,landed,wahoo\n2026-07-05,07:30,,wahoo\n" +
			"2026-07-06,07:30,lost,wahoo\n2026-07-07,07:30,missed,\n2026-07-08,07:30,,mahi\n" +
			"2026-07-08,07:50,lost,mahi\n",
		"SELECT count(*) FILTER (WHERE outcome = 'landed') FROM strike", 1,
		map[string]float64{"landed": 3, "hooked and lost": 1, "not known": 1}},
	// so it is of what its writer does not know
	{"blank",
		"Date,Time,Event,Lines,Fish,Result\n2026-07-04,07:00,lines in,4,,\n,07:30,bite,,wahoo,landed\n" +
			",08:00,bite,,,?\n,08:20,bite,,,missed\n,09:00,lines up,,,\n2026-07-05,07:00,lines in,4,,\n" +
			",07:30,bite,,mahi,lost\n,09:00,lines up,,,\n",
		"SELECT count(*) FILTER (WHERE outcome = 'lost') FROM strike", 1,
		map[string]float64{"hooked and lost": 2, "not known": 1}},
	// one that was taped was at the boat, whatever the others were
	{"blank",
		"Date,Time,Outcome,Species,Length (cm)\n2026-07-04,07:30,released,wahoo,\n2026-07-05,07:30,,wahoo,121\n" +
			"2026-07-06,07:30,lost,wahoo,\n2026-07-07,07:30,missed,,\n2026-07-08,07:30,,mahi,\n" +
			"2026-07-08,07:50,lost,mahi,\n",
		"SELECT count(*) FILTER (WHERE outcome = 'landed') FROM strike", 1,
		map[string]float64{"landed": 2, "hooked and lost": 1}},
	{"bare",
		"Date,Time,Outcome,Species,Lbs\n2026-07-04,07:30,landed,wahoo,31.5 scale\n2026-07-05,07:30,landed,wahoo,28\n" +
			"2026-07-06,07:30,lost,wahoo,\n2026-07-07,07:30,landed,wahoo,35 on the scale\n" +
			"2026-07-08,07:30,landed,mahi,17\n2026-07-08,07:50,landed,mahi,about 20\n",
		"SELECT count(scale_kg) FROM fish", 4, map[string]float64{"yes": 4, "no, guesses": 2}},
	{"bitten",
		"Date,Start,End,Lines,Hooked,Missed,Lost,Landed\n2026-07-04,07:00,09:00,4,5,2,1,2\n" +
			"2026-07-05,07:00,09:00,4,4,1,1,2\n2026-07-06,07:00,08:00,4,3,1,1,1\n",
		"SELECT count(*) FROM strike", 16, map[string]float64{"no": 16, "yes": 12}},
	{"stray",
		"Date,Start,End,Lines,Bites\n2026-07-04,07:00,09:00,4,2\n2026-07-05,07:00,09:00,4,1\n" +
			"2026-07-06,07:00,09:00,4,2\n\n\nFish,Length (cm),Weight (kg)\nwahoo,120,9\nwahoo,150,20\n",
		"SELECT count(*) FROM strike", 7, map[string]float64{"no, leave the table out": 5, "yes": 7}},
	{"two trips",
		"Date,Start,End,Lines,Bites,Deck\n2026-07-04,07:00,08:00,4,2,41\n,09:00,10:00,4,1,\n" +
			"2026-07-05,07:00,08:00,4,2,38\n,09:00,10:00,4,2,\n2026-07-06,07:00,08:00,4,2,44\n,09:00,10:00,4,1,\n" +
			"2026-07-07,07:00,08:00,4,2,40\n2026-07-07,13:00,14:00,4,2,39\n,15:00,16:00,4,2,\n" +
			"2026-07-08,07:00,08:00,4,2,42\n,09:00,10:00,4,1,\n",
		"SELECT count(*) FROM trip", 5, map[string]float64{"one trip a day": 5, "two trips": 6}},
	{"dayless",
		"Date,In,Out,Lines,Bites\n2026-07-04,07:00,09:00,4,1\n2026-07-05,07:00,09:00,4,0\n" +
			"2026-07-06,07:00,09:00,4,2\n\n\nSpot,Hours,Lines,Bites\nledge,4,4,3\ncanyon,1,3,1\n",
		"SELECT sum(hours) FROM leg", 11, map[string]float64{"no, leave them out": 6, "yes, count them": 11}},
	{"untrolled",
		"Date,In,Out,Lines\n2026-07-04,07:00,09:00,4\n2026-07-05,07:00,09:00,4\n2026-07-06,07:00,09:00,4\n\n\n" +
			"Date,Time,Fish,Result\n2026-07-04,07:30,wahoo,landed\n2026-07-05,07:40,wahoo,lost\n" +
			"2026-07-06,07:50,wahoo,landed\n2026-07-06,08:10,,missed\n\n\nDate,Fish,Length (cm)\n" +
			"2026-07-05,grouper,61\n2026-07-05,grouper,58\n2026-07-06,snapper,40\n2026-07-06,wahoo,118\n",
		"SELECT count(*) FROM strike", -1, map[string]float64{"no, leave them out": 4}},
	{"untrolled",
		"Trip,Date,Left,Home\n1,2026-07-04,06:00,12:00\n2,2026-07-05,06:00,12:00\n3,2026-07-06,06:00,11:00\n" +
			"4,2026-07-07,06:00,12:00\n5,2026-07-08,06:00,10:00\n\n\nTrip,In,Out,Lines\n1,07:00,09:00,4\n" +
			"2,07:00,09:00,4\n3,07:00,09:00,4\n4,07:00,09:00,4\n",
		"SELECT count(*) FROM trip", 5, map[string]float64{"no, leave them out": 4, "yes, count them": 5}},
	{"untrolled",
		"Trip,Date,In,Out,Lines\n1,2026-07-04,07:00,09:00,4\n2,2026-07-05,07:00,09:00,4\n3,2026-07-06,07:00,09:00,4\n" +
			"4,2026-07-07,07:00,09:00,4\n\n\nTrip,Time,Fish,Result\n1,07:30,wahoo,landed\n2,07:40,wahoo,lost\n" +
			"3,07:50,wahoo,landed\n4,08:10,wahoo,landed\n5,08:10,wahoo,landed\n",
		"SELECT count(*) FROM strike", 5, map[string]float64{"no, leave them out": 4, "yes, count them": 5}},
	{"untrolled",
		"Date,Time,Fish,Result\n2026-07-04,07:30,wahoo,landed\n2026-07-05,07:40,wahoo,lost\n" +
			"2026-07-05,07:50,wahoo,missed\n\n\nDate,Litres,Where\n2026-06-01,210,fuel dock\n" +
			"2026-06-20,190,fuel dock\n2026-07-01,220,fuel dock\n",
		"SELECT count(*) FROM trip", 5, map[string]float64{"no, leave them out": 2, "yes": 5}},
	{"untrolled",
		"Date,In,Out,Lines,Bites\n2026-07-04,07:00,09:00,4,1\n2026-07-05,07:00,09:00,4,0\n" +
			"2026-07-06,07:00,09:00,4,2\n2026-07-07,07:00,09:00,4,1\n\n\nDate,Litres,Cost,Where " +
			"from\n2026-07-04,120,210.50,jetty\n2026-07-06,80,140.00,jetty\n" +
			"2026-07-15,95,166.25,truck\n2026-07-18,60,105.00,truck\n",
		"SELECT count(*) FROM trip", 6, map[string]float64{"no, leave them out": 4, "yes": 6}},
	{"untrolled",
		"No,Date,Skipper,Ramp\n1,2026-07-04,Ana,north\n2,2026-07-05,Ana,north\n3,2026-07-06,Bo,north\n" +
			"4,2026-07-07,Bo,south\n5,2026-07-08,Bo,south\n\n\nTrip,In,Out,Lines,Bites\n1,07:00,09:00,4,1\n" +
			"2,07:00,09:00,4,0\n3,07:00,09:00,4,2\n5,07:00,09:00,4,1\n",
		"SELECT count(*) FROM trip", 5, map[string]float64{"no, leave them out": 4, "yes": 5}},
	{"other hours",
		"Date,Start,End,Lines,Bites,Remarks\n2026-07-04,07:00,11:00,4,2,jigged the bank 1.5 h\n" +
			"2026-07-05,07:00,09:00,4,1,\"bottom after, 2 h\"\n" +
			"2026-07-06,07:00,09:00,4,2,drifted 30 min at the buoy\n" +
			"2026-07-07,07:00,09:00,4,0,home in 2 h\n",
		"SELECT sum(hours) FROM leg", 10, map[string]float64{"no": 10, "yes, take it off": 8}},
	{"unnumbered",
		"Trip,Date,Start,End,Lines,Bites\n1,2026-07-04,07:00,08:00,4,2\n1,2026-07-04,08:10,09:00,4,2\n" +
			"2,2026-07-05,07:00,08:00,4,1\n,2026-07-06,07:00,09:00,4,1\n3,2026-07-11,07:00,09:00,4,0\n",
		"SELECT count(*) FROM trip", 4, map[string]float64{"a trip of its own": 4, "of the trip above": 3}},
	{"parts",
		"Trip,Date,Start,End,Lines,Bites\n1,2026-07-04,07:00,08:00,4,2\n2a,2026-07-05,07:00,08:00,4,2\n" +
			"2b,2026-07-05,08:10,09:00,2,0\n3a,2026-07-06,06:00,09:00,4,1\n3b,2026-07-06,14:00,17:00,4,2\n" +
			"4,2026-07-07,07:00,09:00,4,0\n",
		"SELECT count(*) FROM trip", 4, map[string]float64{"one trip": 4, "a trip for each letter": 6}},
}

func TestAnswers(t *testing.T) {
	for _, c := range answerCases {
		t.Run(c.kind, func(t *testing.T) {
			path := filepath.Join(t.TempDir(), "log.csv")
			if err := os.WriteFile(path, []byte(c.log), 0o644); err != nil {
				t.Fatal(err)
			}
			for text, want := range c.answers {
				s := openSeason(t)
				id := askedID(t, s, path, c.kind)
				if got := totalOf(t, s, c.total); c.open >= 0 && got != c.open {
					t.Errorf("open: %v, want %v", got, c.open)
				}
				if err := s.Answer(t.Context(), []string{path}, map[string]string{id: text}); err != nil {
					t.Fatal(err)
				}
				r, err := s.Load(t.Context(), []string{path})
				if err != nil || r[0].Known != ReadAgain {
					t.Fatalf("not read again: %+v, %v", r, err)
				}
				for _, q := range r[0].Questions {
					if q.ID == id {
						t.Errorf("answered with %q, and asked again: %s", text, q.Text)
					}
				}
				if got := totalOf(t, s, c.total); got != want {
					t.Errorf("answered with %q: %v, want %v", text, got, want)
				}
			}
		})
	}
}

func TestAnswerThatDoesNotFit(t *testing.T) {
	path := filepath.Join(t.TempDir(), "log.csv")
	if err := os.WriteFile(path, []byte(answerCases[0].log), 0o644); err != nil {
		t.Fatal(err)
	}
	s := openSeason(t)
	id := askedID(t, s, path, answerCases[0].kind)
	for _, said := range []map[string]string{{id: "3"}, {id: "mine"}, {"q000000": "1"}, {id: "1", "q000000": "1"}} {
		if err := s.Answer(t.Context(), []string{path}, said); !errors.Is(err, ErrAnswer) {
			t.Errorf("%v: %v", said, err)
		}
	}
	if kept, err := s.DB.Answers(t.Context()); err != nil || len(kept) > 0 {
		t.Errorf("kept %v, %v", kept, err)
	}
}

// An answer holds for the headings of its hand alone.
func TestAnswerOfAnotherHand(t *testing.T) {
	dir := t.TempDir()
	mine, theirs := filepath.Join(dir, "mine.csv"), filepath.Join(dir, "theirs.csv")
	log := "Date,Start,End,Speed " +
		"(kn),Bites\n2026-07-04,07:00,09:00,8,1\n2026-07-05,07:00,09:00,8,0\n2026-07-06,07:00,08:00,8,2\n"
	other := "Day,Lines in,Lines up,Knots,Strikes\n2026-08-04,07:00,09:00,8,1\n2026-08-05,07:00,09:00,8,0\n" +
		"2026-08-06,07:00,08:00,8,2\n"
	for name, text := range map[string]string{mine: log, theirs: other} {
		if err := os.WriteFile(name, []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	s := openSeason(t)
	id := askedID(t, s, mine, "no lines")
	if err := s.Answer(t.Context(), []string{mine}, map[string]string{id: "6"}); err != nil {
		t.Fatal(err)
	}
	if askedID(t, s, theirs, "no lines") == id {
		t.Error("the same question for two hands")
	}
}

func openSeason(t *testing.T) *Season {
	t.Helper()
	s, err := Open(t.Context(), "", Config{})
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { _ = s.DB.Close() })
	return s
}

// askedID loads a log and is the id of its question of a kind.
func askedID(t *testing.T, s *Season, path, kind string) string {
	t.Helper()
	r, err := s.Load(t.Context(), []string{path})
	if err != nil {
		t.Fatal(err)
	}
	for _, q := range r[0].Questions {
		if q.Kind == kind {
			return q.ID
		}
	}
	t.Fatalf("no question of kind %q among %+v; sheets %+v", kind, r[0].Questions, r[0].Sheets)
	return ""
}

func totalOf(t *testing.T, s *Season, query string) float64 {
	t.Helper()
	if err := s.Derive(context.Background()); err != nil {
		t.Fatal(err)
	}
	rows, err := s.DB.Query(t.Context(), query)
	if err != nil {
		t.Fatal(err)
	}
	defer rows.Close()
	var v float64
	if !rows.Next() || rows.Scan(&v) != nil {
		t.Fatalf("%s: no figure", query)
	}
	return v
}

// TestFishOfUntrolledStrikes holds that fish of a list go with the strikes that they name, where these were not
// trolled: on a live bait. Others stay.
func TestFishOfUntrolledStrikes(t *testing.T) {
	for bait, want := range map[string]float64{"live bait at the buoy": 4, "pink squid": 5} {
		path := filepath.Join(t.TempDir(), "log.csv")
		log := "Trip,Date,In,Out,Lines\n1,2026-07-04,07:00,09:00,4\n2,2026-07-05,07:00,09:00,4\n" +
			"3,2026-07-06,07:00,09:00,4\n4,2026-07-07,07:00,09:00,4\n\n\nHit,Trip,Time,Lure,Fish,Result\n" +
			"1,1,07:30,blue plug,wahoo,landed\n2,2,07:40,blue plug,wahoo,lost\n3,2,08:20," + bait +
			",mahi,landed\n4,3,07:50,cedar plug,tuna,landed\n5,4,08:10,cedar plug,tuna,landed\n\n\n" +
			"Hit,Fish,Weight (kg)\n1,wahoo,11.5\n3,mahi,4.2\n4,tuna,17\n5,tuna,15.5\n"
		if err := os.WriteFile(path, []byte(log), 0o644); err != nil {
			t.Fatal(err)
		}
		s := openSeason(t)
		r, err := s.Load(t.Context(), []string{path})
		if err != nil {
			t.Fatal(err)
		}
		if got := totalOf(t, s, "SELECT count(*) FROM strike"); got != want {
			t.Errorf("%s: %v strikes, expected %v: %+v", bait, got, want, r[0])
		}
		told := false
		for _, x := range r[0].Sheets {
			told = told || strings.Contains(strings.Join(x.Notes, " "), "that was not trolled")
		}
		if told != (want == 4) {
			t.Errorf("%s: that a fish is left out is told: %v", bait, told)
		}
	}
}

// TestBlankFateOfLog holds that a blank cell means what the log says it does where a row names a bite, and that one
// which says nothing, or that nothing bit, is none.
func TestBlankFateOfLog(t *testing.T) {
	path := filepath.Join(t.TempDir(), "log.csv")
	log := "empty under Result = in the fish box\nDate,Time,Fish,Result,Remarks\n2026-07-04,07:30,wahoo,,\n" +
		"2026-07-05,07:30,wahoo,came off,\n2026-07-06,07:40,mahi,,\n2026-07-07,,,,skunked\n2026-07-08,,,,\n" +
		"2026-07-09,08:10,,missed,\n"
	if err := os.WriteFile(path, []byte(log), 0o644); err != nil {
		t.Fatal(err)
	}
	s := openSeason(t)
	if _, err := s.Load(t.Context(), []string{path}); err != nil {
		t.Fatal(err)
	}
	for query, want := range map[string]float64{"SELECT count(*) FROM strike": 4,
		"SELECT count(*) FILTER (WHERE outcome = 'landed') FROM strike": 2} {
		if got := totalOf(t, s, query); got != want {
			t.Errorf("%s: %v, expected %v", query, got, want)
		}
	}
}

// TestNightOfOneTrip holds that the next morning's stretches below the days of an outing are of its second day, that
// all are one trip, and that a bite of that day is of its stretch.
func TestNightOfOneTrip(t *testing.T) {
	path := filepath.Join(t.TempDir(), "log 2026.csv")
	log := "Date,Gear in,Gear up,Lines,Knots\n4 July 2026,07:00,09:00,4,7\n10-11 July 2026,17:00,19:00,4,7\n" +
		",05:30,08:00,4,7\n,08:20,10:00,4,7\n18 July 2026,06:30,08:00,4,7\n,09:30,11:00,4,7\n\n\n" +
		"Date,Time,Fish,Result\n4 July 2026,08:10,wahoo,boated\n11 July 2026,06:10,mahi,lost\n" +
		"11 July 2026,09:10,mahi,boated\n18 July 2026,10:10,mahi,boated\n"
	if err := os.WriteFile(path, []byte(log), 0o644); err != nil {
		t.Fatal(err)
	}
	s := openSeason(t)
	r, err := s.Load(t.Context(), []string{path})
	if err != nil {
		t.Fatal(err)
	}
	for query, want := range map[string]float64{"SELECT count(*) FROM trip": 3,
		"SELECT count(leg_id) FROM strike": 4} {
		if got := totalOf(t, s, query); got != want {
			t.Errorf("%s: %v, expected %v", query, got, want)
		}
	}
	for _, q := range r[0].Questions {
		t.Errorf("asked: %s", q.Text)
	}
}

// TestLinesOfKinds holds that a text with lines of several kinds is read as a table of each, and that a kind of which
// the log says that it was not trolled counts in no rate.
func TestLinesOfKinds(t *testing.T) {
	path := filepath.Join(t.TempDir(), "carnet.csv")
	log := "# VIAJE = salida; LANCE = inicio / fin / lineas / nudos; PIQUE = hora / pez / resultado / peso / talla; " +
		"OTRO = peces fuera, no al curricán\n" +
		"VIAJE,1,03/06/2026,Ana,mar llana\nLANCE,06:00,09:00,4,7\nPIQUE,06:30,dorado,a bordo,7.5 kg báscula,98 cm\n" +
		"PIQUE,07:40,,fallado,,\nVIAJE,2,10/06/2026,Ana,\nLANCE,06:10,09:10,5,7\nLANCE,10:00,11:00,5,8\n" +
		"PIQUE,10:20,peto,suelto,± 14 kg,\nOTRO,11:40,mero,a bordo,4.2 kg báscula,61 cm\nVIAJE,3,19/06/2026,Leo,\n" +
		"LANCE,06:00,10:00,4,7\nPIQUE,08:00,peto,a bordo,11.2 kg báscula,130 cm\nPIQUE,09:10,dorado,perdido,,\n" +
		"OTRO,,mero,a bordo,,55 cm\n"
	if err := os.WriteFile(path, []byte(log), 0o644); err != nil {
		t.Fatal(err)
	}
	s := openSeason(t)
	r, err := s.Load(t.Context(), []string{path})
	if err != nil {
		t.Fatal(err)
	}
	for query, want := range map[string]float64{"SELECT count(*) FROM trip": 3,
		"SELECT sum(line_hours) FROM effort": 48,
		"SELECT count(*) FROM strike":        5, "SELECT count(scale_kg) FROM fish": 2} {
		if got := totalOf(t, s, query); got != want {
			t.Errorf("%s: %v, expected %v: %+v", query, got, want, r[0].Sheets)
		}
	}
	for _, q := range r[0].Questions {
		t.Errorf("asked: %s", q.Text)
	}
}

// TestSpeedOfABite holds that a bite has the speed that its fish's words say it came at, where its day has none.
func TestSpeedOfABite(t *testing.T) {
	path := filepath.Join(t.TempDir(), "log.csv")
	log := "Date,Hours,Rods,Knots,Bites,Missed,Lost,Landed,Best fish\n2026-07-04,4,4,7,2,1,0,1,wahoo 9.1 kg\n" +
		"2026-07-05,4,4,,3,1,0,2,\"wahoo 13.4 kg, bit at 7.5 knots; mahi 7.2 kg\"\n" +
		"2026-07-06,4,4,7,1,0,0,1,\"mahi 8.2 kg, bit at 9 kn\"\n" +
		"2026-07-07,4,4,8,1,0,1,0,\n"
	if err := os.WriteFile(path, []byte(log), 0o644); err != nil {
		t.Fatal(err)
	}
	s := openSeason(t)
	if _, err := s.Load(t.Context(), []string{path}); err != nil {
		t.Fatal(err)
	}
	if got := totalOf(t, s, "SELECT sum(speed_kn) FROM strike"); got != 7.5 {
		t.Errorf("speeds of bites add up to %v, expected 7.5", got)
	}
}
