package estimate

import (
	"fmt"
	"math"
	"slices"

	"gonum.org/v1/gonum/stat"
	"gonum.org/v1/gonum/stat/distuv"
)

const (
	kgPerLb = 0.45359237 // exact, international pound
	cmPerIn = 2.54       // exact, international inch

	// commonK is 1/800 lb per cubic inch in kg/cm^3: 1 / 28901.8336...
	commonK = kgPerLb / (800 * cmPerIn * cmPerIn * cmPerIn)

	// minPairs is the least number of fish that an own coefficient rests on.
	minPairs = 5

	// coverage is the share of fish that a prediction interval should hold.
	coverage = 0.90
)

// LengthGirthKG is the trade's rule W(lb) = L(in) x G(in)^2 / 800 in kg and cm,
// the constant converted exactly: L G^2 / 28901.8336. It is 0 where either
// measure is not above zero and finite.
func LengthGirthKG(lengthCM, girthCM float64) float64 {
	l, g := logged(lengthCM), logged(girthCM)
	return logged(commonK * l * g * g)
}

// FitOwn finds the boat's own coefficient for every species of pairs: the
// geometric mean of W / (L G^2). With 5 fish or more it is judged by leave-one-out
// mean absolute error (kg) against the common constant on the same fish, and Used
// only where its error is the smaller. Pairs without a species or with a measure
// that is not above zero are left out; where a species has pairs of several length
// kinds, the kind with most pairs is fitted.
func FitOwn(pairs []Pair) map[string]Own {
	groups := map[string]map[string][]Pair{}
	for _, p := range pairs {
		if p.Species == "" || logged(p.LengthCM) == 0 || logged(p.GirthCM) == 0 || logged(p.ScaleKG) == 0 {
			continue
		}
		if groups[p.Species] == nil {
			groups[p.Species] = map[string][]Pair{}
		}
		kind := forkOr(p.LengthKind)
		groups[p.Species][kind] = append(groups[p.Species][kind], p)
	}
	own := map[string]Own{}
	for species, kinds := range groups {
		own[species] = fitSpecies(species, kinds)
	}
	return own
}

// forkOr is the length kind under which lengths are pooled: those not logged and
// the straight lengths to the fork are one kind.
func forkOr(kind string) string {
	k := lengthKind(kind)
	if k == "" || sameKind(k, ForkLength) {
		return ForkLength
	}
	return k
}

// fitSpecies fits the length kind with most pairs; ties go to the first in the alphabet.
func fitSpecies(species string, kinds map[string][]Pair) Own {
	best, rest := "", 0
	for kind, ps := range kinds {
		if best == "" || len(ps) > len(kinds[best]) || len(ps) == len(kinds[best]) && kind < best {
			best = kind
		}
		rest += len(ps)
	}
	o := fitPairs(kinds[best])
	o.Species, o.LengthKind = species, best
	if rest -= o.N; rest > 0 {
		o.Why += fmt.Sprintf(" Left out: %d fish measured in another way.", rest)
	}
	return o
}

func fitPairs(ps []Pair) Own {
	logs, lengths := make([]float64, len(ps)), make([]float64, len(ps))
	for i, p := range ps {
		logs[i] = math.Log(p.ScaleKG) - math.Log(p.LengthCM) - 2*math.Log(p.GirthCM)
		lengths[i] = p.LengthCM
	}
	o := Own{N: len(ps), K: math.Exp(stat.Mean(logs, nil)), MinCM: slices.Min(lengths), MaxCM: slices.Max(lengths)}
	if o.N > 1 {
		o.SLog = stat.StdDev(logs, nil)
	}
	if o.N < minPairs {
		o.Why = fmt.Sprintf("Too few fish with tape and scale: %d, and it takes %d.", o.N, minPairs)
		return o
	}
	o.LOOOwn, o.LOOCommon = leaveOneOut(ps, logs)
	o.Used = o.LOOOwn < o.LOOCommon
	word := "no better than"
	if o.Used {
		word = "better than"
	}
	o.Why = fmt.Sprintf("On %d fish, each predicted from the others, it is off by %.1f kg on average: %s the common constant's %.1f kg.",
		o.N, o.LOOOwn, word, o.LOOCommon)
	return o
}

// leaveOneOut is the mean absolute error (kg) of the geometric-mean coefficient
// fitted without the fish it predicts, and of the common constant, which is fitted
// on none of them.
func leaveOneOut(ps []Pair, logs []float64) (own, common float64) {
	n := float64(len(ps))
	total := n * stat.Mean(logs, nil)
	for i, p := range ps {
		k := math.Exp((total - logs[i]) / (n - 1))
		own += math.Abs(k*p.LengthCM*p.GirthCM*p.GirthCM-p.ScaleKG) / n
		common += math.Abs(LengthGirthKG(p.LengthCM, p.GirthCM)-p.ScaleKG) / n
	}
	return own, common
}

// interval is the 90 % prediction interval for one fish round a weight w whose log
// has the standard deviation s: w exp(+-t s sqrt(1 + 1/n)), t on df degrees of
// freedom. For the mean of n normal logs (df n-1) it is exact. For a regression of
// n fish (df n-2) it leaves out the term for the distance from the mean length,
// which is of the order of 1/n. With n or df unknown it is the limit for large n.
func interval(w, s float64, n, df int) (lo, hi float64) {
	p := 1 - (1-coverage)/2
	half := s * distuv.UnitNormal.Quantile(p)
	if n > 0 && df > 0 {
		t := distuv.StudentsT{Mu: 0, Sigma: 1, Nu: float64(df)}
		half = s * t.Quantile(p) * math.Sqrt(1+1/float64(n))
	}
	return w * math.Exp(-half), w * math.Exp(half)
}
