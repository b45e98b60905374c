package queries_test

import (
	"context"
	"fmt"
	"math/rand/v2"
	"slices"
	"testing"

	"wakeledger/pipeline"
	"wakeledger/pipeline/factors"
	"wakeledger/pipeline/store"
	"wakeledger/queries"
	"wakeledger/testdata/seasons"
)

func answer[T any](t *testing.T, s *pipeline.Season, ask func(context.Context, *store.DB) ([]T, error)) []T {
	t.Helper()
	rows, err := ask(context.Background(), s.DB)
	if err != nil {
		t.Fatal(err)
	}
	return rows
}

func answerBy[T any](t *testing.T, s *pipeline.Season, ask func(context.Context, *store.DB, string) ([]T, error),
	factor string) []T {
	t.Helper()
	rows, err := ask(context.Background(), s.DB, factor)
	if err != nil {
		t.Fatalf("%s: %v", factor, err)
	}
	return rows
}

// TestAnyLogIsTheSameSeason: a season is the same, cell for cell, whatever the
// layout, units, separator, encoding, dates and clock its log was kept in. What
// each table leaves out is with seasons.Tables.
func TestAnyLogIsTheSameSeason(t *testing.T) {
	formats := seasons.Sample(rand.New(rand.NewPCG(*firstSeed, 7)), 72)
	if testing.Short() {
		formats = formats[:12] // 'make prove' tries them all
	}
	tried := map[string]bool{}
	for i, f := range formats {
		seed := *firstSeed*1000 + uint64(i)
		for j, v := range f.Choices() {
			tried[fmt.Sprint(j, v)] = true
		}
		t.Run(fmt.Sprintf("%d/%s", seed, f), func(t *testing.T) {
			s := seasons.New(seed)
			got := loaded(t, s, f)
			for _, want := range s.Tables(f) {
				same(t, table(t, got, want.Name), want)
			}
			got.DB.Close()
		})
	}
	for i, o := range seasons.Options() {
		for _, v := range o.Values {
			if !testing.Short() && !tried[fmt.Sprint(i, v)] {
				t.Errorf("%s %q was not tried", o.Name, v)
			}
		}
	}
}

// plain is the format of the tests that are not on formats.
var plain = seasons.Format{Layout: "roles", Container: "text", Units: "metric", Separator: "comma",
	Encoding: "utf-8", Dates: "iso", Clock: "22:30"}

// TestLevelsAddUp: by every factor, effort, strikes and sizes are those of the
// model, level for level, and so add up to its season.
func TestLevelsAddUp(t *testing.T) {
	n := 40
	if testing.Short() {
		n = 6 // 'make prove' has them all
	}
	for i := range n {
		seed := *firstSeed*500 + uint64(i)
		t.Run(fmt.Sprint(seed), func(t *testing.T) {
			model := seasons.New(seed)
			f := plain
			if i%2 == 1 { // a sea at 71.6 F is one at 22 C, on the edge of its class
				f.Units = "us"
			}
			s := loaded(t, model, f)
			season := model.Season()
			for _, factor := range factors.Names() {
				checkFactor(t, s, factor, model)
			}
			checkTotals(t, s, season)
			s.DB.Close()
		})
	}
}

// rounded is how far a column of n rows, each rounded to six places, may be off.
func rounded(got, want float64, n int) bool { return abs(got-want) <= 1e-6*float64(n+1) }

func abs(v float64) float64 { return max(v, -v) }

// ofLegs are the factors of which a leg, at any time, is at one level: their
// boat-hours add up too.
var ofLegs = []string{"speed-band", "approach", "month", "hour", "light", "moon", "sea-temp",
	"sea-state", "boat", "angler"}

// checkFactor holds the answers by a factor against the model: their sums, and
// each level where the model knows the levels.
func checkFactor(t *testing.T, s *pipeline.Season, factor string, model *seasons.Season) {
	t.Helper()
	truth, known := model.By(factor)
	checkEffort(t, s, factor, model)
	checkRates(t, s, factor, model)
	sizes, err := queries.AskSizes(context.Background(), s.DB, factor, 0)
	if err != nil {
		t.Fatal(err)
	}
	fish := map[string]int64{}
	all := int64(0)
	for _, c := range sizes {
		fish[c.Level] += c.Fish
		all += c.Fish
	}
	for level, n := range fish {
		if want := truth[level]; known && (want == nil || n != int64(want.Boated())) {
			t.Errorf("sizes by %s at %q: %d fish, want those boated there: %+v", factor, level, n, want)
		}
	}
	if season := model.Season(); all != int64(season.Boated()) {
		t.Errorf("sizes by %s: %d fish in all, want %d", factor, all, season.Boated())
	}
}

func checkEffort(t *testing.T, s *pipeline.Season, factor string, model *seasons.Season) {
	t.Helper()
	truth, known := model.By(factor)
	season := model.Season()
	effort := answerBy(t, s, queries.AskEffort, factor)
	var lineHours, boatHours float64
	seen := 0
	for _, e := range effort {
		lineHours += e.LineHours
		boatHours += e.BoatHours
		want := truth[e.Level]
		if !known {
			continue
		}
		if want == nil {
			t.Errorf("effort by %s: level %q is not in the season", factor, e.Level)
			continue
		}
		seen++
		if !rounded(e.BoatHours, hours(want.BoatMinutes), 1) || !rounded(e.LineHours, hours(want.LineMinutes), 1) ||
			e.Legs != int64(want.Legs()) || e.Trips != int64(want.Trips()) {
			t.Errorf("effort by %s at %q: %+v, want %.6f boat-hours and %.6f line-hours of %d legs, %d trips",
				factor, e.Level, e, hours(want.BoatMinutes), hours(want.LineMinutes), want.Legs(), want.Trips())
		}
	}
	for _, l := range truth {
		if l.Legs() > 0 {
			seen--
		}
	}
	if seen != 0 {
		t.Errorf("effort by %s: %+d levels than in the season", factor, seen)
	}
	if !rounded(lineHours, hours(season.LineMinutes), len(effort)) {
		t.Errorf("effort by %s: %.6f line-hours in all, want %.6f", factor, lineHours, hours(season.LineMinutes))
	}
	if slices.Contains(ofLegs, factor) && !rounded(boatHours, hours(season.BoatMinutes), len(effort)) {
		t.Errorf("effort by %s: %.6f boat-hours in all, want %.6f", factor, boatHours, hours(season.BoatMinutes))
	}
}

func hours(minutes int) float64 { return float64(minutes) / 60 }

func checkRates(t *testing.T, s *pipeline.Season, factor string, model *seasons.Season) {
	t.Helper()
	truth, known := model.By(factor)
	season := model.Season()
	outcomes := map[string]queries.Outcomes{}
	for _, o := range answerBy(t, s, queries.AskOutcomes, factor) {
		outcomes[o.Level] = o
	}
	var sum queries.StrikeRate
	unlogged := int64(0)
	rates := answerBy(t, s, queries.AskStrikeRate, factor)
	for _, r := range rates {
		add(&sum, r)
		o := outcomes[r.Level]
		unlogged += o.NotLogged
		if o.Strikes != r.Strikes || o.Hookups != r.Hookups || o.Boated != r.Landed+r.Released {
			t.Errorf("outcomes by %s at %q: %+v, but strike-rate has %v", factor, r.Level, o, counts(r))
		}
		if !known {
			continue
		}
		want := truth[r.Level]
		if want == nil {
			t.Errorf("strike-rate by %s: level %q is not in the season", factor, r.Level)
			continue
		}
		if !rounded(r.LineHours, hours(want.LineMinutes), 1) || counts(r) != truthCounts(want) ||
			o.NotLogged != int64(want.Unlogged) {
			t.Errorf("strike-rate by %s at %q: %.6f line-hours and %v (%d not logged), want %.6f and %v (%d)", factor,
				r.Level,
				r.LineHours, counts(r), o.NotLogged, hours(want.LineMinutes), truthCounts(want), want.Unlogged)
		}
	}
	if known && len(rates) != len(truth) {
		t.Errorf("strike-rate by %s: %d levels, want %d", factor, len(rates), len(truth))
	}
	if !rounded(sum.LineHours, hours(season.LineMinutes), len(rates)) || counts(sum) != truthCounts(&season) ||
		unlogged != int64(season.Unlogged) {
		t.Errorf("strike-rate by %s: in all %.6f line-hours and %v, want %.6f and %v", factor, sum.LineHours,
			counts(sum), hours(season.LineMinutes), truthCounts(&season))
	}
}

func add(sum *queries.StrikeRate, r queries.StrikeRate) {
	sum.LineHours += r.LineHours
	sum.Strikes += r.Strikes
	sum.Hookups += r.Hookups
	sum.Landed += r.Landed
	sum.Released += r.Released
}

// counts are strikes, hook-ups, landed and released.
func counts(r queries.StrikeRate) [4]int64 {
	return [4]int64{r.Strikes, r.Hookups, r.Landed, r.Released}
}

func truthCounts(l *seasons.Level) [4]int64 {
	return [4]int64{int64(l.Strikes), int64(l.Hookups), int64(l.Landed), int64(l.Released)}
}

// checkTotals holds the lists of trips and fish against the season.
func checkTotals(t *testing.T, s *pipeline.Season, season seasons.Level) {
	t.Helper()
	trips := answer(t, s, queries.AskTrips)
	var sum queries.Trip
	for _, r := range trips {
		sum.Legs += r.Legs
		sum.BoatHours += r.BoatHours
		sum.LineHours += r.LineHours
		sum.Strikes += r.Strikes
		sum.Landed += r.Landed
		sum.Released += r.Released
	}
	if len(trips) != season.Trips() || sum.Legs != int64(season.Legs()) || sum.Strikes != int64(season.Strikes) ||
		sum.Landed != int64(season.Landed) || sum.Released != int64(season.Released) ||
		!rounded(sum.BoatHours, hours(season.BoatMinutes), len(trips)) ||
		!rounded(sum.LineHours, hours(season.LineMinutes), len(trips)) {
		t.Errorf("trips: %d, in all %+v, want %d trips and %+v", len(trips), sum, season.Trips(), season)
	}
	fish := answer(t, s, queries.AskFish)
	kept := 0
	for _, f := range fish {
		if f.Kept != nil && *f.Kept {
			kept++
		}
	}
	if len(fish) != season.Boated() || kept != season.Landed {
		t.Errorf("fish: %d rows, %d kept, want %d and %d", len(fish), kept, season.Boated(), season.Landed)
	}
}
