package stats

import (
	"math"

	"gonum.org/v1/gonum/mathext"
)

// Wilson returns the share r/n and its score interval without continuity
// correction (Wilson 1927, JASA 22:209-212; method 3 of Newcombe 1998,
// Statistics in Medicine 17:857-872).
//
// ok is false, and every number NaN, where n is not positive, r is not within
// 0..n, or conf is not between 0 and 1.
func Wilson(r, n int64, conf float64) (share float64, iv Interval, ok bool) {
	if !validShare(r, n) || !validLevel(conf) {
		return math.NaN(), unknown(), false
	}
	z := normalQuantile(1 - (1-conf)/2)
	x, m := float64(r), float64(n)
	share = x / m
	mid := x + z*z/2
	half := z * math.Sqrt(x*(m-x)/m+z*z/4)
	iv = Interval{(mid - half) / (m + z*z), (mid + half) / (m + z*z)}
	// The ends are exact where the formula only rounds to them.
	if r == 0 {
		iv.Lo = 0
	}
	if r == n {
		iv.Hi = 1
	}
	return share, iv, true
}

// binomialLogits are the exact limits (Clopper and Pearson 1934, Biometrika
// 26:404-413) for x of n with the given tail each side, where x and n need not be whole,
// as log odds: these lose no digits where a limit is near 1, and are infinite
// where it is 0 or 1.
func binomialLogits(x, n, tail float64) Interval {
	l := Interval{math.Inf(-1), math.Inf(1)}
	if x > 0 {
		l.Lo = betaLogit(x, n-x+1, tail)
	}
	if x < n {
		l.Hi = -betaLogit(n-x, x+1, tail)
	}
	return l
}

// betaLogit is the log odds of the beta quantile at a small p, by bisection:
// mathext.InvRegIncBeta is off by orders of magnitude for p within 1e-6 of 1.
func betaLogit(a, b, p float64) float64 {
	lo, hi := -700.0, 700.0
	for hi-lo > 1e-13 {
		mid := (lo + hi) / 2
		if mid == lo || mid == hi {
			break
		}
		if mathext.RegIncBeta(a, b, 1/(1+math.Exp(-mid))) < p {
			lo = mid
		} else {
			hi = mid
		}
	}
	return (lo + hi) / 2
}

func validShare(r, n int64) bool { return n > 0 && r >= 0 && r <= n }
