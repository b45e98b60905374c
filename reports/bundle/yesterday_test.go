package bundle

import (
	"math"
	"slices"
)

// counted is a summary by a rule that only counts trips, as this program's was before: levels
// of fewer than so many trips, with effort or without, become one, which takes the smallest of
// the others while it is of too few; every figure is shown, and nothing is remembered.
func counted(src Source, fewest int) Season {
	cells := func(pieces []Piece, boats bool) []Cell {
		var out []Cell
		for _, b := range countTrips(pieces, fewest) {
			c := Cell{Level: b.level, Trips: int64(len(b.trips)), LineHours: tidy(b.now.sum[lineHours]),
				Strikes: number(b, strikes), Hookups: number(b, hookups), Boated: number(b, boated)}
			if boats {
				h := tidy(b.now.sum[boatHours])
				c.BoatHours = &h
			}
			out = append(out, c)
		}
		return out
	}
	s := Season{ID: "boat", Months: cells(src.Months, true), Speeds: cells(src.Speeds, false),
		Lures: cells(src.Lures, false)}
	all := countTrips(src.total(), 0)[0]
	s.Total = Total{Trips: int64(len(all.trips)), BoatHours: tidy(all.now.sum[boatHours]),
		LineHours: tidy(all.now.sum[lineHours]), Strikes: number(all, strikes),
		Hookups: number(all, hookups), Boated: number(all, boated), Landed: number(all, landed),
		Released: number(all, released)}
	for _, b := range countTrips(src.species(), fewest) {
		s.Species = append(s.Species, FishCell{b.level, *number(b, fish), number(b, onScale),
			number(b, landed), number(b, released)})
	}
	for _, b := range countTrips(src.sizes(), fewest) {
		s.Sizes = append(s.Sizes, SizeCell{b.level, *number(b, fish)})
	}
	return s
}

func number(b *bin, q quantity) *int64 {
	n := int64(math.Round(b.now.sum[q]))
	return &n
}

func countTrips(pieces []Piece, fewest int) []*bin {
	var kept []*bin
	for _, p := range pieces {
		i := slices.IndexFunc(kept, func(b *bin) bool { return b.level == p.Level })
		if i < 0 {
			i, kept = len(kept), append(kept, newBin(p.Level))
		}
		kept[i].now.put(p, 1)
		kept[i].trips[p.Trip] = true
	}
	merged := newBin(Merged)
	for {
		i := -1
		for j, b := range kept {
			if i < 0 || len(b.trips) < len(kept[i].trips) {
				i = j
			}
		}
		if i < 0 || len(kept[i].trips) >= fewest && (len(merged.trips) == 0 || len(merged.trips) >= fewest) {
			break
		}
		merged.take(kept[i])
		kept = slices.Delete(kept, i, i+1)
	}
	if len(merged.trips) >= max(fewest, 1) {
		kept = append(kept, merged)
	}
	return kept
}
