package track

import (
	"math"
	"slices"

	"wakeledger/pipeline/unit"
)

const (
	halfWindow = 20000 // milliseconds
	sparse     = 30000 // fixes further apart are taken with their neighbours only
	farthest   = 90000 // and these by themselves: what the boat does between them is not known
	widest     = 2 * sparse
	mostPairs  = 64  // of fixes in a window; of more, every n-th is taken
	noisyKn    = 0.3 // standard error of a speed, from which a wider window is taken
	slowKn     = 2.0
	mostTurn   = 4.2 // radians over a chord; of more its arc cannot be told
	dropout    = 5   // half times the spacing on either side: fixes are missing
	alikeKn    = 1.0 // between the speeds before, in and after a dropout, to be run through it
)

// window is the room for one piece's reckoning.
type window struct {
	pairs  []pair
	values []float64
	spread float64 // between the fastest and the slowest pair, in knots
	rough  float64 // standard error in knots of the piece's speed by the noise of its fixes
}

// pair is the way made good between two fixes.
type pair struct {
	x, y, seconds float64
	middle        float64 // its instant, in seconds from the window's first fix
	turn          float64 // radians over it, where steps could tell; NaN else
}

// piece reckons the piece from one instant to another.
func (c *cutter) piece(from, to int64) Piece {
	middle := (from + to) / 2
	for c.at+2 < len(c.fixes) && c.fixes[c.at+1].At <= middle {
		c.at++
	}
	a, b := c.fixes[c.at], c.fixes[c.at+1]
	t := float64(middle-a.At) / float64(b.At-a.At)
	p := Piece{At: from, Seconds: float64(to-from) / 1000,
		Lat: a.Lat + t*(b.Lat-a.Lat), Lon: math.Remainder(a.Lon+t*math.Remainder(b.Lon-a.Lon, 360), 360),
		ErrKn: math.NaN(), Course: math.NaN(), Turn: math.NaN()}
	spacing := b.At - a.At
	p.Gap, c.space.rough = float64(spacing)/1000, 0
	if spacing > sparse {
		c.sparse(&p, spacing)
		return p
	}
	half := min(max(halfWindow, 3*spacing), widest)
	lo, hi := c.around(middle, half)
	c.space.fill(c.fixes[lo:hi], half)
	c.space.reckon(&p)
	if wide := min(2*half, widest); p.ErrKn > noisyKn && wide > half {
		lo, hi = c.around(middle, wide)
		c.space.fill(c.fixes[lo:hi], wide)
		c.space.reckon(&p)
	}
	if c.space.rough = p.ErrKn; spacing >= arcSpacing {
		c.space.rough = c.smooth(&p, middle, spacing)
	}
	near := max(5000, spacing)
	lo, hi = c.around(middle, near)
	p.SaidKn, p.Fixes = said(c.fixes[lo:hi]), hi-lo
	return p
}

// sparse reckons a piece of fixes far apart: by the way between the two about it,
// and where those before and after are as far apart, by the turn that the three ways
// tell of.
func (c *cutter) sparse(p *Piece, spacing int64) {
	lo, hi := c.at, c.at+2
	if spacing <= farthest {
		if lo > 0 && alike(c.fixes[lo].At-c.fixes[lo-1].At, spacing) {
			lo--
		}
		if hi < len(c.fixes) && alike(c.fixes[hi].At-c.fixes[hi-1].At, spacing) {
			hi++
		}
	}
	c.space.steps(c.fixes[lo:hi])
	c.space.reckon(p)
	p.SaidKn = said(c.fixes[c.at : c.at+2])
}

func alike(a, b int64) bool { return 3*a >= 2*b && 2*a <= 3*b }

// steps takes the ways between fixes that follow each other, by the geodesic.
func (w *window) steps(fixes []Fix) {
	w.pairs = w.pairs[:0]
	for i := 1; i < len(fixes); i++ {
		a, b := fixes[i-1], fixes[i]
		x, y := planeAt(a.Lat, a.Lon).of(b.Lat, b.Lon)
		scale := 1.0
		if way := math.Hypot(x, y); way > 0 {
			scale = Distance(a.Lat, a.Lon, b.Lat, b.Lon) / way
		}
		w.pairs = append(w.pairs, pair{x: x * scale, y: y * scale, seconds: float64(b.At-a.At) / 1000,
			middle: float64(a.At+b.At-2*fixes[0].At) / 2000})
	}
	for i := range w.pairs {
		w.pairs[i].turn = w.turnAt(i)
	}
}

// turnAt is how far the boat turned over a step, either way: the mean of what it
// turned from the step before and to the step after. Circles are not always the
// same way round.
func (w *window) turnAt(i int) float64 {
	angle, n := 0.0, 0.0
	for _, j := range []int{i, i + 1} {
		if j < 1 || j >= len(w.pairs) {
			continue
		}
		a, b := w.pairs[j-1], w.pairs[j]
		n++
		if min(a.knots(), b.knots()) > slowKn {
			angle += math.Abs(math.Remainder(math.Atan2(b.x, b.y)-math.Atan2(a.x, a.y), 2*math.Pi))
		}
	}
	return angle / n
}

func (q pair) knots() float64 { return math.Hypot(q.x, q.y) / q.seconds / unit.KnotMS }

// unclear tells whether fixes are missing after the i-th and the boat may have run
// otherwise meanwhile: it turned before or after, or its speed was another.
func (c *cutter) unclear(i int) bool {
	a, b := c.fixes[i], c.fixes[i+1]
	spacing := b.At - a.At
	through := Distance(a.Lat, a.Lon, b.Lat, b.Lon) / (float64(spacing) / 1000) / unit.KnotMS
	for _, side := range [][]Fix{c.before(i), c.after(i + 1)} {
		n := len(side)
		if n < 3 {
			continue
		}
		span := side[n-1].At - side[0].At
		if dropout*span > 2*int64(n-1)*spacing {
			return false // the fixes are as far apart there
		}
		var p Piece
		if span > int64(n-1)*sparse/3 {
			c.space.steps(side)
		} else {
			c.space.fill(side, min(halfWindow, span/2))
		}
		c.space.reckon(&p)
		if math.Abs(p.Turn) >= TurningRate || math.Abs(p.RunKn-through) > max(alikeKn, 3*p.ErrKn) {
			return true
		}
	}
	return false
}

// before and after are some fixes up to the i-th and from it on: of half a minute, four at least.
func (c *cutter) before(i int) []Fix {
	lo := i
	for lo > 0 && (i-lo < 3 || c.fixes[i].At-c.fixes[lo-1].At <= sparse) {
		lo--
	}
	return c.fixes[lo : i+1]
}

func (c *cutter) after(i int) []Fix {
	hi := i + 1
	for hi < len(c.fixes) && (hi-i < 4 || c.fixes[hi].At-c.fixes[i].At <= sparse) {
		hi++
	}
	return c.fixes[i:hi]
}

const (
	looseTurn = 90.0  // degrees from fix to fix
	looseKn   = 2.0   // between ways near each other
	looseGap  = 15000 // milliseconds
)

// loose tells whether a piece's fixes are so far apart that its speed may well be
// another: the boat turned much from one to the next, or changed its speed.
func (w *window) loose(p Piece) bool {
	return p.Gap*1000 >= looseGap && (math.Abs(p.Turn)*p.Gap/60 > looseTurn || w.spread > looseKn)
}

// around is the range of fixes within half of an instant, the two about it at least.
func (c *cutter) around(middle, half int64) (lo, hi int) {
	lo, hi = c.at, c.at+2
	for lo > 0 && c.fixes[lo-1].At >= middle-half {
		lo--
	}
	for hi < len(c.fixes) && c.fixes[hi].At <= middle+half {
		hi++
	}
	return lo, hi
}

// fill takes the pairs of fixes that are about span milliseconds apart, or the
// first and the last where there are none.
func (w *window) fill(fixes []Fix, span int64) {
	w.pairs = w.pairs[:0]
	step := len(fixes)/(2*mostPairs) + 1
	p := planeAt(fixes[len(fixes)/2].Lat, fixes[len(fixes)/2].Lon)
	j := 0
	for i := 0; i < len(fixes); i += step {
		for j+1 < len(fixes) && abs(fixes[j+1].At-fixes[i].At-span) <= abs(fixes[j].At-fixes[i].At-span) {
			j++
		}
		if 4*(fixes[j].At-fixes[i].At) >= 3*span {
			w.add(p, fixes[i], fixes[j], fixes[0].At)
		}
	}
	if len(w.pairs) == 0 {
		w.add(p, fixes[0], fixes[len(fixes)-1], fixes[0].At)
	}
}

func abs(v int64) int64 { return max(v, -v) }

func (w *window) add(p plane, a, b Fix, first int64) {
	x1, y1 := p.of(a.Lat, a.Lon)
	x2, y2 := p.of(b.Lat, b.Lon)
	w.pairs = append(w.pairs, pair{x: x2 - x1, y: y2 - y1, seconds: float64(b.At-a.At) / 1000,
		middle: float64(a.At+b.At-2*first) / 2000, turn: math.NaN()})
}

// reckon sets a piece's speed, course and turn from the pairs.
func (w *window) reckon(p *Piece) {
	rate, known := w.turn() // radians a second
	w.values = w.values[:0]
	for _, q := range w.pairs {
		speed, theta := q.knots(), q.turn
		if math.IsNaN(theta) && known {
			theta = math.Abs(rate * q.seconds)
		}
		if speed > slowKn && theta > 1e-3 && theta < mostTurn {
			speed *= theta / 2 / math.Sin(theta/2)
		}
		w.values = append(w.values, speed)
	}
	p.RunKn = median(w.values)
	w.spread = w.values[len(w.values)-1] - w.values[0]
	if n := len(w.pairs); n >= 3 {
		for i := range w.values {
			w.values[i] = math.Abs(w.values[i] - p.RunKn)
		}
		// the median of n normal values varies by 1.2533 sigma / sqrt(n), and sigma
		// is 1.4826 times their median deviation
		p.ErrKn = 1.2533 * 1.4826 * median(w.values) / math.Sqrt(float64(n))
	}
	x, y, _ := sum(w.pairs)
	p.setCourse(x, y)
	if known && p.RunKn > slowKn {
		p.Turn = rate / radian * 60
	}
}

// turn is the change of direction from the earlier to the later pairs, in radians
// a second, to starboard positive. From a quarter of the pairs to the next it is
// taken to be less than half a circle.
func (w *window) turn() (rate float64, known bool) {
	n := len(w.pairs)
	if n < 2 {
		return 0, false
	}
	groups := min(n, 4)
	half := groups / 2
	var early, late, t1, t2, direction float64
	for g := range groups {
		part := w.pairs[g*n/groups : (g+1)*n/groups]
		x, y, t := sum(part)
		t /= float64(len(part))
		if towards := math.Atan2(x, y); g == 0 {
			direction = towards
		} else {
			direction += math.Remainder(towards-direction, 2*math.Pi)
		}
		if g < half {
			early, t1 = early+direction, t1+t
		}
		if g >= groups-half {
			late, t2 = late+direction, t2+t
		}
	}
	return (late - early) / (t2 - t1), t2 > t1
}

func sum(pairs []pair) (x, y, middle float64) {
	for _, q := range pairs {
		x += q.x
		y += q.y
		middle += q.middle
	}
	return x, y, middle
}

// setCourse is the direction of a way in metres, where the boat moves.
func (p *Piece) setCourse(x, y float64) {
	if p.RunKn < stoppedKn {
		return
	}
	if p.Course = math.Atan2(x, y) / radian; p.Course < 0 {
		p.Course += 360
	}
}

// said is the median of the speeds that the receiver gave.
func said(fixes []Fix) float64 {
	var few [mostPairs]float64
	values := few[:0]
	for _, f := range fixes {
		if !math.IsNaN(f.SpeedKn) && len(values) < cap(values) {
			values = append(values, f.SpeedKn)
		}
	}
	if len(values) == 0 {
		return math.NaN()
	}
	return median(values)
}

// median sorts its values.
func median(values []float64) float64 {
	slices.Sort(values)
	n := len(values)
	return (values[(n-1)/2] + values[n/2]) / 2
}
