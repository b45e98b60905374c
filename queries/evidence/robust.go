package evidence

import (
	"math"

	"gonum.org/v1/gonum/stat/distuv"

	"wakeledger/queries/stats"
)

// pair is one stratum of a comparison and the trip that it is of.
type pair struct {
	trip int64
	stats.Stratum
}

// ratioOf is Mantel and Haenszel's ratio. The variance of Greenland and Robins lets
// strikes within a trip fall independently, but they come in bites; so where
// widened, it is multiplied by the trips' own dispersion, at least 1: the
// sandwich variance with trips as clusters over theirs (Liang and Zeger 1986,
// Biometrika 73:13-22). With a, b the strikes and ta, tb the effort of a stratum
// and t = ta+tb, a trip's score is
//
//	u = sum over its strata of (a*tb - R*b*ta)/t
//
// and the variance of ln R is K/(K-1) * sum(u^2) / sum(a*tb/t)^2 over K trips. The
// interval and the p-value are then by t on K-1 degrees of freedom (Cameron and
// Miller 2015, Journal of Human Resources 50:317-372): by the normal law, one
// season in twenty of the simulated ones without any effect settles something.
func ratioOf(pairs []pair, widened bool) (stats.RateRatio, bool) {
	strata := make([]stats.Stratum, len(pairs))
	for i, p := range pairs {
		strata[i] = p.Stratum
	}
	r, ok := stats.MantelHaenszel(strata, Confidence)
	if !ok || !widened || !r.Interval.Known() {
		return r, ok
	}
	var trips []int64 // in the order of the pairs, so that sums are taken in one order
	scores := map[int64]float64{}
	var forA float64
	for _, p := range pairs {
		ta, tb := p.A.Effort, p.B.Effort
		if ta <= 0 || tb <= 0 || p.A.Events+p.B.Events == 0 {
			continue
		}
		if _, seen := scores[p.trip]; !seen {
			trips = append(trips, p.trip)
		}
		scores[p.trip] += (float64(p.A.Events)*tb - r.Ratio*float64(p.B.Events)*ta) / (ta + tb)
		forA += float64(p.A.Events) * tb / (ta + tb)
	}
	k := float64(len(scores))
	if k < 2 {
		return r, ok
	}
	var squares float64
	for _, t := range trips {
		squares += scores[t] * scores[t]
	}
	variance := k / (k - 1) * squares / (forA * forA)
	if own := variance / (r.LogSE * r.LogSE); own > 1 {
		r, ok = stats.QuasiMantelHaenszel(strata, Confidence, own)
	}
	byT(&r, k-1)
	return r, ok
}

// byT puts Student's t on df in place of the normal law in a ratio's interval
// and p-value.
func byT(r *stats.RateRatio, df float64) {
	law := distuv.StudentsT{Sigma: 1, Nu: df}
	reach := math.Exp(law.Quantile(1-(1-Confidence)/2) * r.LogSE)
	r.Interval = stats.Interval{Lo: r.Ratio / reach, Hi: r.Ratio * reach}
	r.P = 2 * law.Survival(math.Abs(math.Log(r.Ratio))/r.LogSE)
}
