package pipeline

import (
	"context"
	"errors"
	"fmt"
	"iter"
	"math"
	"time"

	"wakeledger/pipeline/batch"
	"wakeledger/pipeline/entry"
	"wakeledger/pipeline/record"
	"wakeledger/pipeline/sheet"
	"wakeledger/pipeline/store"
	"wakeledger/pipeline/track"
	"wakeledger/pipeline/zone"
)

// Readable tells whether a file can be opened as a log or as a track.
func Readable(path string) error {
	if IsTrack(path) {
		return nil
	}
	book, err := sheet.Open(path, sheet.Options{})
	if err != nil {
		return err
	}
	return book.Close()
}

// IsTrack tells whether a file is a track: GPX, NMEA 0183, a CSV of fixes, or
// such packed as .gz or .zip.
func IsTrack(path string) bool { return track.Is(path) }

// tracking is one log of tracks on its way in.
type tracking struct {
	path     string
	zone     *time.Location
	problems spool
	kept     int64 // pieces of the track at hand
	tracks   []store.Track
	reports  []SheetReport
	progress *progress
}

// fillTracks stores the pieces of a log's tracks.
func (s *Season) fillTracks(ctx context.Context, load *store.Load, path string, rep *LogReport) error {
	t := &tracking{path: path, progress: s.newProgress(rep.Name)}
	defer t.problems.close()
	if s.cfg.Zone != "" {
		var err error
		if t.zone, err = zone.Load(s.cfg.Zone); err != nil {
			return err
		}
	}
	next, stop := iter.Pull2(t.pieces)
	batches := batch.NewReader(ctx, &pieceSource{next: next})
	_, err := load.InsertFixes(ctx, batches)
	batches.Release()
	stop()
	if err != nil {
		return err
	}
	if err := load.InsertTracks(ctx, t.tracks); err != nil {
		return err
	}
	t.progress.end()
	rep.Sheets, rep.SetAside = t.reports, t.problems.n
	f := &filling{load: load}
	return f.setAside(ctx, &t.problems)
}

var errStopped = errors.New("stopped")

// pieces yields the pieces of all tracks of the log, then the error, if any.
func (t *tracking) pieces(yield func(track.Piece, error) bool) {
	keep := func(p record.Problem) error { return t.problems.add(p) }
	err := track.Each(t.path, t.zone, keep, func(f track.File) error {
		before := t.problems.n
		t.kept = 0
		sum, err := track.Cut(f.Reader, track.Settings{}, func(p track.Piece) error {
			t.progress.piece(p)
			t.kept++
			if !yield(p, nil) {
				return errStopped
			}
			return nil
		})
		if err == nil {
			t.report(f, sum, t.problems.n-before)
		}
		return err
	})
	if err != nil && !errors.Is(err, errStopped) {
		yield(track.Piece{}, err)
	}
}

func (t *tracking) report(f track.File, s track.Summary, aside int64) {
	t.tracks = append(t.tracks, store.Track{Member: f.Name, Format: f.Format, FirstMS: s.First, LastMS: s.Last, Fixes: s.Fixes, Used: s.Used,
		Reordered: s.Reordered, Late: s.Late, Repeated: s.Repeated, Jumps: s.Jumps, Gaps: s.Gaps, Breaks: s.Breaks,
		GapSeconds: s.GapSeconds, CoveredSeconds: s.Seconds, StoppedSeconds: s.Stopped})
	t.reports = append(t.reports, SheetReport{Name: f.Name, Kind: "track", Why: "it is " + f.Format + " with fixes", Kept: t.kept, SetAside: aside,
		Notes: append(trackNotes(s), f.Reader.Notes()...)})
}

// trackNotes say what was found in a track.
func trackNotes(s track.Summary) []string {
	if s.Used == 0 {
		return []string{"no fix in it can be used"}
	}
	const minutes = "2006-01-02 15:04"
	notes := []string{fmt.Sprintf("%d fixes, %s to %s UTC, %.1f h of it covered, kept in pieces of %g s",
		s.Used, time.UnixMilli(s.First).UTC().Format(minutes), time.UnixMilli(s.Last).UTC().Format(minutes), s.Seconds/3600, track.Tick.Seconds())}
	add := func(n int64, format string, more ...any) {
		if n > 0 {
			notes = append(notes, fmt.Sprintf(format, append([]any{n}, more...)...))
		}
	}
	add(s.Jumps, "%d fixes dropped that are faster than any boat from the one before")
	add(s.Repeated, "%d fixes dropped whose time was there already")
	add(s.Reordered, "%d fixes out of order, put in order by their times")
	add(s.Late, "%d fixes dropped that are too far out of order to be placed")
	add(s.Gaps, "%d gaps of more than %g min, %.0f min together: nothing is known of them", track.DefaultGap.Minutes(), s.GapSeconds/60)
	add(s.Breaks, "%d places where the file parts the track: not run over")
	add(int64(s.Stopped/60), "%d min stopped or drifting, below 1 kn")
	return notes
}

// piece counts a piece in.
func (p *progress) piece(piece track.Piece) {
	if p.report == nil {
		return
	}
	p.now.Rows += int64(piece.Fixes)
	if p.now.Rows%every < int64(piece.Fixes) {
		p.report(p.now)
	}
}

// pieceSource gives pieces as rows of the table fix.
type pieceSource struct {
	next   func() (track.Piece, error, bool)
	values []entry.Value
}

var pieceFields = []entry.Field{
	{Name: "at_ms", Type: entry.Int}, {Name: "seconds", Type: entry.Real}, {Name: "lat", Type: entry.Real}, {Name: "lon", Type: entry.Real},
	{Name: "run_kn", Type: entry.Real}, {Name: "err_kn", Type: entry.Real}, {Name: "said_kn", Type: entry.Real},
	{Name: "course_deg", Type: entry.Real}, {Name: "turn_deg_min", Type: entry.Real},
}

func (s *pieceSource) Fields() []entry.Field { return pieceFields }

func (s *pieceSource) Next() ([]entry.Value, bool, error) {
	p, err, ok := s.next()
	if !ok || err != nil {
		return nil, false, err
	}
	s.values = append(s.values[:0], entry.OfInt(p.At))
	for _, v := range []float64{p.Seconds, p.Lat, p.Lon, p.RunKn, p.ErrKn, p.SaidKn, p.Course, p.Turn} {
		s.values = append(s.values, entry.Value{Known: !math.IsNaN(v), Real: v})
	}
	return s.values, true, nil
}
