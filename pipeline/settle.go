package pipeline

import (
	"context"
	"errors"
	"path/filepath"
	"slices"

	"wakeledger/pipeline/identity"
	"wakeledger/pipeline/store"
)

// errNotThisWay takes back a reading where another way may show more.
var errNotThisWay = errors.New("read in another way")

// errAsked takes back a reading that leaves open which log it is.
var errAsked = errors.New("not settled")

// loadLog stores a log where it belongs; alone says that it is the only one of its run.
func (s *Season) loadLog(ctx context.Context, path string, alone bool) (LogReport, error) {
	in, err := s.incoming(path, alone)
	if err != nil {
		return LogReport{Path: path, Name: filepath.Base(path)}, err
	}
	return s.settle(ctx, in)
}

// settle reads a log in one way after another, until it is stored or asked about.
func (s *Season) settle(ctx context.Context, in *incoming) (rep LogReport, err error) {
	defer func() { rep.Path = in.path }()
	ways, known, err := s.ways(ctx, in)
	if err != nil {
		return LogReport{Name: in.log.Name}, err
	}
	if known != nil {
		return *known, nil
	}
	for len(ways) > 0 {
		w := ways[0]
		ways = ways[1:]
		r, err := s.read(ctx, in, w)
		switch {
		case errors.Is(err, errOutOfGroup):
			return r, err
		case errors.Is(err, errAsked):
			return r, nil
		case errors.Is(err, errNotThisWay) && w.of == 0:
			ways = append(in.better, way{manner: w.manner, last: true})
			continue
		case w.of != 0 && err != nil && ctx.Err() == nil:
			continue
		case err != nil:
			return r, err
		}
		l := in.shelf.by(r.ID)
		r.Near = in.shelf.nearTo(in.shelf.boats(&l, in.shelf.extents[l.ID]))
		return r, nil
	}
	return LogReport{}, errors.New("no way to read the log") // the last way stores it
}

// read reads a log in one way and stores it where it belongs.
func (s *Season) read(ctx context.Context, in *incoming, w way) (LogReport, error) {
	rep := LogReport{Name: in.log.Name, Before: in.shelf.by(in.same).Rows}
	switch {
	case in.same != 0:
		rep.Known, rep.KnownAs = ReadAgain, in.shelf.by(in.same)
	case len(in.drop) > 0:
		rep.Known, rep.KnownAs = Back, in.shelf.by(in.drop[0])
	}
	t := *s
	t.cfg = s.cfg.under(w.manner, in.log.Name)
	l := in.log
	l.Boat, l.Zone, l.Settings = w.manner.Boat, w.manner.Zone, w.manner.String()
	fill, closeLog, err := t.filler(ctx, in, w.manner, &l, &rep)
	if err != nil {
		return rep, err
	}
	defer closeLog()
	var place store.Place
	var extent store.Extent
	rep.Kept, err = s.DB.Bring(ctx, &l, s.cfg.Now(), func(load *store.Load) error {
		if err := fill(load); err != nil {
			return err
		}
		if l.SHA256, err = in.sum(); err != nil {
			return err
		}
		return unchanged(in.path, in.stat)
	}, func(load *store.Load) (store.Place, error) {
		if rep.ID = load.ID; in.same != 0 {
			rep.ID = in.same
		}
		l.ID, l.Rows, l.Track, l.Label, extent = load.ID, load.Rows, in.track, l.Name, load.Extent
		place, err = s.settlePlace(ctx, in, &l, &extent, w, &rep)
		return place, err
	})
	if err != nil {
		return rep, s.outOfGroup(err)
	}
	l.ID = rep.ID
	in.shelf.put(l, extent, place)
	in.shelf.prints.put(l.ID, in.prints)
	if in.undated != nil {
		in.shelf.found(l.ID, in.undated)
	}
	return rep, nil
}

// settlePlace says where log l goes, of which the days and boats are x. Its error is
// errAsked where that is not certain, and errNotThisWay where another way of reading may
// show it.
func (s *Season) settlePlace(ctx context.Context, in *incoming, l *store.Log, x *store.Extent, w way,
	rep *LogReport) (store.Place, error) {
	place := store.Place{Same: in.same, Drop: in.drop}
	like, err := s.likenesses(ctx, in, l, x)
	if err != nil {
		return place, err
	}
	v := identity.Decide(like)
	if len(in.forced) > 0 {
		v = identity.Verdict{Act: identity.Replace, Logs: in.forced}
	}
	if s.cfg.Another && (v.Act == identity.Ask || v.Act == identity.Replace && in.alone) {
		place.Others, v = v.Logs, identity.Verdict{}
	}
	if !w.last && w.of == 0 {
		further, err := in.lookFurther(l, v, rep)
		if err != nil {
			return place, err
		}
		if further {
			return place, errNotThisWay
		}
	}
	switch {
	case w.of != 0 && !slices.Contains(v.Logs, w.of):
		return place, errNotThisWay
	case v.Act == identity.Ask:
		return place, s.ask(ctx, in, in.shelf.boats(l, x), v, rep)
	case v.Act == identity.Replace:
		place.For = slices.DeleteFunc(v.Logs, func(of int64) bool { return of == in.same })
		for _, of := range place.For {
			rep.Replaced = append(rep.Replaced, in.shelf.by(of))
			for _, x := range like {
				if x.Log == of {
					rep.Changes = append(rep.Changes, x.Days...)
				}
			}
		}
	}
	return place, nil
}

// ask has a report say what must be answered before a log of some boats is stored. Its
// error is errAsked.
func (s *Season) ask(ctx context.Context, in *incoming, boats []string, v identity.Verdict, rep *LogReport) error {
	rep.Asked, rep.ID, rep.Near = &Asked{Why: string(v.Why)}, 0, in.shelf.nearTo(boats)
	all, err := s.DB.Logs(ctx)
	if err != nil {
		return err
	}
	for _, l := range all {
		if slices.Contains(v.Logs, l.ID) {
			rep.Asked.Of = append(rep.Asked.Of, l)
		}
	}
	return errAsked
}
