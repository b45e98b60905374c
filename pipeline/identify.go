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
	"wakeledger/pipeline/sheet"
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
}

// way is one way of reading a log: that of an earlier log, or, where that is 0, as it was
// asked for.
type way struct {
	manner manner
	of     int64
}

// errNotThisWay takes back a reading that did not show the log to be the one expected.
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
	for i, w := range ways {
		last := i == len(ways)-1
		r, err := s.read(ctx, in, w, last)
		switch {
		case errors.Is(err, errAsked):
			return r, nil
		case !last && ctx.Err() == nil && err != nil:
			continue
		case err != nil:
			return r, err
		}
		r.Near, err = s.near(ctx, r.ID)
		return r, err
	}
	return LogReport{}, errors.New("no way to read the log") // there always is the last one
}

func (s *Season) incoming(ctx context.Context, path string, alone bool) (*incoming, error) {
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
	in.all, err = s.DB.Logs(ctx)
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
		return []way{{manner: in.given.or(m)}}, nil, err
	}
	ways, err := s.earlierWays(in)
	return append(ways, way{manner: in.given}), nil, err
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
		return []way{{manner: m}}, nil, nil
	}
	// an earlier version that lies beside the log that took its place is not meant to
	// take it back; the file of that log, changed back, is
	if now := in.successor(k.ID); k.State == store.Replaced && now.ID != 0 && len(in.forced) == 0 && !in.sameFile(now) {
		return nil, &LogReport{Name: in.log.Name, ID: now.ID, Known: EarlierVersion, KnownAs: now, Kept: k.Rows, Replaced: []store.Log{in.by(k.ID)}}, nil
	}
	for _, x := range known {
		in.drop = append(in.drop, x.ID)
	}
	return []way{{manner: m}}, nil, nil
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
// said of them than of this log.
func (s *Season) earlierWays(in *incoming) ([]way, error) {
	var likely []store.Log
	var manners []manner
	for _, l := range in.all {
		m, err := parseManner(l.Settings)
		if err != nil {
			return nil, err
		}
		if m = in.given.or(m); l.State == store.In && l.Track == in.track && m.String() != in.given.String() {
			likely, manners = append(likely, l), append(manners, m)
		}
	}
	if len(likely) == 0 {
		return nil, nil
	}
	headings, err := s.headingsOf(in)
	if err != nil {
		return nil, nil // reading it the last way says what is wrong
	}
	var ways []way
	for _, first := range []bool{true, false} { // of the same file first
		for i, l := range likely {
			tried := slices.ContainsFunc(ways, func(w way) bool { return w.manner.String() == manners[i].String() })
			if in.sameFile(l) == first && !tried && len(ways) < mostWays && identity.SameHand(l.Headings, headings) {
				ways = append(ways, way{manners[i], l.ID})
			}
		}
	}
	return ways, nil
}

func (s *Season) headingsOf(in *incoming) ([]string, error) {
	if in.track {
		return nil, nil
	}
	book, err := sheet.Open(in.path, sheet.Options{Details: small(in.path)})
	if err != nil {
		return nil, err
	}
	defer book.Close()
	u, err := s.understand(book, in.path, newAnswers(s.answers))
	if err != nil {
		return nil, err
	}
	return u.headings(), nil
}

// read reads a log in one way and stores it where it belongs. In the last way it is
// stored also where it is no log that was there.
func (s *Season) read(ctx context.Context, in *incoming, w way, last bool) (LogReport, error) {
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
		return s.settlePlace(ctx, in, &l, id, w, last, &rep)
	})
	return rep, err
}

// settlePlace says where a log goes that was read as log id. Its error is errAsked where
// that is not certain, and errNotThisWay where another way of reading may show it.
func (s *Season) settlePlace(ctx context.Context, in *incoming, l *store.Log, id int64, w way, last bool, rep *LogReport) (store.Place, error) {
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
	switch {
	case v.Act == identity.Ask:
		rep.Asked = &Asked{Why: string(v.Why)}
		for _, of := range v.Logs {
			rep.Asked.Of = append(rep.Asked.Of, in.by(of))
		}
		rep.ID = 0
		return place, errAsked
	case v.Act == identity.Another && !last, v.Act == identity.Replace && w.of != 0 && !slices.Contains(v.Logs, w.of):
		return place, errNotThisWay
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
	return out, nil
}

// near are the boats of a log whose names are nearly those of other boats of the season.
func (s *Season) near(ctx context.Context, id int64) ([]NearBoat, error) {
	of, err := s.DB.BoatsOfLogs(ctx)
	if err != nil {
		return nil, err
	}
	all, err := s.DB.Boats(ctx)
	if err != nil {
		return nil, err
	}
	var out []NearBoat
	for _, b := range of[id] {
		for _, other := range all {
			if identity.Near(b, other) {
				out = append(out, NearBoat{b, other})
			}
		}
	}
	return out, nil
}
