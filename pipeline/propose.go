package pipeline

import (
	"encoding/csv"
	"fmt"
	"io"
	"math"
	"path/filepath"
	"slices"
	"strconv"
	"time"

	"wakeledger/pipeline/record"
	"wakeledger/pipeline/track"
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
// lines were out. It returns their number. Of the configuration it takes the
// zone, in which days and times are written, UTC where there is none, and what
// it says of the tracks' clock and gaps.
func ProposeLegs(cfg Config, paths []string, t Trolling, w io.Writer) (int, error) {
	clock := time.UTC
	if cfg.Zone != "" {
		var err error
		if clock, err = zone.Load(cfg.Zone); err != nil {
			return 0, err
		}
	}
	out := csv.NewWriter(w)
	if err := out.Write([]string{"date", "start", "end", "speed (kn)", "lines out", "notes"}); err != nil {
		return 0, err
	}
	n := 0
	pass := func(record.Problem) error { return nil } // load says what is set aside
	for _, p := range paths {
		note := "from track " + filepath.Base(p) + ": were lines out, and how many?"
		f := &legFinder{want: t.complete(), leg: func(from, to time.Time, kn float64) error {
			n++
			from, to = from.In(clock), to.In(clock)
			return out.Write([]string{from.Format(time.DateOnly), from.Format("15:04"), to.Format("15:04"), strconv.FormatFloat(kn, 'f', 1, 64), "", note})
		}}
		err := track.Each(p, clock, pass, func(file track.File) error {
			if _, err := track.Cut(track.PutOn(file.Reader, cfg.TrackClock), track.Settings{Gap: cfg.trackGap()}, f.add); err != nil {
				return err
			}
			return f.close()
		})
		if err != nil {
			return n, fmt.Errorf("propose legs: %w", err)
		}
	}
	out.Flush()
	return n, out.Error()
}

const (
	recent  = 30 // pieces that the steady speed is the median of: five minutes
	patient = 6  // pieces off the speed that do not end a leg: a minute
)

// legFinder gathers pieces of steady speed.
type legFinder struct {
	want Trolling
	leg  func(from, to time.Time, kn float64) error
	run  []track.Piece // of the leg so far
	off  []track.Piece // after it, off its speed
}

func (f *legFinder) add(p track.Piece) error {
	if last := f.last(); last != nil && p.At > end(*last)+1000 {
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

func (f *legFinder) last() *track.Piece {
	if n := len(f.off); n > 0 {
		return &f.off[n-1]
	}
	if n := len(f.run); n > 0 {
		return &f.run[n-1]
	}
	return nil
}

func end(p track.Piece) int64 { return p.At + int64(1000*p.Seconds) }

func (f *legFinder) fits(p track.Piece) bool {
	if p.RunKn < f.want.LoKn || p.RunKn > f.want.HiKn {
		return false
	}
	return len(f.run) == 0 || math.Abs(p.RunKn-middle(f.run[max(len(f.run)-recent, 0):])) <= f.want.SteadyKn
}

func middle(pieces []track.Piece) float64 {
	speeds := make([]float64, len(pieces))
	for i, p := range pieces {
		speeds[i] = p.RunKn
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
	from := time.UnixMilli(run[0].At + time.Minute.Milliseconds() - 1).Truncate(time.Minute)
	to := time.UnixMilli(end(run[len(run)-1])).Truncate(time.Minute)
	if to.Sub(from) < f.want.Least {
		return nil
	}
	return f.leg(from, to, math.Round(10*middle(run))/10)
}
