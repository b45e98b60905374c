package pipeline

import (
	"context"
	"maps"
	"slices"

	"wakeledger/pipeline/identity"
	"wakeledger/pipeline/store"
)

// mostPrints is of logs of how many rows what the rows say is kept in memory, for logs that
// come in after them. The rows of larger ones, of which there are few, are compared by the database.
const mostPrints = 200

// prints are what the rows of logs say but for their day. A log whose dates were put right
// is found by them, without holding each log against all others.
type prints struct {
	of   map[uint64][]printed // by print
	logs map[int64][]uint64   // those whose prints are known
}

// printed is a log that has n rows of a print.
type printed struct{ log, n int64 }

func newPrints() prints {
	return prints{of: map[uint64][]printed{}, logs: map[int64][]uint64{}}
}

// put notes the prints of a log; nil: they are not known.
func (p *prints) put(id int64, all map[uint64]int64) {
	for _, x := range p.logs[id] {
		p.of[x] = slices.DeleteFunc(p.of[x], func(o printed) bool { return o.log == id })
	}
	delete(p.logs, id)
	if all == nil {
		return
	}
	p.logs[id] = []uint64{}
	for x, n := range all {
		p.of[x] = append(p.of[x], printed{id, n})
		p.logs[id] = append(p.logs[id], x)
	}
}

// moved is, by log of the season that l may be with its dates put right, how many rows of
// it l has but for their day. boats are those of l.
func (s *Season) moved(ctx context.Context, in *incoming, l *store.Log, boats []string) (map[int64]int64, error) {
	may := func(o *store.Log) bool {
		return identity.MayBeMoved(o.Rows, l.Rows) && in.other(o, l.ID) && identity.SameHand(o.Headings, l.Headings) &&
			identity.Compare(in.shelf.boats(o, in.shelf.extents[o.ID]), boats) != identity.OtherBoat
	}
	in.prints = nil
	h, large := in.shelf, s.exhaust || l.Rows > mostPrints
	var like, unknown []int64 // logs that l may be; of those so large, the ones whose prints are not known
	for i := range h.all {
		o := &h.all[i]
		if (len(like) == 0 || large) && may(o) {
			like = append(like, o.ID)
		}
		if identity.MayBeMoved(o.Rows, mostPrints) && h.prints.logs[o.ID] == nil && in.other(o, l.ID) {
			unknown = append(unknown, o.ID)
		}
	}
	switch {
	case in.track || len(like) == 0:
		return nil, nil
	case large:
		return s.DB.Moved(ctx, l.ID, like)
	}
	known, err := s.DB.Prints(ctx, append(unknown, l.ID))
	if err != nil {
		return nil, err
	}
	for _, id := range unknown {
		h.prints.put(id, orNone(known[id]))
	}
	in.prints = orNone(known[l.ID])
	out := map[int64]int64{}
	for x, n := range in.prints {
		for _, o := range h.prints.of[x] {
			out[o.log] += min(n, o.n)
		}
	}
	maps.DeleteFunc(out, func(id, _ int64) bool { return !may(h.log(id)) })
	return out, nil
}

// orNone are the prints of a log, which may have none.
func orNone(all map[uint64]int64) map[uint64]int64 {
	if all == nil {
		return map[uint64]int64{}
	}
	return all
}
