package pipeline

import (
	"context"
	"maps"
	"slices"
	"strings"

	"wakeledger/pipeline/identity"
	"wakeledger/pipeline/store"
)

// likenesses is what log l, which names the days and boats x, has in common with the logs
// of the season. Those with which it has nothing in common are left out.
func (s *Season) likenesses(ctx context.Context, in *incoming, l *store.Log,
	x *store.Extent) ([]identity.Likeness, error) {
	h := in.shelf
	share, err := s.mayShare(ctx, in, l, x)
	if err != nil {
		return nil, err
	}
	boats := h.boats(l, x)
	share = slices.DeleteFunc(share, func(id int64) bool {
		o := h.log(id)
		return !in.other(o, l.ID) || !s.exhaust && !in.track && !x.MayBeTwin(h.extents[id]) &&
			// of which only the same legs matter
			identity.Compare(h.boats(o, h.extents[id]), boats) == identity.OtherBoat
	})
	var counted map[int64]*identity.Likeness
	if len(share) > 0 {
		if counted, err = s.DB.Likenesses(ctx, l.ID, in.track, share); err != nil {
			return nil, err
		}
	}
	moved, err := s.moved(ctx, in, l, boats)
	if err != nil {
		return nil, err
	}
	ids := append(share, slices.Collect(maps.Keys(moved))...)
	for i := range h.all { // an earlier reading of the same file, of which nothing could be used
		if o := &h.all[i]; o.Rows == 0 && in.sameFile(o) && in.other(o, l.ID) {
			ids = append(ids, o.ID)
		}
	}
	slices.Sort(ids)
	var out []identity.Likeness
	for _, id := range slices.Compact(ids) {
		like := in.compare(counted[id], h.log(id), l, boats)
		if like.AsksMoved() {
			like.Moved = moved[id]
		}
		out = append(out, like)
	}
	return out, nil
}

// compare adds to what was counted, nil where nothing was, what need not be counted.
func (in *incoming) compare(counted *identity.Likeness, o, l *store.Log, boats []string) identity.Likeness {
	x := identity.Likeness{Log: o.ID}
	if counted != nil {
		x = *counted
	}
	apart := in.shelf.apart
	x.Rows = o.Rows
	x.Track = in.track
	x.SameName = strings.EqualFold(o.Name, l.Name)
	x.SameFile = in.sameFile(o)
	x.SameHand = identity.SameHand(o.Headings, l.Headings)
	x.Older = l.ChangedAt.Before(o.ChangedAt.Truncate(1000)) // the season file keeps microseconds
	x.Boats = identity.Compare(in.shelf.boats(o, in.shelf.extents[o.ID]), boats)
	x.ApartFrom = apart[o.ID]
	x.Apart = slices.Contains(apart[l.ID], o.ID) || in.same != 0 && slices.Contains(apart[in.same], o.ID)
	if in.track {
		sum := identity.Sum(x.Days)
		x.Legs, x.NewLegs, x.Twin = sum.Before, sum.Now, sum.Found
	}
	return x
}

// other reports whether a log is one of the season that this one, with number id, may be
// held against.
func (in *incoming) other(o *store.Log, id int64) bool {
	return o.State == store.In && o.ID != id && o.ID != in.same && o.Track == in.track
}
