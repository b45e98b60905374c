package track

import (
	"time"
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
	jumpMetres   = 100 // what is less may be the error of two fixes
	reordered    = 32  // fixes that are put in order by their times
	agreeing     = 3   // fixes in a row that jump to one place: the boat is there
	stoppedKn    = 1.0
)

// Summary is what was found in a track.
type Summary struct {
	First, Last int64 // milliseconds since 1970; of the fixes used
	Fixes       int64 // read
	Used        int64
	Reordered   int64 // out of order, put in their place
	Late        int64 // too far out of order to be placed: dropped
	Repeated    int64 // of a time that was there already: dropped
	Jumps       int64 // faster than any boat: dropped
	Gaps        int64 // where the track is parted by time
	Breaks      int64 // where the file parts it
	GapSeconds  float64
	Seconds     float64 // covered by pieces
	Stopped     float64 // of them below 1 kn, in seconds
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
}

// Cut reads a track to its end and gives its pieces, in order within each
// stretch without a gap or break.
func Cut(r Reader, s Settings, emit func(Piece) error) (Summary, error) {
	if s.Gap <= 0 {
		s.Gap = DefaultGap
	}
	if s.TopKn <= 0 {
		s.TopKn = defaultTopKn
	}
	c := &cutter{settings: s, emit: emit}
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
	if err := c.release(0); err != nil {
		return c.sum, err
	}
	return c.sum, c.finish()
}

// cutter holds the fixes that pieces to come need.
type cutter struct {
	settings Settings
	emit     func(Piece) error
	sum      Summary
	waiting  []Fix // in order, not yet taken: an earlier one may still come
	odd      []Fix // that jump from the last one taken
	fixes    []Fix // of the stretch, from a window before the next piece on
	from     int64 // the stretch's first instant
	next     int64 // the next piece's first instant
	at       int   // of fixes, at or before the middle of the last piece
	space    window
}

// place puts a fix into those waiting, by its time.
func (c *cutter) place(f Fix) error {
	if f.Break {
		if err := c.release(0); err != nil {
			return err
		}
		if c.sum.Fixes > 1 {
			c.sum.Breaks++
		}
		if err := c.finish(); err != nil {
			return err
		}
	}
	i := len(c.waiting)
	for i > 0 && c.waiting[i-1].At > f.At {
		i--
	}
	if i < len(c.waiting) {
		c.sum.Reordered++
	}
	c.waiting = append(c.waiting, f)
	copy(c.waiting[i+1:], c.waiting[i:])
	c.waiting[i] = f
	if len(c.waiting) < 2*reordered {
		return nil
	}
	return c.release(reordered)
}

// release takes those waiting but the last keep.
func (c *cutter) release(keep int) error {
	n := max(len(c.waiting)-keep, 0)
	for _, f := range c.waiting[:n] {
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
	case gap < 0:
		c.sum.Late++
		c.sum.Reordered--
		return nil
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
	top := c.settings.TopKn * metresPerKnotSecond * float64(b.At-a.At) / 1000
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
	for c.next < last && (all || last >= c.next+tick+widest) {
		from, to := max(c.next, c.from), min(c.next+tick, last)
		p := c.piece(from, to)
		c.next += tick
		c.sum.Seconds += p.Seconds
		if p.RunKn < stoppedKn {
			c.sum.Stopped += p.Seconds
		}
		if err := c.emit(p); err != nil {
			return err
		}
	}
	c.forget()
	return nil
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
	if n < 256 {
		return
	}
	c.fixes = c.fixes[:copy(c.fixes, c.fixes[n:])]
	c.at -= n
}
