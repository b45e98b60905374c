package seasons

import (
	"math/rand/v2"
	"os"
	"path/filepath"
	"testing"
	"time"
)

// TestSameSeedSameFiles: text files come out byte for byte the same.
func TestSameSeedSameFiles(t *testing.T) {
	f := Format{Layout: "roles", Container: "text", Units: "cells", Separator: "semicolon", Encoding: "windows-1252",
		Dates: "names", Clock: "10:30 pm"}
	var texts [2]string
	for i := range texts {
		w, err := Write(t.TempDir(), "log", New(5), f)
		if err != nil {
			t.Fatal(err)
		}
		for _, file := range w.Files {
			b, err := os.ReadFile(file)
			if err != nil {
				t.Fatal(err)
			}
			texts[i] += filepath.Base(file) + "\n" + string(b)
		}
	}
	if texts[0] != texts[1] || len(texts[0]) < 1000 {
		t.Errorf("the same seed gave other files (%d and %d bytes)", len(texts[0]), len(texts[1]))
	}
}

// TestSampleHoldsEveryPair: 72 formats hold every pair of values that can stand
// together, but for a few.
func TestSampleHoldsEveryPair(t *testing.T) {
	all, sample := map[pair]bool{}, map[pair]bool{}
	r := rand.New(rand.NewPCG(1, 2))
	for range 20000 {
		for _, p := range Random(r).pairs() {
			all[p] = true
		}
	}
	for _, f := range Sample(r, 72) {
		for _, p := range f.pairs() {
			sample[p] = true
		}
	}
	if len(sample)*100 < len(all)*98 {
		t.Errorf("%d of %d pairs", len(sample), len(all))
	}
}

// TestSeasonsHoldTheHardCases: forty seasons hold each case that they are for.
func TestSeasonsHoldTheHardCases(t *testing.T) {
	n := map[string]int{}
	for seed := range uint64(40) {
		s := New(seed)
		n["two boats"] += b2i(len(s.Boats) == 2)
		n["labels shared by boats"] += b2i(s.SharedLabels)
		for i, trip := range s.Trips {
			n["lines logged once a trip"] += b2i(trip.Wide != nil)
			if i > 0 && s.Trips[i-1].Boat == trip.Boat {
				last := s.Trips[i-1].Legs
				n["trips just the gap apart"] += b2i(trip.Legs[0].Start.Sub(last[len(last)-1].End) == tripGap)
			}
			for _, l := range trip.Legs {
				countLeg(n, l)
			}
			for _, k := range trip.Strikes {
				countStrike(n, k)
			}
		}
	}
	for name, times := range n {
		if times == 0 {
			t.Errorf("no season has: %s", name)
		}
	}
}

func countLeg(n map[string]int, l *Leg) {
	out, known := l.Out()
	n["leg past midnight"] += b2i(midnight(l.End).After(midnight(l.Start)))
	n["leg until midnight"] += b2i(l.End.Equal(midnight(l.Start).AddDate(0, 0, 1)))
	n["speed on an edge"] += b2i(l.Speed.Known && l.Speed.whole("kn") && l.Speed.in("kn").Num().Int64()%2 == 0)
	n["speed not logged"] += b2i(!l.Speed.Known)
	n["lines not logged"] += b2i(!known)
	n["no line out"] += b2i(known && out == 0)
	n["lines in part described"] += b2i(len(l.Lines) > 0 && out > len(l.Lines))
	for _, line := range l.Lines {
		n["setback by count"] += b2i(line.Count.Known && line.LetOut.Known)
	}
}

func countStrike(n map[string]int, k *Strike) {
	n["strike "+word(k.Outcome)]++
	n["strike without a time"] += b2i(!k.Timed && !k.Stray)
	n["strike without a leg"] += b2i(k.Stray && k.Leg == nil)
	n["strike dated the evening before"] += b2i(k.DayEarly)
	n["strike told by its lure"] += b2i(k.ByLure)
	n["strike without a line"] += b2i(k.Line == nil)
	n["fish without a strike logged"] += b2i(k.FishOnly)
	n["fish without measures"] += b2i(k.boated() && k.Fish == nil)
	n["fish weighed"] += b2i(k.Fish != nil && k.Fish.Weight.Known)
	if k.Leg != nil && k.Timed {
		n["strike at the very start"] += b2i(k.At.Equal(k.Leg.Start))
		n["strike at the very end"] += b2i(k.At.Equal(k.Leg.End))
		n["strike after midnight"] += b2i(k.At.Sub(midnight(k.Leg.Start)) > 24*time.Hour)
	}
}

func b2i(b bool) int {
	if b {
		return 1
	}
	return 0
}
