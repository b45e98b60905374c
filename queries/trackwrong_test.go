package queries_test

import (
	"fmt"
	"math/rand/v2"
	"strings"
	"testing"
	"time"

	"wakeledger/pipeline"
	"wakeledger/queries"
)

// dayOut is a day's legs as logged, speeds off by so much, and its track: out at
// speed, legs with runs between, home.
func dayOut(rng *rand.Rand, off float64) (legs string, run []stint) {
	var b strings.Builder
	b.WriteString("trip,leg,date,start,end,speed kn,lines out\n")
	at := time.Date(2026, 2, 14, 6, 0, 0, 0, time.UTC) // on the boat's clock
	out := 40 + float64(rng.IntN(60))
	run = append(run, stint{out, 18 + 4*rng.Float64(), 30, 0})
	at = at.Add(time.Duration(out) * time.Minute)
	for leg := range 3 + rng.IntN(5) {
		minutes := 30 + float64(rng.IntN(90))
		kn := 6 + 8*rng.Float64()
		end := at.Add(time.Duration(minutes) * time.Minute)
		fmt.Fprintf(&b, "T1,%d,2026-02-14,%s,%s,%.1f,4\n", leg+1, at.Format("15:04"), end.Format("15:04"), kn+off)
		course := 360 * rng.Float64()
		run = append(run, stint{minutes, kn, course, 0})
		at = end
		if between := float64(rng.IntN(30)); between > 8 {
			run = append(run, stint{between, []float64{0.5, 4, 16, 20}[rng.IntN(4)], course, 0})
			at = at.Add(time.Duration(between) * time.Minute)
		}
	}
	return b.String(), append(run, stint{60, 20, 210, 0})
}

// Speeds logged 2.5 kn off never look like a wrong clock, and a wrong clock is found
// whether speeds are logged right or not.
func TestSpeedsLoggedOffAreNoWrongClock(t *testing.T) {
	from := time.Date(2026, 2, 13, 17, 0, 0, 0, time.UTC) // 06:00 at UTC+13
	wrongly, found := 0, 0
	for seed := range uint64(30) {
		rng := rand.New(rand.NewPCG(seed, 15))
		off := []float64{2.5, -2.5}[seed%2]
		legs, run := dayOut(rng, off)
		for _, clock := range []time.Duration{0, 11 * time.Hour} {
			dir := t.TempDir()
			s := open(t, pipeline.Config{Boat: "Petrel", Zone: "UTC+13"})
			load(t, s, writeText(t, dir, "legs.csv", legs), gpxTrack(t, dir, "a.gpx", from.Add(clock), run...))
			note := answer(t, s, queries.AskTracks)[0].Note
			s.DB.Close()
			switch {
			case clock == 0 && note != "":
				wrongly++
				t.Errorf("seed %d, logged %+.1f kn off: %s", seed, off, note)
			case clock != 0 && note != "":
				found++
			}
		}
	}
	t.Logf("a clock that is right was doubted %d times in 30; one 11 h off was found %d times in 30, speeds being 2.5 kn off in all", wrongly, found)
}
