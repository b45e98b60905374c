package bundle

import (
	"maps"
	"math"
)

// bin is the pieces of one level, or of several merged.
type bin struct {
	level string
	trips map[int64]bool
	sum   Piece
}

func (b *bin) add(p Piece) {
	b.trips[p.Trip] = true
	b.sum.plus(p)
}

func (b *bin) take(o *bin) {
	maps.Copy(b.trips, o.trips)
	b.sum.plus(o.sum)
}

// plus adds what can be added up.
func (t *Piece) plus(p Piece) {
	t.BoatHours, t.LineHours = t.BoatHours+p.BoatHours, t.LineHours+p.LineHours
	t.Strikes, t.OnHours, t.Hookups = t.Strikes+p.Strikes, t.OnHours+p.OnHours, t.Hookups+p.Hookups
	t.Landed, t.Released = t.Landed+p.Landed, t.Released+p.Released
	t.Fish, t.OnScale = t.Fish+p.Fish, t.OnScale+p.OnScale
}

// merge adds pieces up by level, in the order in which the levels come. Levels
// of fewer than MinTrips trips become one, at the end, which takes the smallest
// of the others as long as it is of too few itself. Where all trips together are
// too few, nothing is left.
func merge(pieces []Piece) []*bin {
	var kept []*bin
	at := map[string]*bin{}
	for _, p := range pieces {
		if at[p.Level] == nil {
			at[p.Level] = &bin{level: p.Level, trips: map[int64]bool{}}
			kept = append(kept, at[p.Level])
		}
		at[p.Level].add(p)
	}
	rest := &bin{level: Merged, trips: map[int64]bool{}}
	for {
		i := smallest(kept)
		if i < 0 || len(kept[i].trips) >= MinTrips && (len(rest.trips) == 0 || len(rest.trips) >= MinTrips) {
			break
		}
		rest.take(kept[i])
		kept = append(kept[:i], kept[i+1:]...)
	}
	if len(rest.trips) >= MinTrips {
		kept = append(kept, rest)
	}
	return kept
}

// smallest is the place of the bin of the fewest trips, of the least effort
// among those, of the first among those; -1 without any.
func smallest(bins []*bin) int {
	best := -1
	for i, b := range bins {
		if best < 0 || less(b, bins[best]) {
			best = i
		}
	}
	return best
}

func less(a, b *bin) bool {
	if len(a.trips) != len(b.trips) {
		return len(a.trips) < len(b.trips)
	}
	if a.sum.LineHours != b.sum.LineHours {
		return a.sum.LineHours < b.sum.LineHours
	}
	return a.sum.Fish < b.sum.Fish
}

// cells are the bins as rows; boats: the hours of the boat add up over them.
func cells(bins []*bin, boats bool) []Cell {
	var out []Cell
	for _, b := range bins {
		out = append(out, b.cell(boats))
	}
	return out
}

func (b *bin) cell(boats bool) Cell {
	s := b.sum
	c := Cell{Level: b.level, Trips: int64(len(b.trips)), LineHours: tidy(s.LineHours), Strikes: s.Strikes, OnHours: s.OnHours,
		Hookups: s.Hookups, Landed: s.Landed, Released: s.Released}
	if boats {
		h := tidy(s.BoatHours)
		c.BoatHours = &h
	}
	return c
}

// tidy rounds hours to a hundredth: what is shared is shared no finer than it is read.
func tidy(h float64) float64 { return math.Round(h*100) / 100 }

func fishCells(bins []*bin) []FishCell {
	var out []FishCell
	for _, b := range bins {
		out = append(out, FishCell{Level: b.level, Trips: int64(len(b.trips)), Fish: b.sum.Fish, OnScale: b.sum.OnScale,
			Landed: b.sum.Landed, Released: b.sum.Released})
	}
	return out
}
