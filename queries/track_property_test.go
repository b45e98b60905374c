package queries_test

import (
	"context"
	"fmt"
	"math/rand/v2"
	"strings"
	"testing"
	"time"

	"wakeledger/pipeline"
	"wakeledger/pipeline/factors"
	"wakeledger/queries"
	"wakeledger/testdata/seasons"
)

// legTimes are the instants of the legs in UTC.
func legTimes(t *testing.T, s *pipeline.Season) (spans [][2]time.Time) {
	t.Helper()
	rows, err := s.DB.Query(context.Background(), "SELECT start_utc, end_utc FROM leg WHERE start_utc IS NOT NULL "+
		"AND hours > 0 ORDER BY leg_id")
	if err != nil {
		t.Fatal(err)
	}
	defer rows.Close()
	for rows.Next() {
		var span [2]time.Time
		if err := rows.Scan(&span[0], &span[1]); err != nil {
			t.Fatal(err)
		}
		spans = append(spans, span)
	}
	if err := rows.Err(); err != nil {
		t.Fatal(err)
	}
	return spans
}

// wander writes a track over some of the legs: speeds that change at random, some
// turning, begun early or late and broken off at random.
func wander(t *testing.T, dir string, spans [][2]time.Time, rng *rand.Rand) string {
	t.Helper()
	var b strings.Builder
	b.WriteString("time,lat,lon,segment\n")
	for i, span := range spans {
		if rng.IntN(3) == 0 {
			continue
		}
		length := span[1].Sub(span[0])
		from := span[0].Add(time.Duration((rng.Float64() - .5) * float64(length)))
		to := span[1].Add(time.Duration((rng.Float64() - .7) * float64(length)))
		lat, lon, kn := -36.5, 176.2, 6+8*rng.Float64()
		for at := from; at.Before(to) && at.Sub(from) < 12*time.Hour; at = at.Add(20 * time.Second) {
			fmt.Fprintf(&b, "%s,%.6f,%.6f,%d\n", at.UTC().Format(time.RFC3339Nano), lat, lon, i)
			if rng.IntN(30) == 0 {
				kn = 5 + 12*rng.Float64()
			}
			lat += kn / 3600 / 60 * 20 * float64(1-2*(int(at.Unix()/600)%2))
			lon += kn / 3600 / 60 * 8
		}
	}
	return writeText(t, dir, "track.csv", b.String())
}

// TestLevelsAddUpWithTracks: tracks move effort and strikes between levels and
// change no sum, by any factor.
func TestLevelsAddUpWithTracks(t *testing.T) {
	covered, n := 0, 6
	if testing.Short() {
		n = 4 // 'make prove' has them all
	}
	for i := range n {
		seed := *firstSeed*500 + 100 + uint64(i)
		model := seasons.New(seed)
		s := loaded(t, model, plain)
		load(t, s, wander(t, t.TempDir(), legTimes(t, s), rand.New(rand.NewPCG(seed, 6))))
		season := model.Season()
		for _, trip := range answer(t, s, queries.AskTrackSpeed) {
			if trip.LegsWithTrack > 0 {
				covered++
			}
			if all := trip.MeasuredHours + trip.RememberedHours + trip.UnknownHours; trip.MeasuredHours < 0 ||
				trip.RememberedHours < -1e-6 || all < 0 {
				t.Errorf("seed %d: %+v", seed, trip)
			}
		}
		for _, factor := range factors.Names() {
			var boat, line float64
			effort := answerBy(t, s, queries.AskEffort, factor)
			for _, e := range effort {
				boat, line = boat+e.BoatHours, line+e.LineHours
			}
			var sum queries.StrikeRate
			rates := answerBy(t, s, queries.AskStrikeRate, factor)
			for _, r := range rates {
				add(&sum, r)
			}
			if !rounded(line, hours(season.LineMinutes), len(effort)) ||
				!rounded(sum.LineHours, hours(season.LineMinutes), len(rates)) || counts(sum) != truthCounts(&season) {
				t.Errorf("seed %d by %s: %.6f and %.6f line-hours and %v, want %.6f and %v", seed, factor, line,
					sum.LineHours, counts(sum), hours(season.LineMinutes), truthCounts(&season))
			}
			wholeLeg := map[string]bool{"speed-band": true, "turning": true, "month": true, "hour": true, "light": true}
			if wholeLeg[factor] && !rounded(boat, hours(season.BoatMinutes), len(effort)) {
				t.Errorf("seed %d by %s: %.6f boat-hours, want %.6f", seed, factor, boat, hours(season.BoatMinutes))
			}
			checkFish(t, s, factor, season)
		}
		s.DB.Close()
	}
	if covered < 10 {
		t.Errorf("only %d trips with a track", covered)
	}
}

func checkFish(t *testing.T, s *pipeline.Season, factor string, season seasons.Level) {
	t.Helper()
	sizes, err := queries.AskSizes(context.Background(), s.DB, factor, 0)
	if err != nil {
		t.Fatal(err)
	}
	fish := int64(0)
	for _, c := range sizes {
		fish += c.Fish
	}
	if fish != int64(season.Boated()) {
		t.Errorf("sizes by %s: %d fish, want %d", factor, fish, season.Boated())
	}
}
