package track

import (
	"cmp"
	"errors"
	"slices"
	"time"

	"wakeledger/pipeline/unit"
)

// Tick is the length of a piece: the rule by which fixes are thinned.
const Tick = 10 * time.Second

// Settings are limits of what is taken for a track. The zero value takes the
// defaults.
type Settings struct {
	Gap   time.Duration // without a fix, from which the track is parted; 0: 5 minutes
	TopKn float64       // a boat is never faster; 0: 60
}

// TurningRate is the change of course, in degrees a minute, from which a boat is
// turning and not running straight: a full circle in eight minutes.
const TurningRate = 45

// DefaultGap parts a track: of five minutes without a fix nothing is known.
const DefaultGap = 5 * time.Minute

const (
	defaultTopKn = 60.0
	jumpMetres   = 100     // what is less may be the error of two fixes
	reordered    = 32      // fixes that are put in order by their times as they come
	mostLate     = 4 << 20 // fixes of a segment that are put in order at its end: 48 days of one a second
	agreeing     = 3       // fixes in a row that jump to one place: the boat is there
	stoppedKn    = 1.0
	roughKn      = 0.35 // standard error of a speed that may well be in another band
	astray       = 0.4  // share of speeds beyond an edge of a band of 2 kn, for each knot of standard error
)

// Summary is what was found in a track.
type Summary struct {
	First, Last int64 // milliseconds since 1970; of the fixes used
	Fixes       int64 // read
	Used        int64
	Reordered   int64 // out of order, put in their place
	Late        int64 // out of order, of more than can be put in place: dropped
	Repeated    int64 // of a time that was there already: dropped
	Jumps       int64 // faster than any boat: dropped
	Gaps        int64 // where the track is parted by time
	Breaks      int64 // where the file parts it, and time was lost
	Joined      int64 // where the file parts it, and no time was lost: run over
	GapSeconds  float64
	Seconds     float64 // covered by pieces, each second once
	Stopped     float64 // of them below 1 kn, in seconds
	Loose       float64 // of them with fixes so far apart or so noisy that the speed may be another, in seconds
	// Noisy are those of them with fixes so noisy that the speed is known to a third of a
	// knot or worse; NoisyKn is its standard error there, and Astray the time that it may
	// put into a neighbouring band of 2 kn.
	Noisy, NoisyKn, Astray float64
	// Dropouts are times without a fix, shorter than a gap, in which the boat turned
	// or changed its speed: no piece tells of them.
	Dropouts       int64
	DropoutSeconds float64
}

// Piece is ten seconds of a track by the clock, less at the ends of a stretch.
type Piece struct {
	At       int64   // its first instant, milliseconds since 1970, UTC
	Seconds  float64 // of it that the track covers
	Lat, Lon float64 // at its middle
	RunKn    float64 // over ground, from positions
	ErrKn    float64 // standard error of RunKn; NaN where not known
	SaidKn   float64 // median of the receiver's own speeds; NaN where it gave none
	Course   float64 // degrees true; NaN where the boat hardly moves
	Turn     float64 // degrees a minute, to starboard positive; NaN where not known
	Fixes    int
	Gap      float64 // seconds between the two fixes about its middle
	Stretch  int64   // of the track, from 1: without a gap or break; two may overlap
}

// Cut reads a track to its end and gives its pieces, in order within each
// stretch without a gap or break. Fixes out of order are put in order within
// their segment, the part of the file between two breaks. Segments that tell of
// the same time give stretches that overlap.
func Cut(r Reader, s Settings, emit func(Piece) error) (Summary, error) {
	if s.Gap <= 0 {
		s.Gap = DefaultGap
	}
	if s.TopKn <= 0 {
		s.TopKn = defaultTopKn
	}
	c := &cutter{settings: s, emit: emit, fresh: true}
	for {
		f, ok, err := r.Next()
		if err != nil {
			return c.sum, err
		}
		if !ok {
			break
		}
		c.sum.Fixes++
		if err := c.place(f); err != nil {
			return c.sum, err
		}
	}
	if err := c.endSegment(); err != nil {
		return c.sum, err
	}
	c.count()
	c.sum.NoisyKn /= max(c.sum.Noisy, 1)
	return c.sum, nil
}

// cutter holds the fixes that pieces to come need.
type cutter struct {
	settings Settings
	emit     func(Piece) error
	sum      Summary
	waiting  []Fix // in order, not yet taken: an earlier one may still come
	fresh    bool  // no fix of the segment was taken yet
	swapped  int   // of those waiting, that came before their turn
	backward bool  // the segment runs backwards: its fixes wait for its end
	late     []lateFix
	odd      []Fix // that jump from the last one taken
	fixes    []Fix // of the stretch, from a window before the next piece on
	stretch  int64
	spans    [][2]int64 // first and last instants of the stretches
	from     int64      // the stretch's first instant
	next     int64      // the next piece's first instant
	at       int        // of fixes, at or before the middle of the last piece
	space    window
	noise    noise
}

// lateFix is a fix that waits for its segment's end.
type lateFix struct {
	at       int64
	lat, lon float64
	kn       float32
}

// place puts a fix into those waiting, by its time.
func (c *cutter) place(f Fix) error {
	if f.Break {
		if err := c.parted(f); err != nil {
			return err
		}
	}
	if c.backward {
		c.hold(f)
		return nil
	}
	i := len(c.waiting)
	for i > 0 && c.waiting[i-1].At > f.At {
		i--
	}
	if i < len(c.waiting) && !c.isLate(f) {
		c.sum.Reordered++
		c.swapped++
	}
	c.waiting = append(c.waiting, f)
	copy(c.waiting[i+1:], c.waiting[i:])
	c.waiting[i] = f
	if len(c.waiting) < 2*reordered {
		return nil
	}
	if c.fresh && 2*c.swapped > len(c.waiting) {
		c.turnBack()
		return nil
	}
	return c.release(reordered)
}

// parted ends the segment before a fix, where the file parts it. Where no time
// was lost the stretch goes on: many a plotter begins a new segment every quarter
// of an hour.
func (c *cutter) parted(f Fix) error {
	if len(c.late) == 0 {
		if err := c.release(0); err != nil {
			return err
		}
		if c.goesOn(f) {
			c.sum.Joined++
			return nil
		}
	}
	if err := c.endSegment(); err != nil {
		return err
	}
	if c.sum.Fixes > 1 {
		c.sum.Breaks++
	}
	return nil
}

// goesOn tells whether a fix is where the stretch was to be expected next: within
// twice the spacing of its last fixes, or a piece's length.
func (c *cutter) goesOn(f Fix) bool {
	n := len(c.fixes)
	if n < 2 || len(c.odd) > 0 {
		return false
	}
	a, b := c.fixes[n-2], c.fixes[n-1]
	gap := f.At - b.At
	return gap >= 0 && gap <= max(2*(b.At-a.At), Tick.Milliseconds()) &&
		gap <= c.settings.Gap.Milliseconds() && !c.jumps(b, f)
}

// turnBack has a segment wait for its end whose first fixes run backwards.
func (c *cutter) turnBack() {
	c.backward = true
	c.sum.Reordered -= int64(c.swapped)
	for _, f := range c.waiting {
		c.hold(f)
	}
	c.waiting = c.waiting[:0]
}

// isLate tells whether a fix is of before the last one taken.
func (c *cutter) isLate(f Fix) bool {
	n := len(c.fixes)
	return n > 0 && f.At < c.fixes[n-1].At
}

// hold keeps a fix that is out of order for the segment's end.
func (c *cutter) hold(f Fix) {
	if len(c.late) >= mostLate {
		c.sum.Late++
		return
	}
	c.sum.Reordered++
	c.late = append(c.late, lateFix{f.At, f.Lat, f.Lon, float32(f.SpeedKn)})
}

// endSegment takes all that waits, those out of order as stretches of their own.
func (c *cutter) endSegment() error {
	if err := errors.Join(c.release(0), c.finish()); err != nil {
		return err
	}
	slices.SortStableFunc(c.late, func(a, b lateFix) int { return cmp.Compare(a.at, b.at) })
	for _, f := range c.late {
		if err := c.take(Fix{At: f.at, Lat: f.lat, Lon: f.lon, SpeedKn: float64(f.kn)}); err != nil {
			return err
		}
	}
	c.late, c.fresh, c.swapped, c.backward = c.late[:0], true, 0, false
	if cap(c.late) > mostLate/16 {
		c.late = nil
	}
	return c.finish()
}

// count adds up the time that the stretches cover, each second once. Of stretches
// that overlap the time stopped is taken to overlap alike.
func (c *cutter) count() {
	slices.SortFunc(c.spans, func(a, b [2]int64) int {
		return cmp.Or(cmp.Compare(a[0], b[0]), cmp.Compare(a[1], b[1]))
	})
	var once, all, until int64
	for i, s := range c.spans {
		if i == 0 || s[0] > until {
			until = s[0]
		}
		all += s[1] - s[0]
		once += max(s[1]-until, 0)
		until = max(until, s[1])
	}
	if c.sum.Seconds = float64(once) / 1000; all > once {
		c.sum.Stopped *= float64(once) / float64(all)
	}
}

// release takes those waiting but the last keep.
func (c *cutter) release(keep int) error {
	n := max(len(c.waiting)-keep, 0)
	for _, f := range c.waiting[:n] {
		c.fresh = false
		if c.isLate(f) {
			c.hold(f)
			continue
		}
		if err := c.take(f); err != nil {
			return err
		}
	}
	c.waiting = c.waiting[:copy(c.waiting, c.waiting[n:])]
	return nil
}

// take takes a fix into the stretch, or drops it, or parts the track at it.
func (c *cutter) take(f Fix) error {
	if len(c.fixes) == 0 {
		return c.start(f)
	}
	last := c.fixes[len(c.fixes)-1]
	gap := f.At - last.At
	switch {
	case gap == 0:
		c.sum.Repeated++
		return nil
	case gap > c.settings.Gap.Milliseconds():
		c.sum.Gaps++
		c.sum.GapSeconds += float64(gap) / 1000
		if err := c.finish(); err != nil {
			return err
		}
		return c.start(f)
	case c.jumps(last, f):
		return c.strange(f)
	}
	c.sum.Jumps += int64(len(c.odd))
	c.odd = c.odd[:0]
	c.keep(f)
	return c.cut(false)
}

func (c *cutter) jumps(a, b Fix) bool {
	p := planeAt(a.Lat, a.Lon)
	x, y := p.of(b.Lat, b.Lon)
	square := x*x + y*y
	top := c.settings.TopKn * unit.KnotMS * float64(b.At-a.At) / 1000
	return square > jumpMetres*jumpMetres && square > top*top
}

// strange holds a fix that jumps. Where the next ones are by it, the boat is
// there, and the way to it is not known.
func (c *cutter) strange(f Fix) error {
	if n := len(c.odd); n > 0 && (f.At <= c.odd[n-1].At || c.jumps(c.odd[n-1], f)) {
		c.sum.Jumps += int64(n)
		c.odd = c.odd[:0]
	}
	c.odd = append(c.odd, f)
	if len(c.odd) < agreeing {
		return nil
	}
	there := append([]Fix(nil), c.odd...)
	c.odd = c.odd[:0]
	c.sum.Jumps++
	if err := c.finish(); err != nil {
		return err
	}
	for i, o := range there {
		if i == 0 {
			if err := c.start(o); err != nil {
				return err
			}
			continue
		}
		c.keep(o)
	}
	return nil
}

func (c *cutter) start(f Fix) error {
	c.from, c.at = f.At, 0
	c.stretch++
	tick := Tick.Milliseconds()
	c.next = f.At - (f.At%tick+tick)%tick
	c.keep(f)
	return nil
}

func (c *cutter) keep(f Fix) {
	if c.sum.Used == 0 || f.At < c.sum.First {
		c.sum.First = f.At
	}
	if c.sum.Used == 0 || f.At > c.sum.Last {
		c.sum.Last = f.At
	}
	c.sum.Used++
	c.fixes = append(c.fixes, f)
}

// finish ends the stretch.
func (c *cutter) finish() error {
	c.sum.Jumps += int64(len(c.odd))
	c.odd = c.odd[:0]
	err := c.cut(true)
	if n := len(c.fixes); n > 1 {
		c.spans = append(c.spans, [2]int64{c.from, c.fixes[n-1].At})
	}
	c.fixes = c.fixes[:0]
	return err
}

// cut gives the pieces that are ready: those about which the window is full, or
// all of them.
func (c *cutter) cut(all bool) error {
	if len(c.fixes) < 2 {
		return nil
	}
	last := c.fixes[len(c.fixes)-1].At
	tick := Tick.Milliseconds()
	for c.next < last && (all || c.ready(last)) {
		from, to := max(c.next, c.from), min(c.next+tick, last)
		gap, missing := c.missing(from, to)
		if missing {
			to = c.fixes[gap].At
		}
		if to > from {
			if err := c.give(from, to); err != nil {
				return err
			}
		}
		if c.next += tick; missing {
			c.passOver(gap)
		}
	}
	c.forget()
	return nil
}

// give reckons a piece and emits it.
func (c *cutter) give(from, to int64) error {
	p := c.piece(from, to)
	p.Stretch = c.stretch
	if p.RunKn < stoppedKn {
		c.sum.Stopped += p.Seconds
	}
	noisy := c.space.rough > roughKn
	if noisy {
		c.sum.Noisy += p.Seconds
		c.sum.NoisyKn += p.Seconds * c.space.rough
		c.sum.Astray += p.Seconds * min(1, astray*c.space.rough)
	}
	if noisy || c.space.loose(p) {
		c.sum.Loose += p.Seconds
	}
	return c.emit(p)
}

// missing finds a fix from which on fixes are missing in a piece's time, and nothing
// tells how the boat ran meanwhile.
func (c *cutter) missing(from, to int64) (i int, ok bool) {
	for i = c.at; i+1 < len(c.fixes) && c.fixes[i].At < to; i++ {
		if c.fixes[i+1].At-c.fixes[i].At > sparse && c.fixes[i+1].At > from && c.unclear(i) {
			return i, true
		}
	}
	return 0, false
}

// passOver ends the stretch at a fix and begins the next with the one after.
func (c *cutter) passOver(i int) {
	a, b := c.fixes[i], c.fixes[i+1]
	c.sum.Dropouts++
	c.sum.DropoutSeconds += float64(b.At-a.At) / 1000
	c.spans = append(c.spans, [2]int64{c.from, a.At})
	tick := Tick.Milliseconds()
	c.from, c.next, c.at = b.At, b.At-(b.At%tick+tick)%tick, i+1
	c.stretch++
}

// ready tells whether the fixes about the next piece are there: a window's, and as
// much after the fix that follows it.
func (c *cutter) ready(last int64) bool {
	end := c.next + Tick.Milliseconds()
	if last < end+widest {
		return false
	}
	i := c.at
	for c.fixes[i].At < end {
		i++
	}
	return i+2 < len(c.fixes) && last >= c.fixes[i].At+sparse
}

// forget lets go of fixes before the next window, now and then.
func (c *cutter) forget() {
	if c.at < 512 {
		return
	}
	n := c.at
	for n > 0 && c.fixes[n].At > c.next-widest {
		n--
	}
	if n -= 2; n < 256 {
		return
	}
	c.fixes = c.fixes[:copy(c.fixes, c.fixes[n:])]
	c.at -= n
}
