package queries_test

import (
	"context"
	"math"
	"math/rand/v2"
	"testing"

	"wakeledger/pipeline"
	"wakeledger/queries"
	"wakeledger/testdata/seasons"
)

// What a club summary is made of adds up to what the questions say, level by
// level, and its classes are its own whatever the season file's are.
func TestClubAddsUp(t *testing.T) {
	for seed := *firstSeed; seed < *firstSeed+6; seed++ {
		model := seasons.New(seed)
		s := loaded(t, model, seasons.Sample(rand.New(rand.NewPCG(seed, 3)), 1)[0])
		for _, factor := range []string{"speed-band", "lure-weight", "month"} {
			checkClub(t, s, seed, factor)
		}
	}
}

func checkClub(t *testing.T, s *pipeline.Season, seed uint64, factor string) {
	t.Helper()
	ctx := context.Background()
	hours, strikes, onHours := map[string]float64{}, map[string]int64{}, map[string]int64{}
	seen := map[string]bool{}
	for _, trip := range answer(t, s, queries.AskTrips) {
		if seen[trip.Boat] {
			continue
		}
		seen[trip.Boat] = true
		c, err := queries.AskClub(ctx, s.DB, trip.Boat)
		if err != nil {
			t.Fatal(err)
		}
		for _, p := range map[string][]queries.ClubPiece{"speed-band": c.Speeds,
			"lure-weight": c.Lures, "month": c.Months}[factor] {
			hours[p.Level] += p.LineHours
			strikes[p.Level] += p.Strikes
			onHours[p.Level] += p.OnHours
		}
	}
	rows, err := queries.AskStrikeRate(ctx, s.DB, factor)
	if err != nil {
		t.Fatal(err)
	}
	var want, got [3]float64
	for _, r := range rows {
		if factor != "month" && (math.Abs(hours[r.Level]-r.LineHours) > 1e-5 ||
			onHours[r.Level] != r.Strikes-r.WithoutHours) {
			t.Errorf("seed %d, %s %s: %v line-hours and %d strikes on them, want %v and %d", seed, factor, r.Level,
				hours[r.Level], onHours[r.Level], r.LineHours, r.Strikes-r.WithoutHours)
		}
		want[0], want[1], want[2] = want[0]+r.LineHours, want[1]+float64(r.Strikes),
			want[2]+float64(r.Strikes-r.WithoutHours)
	}
	for level := range hours {
		got[0], got[1], got[2] = got[0]+hours[level], got[1]+float64(strikes[level]), got[2]+float64(onHours[level])
	}
	if math.Abs(got[0]-want[0]) > 1e-4 || got[1] != want[1] || got[2] != want[2] {
		t.Errorf("seed %d, %s: line-hours, strikes, strikes on line-hours %v, want %v", seed, factor, got, want)
	}
}

// With edges of the user's own, the club's classes stay as they are: the
// difference of two sets of edges would show the trips between them.
func TestClubClassesAreFixed(t *testing.T) {
	model := seasons.New(*firstSeed)
	w, err := seasons.Write(t.TempDir(), "log", model, seasons.Sample(rand.New(rand.NewPCG(1, 1)), 1)[0])
	if err != nil {
		t.Fatal(err)
	}
	levels := func(settings ...string) map[string]float64 {
		cfg := config(model, w)
		var err error
		if cfg.Edges, err = pipeline.ParseEdges(settings); err != nil {
			t.Fatal(err)
		}
		s := open(t, cfg)
		load(t, s, w.Files...)
		out := map[string]float64{}
		for _, trip := range answer(t, s, queries.AskTrips) {
			c, err := queries.AskClub(context.Background(), s.DB, trip.Boat)
			if err != nil {
				t.Fatal(err)
			}
			for _, p := range append(c.Speeds, c.Lures...) {
				out[p.Level] += p.LineHours
			}
		}
		return out
	}
	usual, own := levels(), levels("speed-band=0,7,7.1,11", "lure-weight=0,333")
	if len(usual) < 3 {
		t.Fatalf("only levels %v: the test shows nothing", usual)
	}
	for level, h := range usual {
		if math.Abs(own[level]-h) > 1e-6 || len(own) != len(usual) {
			t.Errorf("level %s: %v line-hours, with the user's edges %v", level, h, own[level])
		}
	}
}
