package bundle

import (
	"math"
	"slices"
)

// bin is the pieces of one level, or of several merged.
type bin struct {
	level  string
	trips  map[int64]bool // those that are of the cell
	now    heap
	grown  heap // what is not in the earlier summary; without one, all
	hidden hidden
	parts  []*bin // where levels are merged, each of them
}

// table is how one table of a summary is made.
type table struct {
	by     []quantity // what its cells count by: effort, or fish
	groups []group
	total  hidden // what the season's row hides
	// of the earlier summary, empty where there is none
	earlier []Piece
	shown   map[string]hidden // its rows, with what is hidden in each
}

// effortBy and fishBy are what the cells of the two kinds of tables count by.
var (
	effortBy = []quantity{boatHours, lineHours, afloat}
	fishBy   = []quantity{fish}
)

func newBin(level string) *bin {
	return &bin{level: level, trips: map[int64]bool{}, now: newHeap(), grown: newHeap()}
}

func (b *bin) add(p Piece, by []quantity) {
	a := amountsOf(p)
	for _, q := range by {
		if a[q] > least {
			b.trips[p.Trip] = true
		}
	}
	b.now.put(p, 1)
	b.grown.put(p, 1)
}

func (b *bin) take(o *bin) {
	for trip := range o.trips {
		b.trips[trip] = true
	}
	b.now.take(o.now)
	b.grown.take(o.grown)
	if b.parts = append(b.parts, o); len(o.parts) > 0 {
		b.parts = slices.Concat(b.parts[:len(b.parts)-1], o.parts)
	}
	b.hidden |= o.hidden
}

// stands tells whether the row may be shown: for itself, and in its difference from
// the row of the earlier summary.
func (t table) stands(b *bin) bool {
	return b.now.stands(t.by...) && (b.unchanged() || b.grown.stands(t.by...)) && b.partsStand()
}

// partsStand tells whether none of the merged levels shows a trip or day when the fish that
// are named, each with its weight, are taken off the others. Levels are taken together in all
// ways; those of no named fish always, because they add to what a trip has and not to what
// is known.
func (b *bin) partsStand() bool {
	return apart(b.now, b.parts, func(p *bin) heap { return p.now }) &&
		(b.unchanged() || apart(b.grown, b.parts, func(p *bin) heap { return p.grown }))
}

func apart(all heap, parts []*bin, of func(*bin) heap) bool {
	var some []heap
	rest := newHeap()
	for _, p := range parts {
		if h := of(p); h.sum[named] > least {
			some = append(some, h)
		} else {
			rest.take(h)
		}
	}
	if len(some) == 0 {
		return true
	}
	for set := range 1 << len(some) {
		h := newHeap()
		h.take(rest)
		others := 0.0
		for i, part := range some {
			if set&(1<<i) != 0 {
				h.take(part)
			} else {
				others += part.sum[named]
			}
		}
		if !h.nothing(fish) && !h.within(fish, all.sum[fish]-others) {
			return false
		}
	}
	return true
}

// unchanged tells whether the earlier summary holds all that the row does.
func (b *bin) unchanged() bool {
	for q := range quantities {
		if !b.grown.nothing(q) {
			return false
		}
	}
	return true
}

// rowOf is the row that a level starts in: its own, or that of merged levels where the
// earlier summary has it there. What was merged stays merged: its parts would show more
// of the trips between the two.
func (t table) rowOf(level string) string {
	if _, shown := t.shown[level]; shown || len(t.shown) == 0 {
		return level
	}
	if slices.ContainsFunc(t.earlier, func(p Piece) bool { return p.Level == level }) {
		return Merged
	}
	return level
}

// sort puts pieces into bins, one a level, in the order in which the levels come.
func (t table) sort(pieces []Piece) []*bin {
	var out []*bin
	at := map[string]*bin{}
	of := func(level string) *bin {
		if at[level] == nil {
			at[level] = newBin(level)
			at[level].hidden = t.shown[t.rowOf(level)]
			out = append(out, at[level])
		}
		return at[level]
	}
	for _, p := range pieces {
		if amountsOf(p) != (amounts{}) {
			of(p.Level).add(p, t.by)
		}
	}
	for _, p := range t.earlier {
		if len(t.shown) > 0 {
			of(p.Level).grown.put(p, -1)
		}
	}
	return out
}

// merge adds pieces up by level. Levels that may not stand become one, at the end, which
// takes the smallest of the others as long as it may not stand itself. Where all together
// may not, nothing is left. What a row must not show is hidden.
func (t table) merge(pieces []Piece) []*bin {
	kept := t.sort(pieces)
	rest := newBin(Merged)
	none := true
	move := func(i int) {
		rest.take(kept[i])
		kept = slices.Delete(kept, i, i+1)
		none = false
	}
	for i := len(kept) - 1; i >= 0; i-- {
		if t.rowOf(kept[i].level) == Merged || !t.stands(kept[i]) {
			move(i)
		}
	}
	for !none && !t.stands(rest) {
		i := t.smallest(kept)
		if i < 0 {
			return nil
		}
		move(i)
	}
	if !none {
		kept = append(kept, rest)
	}
	t.hide(kept)
	return kept
}

// smallest is the place of the bin of the fewest trips, of the least effort or fish
// among those, of the first among those; -1 without any.
func (t table) smallest(bins []*bin) int {
	best := -1
	for i, b := range bins {
		if best < 0 || t.less(b, bins[best]) {
			best = i
		}
	}
	return best
}

func (t table) less(a, b *bin) bool {
	if len(a.trips) != len(b.trips) {
		return len(a.trips) < len(b.trips)
	}
	for _, q := range t.by {
		if x, y := a.now.sum[q], b.now.sum[q]; math.Abs(x-y) > least {
			return x < y
		}
	}
	return false
}
