package pipeline

import (
	"context"
	"errors"
	"fmt"
	"iter"
	"math"
	"runtime/debug"
	"slices"
	"strings"
	"time"

	"wakeledger/pipeline/batch"
	"wakeledger/pipeline/entry"
	"wakeledger/pipeline/proof"
	"wakeledger/pipeline/record"
	"wakeledger/pipeline/sheet"
	"wakeledger/pipeline/store"
	"wakeledger/pipeline/track"
	"wakeledger/pipeline/unit"
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
	cfg      *Config
	zone     *time.Location
	answers  *answers
	legs     map[unit.Date]bool // days with a leg
	problems spool
	no       int64 // of the track at hand, in its log, from 1
	kept     int64 // its pieces
	tracks   []store.Track
	reports  []SheetReport
	asked    []proof.Question
	progress *progress
}

// trackFiller gives what stores the pieces of a log's tracks. Where a table's days
// may be read either way, the legs that the season has so far may tell.
func (s *Season) trackFiller(ctx context.Context, path string, rep *LogReport) (func(*store.Load) error, error) {
	t := &tracking{path: path, cfg: &s.cfg, progress: s.newProgress(rep.Name), answers: newAnswers(s.answers)}
	var err error
	if s.cfg.Zone != "" {
		if t.zone, err = zone.Load(s.cfg.Zone); err != nil {
			return nil, err
		}
	}
	if s.cfg.Order == unit.OrderUnknown && track.Unsure(path) {
		if err := s.Derive(ctx); err != nil {
			return nil, err
		}
		if t.legs, err = s.legDays(ctx); err != nil {
			return nil, err
		}
	}
	return func(load *store.Load) error { return t.fill(ctx, load, rep) }, nil
}

// legDays are the days on which a leg began, by the boat's clock.
func (s *Season) legDays(ctx context.Context) (map[unit.Date]bool, error) {
	days := map[unit.Date]bool{}
	err := s.DB.LegDays(ctx, s.cfg.Boat, func(day int64) { days[unit.Date(day)] = true })
	return days, err
}

func (t *tracking) fill(ctx context.Context, load *store.Load, rep *LogReport) error {
	defer t.problems.close()
	// A track's garbage is small and even: to collect it sooner costs next to nothing.
	defer debug.SetGCPercent(debug.SetGCPercent(50))
	next, stop := iter.Pull2(t.pieces)
	batches := batch.NewReader(ctx, &pieceSource{next: next, no: &t.no}, batch.Fixes)
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
	rep.Sheets, rep.SetAside, rep.Questions = t.reports, t.problems.n, t.asked
	f := &filling{load: load}
	return errors.Join(f.setAside(ctx, &t.problems), load.Questions(ctx, asked(t.asked)),
		load.ReadWith(ctx, t.answers.used))
}

// order tells the order of day and month of a table whose own dates do not: as asked
// for or answered, else that in which its days have legs, a day off at most, since
// the table may be in UTC.
func (t *tracking) order(member string, d track.Days) unit.Order {
	if t.cfg.Order != unit.OrderUnknown || len(d.DayFirst) == 0 || len(d.MonthFirst) == 0 {
		return t.cfg.Order
	}
	const words = "2 January 2006"
	q := proof.TrackDays(d.Headings, member, d.Text, d.DayFirst[0].Time().Format(words),
		d.MonthFirst[0].Time().Format(words))
	if choice, ok, _ := t.answers.take(q.ID); ok {
		if choice == q.Choices[0] {
			return unit.DayFirst
		}
		return unit.MonthFirst
	}
	switch day, month := t.withLegs(d.DayFirst), t.withLegs(d.MonthFirst); {
	case day > month && month == 0:
		return unit.DayFirst
	case month > day && day == 0:
		return unit.MonthFirst
	}
	t.asked = append(t.asked, q)
	return unit.OrderUnknown
}

func (t *tracking) withLegs(days []unit.Date) (n int) {
	for _, d := range days {
		if t.legs[d] || t.legs[d-1] || t.legs[d+1] {
			n++
		}
	}
	return n
}

// trackQuestions are what a log of tracks leaves open, as far as it tells by itself.
func (s *Season) trackQuestions(path string, kept map[string]store.Answer) []proof.Question {
	t := &tracking{cfg: &s.cfg, answers: newAnswers(kept)}
	if t.cfg.Order == unit.OrderUnknown {
		_ = track.Each(path, track.Options{Order: t.order}, func(record.Problem) error { return nil },
			func(track.File) error { return nil })
	}
	return t.asked
}

var errStopped = errors.New("stopped")

// pieces yields the pieces of all tracks of the log, then the error, if any.
func (t *tracking) pieces(yield func(track.Piece, error) bool) {
	keep := func(p record.Problem) error { return t.problems.add(p) }
	err := track.Each(t.path, track.Options{Zone: t.zone, Order: t.order}, keep, func(f track.File) error {
		if f.Reader == nil {
			t.reports = append(t.reports, SheetReport{Name: f.Name})
			return nil
		}
		before := t.problems.n
		t.no, t.kept = t.no+1, 0
		sum, err := track.Cut(track.PutOn(f.Reader, t.cfg.TrackClock),
			track.Settings{Gap: t.cfg.trackGap()}, func(p track.Piece) error {
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
	notes, unused := f.Reader.Notes(), ""
	if s.Seconds == 0 {
		unused = whyUnused(s, t.cfg, notes)
		notes = append([]string{unused}, slices.DeleteFunc(notes, func(n string) bool { return n == unused })...)
	} else {
		notes = append(trackNotes(s, t.cfg), notes...)
	}
	t.tracks = append(t.tracks, store.Track{No: t.no, Member: f.Name, Format: f.Format, FirstMS: s.First,
		LastMS: s.Last, Fixes: s.Fixes, Used: s.Used,
		Reordered: s.Reordered, Late: s.Late, Repeated: s.Repeated, Jumps: s.Jumps, Gaps: s.Gaps,
		Breaks: s.Breaks, Joined: s.Joined,
		GapSeconds: s.GapSeconds, CoveredSeconds: s.Seconds, StoppedSeconds: s.Stopped,
		Dropouts: s.Dropouts, DropoutSeconds: s.DropoutSeconds, LooseSeconds: s.Loose,
		ClockSeconds: t.cfg.TrackClock.Seconds(), Unused: unused})
	t.reports = append(t.reports, SheetReport{Name: f.Name, Kind: "track", Why: "it is " + f.Format + " with fixes",
		Kept: t.kept, SetAside: aside, Notes: notes})
}

// whyUnused says why a track gives no piece.
func whyUnused(s track.Summary, cfg *Config, notes []string) string {
	switch {
	case s.Gaps > 0:
		return fmt.Sprintf("its %d fixes are %s apart, more than --track-gap, %g min: nothing is known of the way "+
			"between them, and none is used",
			s.Used, apart(s.GapSeconds/float64(s.Gaps)), cfg.trackGap().Minutes())
	case s.Fixes == 0 && len(notes) > 0:
		return notes[0]
	}
	return "no fix in it can be used"
}

// trackNotes say what was found in a track.
func trackNotes(s track.Summary, cfg *Config) []string {
	const minutes = "2006-01-02 15:04"
	notes := []string{fmt.Sprintf("%d fixes, %s to %s UTC, %.1f h of it covered, kept in pieces of %g s",
		s.Used, time.UnixMilli(s.First).UTC().Format(minutes), time.UnixMilli(s.Last).UTC().Format(minutes),
		s.Seconds/3600, track.Tick.Seconds())}
	if cfg.TrackClock != 0 {
		notes = append(notes, fmt.Sprintf("%s added to its clock, as asked", onClock(cfg.TrackClock)))
	}
	for _, f := range []struct {
		n               int64
		one, many, what string
	}{
		{s.Jumps, "fix", "fixes", "dropped, faster than any boat from the one before"},
		{s.Repeated, "fix", "fixes", "dropped, of a time that was there already"},
		{s.Reordered, "fix", "fixes", "out of order, put in order by time"},
		{s.Late, "fix", "fixes", "dropped, of more out of order than can be put in place"},
		{s.Gaps, "gap", "gaps", fmt.Sprintf("of more than %g min, %.0f min in all: nothing is known of them",
			cfg.trackGap().Minutes(), s.GapSeconds/60)},
		{s.Breaks, "place", "places", "where the file parts the track: not run over"},
		{s.Joined, "place", "places", "where the file parts the track and no time was lost: run over"},
	} {
		switch {
		case f.n == 1:
			notes = append(notes, "1 "+f.one+" "+f.what)
		case f.n > 1:
			notes = append(notes, fmt.Sprintf("%d %s %s", f.n, f.many, f.what))
		}
	}
	if s.DropoutSeconds > 0 {
		notes = append(notes, fmt.Sprintf("%.0f min without a fix in which it turned or changed its speed (%d "+
			"times): nothing is known of them", math.Ceil(s.DropoutSeconds/60), s.Dropouts))
	}
	said := func(seconds float64) bool { return seconds >= max(looseShare*s.Seconds, 360) }
	if far := s.Loose - s.Noisy; said(far) {
		notes = append(notes, fmt.Sprintf("%.1f h of it turning or changing speed with fixes far apart: the speed "+
			"may be in a neighbouring band then", far/3600))
	}
	if said(s.Noisy) {
		notes = append(notes, fmt.Sprintf("%.1f h of it with speeds known to %.1f kn only, because the fixes "+
			"scatter: some %.1f h may be in a neighbouring band of 2 kn",
			s.Noisy/3600, s.NoisyKn, s.Astray/3600))
	}
	if minutes := int64(s.Stopped / 60); minutes > 0 {
		notes = append(notes, fmt.Sprintf("%d min stopped or drifting, below 1 kn", minutes))
	}
	return notes
}

// looseShare of a track is said.
const looseShare = 0.01

// apart is a time between fixes, in minutes or hours.
func apart(seconds float64) string {
	if seconds < 2*3600 {
		return fmt.Sprintf("some %.0f min", seconds/60)
	}
	return fmt.Sprintf("some %.0f h", seconds/3600)
}

// onClock is a time as Go's durations are written, in hours and minutes: 1h, -24h,
// 5h30m, 172032h.
func onClock(d time.Duration) string {
	s := strings.TrimSuffix(d.String(), "0s")
	if trimmed, ok := strings.CutSuffix(s, "h0m"); ok {
		s = trimmed + "h"
	}
	return s
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
	no     *int64 // of the track that next is at
	values []entry.Value
}

var pieceFields = []entry.Field{
	{Name: "track_no", Type: entry.Int}, {Name: "at_ms", Type: entry.Int}, {Name: "seconds", Type: entry.Real},
	{Name: "lat", Type: entry.Real}, {Name: "lon", Type: entry.Real},
	{Name: "run_kn", Type: entry.Real}, {Name: "err_kn", Type: entry.Real}, {Name: "said_kn", Type: entry.Real},
	{Name: "course_deg", Type: entry.Real}, {Name: "turn_deg_min", Type: entry.Real}, {Name: "gap_s", Type: entry.Real},
	{Name: "stretch", Type: entry.Int},
}

func (s *pieceSource) Fields() []entry.Field { return pieceFields }

func (s *pieceSource) Next() ([]entry.Value, bool, error) {
	p, err, ok := s.next()
	if !ok || err != nil {
		return nil, false, err
	}
	s.values = append(s.values[:0], entry.OfInt(*s.no), entry.OfInt(p.At))
	for _, v := range []float64{p.Seconds, p.Lat, p.Lon, p.RunKn, p.ErrKn, p.SaidKn, p.Course, p.Turn, p.Gap} {
		s.values = append(s.values, entry.Value{Known: !math.IsNaN(v), Real: v})
	}
	s.values = append(s.values, entry.OfInt(p.Stretch))
	return s.values, true, nil
}
