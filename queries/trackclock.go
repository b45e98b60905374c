package queries

import (
	"context"
	"fmt"
	"math"

	"wakeledger/pipeline/store"
)

// Track is one track as read, and what is to be said of it.
type Track struct {
	File         string  `json:"file"`
	Member       string  `json:"member"` // the file in a zip
	Format       string  `json:"format"`
	Boat         *string `json:"boat"` // nil: the season has several boats and the log names none
	FirstUTC     *string `json:"first_utc"`
	LastUTC      *string `json:"last_utc"`
	Fixes        int64   `json:"fixes"`
	Used         int64   `json:"used"`
	Hours        float64 `json:"hours"` // covered
	StoppedHours float64 `json:"stopped_hours"`
	Gaps         int64   `json:"gaps"`
	GapHours     float64 `json:"gap_hours"`
	Breaks       int64   `json:"breaks"`
	Jumps        int64   `json:"jumps"`
	Repeated     int64   `json:"repeated"`
	Reordered    int64   `json:"reordered"`
	Late         int64   `json:"late"`
	Legs         int64   `json:"legs"`      // that the log's tracks meet
	LegHours     float64 `json:"leg_hours"` // of them covered
	Note         string  `json:"note"`
	LogID        int64   `json:"log_id"` // of the season file
}

// AskTracks lists the tracks. A track whose clock seems to be of another zone or
// date than its boat's legs says so in its note.
func AskTracks(ctx context.Context, db *store.DB) ([]Track, error) {
	tracks, err := ask[Track](ctx, db, "tracks")
	if err != nil || len(tracks) == 0 {
		return tracks, err
	}
	minutes, err := ask[trackMinute](ctx, db, "track_minutes")
	if err != nil {
		return nil, err
	}
	legs, err := ask[legClock](ctx, db, "leg_clock")
	if err != nil {
		return nil, err
	}
	of := map[int64]*clocked{}
	for _, m := range minutes {
		c := of[m.LogID]
		if c == nil {
			c = &clocked{boat: m.Boat, kn: map[int64]float64{}, first: m.Minute}
			of[m.LogID] = c
		}
		c.kn[m.Minute], c.last = m.SpeedKn, m.Minute
	}
	for i := range tracks {
		t := &tracks[i]
		switch c := of[t.LogID]; {
		case c == nil:
			t.Note = "no fix in it can be used"
		case t.Boat == nil:
			t.Note = "the season has several boats: load it with --boat"
		default:
			t.Note = c.suggestion(legs)
		}
	}
	return tracks, nil
}

type trackMinute struct {
	LogID   int64   `json:"log_id"`
	Boat    string  `json:"boat"`
	Minute  int64   `json:"minute"`
	SpeedKn float64 `json:"speed_kn"`
}

type legClock struct {
	Boat    string   `json:"boat"`
	From    int64    `json:"from_minute"`
	To      int64    `json:"to_minute"`
	SpeedKn *float64 `json:"speed_kn"`
	Zoned   bool     `json:"zoned"`
}

// clocked is a log's track by minutes.
type clocked struct {
	boat        string
	kn          map[int64]float64
	first, last int64
}

const (
	minutesADay = 24 * 60
	like        = 2.0 // kn between a minute's speed and the leg's, to count as that leg
	enough      = 0.6 // of the legs' minutes, to suggest another clock
)

// shifts are what a clock may be off by, in minutes, the likelier before the
// less: a zone, a day, a year, or 1024 weeks, after which a receiver's count of
// weeks begins anew.
func shifts() []int64 {
	var all []int64
	for m := int64(30); m <= 14*60; m += 30 {
		all = append(all, m, -m)
	}
	for d := int64(1); d <= 3; d++ {
		all = append(all, d*minutesADay, -d*minutesADay)
	}
	for _, d := range []int64{365, 366, 1024 * 7} {
		all = append(all, d*minutesADay, -d*minutesADay)
	}
	return all
}

// suggestion says where the legs would fit the track much better on another
// clock; "" where they fit, or fit nowhere.
func (c *clocked) suggestion(legs []legClock) string {
	now, of, _ := c.fit(legs, 0)
	if of > 0 && float64(now) >= enough*float64(of) {
		return ""
	}
	best, by, total, zoned := now, int64(0), int64(0), true
	for _, s := range shifts() {
		if n, of, z := c.fit(legs, s); n > best && float64(n) >= enough*float64(of) {
			best, by, total, zoned = n, s, of, z
		}
	}
	if by == 0 || now*2 >= best || best < 20 {
		return ""
	}
	what := fmt.Sprintf("with %s on the track's clock, %.1f of %.1f h of the legs about it are covered at about their speed (%.1f h as it is)",
		span(by), float64(best)/60, float64(total)/60, float64(now)/60)
	if !zoned {
		return what + ": the legs name no time zone, so it may be the log that is off: give --zone"
	}
	return what + ": is its zone or date wrong, or the log's?"
}

// fit counts the minutes of the legs at which the track, its clock put on by
// shift, runs at about the leg's speed; of is all minutes of the legs of the
// boat about the track's hours then.
func (c *clocked) fit(legs []legClock, shift int64) (n, of int64, zoned bool) {
	zoned = true
	for _, l := range legs {
		if l.Boat != c.boat || l.To < c.first+shift-6*60 || l.From > c.last+shift+6*60 {
			continue
		}
		zoned = zoned && l.Zoned
		for m := l.From; m < l.To; m++ {
			of++
			kn, ok := c.kn[m-shift]
			if ok && (l.SpeedKn == nil || math.Abs(kn-*l.SpeedKn) <= like) {
				n++
			}
		}
	}
	return n, of, zoned
}

// span is a shift in words.
func span(minutes int64) string {
	sign := "+"
	if minutes < 0 {
		sign, minutes = "-", -minutes
	}
	if minutes%minutesADay == 0 {
		return fmt.Sprintf("%s%d days", sign, minutes/minutesADay)
	}
	return fmt.Sprintf("%s%g h", sign, float64(minutes)/60)
}
