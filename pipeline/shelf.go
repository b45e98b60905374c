package pipeline

import (
	"context"
	"maps"
	"slices"
	"strings"

	"wakeledger/pipeline/identity"
	"wakeledger/pipeline/store"
)

// shelf holds what is known of all logs without their rows, so that a log that comes in is
// held against those alone that it may have rows in common with.
type shelf struct {
	all     []store.Log   // of the season, and those that were, by number
	at      map[int64]int // in all
	extents map[int64]*store.Extent
	ofDay   map[int64][]int64 // logs by a day that their rows name
	undated undatedLogs
	prints  prints
	apart   map[int64][]int64
	shown   map[string]string   // boats by their name as logged, where it is another
	named   map[string]bool     // boats that were seen
	near    map[string][]string // by boat, those nearly of its name
	tracks  map[string]bool     // files that are loaded, by path: whether each is a track
	beside  map[string][]string // files that are loaded, by path: those that are tables of the same book
}

func (s *Season) openShelf(ctx context.Context) (*shelf, error) {
	h := &shelf{ofDay: map[int64][]int64{}, named: map[string]bool{},
		near: map[string][]string{}, tracks: map[string]bool{},
		undated: newUndatedLogs(), prints: newPrints()}
	var err error
	if h.all, err = s.DB.LogHeads(ctx); err != nil {
		return nil, err
	}
	if h.extents, err = s.DB.Extents(ctx, 0); err != nil {
		return nil, err
	}
	if h.apart, err = s.DB.Apart(ctx); err != nil {
		return nil, err
	}
	if h.shown, err = s.DB.BoatNames(ctx); err != nil {
		return nil, err
	}
	h.number()
	for id, x := range h.extents {
		h.index(id, x)
	}
	for i := range h.all {
		h.name(&h.all[i])
	}
	return h, nil
}

// isTrack is IsTrack, of which a file is asked once.
func (h *shelf) isTrack(path string) bool {
	is, ok := h.tracks[path]
	if !ok {
		is = IsTrack(path)
		h.tracks[path] = is
	}
	return is
}

func (h *shelf) number() {
	h.at = make(map[int64]int, len(h.all))
	for i, l := range h.all {
		h.at[l.ID] = i
	}
}

// index finds a log by its days. What an earlier reading of it named stays: a log too many
// is held against another, none too few.
func (h *shelf) index(id int64, x *store.Extent) {
	for d := range x.Days {
		h.ofDay[d] = append(h.ofDay[d], id)
	}
	if x.Undated {
		h.undated.add(h.by(id))
	}
}

// by is a copy of log.
func (h *shelf) by(id int64) store.Log { return *h.log(id) }

// log is the log with a number; one that is not in the season where there is none.
func (h *shelf) log(id int64) *store.Log {
	if i, ok := h.at[id]; ok {
		return &h.all[i]
	}
	return &store.Log{}
}

// known are the logs with certain bytes: that of the season first, then the last one.
func (h *shelf) known(sha256 string) []store.Log {
	var out []store.Log
	for i := range h.all {
		if l := &h.all[i]; l.SHA256 == sha256 {
			out = append(out, *l)
		}
	}
	order := func(l store.Log) string { return strings.TrimPrefix(l.State, store.In) } // "" is first
	slices.SortStableFunc(out, func(x, y store.Log) int {
		if c := strings.Compare(order(x), order(y)); c != 0 {
			return c
		}
		return int(y.ID - x.ID)
	})
	return out
}

// put notes that a log was stored, and what it took with it.
func (h *shelf) put(l store.Log, x store.Extent, p store.Place) {
	l.State = store.In
	if to := h.shown[l.Boat]; to != "" {
		l.Boat = to
	}
	if len(p.Drop) > 0 {
		h.all = slices.DeleteFunc(h.all, func(o store.Log) bool { return slices.Contains(p.Drop, o.ID) })
		h.number()
	}
	for _, id := range p.For {
		o := &h.all[h.at[id]]
		o.State, o.ReplacedBy = store.Replaced, l.ID
		h.setApart(l.ID, h.apart[id])
	}
	h.setApart(l.ID, p.Others)
	if i, ok := h.at[l.ID]; ok {
		h.all[i] = l
	} else {
		h.at[l.ID], h.all = len(h.all), append(h.all, l)
	}
	h.extents[l.ID] = &x
	h.index(l.ID, &x)
	if h.name(&l) || len(p.For) > 0 || p.Same != 0 {
		clear(h.near)
	}
	if len(p.For) > 0 || p.Same != 0 { // what left may have given other rows their day
		h.undated.lookAgain()
	}
}

func (h *shelf) setApart(id int64, from []int64) {
	for _, o := range from {
		if o != id && !slices.Contains(h.apart[id], o) {
			h.apart[id], h.apart[o] = append(h.apart[id], o), append(h.apart[o], id)
		}
	}
}

// name notes the boats of a log and reports whether one is new.
func (h *shelf) name(l *store.Log) bool {
	before := len(h.named)
	for _, b := range h.boats(l, h.extents[l.ID]) {
		h.named[b] = true
	}
	return len(h.named) > before
}

// boats are those that a log is of: those that its rows name, else the one named for it.
func (h *shelf) boats(l *store.Log, x *store.Extent) []string {
	switch {
	case x != nil && len(x.Boats) > 0:
		out := slices.Clone(x.Boats)
		for i, b := range out {
			if to := h.shown[b]; to != "" {
				out[i] = to
			}
		}
		return out
	case h.shown[l.Boat] != "":
		return []string{h.shown[l.Boat]}
	case l.Boat != "":
		return []string{l.Boat}
	}
	return nil
}

// nearTo are the boats of the season whose names are nearly those of a log's boats.
func (h *shelf) nearTo(boats []string) []NearBoat {
	var out []NearBoat
	for _, b := range boats {
		if h.near[b] == nil {
			h.near[b] = h.nearly(b)
		}
		for _, other := range h.near[b] {
			out = append(out, NearBoat{b, other})
		}
	}
	slices.SortFunc(out, func(x, y NearBoat) int { return strings.Compare(x.Boat+"\n"+x.Other, y.Boat+"\n"+y.Other) })
	return out
}

func (h *shelf) nearly(boat string) []string {
	all := map[string]bool{}
	for i := range h.all {
		if l := &h.all[i]; l.State == store.In {
			for _, b := range h.boats(l, h.extents[l.ID]) {
				all[b] = true
			}
		}
	}
	maps.DeleteFunc(all, func(other string, _ bool) bool { return !identity.Near(boat, other) })
	return append([]string{}, slices.Sorted(maps.Keys(all))...) // never nil: it was looked for
}
