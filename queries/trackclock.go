package queries

import (
	"context"
	"math"
	"time"

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
	Legs         int64   `json:"legs"`      // that it meets
	LegHours     float64 `json:"leg_hours"` // of them covered
	ClockS       float64 `json:"clock_s"`   // put on its own clock, in seconds, as --track-clock asked
	Joined       int64   `json:"joined"`    // parted by the file without a loss
	Dropouts     int64   `json:"dropouts"`  // times without a fix in which it turned or changed its speed
	DropoutHours float64 `json:"dropout_hours"`
	// of Hours, with fixes so far apart or so noisy that the speed may be another
	LooseHours float64 `json:"loose_hours"`
	Note       string  `json:"note"`
	Unused     string  `json:"unused"`   // why nothing of it is used; "" where it is
	LogID      int64   `json:"log_id"`   // of the season file
	TrackNo    int64   `json:"track_no"` // in its log, from 1
	// MovedS are the seconds put on its times because another track of its boat ran the
	// same way by another clock; MovedTold says that the legs tell whose clock is right.
	MovedS    float64 `json:"moved_s"`
	MovedTold bool    `json:"moved_told"`
	// ChangedOver says that its latitudes and longitudes are, by where the legs are.
	ChangedOver bool `json:"changed_over"`
}

// AskTracks lists the tracks. A track whose clock seems to be of another zone or
// date than its boat's legs says so in its note, with the flag that would mend
// it. Each is judged by itself, the files of one zip too.
func AskTracks(ctx context.Context, db *store.DB) ([]Track, error) {
	tracks, err := ask[Track](ctx, db, "tracks")
	if err != nil || len(tracks) == 0 {
		return tracks, err
	}
	places, err := placeNotes(ctx, db, tracks)
	if err != nil {
		return nil, err
	}
	minutes, err := ask[trackMinute](ctx, db, "track_minutes")
	if err != nil {
		return nil, err
	}
	legs, err := ask[legClock](ctx, db, "leg_clock")
	if err != nil {
		return nil, err
	}
	c := newClocks(tracks, minutes, legs)
	shifts, off := make([]int64, len(tracks)), map[[2]int64]bool{}
	for i := range tracks {
		switch t := &tracks[i]; {
		case t.Unused != "":
		case t.ChangedOver:
			t.Note = changedOver
		case t.MovedS != 0:
			t.Note, shifts[i] = c.of[i].moved(t), int64(t.MovedS)/60
		case len(legs) > 0:
			t.Note, shifts[i] = c.note(i)
		}
		if t := tracks[i]; t.Unused == "" {
			off[[2]int64{t.LogID, t.TrackNo}] = shifts[i] != 0
		}
	}
	for i := range tracks {
		t := &tracks[i]
		place, wrong := places[[2]int64{t.LogID, t.TrackNo}]
		switch {
		case t.Unused != "":
			t.Note = t.Unused
		// a clock that is off puts a boat elsewhere too
		case wrong && shifts[i] == 0 && !t.ChangedOver && !off[place.beside]:
			t.Note = place.text
		}
	}
	for i := range tracks {
		if by := shifts[i]; by != 0 && tracks[i].Member != "" && !alone(tracks, shifts, i) {
			tracks[i].Note += "; the flag is for all files of a zip: take this one out and load it by itself"
		}
	}
	return tracks, nil
}

const changedOver = "latitude and longitude seem to be changed over in it: as they stand it is far from the boat's " +
	"legs, and none of it is used. " +
	"Change the two over and load it again"

// alone tells whether all files of a track's zip want the same clock.
func alone(tracks []Track, shifts []int64, of int) bool {
	for i, t := range tracks {
		if t.LogID == tracks[of].LogID && shifts[i] != shifts[of] {
			return false
		}
	}
	return true
}

// newClocks gathers the tracks by minutes; both are in the order of logs and of
// tracks in them, but the tracks by their logs' names first.
func newClocks(tracks []Track, minutes []trackMinute, legs []legClock) *clocks {
	c := &clocks{legs: legs, of: make([]*clocked, len(tracks)), told: map[minuteOf]int{},
		twice: make([]bool, len(tracks))}
	index := map[[2]int64]int{}
	for i, t := range tracks {
		index[[2]int64{t.LogID, t.TrackNo}] = i
		for _, o := range tracks {
			c.twice[i] = c.twice[i] || (o.File == t.File && o.Member == t.Member &&
				o.Fixes == t.Fixes && o.LogID > t.LogID)
		}
		c.of[i] = &clocked{boat: t.Boat, clock: time.Duration(t.ClockS * float64(time.Second)), kn: map[int64]float64{}}
	}
	for _, m := range minutes {
		if i, ok := index[[2]int64{m.LogID, m.TrackNo}]; ok {
			c.of[i].add(m)
		}
	}
	for _, k := range c.of {
		k.each(legs, 0, 0, func(l *legClock, minute int64, fits verdict) {
			if fits == like {
				c.told[minuteOf{l.Boat, minute}]++
			}
		})
	}
	return c
}

// few is of how many of a track's pieces, six a minute, one is used where another
// track goes before.
const few = 10

// note says what is wrong with a track, and by how many minutes its clock is off.
func (c *clocks) note(i int) (note string, by int64) {
	k := c.of[i]
	if k.boat == nil {
		return "the season has several boats: load it with --boat", 0
	}
	if note, by = c.suggestion(k); note == "" && c.twice[i] {
		note = "it was loaded again since, under another --boat: where both tell of a time, the later one is used"
	} else if note == "" && few*k.taken < 6*int64(len(k.kn)) {
		if note = c.same(i); note == "" {
			note = "another track tells of the same times with closer fixes or less noise, and that one is used"
		}
	}
	return note, by
}

const (
	sameKn    = 0.01 // between the speeds of a minute by one receiver's fixes, rounded otherwise in another file
	sameShare = 0.95 // of a track's minutes: at its ends and gaps less is known
)

// same says whether a track that the season is made of has the same fixes as another, or
// all of them among its own. It names no file: the season's page shows none.
func (c *clocks) same(i int) string {
	k, best := c.of[i], -1
	for j, o := range c.of {
		if j == i || o.taken == 0 || o.boat == nil || *o.boat != *k.boat || best >= 0 && o.taken <= c.of[best].taken {
			continue
		}
		n := 0
		for minute, kn := range k.kn {
			if other, ok := o.kn[minute]; ok && math.Abs(other-kn) <= sameKn {
				n++
			}
		}
		if float64(n) >= sameShare*float64(len(k.kn)) {
			best = j
		}
	}
	switch {
	case best < 0:
		return ""
	case float64(len(k.kn)) >= sameShare*float64(len(c.of[best].kn)):
		return "another track is the same, and that one is used"
	}
	return "another track holds all of it and more, and that one is used"
}
