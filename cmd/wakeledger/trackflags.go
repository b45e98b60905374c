package main

import (
	"context"
	"fmt"
	"io"
	"math"
	"strings"
	"time"

	"github.com/spf13/pflag"

	"wakeledger/pipeline"
	"wakeledger/pipeline/sentence"
	"wakeledger/queries"
)

// trackFlags say how tracks are read.
type trackFlags struct{ clock, gap string }

func (t *trackFlags) add(f *pflag.FlagSet) {
	f.StringVar(&t.clock, "track-clock", "", "put the clock of these tracks on by this `time`, or back (-24h), "+
		"where the receiver's is wrong")
	f.StringVar(&t.gap, "track-gap", "",
		"a longer `time` without a fix cuts a track in two: as it was read before, else 5m")
}

// What can be meant: a clock two turns of the receivers' count of weeks off, some
// 39 years; a gap no shorter than a piece of a track and no longer than a day.
const (
	mostClock = 40 * 366 * 24 * time.Hour
	leastGap  = 10 * time.Second
	mostGap   = 24 * time.Hour
)

// into puts the flags into the configuration.
func (t *trackFlags) into(cfg *pipeline.Config) error {
	if t.clock != "" {
		d, err := time.ParseDuration(t.clock)
		if err != nil || d.Abs() > mostClock {
			return usage("--track-clock %q: expected a time with its unit, within 40 years either way, such as 1h, "+
				"-24h or 172032h", t.clock)
		}
		cfg.TrackClock, cfg.TrackClockSaid = d, true
	}
	if t.gap == "" {
		return nil
	}
	gap, err := time.ParseDuration(t.gap)
	if err != nil || gap < leastGap || gap > mostGap {
		return usage("--track-gap %q: expected a time with its unit, 10s to 24h, such as 5m", t.gap)
	}
	cfg.TrackGap = gap
	return nil
}

// cellFlag is the side of the cells that the sea is counted by.
type cellFlag struct{ minutes float64 }

func (c *cellFlag) add(f *pflag.FlagSet) {
	f.Float64Var(&c.minutes, "cell", queries.AreaMinutes, "the side of a cell in `minutes` of arc")
}

// check refuses cells finer than a minute of arc, a nautical mile: a strike's
// time is logged to a minute or a few, in which the boat runs as far, so that
// finer cells would hold strikes that came in their neighbours. The coarsest is
// ten degrees.
func (c *cellFlag) check() error {
	if math.IsNaN(c.minutes) || c.minutes < 1 || c.minutes > 600 {
		return usage("--cell %g: expected 1 to 600 minutes of arc; the log's times place a strike no finer than a mile",
			c.minutes)
	}
	return nil
}

// mostTracks is how many tracks load and check speak of.
const mostTracks = 10

// tellTracks says what is wrong with the season's tracks, and what mends it. It
// returns how many have something wrong.
func tellTracks(ctx context.Context, s *pipeline.Season, w io.Writer) (int64, error) {
	tracks, err := queries.AskTracks(ctx, s.DB)
	n := int64(0)
	for _, t := range tracks {
		if t.Note == "" {
			continue
		}
		if n++; n > mostTracks {
			continue
		}
		fmt.Fprintf(w, "track %s: %s\n", strings.TrimSpace(t.File+" "+t.Member), t.Note)
	}
	if n > mostTracks {
		fmt.Fprintf(w, "and %s: 'wakeledger ask tracks' lists them\n",
			sentence.Count(n-mostTracks, "track more", "tracks more"))
	}
	if err != nil || len(tracks) == 0 {
		return n, err
	}
	return n, tellTrips(ctx, s, w)
}

// tellTrips says of which legs a track shows stops, or cannot be used.
func tellTrips(ctx context.Context, s *pipeline.Season, w io.Writer) error {
	trips, err := queries.AskTrackSpeed(ctx, s.DB)
	n := 0
	for _, t := range trips {
		if t.StoppedHours < queries.StoppedHours && t.ClocklessHours == 0 {
			continue
		}
		if n++; n <= mostTracks {
			fmt.Fprintf(w, "trip %s: %s\n", t.Trip, t.Note)
		}
	}
	if n > mostTracks {
		fmt.Fprintf(w, "and %s: 'wakeledger ask track-speed' lists them\n",
			sentence.Count(int64(n-mostTracks), "trip more", "trips more"))
	}
	return err
}
