package bundle

import (
	"math"
	"slices"
)

// heaviest is the top of each list. Species and month are said only where a row says all
// that it can say of them: a fish that is named is one fewer that a hidden count can be of.
// Where a count that the season hides could be had that way, there are no lists.
func (s *Season) heaviest(src Source, total *bin, was Shared) []Heavy {
	var out []Heavy
	for _, list := range Lists() {
		var of []Heavy
		for _, f := range src.Fish {
			if f.List == list {
				of = append(of, Heavy{List: list, Species: s.toldSpecies(f.Species), When: s.toldMonth(f.Month, src),
					WeightKG: tenth(f.WeightKG), LoKG: tenths(f.LoKG), HiKG: tenths(f.HiKG)})
			}
		}
		slices.SortStableFunc(of, byWeight)
		out = append(out, of[:min(src.Top, len(of))]...)
	}
	s.tellLess(out, src, was)
	t := table{by: fishBy, groups: fishGroups, earlier: was.Source.Fish}
	caught := t.whole(src.Fish)
	fresh := 0
	for _, f := range out {
		same := func(o Heavy) bool { return o.List == f.List && o.WeightKG == f.WeightKG }
		if !slices.ContainsFunc(was.Season.Heaviest, same) {
			fresh++
		}
	}
	if !hidesStill(caught.now, fish, len(out)) || !hidesStill(total.now, boated, len(out)) {
		return nil
	}
	if len(was.Source.Fish) == 0 || caught.unchanged() {
		return out
	}
	if !hidesStill(caught.grown, fish, fresh) || !hidesStill(total.grown, boated, fresh) {
		return nil
	}
	return out
}

// tellLess takes the species off all fish of the lists where those that are not told, which
// are of the rows that hide something, would tell what is hidden there; the month likewise.
func (s *Season) tellLess(out []Heavy, src Source, was Shared) {
	for _, of := range []struct {
		dark  func(Piece) bool // a piece of a row that is not told
		told  func(Heavy) bool
		untel func(*Heavy)
	}{
		{func(p Piece) bool { return s.toldSpecies(p.Species) == Other }, func(f Heavy) bool { return f.Species != Other },
			func(f *Heavy) { f.Species = Other }},
		{func(p Piece) bool { return s.toldMonth(p.Month, src) != p.Month }, func(f Heavy) bool { return len(f.When) > 4 && f.When != Untold },
			func(f *Heavy) { f.When = Untold }},
	} {
		b := newBin(Merged)
		for _, p := range src.Fish {
			if of.dark(p) {
				b.add(p, fishBy)
			}
		}
		for _, p := range was.Source.Fish {
			if of.dark(p) {
				b.grown.put(p, -1)
			}
		}
		named := 0.0
		for _, f := range out {
			if !of.told(f) {
				named++
			}
		}
		for _, q := range []quantity{onScale, unweighed, landed, released} {
			if !b.now.nothing(q) && !b.now.within(q, b.now.sum[fish]-named) ||
				!b.grown.nothing(q) && !b.grown.within(q, b.grown.sum[fish]-named) {
				for i := range out {
					of.untel(&out[i])
				}
				break
			}
		}
	}
}

// hidesStill tells whether the parts of base that are hidden stay so when that many fish
// are named, which may all be of the other part.
func hidesStill(h heap, base quantity, named int) bool {
	g := seasonGroups[len(seasonGroups)-1]
	if base == fish {
		g = fishGroups[0]
	}
	if g.safeIn(h) {
		return true
	}
	for _, q := range slices.Concat(g.of, g.rest) {
		if !h.within(q, h.sum[base]-float64(named)) {
			return false
		}
	}
	return true
}

func tenth(kg float64) float64 { return math.Round(kg*10) / 10 }

func tenths(kg *float64) *float64 {
	if kg == nil {
		return nil
	}
	v := tenth(*kg)
	return &v
}

func (s *Season) toldSpecies(code string) string {
	for _, c := range s.Species {
		if c.Level == code && c.hides() == 0 {
			return code
		}
	}
	return Other
}

func (s *Season) toldMonth(month string, src Source) string {
	for _, c := range s.Months {
		if c.Level == month && c.hides() == 0 {
			return month
		}
	}
	// The year of some months only would tell the others' by subtraction.
	years := map[string]bool{}
	for _, p := range src.Months {
		years[p.Level[:min(4, len(p.Level))]] = true
	}
	if len(years) == 1 && len(s.Span()) > 0 && len(month) > 4 {
		return month[:4]
	}
	return Untold
}

// mark is the source with the fish marked that a list names. A list names a fish by its
// weight: of several of one weight, the first.
func mark(src Source, lists []Heavy) Source {
	src.Fish = slices.Clone(src.Fish)
	for _, f := range lists {
		for i, p := range src.Fish {
			if !p.named && p.List == f.List && tenth(p.WeightKG) == f.WeightKG {
				src.Fish[i].named = true
				break
			}
		}
	}
	return src
}
