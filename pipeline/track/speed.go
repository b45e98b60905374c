package track

import (
	"math"
	"slices"
)

const (
	halfWindow = 20000 // milliseconds
	sparse     = 30000 // fixes further apart stand for themselves
	widest     = 2 * sparse
	mostPairs  = 64 // of fixes in a window; of more, every n-th is taken
	slowKn     = 2.0
	mostTurn   = 2.6 // radians over a chord; more cannot be told from less
)

// window is the room for one piece's reckoning.
type window struct {
	pairs  []pair
	values []float64
}

// pair is the way made good between two fixes.
type pair struct {
	x, y, seconds float64
	middle        float64 // its instant, in seconds from the window's first fix
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
	p.Gap = float64(spacing) / 1000
	if spacing > sparse {
		p.RunKn = Distance(a.Lat, a.Lon, b.Lat, b.Lon) / (float64(spacing) / 1000) / metresPerKnotSecond
		x, y := planeAt(a.Lat, a.Lon).of(b.Lat, b.Lon)
		p.setCourse(x, y)
		p.SaidKn = said(c.fixes[c.at : c.at+2])
		return p
	}
	half := min(max(halfWindow, 3*spacing), widest)
	lo, hi := c.around(middle, half)
	c.space.fill(c.fixes[lo:hi], half)
	c.space.reckon(&p)
	near := max(5000, spacing)
	lo, hi = c.around(middle, near)
	p.SaidKn, p.Fixes = said(c.fixes[lo:hi]), hi-lo
	return p
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
	w.pairs = append(w.pairs, pair{x: x2 - x1, y: y2 - y1, seconds: float64(b.At-a.At) / 1000, middle: float64(a.At+b.At-2*first) / 2000})
}

// reckon sets a piece's speed, course and turn from the pairs.
func (w *window) reckon(p *Piece) {
	rate, known := w.turn() // radians a second
	w.values = w.values[:0]
	for _, q := range w.pairs {
		speed := math.Hypot(q.x, q.y) / q.seconds / metresPerKnotSecond
		if theta := math.Abs(rate * q.seconds); known && speed > slowKn && theta > 1e-3 && theta < mostTurn {
			speed *= theta / 2 / math.Sin(theta/2)
		}
		w.values = append(w.values, speed)
	}
	p.RunKn = median(w.values)
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

// turn is the change of direction between the earlier and the later pairs, in
// radians a second, to starboard positive.
func (w *window) turn() (rate float64, known bool) {
	n := len(w.pairs)
	if n < 2 {
		return 0, false
	}
	k := max(n/2, 1)
	x1, y1, t1 := sum(w.pairs[:k])
	x2, y2, t2 := sum(w.pairs[n-k:])
	apart := (t2 - t1) / float64(k)
	angle := math.Remainder(math.Atan2(x2, y2)-math.Atan2(x1, y1), 2*math.Pi)
	return angle / apart, apart > 0
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
