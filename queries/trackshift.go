package queries

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"time"
)

type trackMinute struct {
	LogID   int64   `json:"log_id"`
	TrackNo int64   `json:"track_no"`
	Minute  int64   `json:"minute"` // since 1970
	SpeedKn float64 `json:"speed_kn"`
	Taken   int64   `json:"taken"` // pieces of the track that the season is made of
	// BoatGiven tells that the log was loaded with --boat: without it, it would be
	// another log.
	BoatGiven bool `json:"boat_given"`
}

type legClock struct {
	Boat    string   `json:"boat"`
	From    int64    `json:"from_minute"`
	To      int64    `json:"to_minute"`
	SpeedKn *float64 `json:"speed_kn"`
	Zoned   bool     `json:"zoned"`
}

// clocks are the tracks of a season beside its legs.
type clocks struct {
	legs []legClock
	of   []*clocked
	told map[minuteOf]int // tracks that fit a leg's minute as their clocks are
	// twice tells of a track that is there again, of the same name and fixes, loaded
	// later.
	twice []bool
}

type minuteOf struct {
	boat   string
	minute int64
}

// clocked is a track by minutes.
type clocked struct {
	boat   *string
	clock  time.Duration // put on the track's own
	kn     map[int64]float64
	spells [][2]int64 // first and last minutes, where no six hours are without a fix
	taken  int64
	given  bool // the boat, with the log
}

const (
	minutesADay = 24 * 60
	about       = 6 * 60 // minutes about a track in which legs are looked at
	// kn between a minute's speed and the leg's, to count as that leg
	near = 2.0
	// kn by which all of a boat's logged speeds may be wrong alike: a paddle wheel
	// that was not calibrated, a current (common practice, no source)
	mostOff = 4.0
	// where the leg's speed is not logged: kn that may be trolling (common practice, no source)
	slowest, fastest = 3.0, 18.0
	enough           = 0.6 // of the legs' minutes, to suggest another clock
	least            = 20  // minutes, to suggest anything
	unusual          = 10  // minutes by which a shift that is no whole hours must be better
	weeks1024        = 1024 * 7 * minutesADay
)

func (k *clocked) add(m trackMinute) {
	k.kn[m.Minute], k.taken, k.given = m.SpeedKn, m.Taken, m.BoatGiven
	if n := len(k.spells); n > 0 && m.Minute-k.spells[n-1][1] <= about {
		k.spells[n-1][1] = m.Minute
		return
	}
	k.spells = append(k.spells, [2]int64{m.Minute, m.Minute})
}

// shifts are what a clock may be off by, in minutes, the likelier before the
// less: whole hours of a zone; days; a year; 1024 or 2048 weeks, because the
// satellites count weeks in ten bits, and a receiver older than the turn of that
// count is off by as much (Langley 1998, The GPS end-of-week rollover, GPS World
// 9(11):40-47; IS-GPS-200, ten-bit week number, from memory); then zones of half
// hours and, in the Chatham Islands, of three quarters (IANA time zone database).
func shifts() []int64 {
	var all []int64
	both := func(minutes int64) { all = append(all, minutes, -minutes) }
	for h := int64(1); h <= 14; h++ {
		both(h * 60)
	}
	for _, days := range []int64{1, 2, 3, 365, 366} {
		both(days * minutesADay)
	}
	both(weeks1024)
	both(2 * weeks1024)
	for h := int64(0); h < 14; h++ {
		both(h*60 + 30)
	}
	both(12*60 + 45)
	both(13*60 + 45)
	return all
}

// verdict is what a minute of a leg and a track say of each other.
type verdict int

const (
	untold verdict = iota // the track has no fix then
	like                  // it runs at about the leg's speed
	unlike                // it runs at another
)

// each calls do for each minute of the boat's legs that are within hours of the
// track, its clock put on by shift. off is by how many knots the track is taken to
// run faster than logged.
func (k *clocked) each(legs []legClock, shift int64, off float64, do func(*legClock, int64, verdict)) {
	for i := range legs {
		l := &legs[i]
		if k.boat == nil || l.Boat != *k.boat || !k.nearby(l, shift) {
			continue
		}
		for m := l.From; m < l.To; m++ {
			kn, ok := k.kn[m-shift]
			switch {
			case !ok:
				do(l, m, untold)
			case l.fits(kn - off):
				do(l, m, like)
			default:
				do(l, m, unlike)
			}
		}
	}
}

func (k *clocked) nearby(l *legClock, shift int64) bool {
	for _, s := range k.spells {
		if l.To >= s[0]+shift-about && l.From <= s[1]+shift+about {
			return true
		}
	}
	return false
}

func (l *legClock) fits(kn float64) bool {
	if l.SpeedKn == nil {
		return kn >= slowest && kn <= fastest
	}
	return math.Abs(kn-*l.SpeedKn) <= near
}

// tally counts minutes of the legs about a track.
type tally struct {
	like, unlike, all int64
	zoned             bool // all of the legs name their zone
}

func (t tally) score() int64 { return t.like - t.unlike }

// fit tallies a track with its clock put on. On another clock than its own it
// has nothing to say of minutes that another track tells of: a boat that was out
// on two days alike is not there twice on one of them.
func (c *clocks) fit(k *clocked, shift int64, off float64) tally {
	t := tally{zoned: true}
	k.each(c.legs, shift, off, func(l *legClock, minute int64, fits verdict) {
		if shift != 0 && c.told[minuteOf{l.Boat, minute}] > k.told(l, minute) {
			return
		}
		t.all++
		t.zoned = t.zoned && l.Zoned
		switch fits {
		case like:
			t.like++
		case unlike:
			t.unlike++
		}
	})
	return t
}

// told is 1 where the track itself fits the leg's minute as its clock is.
func (k *clocked) told(l *legClock, minute int64) int {
	if kn, ok := k.kn[minute]; ok && l.fits(kn) {
		return 1
	}
	return 0
}

// off is by how many knots the track runs faster than logged, of the legs that it
// meets as its clock is; 0 where that is no more than speeds are logged wrong by.
func (c *clocks) off(k *clocked) float64 {
	var differences []float64
	k.each(c.legs, 0, 0, func(l *legClock, minute int64, v verdict) {
		if v != untold && l.SpeedKn != nil {
			differences = append(differences, k.kn[minute]-*l.SpeedKn)
		}
	})
	if len(differences) < least {
		return 0
	}
	slices.Sort(differences)
	if off := differences[len(differences)/2]; math.Abs(off) <= mostOff {
		return off
	}
	return 0
}

// suggestion says where the legs would fit the track much better on another
// clock, and by how many minutes; "" where they fit, or fit nowhere.
func (c *clocks) suggestion(k *clocked) (string, int64) {
	now := c.fit(k, 0, 0)
	if off := c.off(k); off != 0 {
		// speeds logged wrong by as much each time are no sign of a wrong clock
		if t := c.fit(k, 0, off); t.score() > now.score() {
			now = t
		}
	}
	best, by := now, int64(0)
	for _, s := range shifts() {
		more := int64(0)
		if s%60 != 0 {
			more = unusual
		}
		if t := c.fit(k, s, 0); t.score() > best.score()+more && float64(t.like) >= enough*float64(t.all) {
			best, by = t, s
		}
	}
	switch {
	case by != 0 && better(now, best):
		return k.remedy(now, best, duration(by)), by
	case !now.zoned && now.like > 0:
		return "the log gives no time zone, so the track fits no leg: give --zone", 0
	}
	return "", 0
}

// better tells whether another clock is worth suggesting: it more than doubles
// the time that fits; or it at least halves the time that the track contradicts,
// by running in or home while lines are said to be out.
func better(now, then tally) bool {
	doubles := then.like >= least && then.like > 2*now.like
	return doubles || (now.unlike >= least && then.like >= now.like+least/2 && 2*then.unlike <= now.unlike)
}

// remedy names the flag and the value that would mend a clock which is off by by.
func (k *clocked) remedy(now, then tally, by time.Duration) string {
	found := fmt.Sprintf("the track fits %s of %s logged hours (as it is, %s)", tenths(then.like),
		tenths(then.all), tenths(now.like))
	if !then.zoned && by >= -12*time.Hour && by <= 14*time.Hour {
		return fmt.Sprintf("the log gives no time zone: on %s %s. Give --zone", utc(by), found)
	}
	with := k.flags(by + k.clock)
	if !then.zoned {
		return fmt.Sprintf("%s: %s. The log gives no time zone: give --zone first", with, found)
	}
	return fmt.Sprintf("%s: %s. Is the track's clock wrong, or the log's zone or date?", with, found)
}

// moved says why a track's times are put on, and how to put its clock right for good.
func (k *clocked) moved(t *Track) string {
	by := time.Duration(t.MovedS * float64(time.Second))
	ahead, taken := "behind", "later"
	if by < 0 {
		ahead, taken = "ahead of", "earlier"
	}
	size := strings.TrimPrefix(flagValue(by), "-")
	said := fmt.Sprintf("its clock is %s %s that of another track, which ran the same way: its times are taken %s %s",
		size, ahead, size, taken)
	if t.MovedTold {
		return said + ", as the legs say. To put it right for good, load it again " + k.flags(by+k.clock)
	}
	return said + ", but no leg tells which of the two clocks is right. If it is this one, load the other with " +
		"--track-clock " + flagValue(-by)
}

// flags are those to load a track with, its clock to be put on by clock. The boat
// is among them where it was: without it the track would be another log.
func (k *clocked) flags(clock time.Duration) string {
	put := "--track-clock " + flagValue(clock) + inWords(clock)
	switch {
	case clock == 0 && !k.given:
		return "without --track-clock"
	case clock == 0:
		return fmt.Sprintf("with --boat %q and no --track-clock", *k.boat)
	case k.given:
		return fmt.Sprintf("with --boat %q %s", *k.boat, put)
	}
	return "with " + put
}

func duration(minutes int64) time.Duration { return time.Duration(minutes) * time.Minute }

// flagValue is a time as --track-clock takes it: -13h, 5h30m, 172032h.
func flagValue(d time.Duration) string {
	s := strings.TrimSuffix(d.String(), "0s")
	if whole, ok := strings.CutSuffix(s, "h0m"); ok {
		return whole + "h"
	}
	return s
}

// utc names a zone by its hours: UTC+13, UTC-9:30.
func utc(d time.Duration) string {
	sign := "+"
	if d < 0 {
		sign, d = "-", -d
	}
	if d%time.Hour == 0 {
		return fmt.Sprintf("UTC%s%d", sign, d/time.Hour)
	}
	return fmt.Sprintf("UTC%s%d:%02d", sign, d/time.Hour, d%time.Hour/time.Minute)
}

// inWords says what long times are.
func inWords(d time.Duration) string {
	const day, turn = minutesADay * time.Minute, weeks1024 * time.Minute
	switch size := d.Abs(); {
	case size%turn == 0:
		return fmt.Sprintf(" (%d weeks: receivers of some age have lost count)", size/(7*day))
	case size == day:
		return " (a day)"
	case size%day == 0:
		return fmt.Sprintf(" (%d days)", size/day)
	}
	return ""
}

func tenths(minutes int64) string { return fmt.Sprintf("%.1f", float64(minutes)/60) }
