package pipeline

import (
	"context"
	"slices"

	"wakeledger/pipeline/identity"
	"wakeledger/pipeline/store"
)

// way is one way of reading a log.
type way struct {
	manner manner
	of     int64 // an earlier log whose manner it is, of which this may be a changed copy; 0: none
	last   bool  // the log is stored, whatever it is
}

// ways are the ways to read a log, the likeliest first; or what there is to say of it
// where it need not be read.
func (s *Season) ways(ctx context.Context, in *incoming) ([]way, *LogReport, error) {
	if len(in.shelf.all) > 0 {
		var err error
		if in.log.SHA256, err = in.sum(); err != nil {
			return nil, nil, err
		}
		if known := in.shelf.known(in.log.SHA256); len(known) > 0 {
			return s.knownWays(ctx, in, known)
		}
	}
	if err := in.force(s.cfg.Replaces, 0); err != nil {
		return nil, nil, err
	}
	if len(in.forced) > 0 {
		m, err := parseManner(in.shelf.by(in.forced[0]).Settings)
		return []way{{manner: in.given.or(m), last: true}}, nil, err
	}
	return []way{{manner: in.given}}, nil, nil
}

// knownWays is for bytes that the season file knows.
func (s *Season) knownWays(ctx context.Context, in *incoming, known []store.Log) ([]way, *LogReport, error) {
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
		if m.full().String() == before.full().String() && !changed && len(in.forced) == 0 {
			rep := &LogReport{Name: in.log.Name, ID: k.ID, Known: Unchanged, KnownAs: k, Kept: k.Rows}
			return nil, rep, nil
		}
		in.same = k.ID
		in.log.Name, in.log.Folder = k.Name, k.Folder
		return []way{{manner: m, last: true}}, nil, nil
	}
	// an earlier version that lies beside the log that took its place is not meant to
	// take it back; the file of that log, changed back, is
	now := in.shelf.successor(k.ID)
	if k.State == store.Replaced && now.ID != 0 && len(in.forced) == 0 && !in.sameFile(&now) {
		rep := &LogReport{Name: in.log.Name, ID: now.ID, Known: EarlierVersion, KnownAs: now, Kept: k.Rows}
		rep.Replaced = []store.Log{k}
		return nil, rep, nil
	}
	for _, x := range known {
		in.drop = append(in.drop, x.ID)
	}
	return []way{{manner: m, last: true}}, nil, nil
}

// mostWays is in how many manners of earlier logs a log is tried.
const mostWays = 4

// earlierWays are the manners in which logs of the same hand were read, where more was
// said of them than of this log: those among ids, or any where none is given.
func (in *incoming) earlierWays(l *store.Log, ids []int64) ([]way, error) {
	var ways []way
	tried := map[string]bool{in.given.String(): true}
	seen := map[string]bool{} // manners of earlier logs
	for i := range in.shelf.all {
		o := &in.shelf.all[i]
		if o.State != store.In || o.Track != in.track || len(ids) > 0 &&
			!slices.Contains(ids, o.ID) || seen[o.Settings] {
			continue
		}
		if len(ids) == 0 && !identity.SameHand(o.Headings, l.Headings) {
			continue
		}
		seen[o.Settings] = true
		m, err := parseManner(o.Settings)
		if err != nil {
			return nil, err
		}
		m = in.given.or(m)
		if text := m.String(); !tried[text] && len(ways) < mostWays {
			tried[text] = true
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
