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
