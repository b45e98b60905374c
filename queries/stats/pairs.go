package stats

import "math"

// Pairs are sums over pairs of counts a and b, with equal efforts: of the b, of both
// together (t), and of their products. Given its t, a b is binomial, so that FitEffects
// with a stratum each pair has closed forms.
type Pairs struct{ b, t, bb, bt, tt float64 }

// Add adds a pair.
func (p *Pairs) Add(a, b float64) {
	t := a + b
	p.b, p.t, p.bb, p.bt, p.tt = p.b+b, p.t+t, p.bb+b*b, p.bt+b*t, p.tt+t*t
}

// Events is all of a and b.
func (p Pairs) Events() float64 { return p.t }

// Logit is the log ratio of b to a; NaN without events.
func (p Pairs) Logit() float64 { return math.Log(p.b / (p.t - p.b)) }

// Off is the log-likelihood ratio (twice the difference) of no difference.
func (p Pairs) Off() float64 { return 2 * (binomial(p.b, p.t) - p.t*math.Log(0.5)) }

// OffTurned is that of no difference between a and b where pairs also differ by an
// order, which those of q have the other way round.
func (p Pairs) OffTurned(q Pairs) float64 {
	return 2 * (binomial(p.b, p.t) + binomial(q.b, q.t) - binomial(p.b+q.t-q.b, p.t+q.t))
}

// binomial is the largest log-likelihood of x of n.
func binomial(x, n float64) float64 {
	sum := 0.0
	for _, v := range []float64{x, n - x} {
		if v > 0 {
			sum += v * math.Log(v/n)
		}
	}
	return sum
}

// PairsDispersion is Effects.Dispersion of groups of pairs, each with its own share.
func PairsDispersion(groups ...Pairs) (phi, df float64) {
	var squares, all, taken, spread float64
	for _, g := range groups {
		if g.t == 0 {
			continue
		}
		p := g.b / g.t
		v := p * (1 - p)
		squares += 2 * (g.bb - 2*p*g.bt + p*p*g.tt)
		all += 2 * v * g.t
		taken += 2 * v * g.tt / g.t
		spread += 2*v*g.t + 4*v*v*g.tt
	}
	return ratioOfSpread(squares, all, taken, spread)
}
