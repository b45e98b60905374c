package track

import (
	"math"
	"slices"

	"wakeledger/pipeline/unit"
)

const (
	arcSpacing = 3000   // milliseconds between fixes, from which an arc is fitted: closer ones are many
	widestArc  = 180000 // half its window at most
	enoughKn   = 0.15   // standard error of a speed, below which no wider window is taken
	leastArc   = 5      // fixes
	unknowns   = 6      // of an arc
	recentArcs = 61     // of which the noise is told: ten minutes
	differKn   = 0.7    // between the speeds by an arc and by the ways across it, from which neither is sure
	nearKn     = 0.5    // change of speed within a window that is none
)

// arc is a boat's way with its speed and its rate of turn: a circle, or a straight
// line, on which the speed may change evenly. Its time is in seconds from the middle
// of its window.
type arc struct {
	x, y, speed, course, rate, gain float64 // metres, m/s, radians, radians a second, m/s in a second
}

// fitted is an arc laid through fixes by least squares.
type fitted struct {
	arc
	squares      float64 // of what it leaves over, in square metres
	free         int     // degrees of freedom of it
	spread, more float64 // standard errors of speed and of gain for fixes of 1 m noise
}

// noise is what fixes of a track scatter by, in metres either way, as told by what short
// arcs of the last ten minutes leave over. The best quarter tells it: a boat that turns
// to and fro runs no arc most of its time.
type noise struct {
	squares [recentArcs]float64
	n       int
}

func (o *noise) add(f fitted) {
	k := float64(f.free)
	// the lower quartile of chi square of k degrees of freedom: Wilson and Hilferty (1931)
	o.squares[o.n%recentArcs] = f.squares / (k * math.Pow(1-2/(9*k)-0.6745*math.Sqrt(2/(9*k)), 3))
	o.n++
}

func (o *noise) metres() float64 {
	var all [recentArcs]float64
	n := copy(all[:], o.squares[:min(o.n, recentArcs)])
	if n == 0 {
		return 0
	}
	slices.Sort(all[:n])
	return math.Sqrt(all[n/4])
}

// smooth puts a noisy piece's speed right: by an arc through the fixes about it, over a
// window that is widened until the speed is known well, or until the boat ran
// otherwise in it. Distances between noisy fixes are too long, and the speed of a
// circle from the ways across it depends on their angles: an arc through all of them
// is free of both. It returns the standard error that the noise leaves, in knots.
func (c *cutter) smooth(p *Piece, middle, spacing int64) float64 {
	rough := c.space.roughKn(c.noise.metres())
	if p.RunKn < slowKn {
		return 0
	}
	half := max(halfWindow, 5*spacing/2)
	best, ok := c.arc(middle, half, startOf(p))
	if !ok || !best.near(startOf(p), p.Gap) {
		return rough
	}
	c.noise.add(best)
	metres := c.noise.metres()
	rough = c.space.roughKn(metres)
	if rough <= enoughKn || !best.fits(metres, float64(half)/1000) {
		if differ := math.Abs(best.speed/unit.KnotMS - p.RunKn); spacing >= looseGap && differ > differKn {
			c.space.spread = max(c.space.spread, looseKn+differ)
		}
		return rough
	}
	for wide := half + half/2; wide <= widestArc &&
		best.spread*metres > enoughKn*unit.KnotMS; wide += half / 2 {
		next, ok := c.arc(middle, wide, best.arc)
		if !ok || !next.fits(metres, float64(wide)/1000) || !next.near(best.arc, p.Gap) {
			break
		}
		best = next
	}
	best.put(p, metres)
	return p.ErrKn
}

// put sets a piece's speed, course and turn by an arc through fixes of so much noise.
func (f fitted) put(p *Piece, metres float64) {
	p.RunKn = math.Abs(f.speed) / unit.KnotMS
	p.ErrKn = f.spread * max(metres, math.Sqrt(f.squares/float64(f.free))) / unit.KnotMS
	p.Course, p.Turn = math.NaN(), math.NaN()
	p.setCourse(math.Sin(f.course)*f.speed, math.Cos(f.course)*f.speed)
	if p.RunKn > slowKn {
		p.Turn = f.rate / radian * 60
	}
}

// roughKn is the standard error of the median of the window's ways, for fixes of so much
// noise.
func (w *window) roughKn(metres float64) float64 {
	seconds, n := 0.0, float64(len(w.pairs))
	for _, q := range w.pairs {
		seconds += q.seconds / n
	}
	return 1.2533 * metres * math.Sqrt(2/n) / seconds / unit.KnotMS
}

// fits tells whether the boat ran evenly within half a window of so many seconds.
func (f fitted) fits(metres, half float64) bool {
	k := float64(f.free)
	if f.squares > metres*metres*(k+3*math.Sqrt(2*k)) {
		return false
	}
	return math.Abs(f.gain)*half < max(nearKn*unit.KnotMS, 2*f.more*metres*half)
}

// near tells whether an arc is much the one that it began with, and turns less than half a
// circle from fix to fix.
func (a arc) near(b arc, gap float64) bool {
	return math.Abs(a.speed-b.speed) < max(b.speed/4, slowKn*unit.KnotMS) && math.Abs(a.rate)*gap < math.Pi
}

func startOf(p *Piece) arc {
	a := arc{speed: p.RunKn * unit.KnotMS}
	if !math.IsNaN(p.Course) {
		a.course = p.Course * radian
	}
	if !math.IsNaN(p.Turn) {
		a.rate = p.Turn * radian / 60
	}
	return a
}

// arc lays an arc through the fixes within half of an instant, beginning with a
// guess of it: Gauss and Newton's least squares.
func (c *cutter) arc(middle, half int64, a arc) (fitted, bool) {
	lo, hi := c.around(middle, half)
	fixes := c.fixes[lo:hi]
	if len(fixes) < leastArc {
		return fitted{}, false
	}
	p := planeAt(c.fixes[c.at].Lat, c.fixes[c.at].Lon)
	if a.x == 0 && a.y == 0 {
		a.x, a.y = p.of(c.fixes[c.at].Lat, c.fixes[c.at].Lon)
	}
	f := fitted{arc: a, free: 2*len(fixes) - unknowns, squares: math.Inf(1)}
	for range 8 {
		var n normal
		squares := 0.0
		for _, fix := range fixes {
			x, y := p.of(fix.Lat, fix.Lon)
			squares += n.add(f.arc, float64(fix.At-middle)/1000, x, y)
		}
		step, ok := n.solve()
		if !ok {
			return f, false
		}
		settled := math.Abs(squares-f.squares) <= 1e-3*squares
		f.squares = squares
		if settled {
			f.spread, f.more = math.Sqrt(n.inverse(2)), math.Sqrt(n.inverse(5))
			return f, true
		}
		f.x, f.y, f.speed = f.x+step[0], f.y+step[1], f.speed+step[2]
		f.course, f.rate, f.gain = f.course+step[3], f.rate+step[4], f.gain+step[5]
	}
	return f, false
}

// normal are the normal equations of an arc's unknowns, and their Cholesky factor.
type normal struct {
	m [unknowns][unknowns]float64
	v [unknowns]float64
}

const leastRate = 1e-5 // radians a second: less is a straight line

// add takes in a fix at a time; it returns the square of its distance.
func (n *normal) add(a arc, t, x, y float64) float64 {
	w := a.rate
	if math.Abs(w) < leastRate {
		w = leastRate
	}
	sin0, cos0 := math.Sincos(a.course)
	sin, cos := math.Sincos(a.course + w*t)
	// the integrals of sine and cosine of the course, and of time by them
	s0, c0 := (cos0-cos)/w, (sin-sin0)/w
	s1, c1 := (c0-t*cos)/w, (t*sin-s0)/w
	east, north := a.speed*s0+a.gain*s1, a.speed*c0+a.gain*c1
	dx, dy := x-a.x-east, y-a.y-north
	jx := [unknowns]float64{1, 0, s0, north, a.speed * c1, s1}
	jy := [unknowns]float64{0, 1, c0, -east, -a.speed * s1, c1}
	for i := range jx {
		n.v[i] += jx[i]*dx + jy[i]*dy
		for j := range i + 1 {
			n.m[i][j] += jx[i]*jx[j] + jy[i]*jy[j]
		}
	}
	return dx*dx + dy*dy
}

// solve factors the equations and solves them; ok is false where they tell nothing of
// some unknown.
func (n *normal) solve() (x [unknowns]float64, ok bool) {
	for i := range n.m {
		for j := range i + 1 {
			v := n.m[i][j]
			for k := range j {
				v -= n.m[i][k] * n.m[j][k]
			}
			if i != j {
				n.m[i][j] = v / n.m[j][j]
				continue
			}
			if v <= 1e-9*n.m[i][i] || math.IsNaN(v) {
				return x, false
			}
			n.m[i][i] = math.Sqrt(v)
		}
	}
	return n.back(n.v), true
}

// back solves the factored equations for a right side.
func (n *normal) back(x [unknowns]float64) [unknowns]float64 {
	for i := range x {
		for k := range i {
			x[i] -= n.m[i][k] * x[k]
		}
		x[i] /= n.m[i][i]
	}
	for i := unknowns - 1; i >= 0; i-- {
		for k := i + 1; k < unknowns; k++ {
			x[i] -= n.m[k][i] * x[k]
		}
		x[i] /= n.m[i][i]
	}
	return x
}

// inverse is an element of the inverse's diagonal.
func (n *normal) inverse(i int) float64 {
	var unit [unknowns]float64
	unit[i] = 1
	return n.back(unit)[i]
}
