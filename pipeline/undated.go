package pipeline

import (
	"context"
	"maps"
	"slices"

	"wakeledger/pipeline/store"
)

// mostUndated is of logs of how many rows, of which some name no day, it is kept in memory
// what they are found by. Larger ones are held against every log.
const mostUndated = 5000

// undatedLogs are the logs of a season with rows that name no day. Such a row has the day of its
// label, in its own log or in another one of its folder; else it is found by its key.
type undatedLogs struct {
	large   []int64            // held against every log
	unknown map[int64]bool     // it is not known yet, or no longer, what they are found by
	leaning map[int64]bool     // those that may have a day from logs that come after them
	ofKey   map[uint64][]int64 // by the key of a row without a day
}

func newUndatedLogs() undatedLogs {
	return undatedLogs{unknown: map[int64]bool{}, leaning: map[int64]bool{}, ofKey: map[uint64][]int64{}}
}

// add notes a log with rows that name no day.
func (u *undatedLogs) add(l store.Log) {
	switch {
	case l.Rows > mostUndated && !slices.Contains(u.large, l.ID):
		u.large = append(u.large, l.ID)
	case l.Rows <= mostUndated:
		u.unknown[l.ID] = true
	}
}

// lookAgain has it looked up anew what the logs are found by that look to other logs for
// their days.
func (u *undatedLogs) lookAgain() { maps.Copy(u.unknown, u.leaning) }

// look looks up what logs are found by of which it is not known, and what log l is.
func (h *shelf) look(ctx context.Context, db *store.DB, l *store.Log) (*store.Undated, error) {
	u := &h.undated
	ids := slices.Sorted(maps.Keys(u.unknown))
	if l != nil {
		ids = append(ids, l.ID)
	}
	all, err := db.Undated(ctx, ids)
	if err != nil || l == nil {
		l = &store.Log{}
	}
	for id, x := range all {
		if id != l.ID {
			h.found(id, x)
		}
	}
	clear(u.unknown)
	return all[l.ID], err
}

// found notes what a log is found by.
func (h *shelf) found(id int64, x *store.Undated) {
	u := &h.undated
	for _, d := range x.Days {
		if !slices.Contains(h.ofDay[d], id) {
			h.ofDay[d] = append(h.ofDay[d], id)
		}
	}
	for _, k := range x.Keys {
		if !slices.Contains(u.ofKey[k], id) {
			u.ofKey[k] = append(u.ofKey[k], id)
		}
	}
	if x.Leans {
		u.leaning[id] = true
	}
	delete(u.unknown, id)
}

// mayShare are the logs, by number, that may have rows in common with log l, which names
// the days x and whose rows are in the season file.
func (s *Season) mayShare(ctx context.Context, in *incoming, l *store.Log, x *store.Extent) ([]int64, error) {
	h := in.shelf
	in.undated = nil
	switch {
	case s.exhaust:
		return h.everyLog(), nil
	case in.track:
		return h.onDays(nil, x.Days), nil
	}
	if x.Labels { // it may give other logs' rows their day; that it stays is not certain
		h.undated.lookAgain()
		defer h.undated.lookAgain()
	}
	var asked *store.Log
	if x.Undated && l.Rows <= mostUndated {
		asked = l
	}
	var err error
	if in.undated, err = h.look(ctx, s.DB, asked); err != nil {
		return nil, err
	}
	found := slices.Clone(h.undated.large)
	if x.Undated && asked == nil {
		return h.everyLog(), nil
	}
	if in.undated != nil {
		for _, d := range in.undated.Days {
			found = append(found, h.ofDay[d]...)
		}
		for _, k := range in.undated.Keys {
			found = append(found, h.undated.ofKey[k]...)
		}
	}
	return h.onDays(found, x.Days), nil
}

func (h *shelf) everyLog() []int64 {
	var all []int64
	for i := range h.all {
		all = append(all, h.all[i].ID)
	}
	return all
}

// onDays adds to found the logs that name one of some days; each log once, by number.
func (h *shelf) onDays(found []int64, days map[int64]bool) []int64 {
	for d := range days {
		found = append(found, h.ofDay[d]...)
	}
	slices.Sort(found)
	return slices.Compact(found)
}
