package pipeline

import (
	"context"
	"slices"
	"strings"

	"wakeledger/pipeline/identity"
	"wakeledger/pipeline/store"
)

// likenesses is what log l, which names the days and boats x, has in common with the logs
// of the season. Those with which it has nothing in common are left out.
func (s *Season) likenesses(ctx context.Context, in *incoming, l *store.Log, x *store.Extent) ([]identity.Likeness, error) {
	var counted map[int64]*identity.Likeness
	share := slices.DeleteFunc(in.shelf.mayShare(x), func(id int64) bool {
		o := in.shelf.by(id)
		return !in.other(&o, l.ID)
	})
	if len(share) > 0 {
		var err error
		if counted, err = s.DB.Likenesses(ctx, l.ID, in.track, share); err != nil {
			return nil, err
		}
	}
	var out []identity.Likeness
	var still []int64 // of out, those that may hold the same rows on other days
	boats := in.shelf.boats(l, x)
	for i := range in.shelf.all {
		o := &in.shelf.all[i]
		if !in.other(o, l.ID) {
			continue
		}
		_, shares := slices.BinarySearch(share, o.ID)
		moved := !in.track && identity.MayBeMoved(o.Rows, l.Rows)
		if !shares && !moved && (o.Rows > 0 || !in.sameFile(*o)) {
			continue
		}
		like := in.compare(counted[o.ID], o, l, boats)
		if moved && like.AsksMoved() {
			still = append(still, o.ID)
		}
		out = append(out, like)
	}
	if len(still) == 0 {
		return out, nil
	}
	moved, err := s.DB.Moved(ctx, l.ID, still)
	for i := range out {
		out[i].Moved = moved[out[i].Log]
	}
	return out, err
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
	x.SameFile = in.sameFile(*o)
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
