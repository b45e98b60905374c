package store

import (
	"context"
	"fmt"

	"github.com/apache/arrow-go/v18/arrow/array"
)

// Track is what was found in one track of a log; counts and seconds as the table
// track has them. FirstMS and LastMS are milliseconds since 1970, UTC.
type Track struct {
	No                                         int64 // in its log, from 1
	Member, Format                             string
	FirstMS, LastMS                            int64
	Fixes, Used, Reordered, Late               int64
	Repeated, Jumps, Gaps, Breaks, Joined      int64
	GapSeconds, CoveredSeconds, StoppedSeconds float64
	Dropouts                                   int64
	DropoutSeconds, LooseSeconds               float64
	ClockSeconds                               float64 // put on its own clock
	Unused                                     string  // why nothing of it is used
}

// InsertFixes stores the pieces of a log's tracks as they come. The columns of r
// are columns of the table fix. It returns the number of rows.
func (l *Load) InsertFixes(ctx context.Context, r array.RecordReader) (int64, error) {
	n, err := l.db.insertArrow(ctx, "fix", fmt.Sprintf("%d AS log_id", l.ID), r)
	l.Rows += n
	return n, err
}

// InsertTracks stores what was found in a log's tracks.
func (l *Load) InsertTracks(ctx context.Context, tracks []Track) error {
	for _, t := range tracks {
		var first, last any
		if t.Used > 0 {
			first, last = t.FirstMS, t.LastMS
			const day = 24 * 60 * 60 * 1000
			for d := t.FirstMS / day; d <= t.LastMS/day; d++ {
				l.Extent.day(d)
			}
		}
		err := l.db.exec(ctx, "insert_track", l.ID, t.No, t.Member, t.Format, first, last,
			t.Fixes, t.Used, t.Reordered, t.Late,
			t.Repeated, t.Jumps, t.Gaps, t.Breaks, t.Joined, t.GapSeconds, t.CoveredSeconds, t.StoppedSeconds,
			t.Dropouts, t.DropoutSeconds, t.LooseSeconds, t.ClockSeconds, t.Unused)
		if err != nil {
			return err
		}
	}
	return nil
}

// TrackPieces calls f for each piece of the boat's track, in order of time; no two
// tell of the same second. The season's tables must be made.
func (db *DB) TrackPieces(ctx context.Context, f func(atMS int64, seconds, kn float64) error) error {
	rows, err := db.Query(ctx, statement("track_pieces"))
	if err != nil {
		return err
	}
	return each(rows, func() error {
		var at int64
		var seconds, kn float64
		if err := rows.Scan(&at, &seconds, &kn); err != nil {
			return err
		}
		return f(at, seconds, kn)
	})
}

// LegDays calls f for each day, counted from 1970-01-01, on which a leg of a boat
// began by its own clock; "" is any boat. The season's tables must be made.
func (db *DB) LegDays(ctx context.Context, boat string, f func(day int64)) error {
	rows, err := db.Query(ctx, statement("leg_days"), boat)
	if err != nil {
		return err
	}
	return each(rows, func() error {
		var day int64
		err := rows.Scan(&day)
		f(day)
		return err
	})
}
