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
					WeightKG: tenth(f.WeightKG), LoKG: tenths(f.LoKG), HiKG: tenths(f.HiKG), Doubt: word(f.Doubt)})
			}
		}
		slices.SortStableFunc(of, byWeight)
		out = append(out, of[:min(src.Top, len(of))]...)
	}
	if s.tells(out, src, was) {
		return nil
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

// tells tells whether the fish that are named without species or month give away what rows
// hide: all of them may be of those rows, and what is hidden there is then of fewer.
func (s *Season) tells(out []Heavy, src Source, was Shared) bool {
	species, months := map[string]hidden{}, map[string]hidden{}
	for _, c := range s.Species {
		species[c.Level] = c.hides()
	}
	for _, c := range s.Months {
		months[c.Level] = c.hides()
	}
	noSpecies, noMonth := 0.0, 0.0
	for _, f := range out {
		if f.Species == Other {
			noSpecies++
		}
		if len(f.When) != len("2026-06") {
			noMonth++
		}
	}
	for _, g := range fishGroups {
		h := darkOf(species, g.is, src.species(), was.Source.species())
		if !h.stayDark(fish, noSpecies, slices.Concat(g.of, g.rest)) {
			return true
		}
	}
	for _, g := range effortGroups[1:] { // what is left of strikes
		h := darkOf(months, g.is, src.Months, was.Source.Months)
		if !h.stayDark(strikes, noMonth, g.rest) {
			return true
		}
	}
	return false
}

// darkOf is what stands in the rows that hide a group.
func darkOf(rows map[string]hidden, is hidden, now, then []Piece) *bin {
	b := newBin(Merged)
	for sign, pieces := range map[float64][]Piece{1: now, -1: then} {
		for _, p := range pieces {
			h, shown := rows[p.Level]
			if !shown {
				h = rows[Merged]
			}
			if h&is == 0 {
				continue
			}
			if b.grown.put(p, sign); sign > 0 {
				b.now.put(p, sign)
			}
		}
	}
	return b
}

// stayDark tells whether quantities stay hidden when so many of base are known to be others.
func (b *bin) stayDark(base quantity, named float64, of []quantity) bool {
	for _, q := range of {
		for _, h := range []heap{b.now, b.grown} {
			if !h.nothing(q) && !h.within(q, h.sum[base]-named) {
				return false
			}
		}
	}
	return true
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

// word is a text that may be none.
func word(text string) *string {
	if text == "" {
		return nil
	}
	return &text
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
