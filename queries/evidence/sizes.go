package evidence

import (
	"maps"
	"math"
	"math/rand/v2"
	"slices"

	"wakeledger/queries/stats"
)

// Fish is one weight and the trip that it was caught on.
type Fish struct {
	Trip int64
	KG   float64
}

// SizeLevel is the weights of one species at one level.
type SizeLevel struct {
	Level          string
	N, Trips       int
	Median         float64 // NaN without a weight
	MedianInterval stats.Interval
	Reference      bool // the level with the most weights, which the others are compared with
	// Shift is the median of all differences to the reference, in kg (Hodges and
	// Lehmann 1963, Annals of Mathematical Statistics 34:598-611).
	Shift         float64
	ShiftInterval stats.Interval
	P             float64 // of no shift, adjusted by Holm over the species' levels; NaN where not tested
	PSeason       float64 // and over all species
	Verdict       Verdict
	Why           string // there is no test, or no interval
}

const (
	minWeights   = 4 // on each side of a difference
	minSizeTrips = 6 // with fewer, no flips of whole trips are rarer than one in twenty
	flips        = 1999
	allFlips     = 11 // trips up to which every flip is taken
)

// CompareSizes compares weights between the levels of each species. Fish of one
// trip are one draw: they come in schools. So a median, or a difference, is held
// against what comes of flipping the signs of whole trips (the wild bootstrap of
// scores by clusters: Kline and Santos 2012, Journal of Econometric Methods
// 1:23-41, from memory; exact for a median where trips fall evenly about it), and its
// interval is all that this does not reject. fish is by species, then by level.
func CompareSizes(levels [][]string, fish [][][]Fish) [][]SizeLevel {
	out := make([][]SizeLevel, len(levels))
	var all []float64
	for s := range levels {
		out[s] = speciesSizes(levels[s], fish[s])
		p := make([]float64, len(out[s]))
		for i, l := range out[s] {
			p[i] = l.P
		}
		all = append(all, p...)
		for i, adjusted := range stats.Holm(p) {
			out[s][i].P = adjusted
		}
	}
	all = stats.Holm(all)
	for s := range out {
		for i := range out[s] {
			out[s][i].PSeason, all = all[0], all[1:]
			out[s][i].judge(fish[s], i)
		}
	}
	return out
}

func (l *SizeLevel) judge(fish [][]Fish, at int) {
	switch {
	case math.IsNaN(l.P):
		return
	case l.PSeason < Alpha && l.Trips >= stats.MinTrips && len(fish[at]) >= MinStrikes:
		l.Verdict = Settled
	case l.P < Alpha:
		l.Verdict = Leaning
	default:
		l.Verdict = NotSettled
	}
}

func speciesSizes(levels []string, fish [][]Fish) []SizeLevel {
	nan := math.NaN()
	out := make([]SizeLevel, len(levels))
	ref := -1
	for i, name := range levels {
		none := stats.Interval{Lo: nan, Hi: nan}
		out[i] = SizeLevel{Level: name, N: len(fish[i]), Trips: len(tripSet(fish[i])),
			Median:         stats.Quantile(weightsOf(fish[i]), 0.5),
			MedianInterval: medianInterval(fish[i]), Shift: nan, ShiftInterval: none, P: nan, PSeason: nan}
		if name != NotLogged && out[i].N >= minWeights && (ref < 0 || out[i].N > out[ref].N) {
			ref = i
		}
	}
	for i := range out {
		l := &out[i]
		switch {
		case l.Level == NotLogged:
			l.Why = "the log does not say"
		case ref < 0 || l.N < minWeights:
			l.Why = "fewer than four weights"
		case i == ref:
			l.Reference, l.Why = true, "most weights: the others are compared with it"
		case len(tripSet(fish[i], fish[ref])) < minSizeTrips || l.Trips < MinLeanTrips || out[ref].Trips < MinLeanTrips:
			l.Why = "too few trips: fish of one trip may be of one school"
		default:
			l.Shift, l.ShiftInterval, l.P = shiftOf(fish[i], fish[ref])
		}
	}
	return out
}

func weightsOf(fish []Fish) []float64 {
	out := make([]float64, len(fish))
	for i, f := range fish {
		out[i] = f.KG
	}
	slices.Sort(out)
	return out
}

func tripSet(groups ...[]Fish) map[int64]float64 {
	m := map[int64]float64{}
	for _, g := range groups {
		for _, f := range g {
			m[f.Trip] = 0
		}
	}
	return m
}

func sign(x float64) float64 {
	switch {
	case x > 0:
		return 1
	case x < 0:
		return -1
	}
	return 0
}

// medianInterval is the weights m for which the signs of x-m, added up by trip, are not more
// lopsided than flips of whole trips are; between two weights in proportion to how much so
// (as Hettmansperger and Sheather 1986, Statistics and Probability Letters 4:75-79, for single
// fish; from memory): few trips would have too wide an interval else.
func medianInterval(fish []Fish) stats.Interval {
	at := weightsOf(fish)
	return accepted(at, stats.Quantile(at, 0.5), true, func(m float64) float64 {
		u, sum := tripSet(fish), 0.0
		for _, f := range fish {
			u[f.Trip] += sign(f.KG - m)
			sum += sign(f.KG - m)
		}
		return flipP(u, sum)
	})
}

// shiftOf is the difference of a to b with its interval and p-value: the signs of
// all differences a-d-b, given to both trips, less each trip's part of their sum.
func shiftOf(a, b []Fish) (shift float64, iv stats.Interval, p float64) {
	var pairs []float64
	for _, x := range a {
		for _, y := range b {
			pairs = append(pairs, x.KG-y.KG)
		}
	}
	slices.Sort(pairs)
	test := func(d float64) float64 {
		u, sum := tripSet(a, b), 0.0
		for _, x := range a {
			for _, y := range b {
				s := sign(x.KG - d - y.KG)
				u[x.Trip] += s
				u[y.Trip] += s
				sum += s
			}
		}
		for _, x := range a { // each trip's part of the sum
			u[x.Trip] -= sum / float64(len(a))
		}
		for _, y := range b {
			u[y.Trip] -= sum / float64(len(b))
		}
		return flipP(u, sum*math.Max(0.5, 1-3/float64(len(u)))) // two levels were fitted: few trips look too much alike
	}
	shift = stats.Quantile(pairs, 0.5)
	return shift, accepted(pairs, shift, false, test), test(0)
}

// accepted is the range of sorted candidates about the estimate whose p-value
// is not below Alpha; unknown where even the farthest are not rejected. Its ends are candidates,
// or, where between is asked for, lie between the last that is not rejected and the next.
func accepted(at []float64, estimate float64, between bool, p func(float64) float64) stats.Interval {
	n := len(at)
	if n == 0 {
		return stats.Interval{Lo: math.NaN(), Hi: math.NaN()}
	}
	pad := 1e-9 * (1 + math.Abs(at[n-1]-at[0]))
	from, _ := slices.BinarySearch(at, estimate)
	end := func(outer int, sign float64) float64 {
		if p(at[outer]+sign*pad) >= Alpha {
			return math.NaN()
		}
		in, out := min(from, n-1), outer
		for in != out && in-out != 1 && out-in != 1 {
			mid := (in + out) / 2
			if p(at[mid]+sign*pad) >= Alpha {
				in = mid
			} else {
				out = mid
			}
		}
		if !between || in == out {
			return at[out]
		}
		pIn, pOut := p(at[in]+sign*pad), p(at[out]+sign*pad)
		return at[out] + (at[in]-at[out])*(Alpha-pOut)/(pIn-pOut)
	}
	iv := stats.Interval{Lo: end(0, -1), Hi: end(n-1, 1)}
	if !iv.Known() {
		return stats.Interval{Lo: math.NaN(), Hi: math.NaN()}
	}
	return iv
}

// flipP is the share of flips of the trips' scores whose sum is as far from 0 as
// sum: of all flips for few trips, of a fixed draw of them for many.
func flipP(scores map[int64]float64, sum float64) float64 {
	var u []float64
	for _, t := range slices.Sorted(maps.Keys(scores)) {
		if scores[t] != 0 {
			u = append(u, scores[t])
		}
	}
	limit := math.Abs(sum) - 1e-9
	hit, n := 0, 0
	count := func(next func() uint64) {
		s, bits := 0.0, uint64(0)
		for i, v := range u {
			if i%64 == 0 {
				bits = next()
			}
			s += v * float64(int(bits&1)*2-1)
			bits >>= 1
		}
		if n++; math.Abs(s) >= limit {
			hit++
		}
	}
	if len(u) <= allFlips {
		for b := range uint64(1) << len(u) {
			count(func() uint64 { return b })
		}
		return float64(hit) / float64(n)
	}
	r := rand.New(rand.NewPCG(1, 2))
	for range flips {
		count(r.Uint64)
	}
	return float64(hit+1) / float64(n+1)
}
