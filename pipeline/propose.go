package pipeline

import (
	"context"
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"math"
	"path/filepath"
	"slices"
	"strconv"
	"time"

	"wakeledger/pipeline/zone"
)

// Trolling is what a stretch of a track must be like to be proposed as a leg. The
// zero value takes the defaults: 5 to 18 kn, steady to 1.5 kn, 15 minutes.
type Trolling struct {
	LoKn, HiKn float64
	SteadyKn   float64       // about the median of the minutes before
	Least      time.Duration // shorter ones are not proposed
}

func (t Trolling) complete() Trolling {
	if t.HiKn <= 0 {
		t.LoKn, t.HiKn = 5, 18
	}
	if t.SteadyKn <= 0 {
		t.SteadyKn = 1.5
	}
	if t.Least <= 0 {
		t.Least = 15 * time.Minute
	}
	return t
}

// ProposeLegs writes a log of the legs that tracks suggest, one a stretch of
// steady speed, for the boat to confirm: nothing but the speed tells whether
// lines were out. It returns their number and what was made of each file. The
// tracks are loaded into a season of their own, so that each second counts once
// and the better receiver wins. Days and times are written in the configuration's
// zone, UTC where there is none.
func ProposeLegs(ctx context.Context, cfg Config, paths []string, t Trolling, w io.Writer) (n int,
	reports []LogReport, err error) {
	cfg.Another = true // which log a track is asks nothing here: nothing is kept
	s, err := Open(ctx, "", cfg)
	if err != nil {
		return 0, nil, err
	}
	defer func() { err = errors.Join(err, s.DB.Close()) }()
	clock := time.UTC
	if s.cfg.Zone != "" {
		if clock, err = zone.Load(s.cfg.Zone); err != nil {
			return 0, nil, err
		}
	}
	if reports, err = s.Load(ctx, paths); err == nil {
		err = s.Derive(ctx)
	}
	if err != nil {
		return 0, nil, fmt.Errorf("propose legs: %w", err)
	}
	out := csv.NewWriter(w)
	if err := out.Write([]string{"date", "start", "end", "speed (kn)", "lines out", "notes"}); err != nil {
		return 0, nil, err
	}
	var names []string
	for _, p := range paths {
		names = append(names, filepath.Base(p))
	}
	note := "from " + sourcesWords(names) + ": were lines out, and how many?"
	f := &legFinder{want: t.complete(), gap: s.cfg.trackGap().Milliseconds(),
		leg: func(from, to time.Time, kn float64) error {
			n++
			from, to = from.In(clock), to.In(clock)
			return out.Write([]string{from.Format(time.DateOnly), from.Format("15:04"), to.Format("15:04"),
				strconv.FormatFloat(kn, 'f', 1, 64), "", note})
		}}
	err = s.DB.TrackPieces(ctx, func(at int64, seconds, kn float64) error { return f.add(steady{at, seconds, kn}) })
	if err = errors.Join(err, f.close()); err != nil {
		return n, nil, fmt.Errorf("propose legs: %w", err)
	}
	out.Flush()
	return n, reports, out.Error()
}

// sourcesWords names one track, or counts several.
func sourcesWords(names []string) string {
	if len(names) == 1 {
		return "track " + names[0]
	}
	return fmt.Sprintf("%d tracks", len(names))
}

const (
	recent  = 30 // pieces that the steady speed is the median of: five minutes
	patient = 6  // pieces off the speed that do not end a leg: a minute
)

// legFinder gathers pieces of steady speed.
type legFinder struct {
	want Trolling
	gap  int64 // milliseconds without a piece that do not end a leg
	leg  func(from, to time.Time, kn float64) error
	run  []steady // of the leg so far
	off  []steady // after it, off its speed
}

// steady is a piece of a track: its first instant, milliseconds since 1970, its
// seconds and its speed in knots.
type steady struct {
	at          int64
	seconds, kn float64
}

func (f *legFinder) add(p steady) error {
	if last := f.last(); last != nil && p.at > end(*last)+f.gap {
		if err := f.close(); err != nil {
			return err
		}
	}
	if f.fits(p) {
		// the minute off the speed was part of it
		f.run = append(append(f.run, f.off...), p)
		f.off = f.off[:0]
		return nil
	}
	if len(f.run) == 0 {
		return nil
	}
	if f.off = append(f.off, p); len(f.off) <= patient {
		return nil
	}
	again := slices.Clone(f.off)
	if err := f.close(); err != nil {
		return err
	}
	for _, q := range again {
		if err := f.add(q); err != nil {
			return err
		}
	}
	return nil
}

func (f *legFinder) last() *steady {
	if n := len(f.off); n > 0 {
		return &f.off[n-1]
	}
	if n := len(f.run); n > 0 {
		return &f.run[n-1]
	}
	return nil
}

func end(p steady) int64 { return p.at + int64(1000*p.seconds) }

func (f *legFinder) fits(p steady) bool {
	if p.kn < f.want.LoKn || p.kn > f.want.HiKn {
		return false
	}
	return len(f.run) == 0 || math.Abs(p.kn-middle(f.run[max(len(f.run)-recent, 0):])) <= f.want.SteadyKn
}

func middle(pieces []steady) float64 {
	speeds := make([]float64, len(pieces))
	for i, p := range pieces {
		speeds[i] = p.kn
	}
	slices.Sort(speeds)
	return speeds[len(speeds)/2]
}

// close ends the leg, and proposes it where it is long enough: to whole minutes
// within it.
func (f *legFinder) close() error {
	run := f.run
	f.run, f.off = nil, f.off[:0]
	if len(run) == 0 {
		return nil
	}
	from := time.UnixMilli(run[0].at + time.Minute.Milliseconds() - 1).Truncate(time.Minute)
	to := time.UnixMilli(end(run[len(run)-1])).Truncate(time.Minute)
	if to.Sub(from) < f.want.Least {
		return nil
	}
	return f.leg(from, to, math.Round(10*middle(run))/10)
}
