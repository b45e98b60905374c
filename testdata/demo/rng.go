package main

import (
	"math"
	"math/rand/v2"
)

// dice draws what the model needs from one fixed stream.
type dice struct{ *rand.Rand }

func newDice(seed uint64) dice { return dice{rand.New(rand.NewPCG(seed, seed>>7))} }

// chance is true with probability p.
func (d dice) chance(p float64) bool { return d.Float64() < p }

// between draws a whole number from lo to hi, both in.
func (d dice) between(lo, hi int) int { return lo + d.IntN(hi-lo+1) }

// normal draws with this mean and standard deviation, held within 2.5 of them.
func (d dice) normal(mean, sd float64) float64 {
	z := d.NormFloat64()
	return mean + sd*math.Max(-2.5, math.Min(2.5, z))
}

// scatter draws a factor about 1 with this spread on the log scale.
func (d dice) scatter(sd float64) float64 { return math.Exp(d.normal(0, sd)) }

// gamma draws with mean 1 and this shape, 1 or more (Marsaglia and Tsang 2000).
func (d dice) gamma(shape float64) float64 {
	c := shape - 1.0/3
	for {
		x := d.NormFloat64()
		v := math.Pow(1+x/math.Sqrt(9*c), 3)
		if v > 0 && math.Log(d.Float64()) < x*x/2+c-c*v+c*math.Log(v) {
			return c * v / shape
		}
	}
}

// poisson draws a count with this mean by Knuth's product of uniforms.
func (d dice) poisson(mean float64) int {
	limit, product, n := math.Exp(-mean), d.Float64(), 0
	for product > limit {
		product *= d.Float64()
		n++
	}
	return n
}

// weighted draws an index with these weights, which need not add up to 1.
func (d dice) weighted(weights []float64) int {
	var sum float64
	for _, w := range weights {
		sum += w
	}
	left := d.Float64() * sum
	for i, w := range weights {
		if left -= w; left < 0 {
			return i
		}
	}
	return len(weights) - 1
}

// pick draws one of the items.
func pick[T any](d dice, items []T) T { return items[d.IntN(len(items))] }

// pickText draws a text by its share.
func pickText(d dice, choices []choice) string {
	weights := make([]float64, len(choices))
	for i, c := range choices {
		weights[i] = c.share
	}
	return choices[d.weighted(weights)].text
}
