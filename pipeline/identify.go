package pipeline

import (
	"context"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"

	"wakeledger/pipeline/identity"
	"wakeledger/pipeline/infile"
	"wakeledger/pipeline/store"
)

// ErrNoLog is wrapped where a log is named that the season file has not, or that several
// have the name of.
var ErrNoLog = errors.New("no such log")

// incoming is a file on its way to be a log of the season.
type incoming struct {
	path   string
	log    store.Log
	track  bool
	alone  bool // the only log that is loaded
	sum    func() (string, error)
	stat   os.FileInfo
	given  manner
	all    []store.Log // of the season, and those that were
	same   int64       // the log of the season with the same bytes; 0: none
	drop   []int64     // logs with the same bytes that were
	forced []int64     // those whose place it takes by its owner's word
	better []way       // ways that may show more than the one at hand
}

// way is one way of reading a log.
type way struct {
	manner manner
	of     int64 // an earlier log whose manner it is, of which this may be a changed copy; 0: none
	last   bool  // the log is stored, whatever it is
}

// errNotThisWay takes back a reading where another way may show more.
var errNotThisWay = errors.New("read in another way")

// errAsked takes back a reading that leaves open which log it is.
var errAsked = errors.New("not settled")

// loadLog stores a log where it belongs; alone says that it is the only one of its run.
func (s *Season) loadLog(ctx context.Context, path string, alone bool) (LogReport, error) {
	in, err := s.incoming(ctx, path, alone)
	if err != nil {
		return LogReport{Name: filepath.Base(path)}, err
	}
	ways, rep, err := s.ways(ctx, in)
	if err != nil || rep != nil {
		if rep == nil {
			rep = &LogReport{Name: in.log.Name}
		}
		return *rep, err
	}
	for len(ways) > 0 {
		w := ways[0]
		ways = ways[1:]
		r, err := s.read(ctx, in, w)
		switch {
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
		r.Near, err = s.near(ctx, r.ID)
		return r, err
	}
	return LogReport{}, errors.New("no way to read the log") // the last way stores it
}

func (s *Season) incoming(ctx context.Context, path string, alone bool) (*incoming, error) {
	if err := infile.Check(path); err != nil {
		return nil, err
	}
	stat, err := os.Stat(path)
	if err != nil {
		return nil, err
	}
	in := &incoming{path: path, track: IsTrack(path), alone: alone, stat: stat, sum: startHash(path)}
	in.log = store.Log{Name: filepath.Base(path), ChangedAt: stat.ModTime()}
	if abs, err := filepath.Abs(path); err == nil {
		in.log.Folder = filepath.Base(filepath.Dir(abs))
	}
	in.given = s.cfg.manner(in.log.Name, in.track)
	in.all, err = s.DB.LogHeads(ctx)
	return in, err
}

// force takes the owner's word for the logs whose place this one takes. known is the log
// of the season with the same bytes, 0 where there is none: what it has replaced already
// is done.
func (in *incoming) force(names []string, known int64) error {
	for _, name := range names {
		l, err := FindLog(in.all, name)
		if err != nil {
			return err
		}
		switch {
		case l.State == store.In && l.ID != known:
			in.forced = append(in.forced, l.ID)
		case known == 0 || in.successor(l.ID).ID != known:
			return fmt.Errorf("%w: log %d, %s, is not in the season: it was %s", ErrNoLog, l.ID, l.Label, l.State)
		}
	}
	return nil
}

// FindLog is the log that is meant by its number, its label or its file's name. The error
// wraps ErrNoLog.
func FindLog(all []store.Log, name string) (store.Log, error) {
	if n, err := strconv.ParseInt(name, 10, 64); err == nil {
		for _, l := range all {
			if l.ID == n {
				return l, nil
			}
		}
	}
	for _, same := range []func(store.Log) bool{
		func(l store.Log) bool { return l.State == store.In && l.Label == name },
		func(l store.Log) bool { return l.State == store.In && l.Name == name },
		func(l store.Log) bool { return l.Label == name || l.Name == name },
	} {
		var found []store.Log
		for _, l := range all {
			if same(l) {
				found = append(found, l)
			}
		}
		if len(found) == 1 {
			return found[0], nil
		}
		if len(found) > 1 {
			return store.Log{}, fmt.Errorf("%w: %q may be any of %d logs: give its number, 'wakeledger logs' lists them", ErrNoLog, name, len(found))
		}
	}
	return store.Log{}, fmt.Errorf("%w: %q: 'wakeledger logs' lists the logs that there are", ErrNoLog, name)
}

// ways are the ways to read a log, the likeliest first; or what there is to say of it
// where it need not be read.
func (s *Season) ways(ctx context.Context, in *incoming) ([]way, *LogReport, error) {
	if len(in.all) > 0 {
		var err error
		if in.log.SHA256, err = in.sum(); err != nil {
			return nil, nil, err
		}
		known, err := s.DB.FindContent(ctx, in.log.SHA256)
		if err != nil {
			return nil, nil, err
		}
		if len(known) > 0 {
			return s.knownWays(ctx, in, known)
		}
	}
	if err := in.force(s.cfg.Replaces, 0); err != nil {
		return nil, nil, err
	}
	if len(in.forced) > 0 {
		m, err := parseManner(in.by(in.forced[0]).Settings)
		return []way{{manner: in.given.or(m), last: true}}, nil, err
	}
	return []way{{manner: in.given}}, nil, nil
}

// by is the log with a number.
func (in *incoming) by(id int64) store.Log {
	for _, l := range in.all {
		if l.ID == id {
			return l
		}
	}
	return store.Log{}
}

// knownWays is for bytes that the season file knows.
func (s *Season) knownWays(ctx context.Context, in *incoming, known []store.Known) ([]way, *LogReport, error) {
	k := known[0]
	before, err := parseManner(k.Settings)
	if err != nil {
		return nil, nil, err
	}
	m := in.given.or(before)
	here := int64(0)
	if k.State == store.In {
		here = k.ID
	}
	if err := in.force(s.cfg.Replaces, here); err != nil {
		return nil, nil, err
	}
	if k.State == store.In {
		if before.Boat != "" {
			m.Boat = before.Boat
		}
		changed, err := s.DB.AnswersChanged(ctx, k.ID)
		if err != nil {
			return nil, nil, err
		}
		if m.String() == before.String() && !changed && len(in.forced) == 0 {
			return nil, &LogReport{Name: in.log.Name, ID: k.ID, Known: Unchanged, KnownAs: in.by(k.ID), Kept: k.Rows}, nil
		}
		in.same = k.ID
		in.log.Name, in.log.Folder = in.by(k.ID).Name, in.by(k.ID).Folder
		return []way{{manner: m, last: true}}, nil, nil
	}
	// an earlier version that lies beside the log that took its place is not meant to
	// take it back; the file of that log, changed back, is
	if now := in.successor(k.ID); k.State == store.Replaced && now.ID != 0 && len(in.forced) == 0 && !in.sameFile(now) {
		return nil, &LogReport{Name: in.log.Name, ID: now.ID, Known: EarlierVersion, KnownAs: now, Kept: k.Rows, Replaced: []store.Log{in.by(k.ID)}}, nil
	}
	for _, x := range known {
		in.drop = append(in.drop, x.ID)
	}
	return []way{{manner: m, last: true}}, nil, nil
}

// successor is the log of the season that took the place of one that was replaced, itself
// or by others between; none where that was forgotten.
func (in *incoming) successor(id int64) store.Log { return successor(in.all, id) }

func successor(all []store.Log, id int64) store.Log {
	seen := map[int64]bool{}
	for !seen[id] {
		seen[id] = true
		i := slices.IndexFunc(all, func(l store.Log) bool { return l.ID == id })
		if i < 0 || all[i].State == store.Forgotten {
			return store.Log{}
		}
		if all[i].State == store.In {
			return all[i]
		}
		id = all[i].ReplacedBy
	}
	return store.Log{}
}

func (in *incoming) sameFile(l store.Log) bool {
	return l.Name == in.log.Name && l.Folder == in.log.Folder
}

// mostWays is in how many manners of earlier logs a log is tried.
const mostWays = 4

// earlierWays are the manners in which logs of the same hand were read, where more was
// said of them than of this log: those among ids, or any where none is given.
func (in *incoming) earlierWays(l *store.Log, ids []int64) ([]way, error) {
	var ways []way
	for _, o := range in.all {
		if o.State != store.In || o.Track != in.track || len(ids) > 0 && !slices.Contains(ids, o.ID) {
			continue
		}
		m, err := parseManner(o.Settings)
		if err != nil {
			return nil, err
		}
		m = in.given.or(m)
		tried := slices.ContainsFunc(ways, func(w way) bool { return w.manner.String() == m.String() })
		if m.String() != in.given.String() && !tried && len(ways) < mostWays && (len(ids) > 0 || identity.SameHand(o.Headings, l.Headings)) {
			ways = append(ways, way{manner: m, of: o.ID})
		}
	}
	return ways, nil
}

// lookFurther reports whether another way of reading may show more of a log that was read
// as it was asked for, and keeps these ways: those of the logs that it may be, or, where
// it seems to be none but part of it could not be read, those of its hand.
func (in *incoming) lookFurther(l *store.Log, v identity.Verdict, rep *LogReport) (bool, error) {
	unread := rep.SetAside > 0 || slices.ContainsFunc(rep.Sheets, func(x SheetReport) bool { return x.Kind == "" })
	if v.Act == identity.Another && !unread {
		return false, nil
	}
	var err error
	in.better, err = in.earlierWays(l, v.Logs)
	return len(in.better) > 0, err
}

// read reads a log in one way and stores it where it belongs.
func (s *Season) read(ctx context.Context, in *incoming, w way) (LogReport, error) {
	rep := LogReport{Name: in.log.Name, Before: in.by(in.same).Rows}
	switch {
	case in.same != 0:
		rep.Known, rep.KnownAs = ReadAgain, in.by(in.same)
	case len(in.drop) > 0:
		rep.Known, rep.KnownAs = Back, in.by(in.drop[0])
	}
	t := *s
	t.cfg = s.cfg.under(w.manner, in.log.Name)
	l := in.log
	l.Boat, l.Zone, l.Settings = w.manner.Boat, w.manner.Zone, w.manner.String()
	fill, closeLog, err := t.filler(ctx, in.path, &l, &rep)
	if err != nil {
		return rep, err
	}
	defer closeLog()
	rep.Kept, err = s.DB.Bring(ctx, &l, s.cfg.Now(), func(load *store.Load) error {
		if err := fill(load); err != nil {
			return err
		}
		if l.SHA256, err = in.sum(); err != nil {
			return err
		}
		return unchanged(in.path, in.stat)
	}, func(id int64) (store.Place, error) {
		rep.ID = id
		if in.same != 0 {
			rep.ID = in.same
		}
		return s.settlePlace(ctx, in, &l, id, w, &rep)
	})
	return rep, err
}

// settlePlace says where a log goes that was read as log id. Its error is errAsked where
// that is not certain, and errNotThisWay where another way of reading may show it.
func (s *Season) settlePlace(ctx context.Context, in *incoming, l *store.Log, id int64, w way, rep *LogReport) (store.Place, error) {
	place := store.Place{Same: in.same, Drop: in.drop}
	like, err := s.likenesses(ctx, in.all, l, id, in.same, in.track)
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
		rep.Asked, rep.ID = &Asked{Why: string(v.Why)}, 0
		all, err := s.DB.Logs(ctx)
		if err != nil {
			return place, err
		}
		for _, l := range all {
			if slices.Contains(v.Logs, l.ID) {
				rep.Asked.Of = append(rep.Asked.Of, l)
			}
		}
		return place, errAsked
	case v.Act == identity.Replace:
		place.For = slices.DeleteFunc(v.Logs, func(of int64) bool { return of == in.same })
		for _, of := range place.For {
			rep.Replaced = append(rep.Replaced, in.by(of))
			for _, x := range like {
				if x.Log == of {
					rep.Changes = append(rep.Changes, x.Days...)
				}
			}
		}
	}
	return place, nil
}

// likenesses is what log id, which is l, has in common with the logs of the season; same
// is an earlier reading of the same bytes, which is passed over.
func (s *Season) likenesses(ctx context.Context, all []store.Log, l *store.Log, id, same int64, track bool) ([]identity.Likeness, error) {
	if !slices.ContainsFunc(all, func(o store.Log) bool { return o.State == store.In && o.ID != same && o.ID != id }) {
		return nil, nil
	}
	counted, err := s.DB.Likenesses(ctx, id, track)
	if err != nil {
		return nil, err
	}
	boats, err := s.DB.BoatsOfLogs(ctx)
	if err != nil {
		return nil, err
	}
	apart, err := s.DB.Apart(ctx)
	if err != nil {
		return nil, err
	}
	var out []identity.Likeness
	for _, o := range all {
		if o.State != store.In || o.ID == same || o.ID == id || o.Track != track {
			continue
		}
		x := counted[o.ID]
		if x == nil {
			x = &identity.Likeness{Log: o.ID}
		}
		x.Rows = o.Rows
		x.Track = track
		x.SameName = strings.EqualFold(o.Name, l.Name)
		x.SameFile = o.Name == l.Name && o.Folder == l.Folder
		x.SameHand = identity.SameHand(o.Headings, l.Headings)
		x.Older = l.ChangedAt.Before(o.ChangedAt.Truncate(1000)) // the season file keeps microseconds
		x.Boats = identity.Compare(boats[o.ID], boats[id])
		x.ApartFrom = apart[o.ID]
		x.Apart = slices.Contains(apart[id], o.ID) || same != 0 && slices.Contains(apart[same], o.ID)
		if track {
			sum := identity.Sum(x.Days)
			x.Legs, x.NewLegs, x.Twin = sum.Before, sum.Now, sum.Found
		}
		out = append(out, *x)
	}
	return out, s.moved(ctx, out, id)
}

// moved counts rows that are equal but for their day where nothing else was found again of
// a log of the same hand.
func (s *Season) moved(ctx context.Context, all []identity.Likeness, id int64) error {
	asks := func(x identity.Likeness) bool {
		return x.SameHand && !x.Apart && x.Boats != identity.OtherBoat && identity.Sum(x.Days).Found == 0
	}
	if !slices.ContainsFunc(all, asks) {
		return nil
	}
	moved, err := s.DB.Moved(ctx, id)
	for i, x := range all {
		if asks(x) {
			all[i].Moved = moved[x.Log]
		}
	}
	return err
}

// near are the boats of a log whose names are nearly those of other boats of the season.
func (s *Season) near(ctx context.Context, id int64) ([]NearBoat, error) {
	of, err := s.DB.BoatsOfLogs(ctx)
	if err != nil {
		return nil, err
	}
	var out []NearBoat
	for _, b := range of[id] {
		for _, boats := range of {
			for _, other := range boats {
				if n := (NearBoat{b, other}); identity.Near(b, other) && !slices.Contains(out, n) {
					out = append(out, n)
				}
			}
		}
	}
	slices.SortFunc(out, func(x, y NearBoat) int { return strings.Compare(x.Boat+"\n"+x.Other, y.Boat+"\n"+y.Other) })
	return out, nil
}
