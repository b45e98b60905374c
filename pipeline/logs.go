package pipeline

import (
	"context"
	"errors"
	"fmt"
	"slices"

	"wakeledger/pipeline/identity"
	"wakeledger/pipeline/store"
)

// ErrNoBoat is wrapped where a boat is named that the logs do not name.
var ErrNoBoat = errors.New("no such boat")

// Forget takes logs out of the season, by number, label or name. All that was read of
// them is kept. It returns the logs. Where one is not there, nothing changes.
func (s *Season) Forget(ctx context.Context, names []string) ([]store.Log, error) {
	all, err := s.DB.Logs(ctx)
	if err != nil {
		return nil, err
	}
	var found []store.Log
	var ids []int64
	for _, name := range names {
		l, err := FindLog(all, name)
		if err != nil {
			return nil, err
		}
		if l.State != store.In {
			return nil, fmt.Errorf("%w: log %d, %s, is not in the season: it was %s", ErrNoLog, l.ID, l.Label, l.State)
		}
		if !slices.Contains(ids, l.ID) {
			found, ids = append(found, l), append(ids, l.ID)
		}
	}
	return found, s.DB.Leave(ctx, ids, s.cfg.Now())
}

// Restore has a log back that was forgotten or replaced: what took its place leaves the
// season, as does a log of the season that it is surely a version of. Where that is not
// certain, the report says what is asked, and nothing changes.
func (s *Season) Restore(ctx context.Context, name string) (LogReport, error) {
	h, err := s.openShelf(ctx)
	if err != nil {
		return LogReport{}, err
	}
	l, err := findPast(h.all, name)
	if err != nil {
		return LogReport{}, err
	}
	in := &incoming{log: l, track: l.Track, alone: true, shelf: h}
	if err := in.force(s.cfg.Replaces, 0); err != nil {
		return LogReport{}, err
	}
	if now := h.successor(l.ID); l.State == store.Replaced && now.ID != 0 && !slices.Contains(in.forced, now.ID) {
		in.forced = append(in.forced, now.ID)
	}
	rep := LogReport{Path: l.Label, Name: l.Name, Label: l.Label, ID: l.ID, Kept: l.Rows}
	err = s.DB.ComeBack(ctx, l.ID, s.cfg.Now(), func() (store.Place, error) {
		extents, err := s.DB.Extents(ctx, l.ID)
		if err != nil {
			return store.Place{}, err
		}
		x := extents[l.ID]
		if x == nil { // it has no rows
			x = &store.Extent{}
		}
		return s.settlePlace(ctx, in, &l, x, way{last: true}, &rep)
	})
	if errors.Is(err, errAsked) {
		return rep, nil
	}
	if err != nil {
		return rep, err
	}
	changed, err := s.DB.AnswersChanged(ctx, l.ID)
	if changed {
		rep.Known = ReadAgain
	}
	return rep, err
}

// findPast is the log that was replaced or forgotten that is meant by a number or a name.
func findPast(all []store.Log, name string) (store.Log, error) {
	past := slices.DeleteFunc(slices.Clone(all), func(l store.Log) bool { return l.State == store.In })
	l, err := FindLog(past, name)
	if err == nil {
		return l, nil
	}
	if in, e := FindLog(all, name); e == nil && in.State == store.In {
		return l, fmt.Errorf("%w: log %d, %s, is in the season", ErrNoLog, in.ID, in.Label)
	}
	return l, err
}

// RenameBoat shows a boat under another name; where a boat has that already, the two are
// one. The error wraps ErrNoBoat where no log names the boat.
func (s *Season) RenameBoat(ctx context.Context, from, to string) error {
	boats, err := s.DB.Boats(ctx)
	if err != nil {
		return err
	}
	if !slices.Contains(boats, from) {
		return fmt.Errorf("%w: no log names a boat %q", ErrNoBoat, from)
	}
	if to == "" || from == to {
		return fmt.Errorf("%w: %q is no other name for %q", ErrNoBoat, to, from)
	}
	return s.DB.RenameBoat(ctx, from, to)
}

// PartBoat shows rows logged under a name under that name again. The error wraps ErrNoBoat
// where they are not shown under another.
func (s *Season) PartBoat(ctx context.Context, logged string) error {
	names, err := s.DB.BoatNames(ctx)
	if err != nil {
		return err
	}
	if names[logged] == "" {
		return fmt.Errorf("%w: boat %q is shown as it was logged", ErrNoBoat, logged)
	}
	return s.DB.PartBoat(ctx, logged)
}

// NearBoats are the boats of the season whose names are nearly alike.
func (s *Season) NearBoats(ctx context.Context) ([]NearBoat, error) {
	boats, err := s.DB.Boats(ctx)
	var out []NearBoat
	for i, b := range boats {
		for _, other := range boats[i+1:] {
			if identity.Near(b, other) {
				out = append(out, NearBoat{b, other})
			}
		}
	}
	return out, err
}
