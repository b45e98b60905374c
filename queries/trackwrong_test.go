package queries

import (
	"math/rand/v2"
	"strings"
	"testing"
)

// dayOut is a day's legs as logged, speeds off by so much, and its track by minutes,
// both on one clock: out at speed, legs with runs or stops between, home.
func dayOut(rng *rand.Rand, off float64) (legs []legClock, minutes []trackMinute) {
	const first = 29_500_000 // minutes since 1970
	at := int64(first)
	run := func(n int, kn float64) {
		for range n {
			minutes = append(minutes, trackMinute{LogID: 1, TrackNo: 1, Minute: at, SpeedKn: kn +
				0.3*rng.NormFloat64(), Taken: 10_000})
			at++
		}
	}
	run(40+rng.IntN(60), 18+4*rng.Float64())
	for range 3 + rng.IntN(5) {
		from, kn := at, 6+8*rng.Float64()
		run(30+rng.IntN(90), kn)
		logged := kn + off
		legs = append(legs, legClock{Boat: "Petrel", From: from, To: at, SpeedKn: &logged, Zoned: true})
		if between := rng.IntN(30); between > 8 {
			run(between, []float64{0.5, 4, 16, 20}[rng.IntN(4)])
		}
	}
	run(60, 20)
	return legs, minutes
}

// Speeds logged 2.5 kn off never look like a wrong clock; and a clock that is wrong
// is found where speeds are logged right.
func TestSpeedsLoggedOffAreNoWrongClock(t *testing.T) {
	boat := "Petrel"
	note := func(legs []legClock, minutes []trackMinute) string {
		tracks := []Track{{LogID: 1, TrackNo: 1, Boat: &boat, Fixes: 1}}
		n, _ := newClocks(tracks, minutes, legs).note(0)
		return n
	}
	found := 0
	const days = 200
	for seed := range uint64(days) {
		rng := rand.New(rand.NewPCG(seed, 15))
		off := []float64{2.5, -2.5, 3.5, -1.5}[seed%4]
		legs, minutes := dayOut(rng, off)
		if n := note(legs, minutes); n != "" {
			t.Errorf("seed %d, logged %+.1f kn off: %s", seed, off, n)
		}
		legs, minutes = dayOut(rng, 0)
		if n := note(legs, minutes); n != "" {
			t.Errorf("seed %d, logged right: %s", seed, n)
		}
		for i := range minutes {
			minutes[i].Minute += []int64{60, -60, 780, -1440}[seed%4]
		}
		if strings.Contains(note(legs, minutes), "--track-clock") {
			found++
		}
	}
	t.Logf("of %d clocks an hour, 13 hours or a day off, %d are found", days, found)
	if found < days*8/10 {
		t.Errorf("only %d of %d wrong clocks are found", found, days)
	}
}

// Of two receivers' tracks neither is the other's; a part of a track is.
func TestTrackInAnother(t *testing.T) {
	receiver := func(kn ...float64) *clocked {
		boat := "Petrel"
		k := &clocked{boat: &boat, kn: map[int64]float64{}, taken: int64(len(kn))}
		for i, v := range kn {
			k.kn[int64(i)] = v
		}
		return k
	}
	c := &clocks{of: []*clocked{receiver(9, 9.1, 9.2, 9.1, 9), receiver(9, 9.1, 9.2), receiver(9.1, 9.3, 9.1, 9, 9.1)}}
	for i, want := range []string{"", "another track holds all of it and more, and that one is used", ""} {
		if got := c.same(i); got != want {
			t.Errorf("track %d: %q, want %q", i, got, want)
		}
	}
}
