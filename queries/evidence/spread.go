package evidence

import (
	"math"

	"wakeledger/queries/stats"
)

// GapLeg is one leg with the smallest gap between the setbacks of two of its
// lines.
type GapLeg struct {
	Gap    float64 // m
	Hours  float64
	Tangle bool
}

// GapLevel is the legs of one class of gaps [Lo, Hi).
type GapLevel struct {
	Lo, Hi   float64 // m; Hi is infinite for the last
	Legs     int64
	Hours    float64
	Tangles  int64
	Rate     float64 // tangles per leg-hour; NaN without hours
	Interval stats.Interval
	// Below is the ratio of tangles per leg-hour at gaps below Lo to those from Lo
	// up, P its p-value adjusted by Holm over the edges; NaN where not known.
	Below stats.RateRatio
	P     float64
}

// Gaps sorts legs by their smallest gap into classes with the given lower ends, and finds the gap that the season
// supports: the edge that parts tangles the most clearly, where the adjusted
// p-value of that ratio is below Alpha and tangles are more frequent below it.
// NaN where the season supports none.
func Gaps(legs []GapLeg, edges []float64) (levels []GapLevel, supported float64) {
	var total stats.Count
	for i, lo := range edges {
		l := GapLevel{Lo: lo, Hi: math.Inf(1), P: math.NaN(), Below: stats.RateRatio{Ratio: math.NaN(), P: math.NaN()}}
		if i+1 < len(edges) {
			l.Hi = edges[i+1]
		}
		for _, g := range legs {
			if g.Gap >= l.Lo && g.Gap < l.Hi {
				l.Legs++
				l.Hours += g.Hours
				if g.Tangle {
					l.Tangles++
				}
			}
		}
		l.Rate, l.Interval, _ = stats.Poisson(l.Tangles, l.Hours, Confidence)
		total.Events += l.Tangles
		total.Effort += l.Hours
		levels = append(levels, l)
	}
	return levels, supportedGap(levels, total)
}

func supportedGap(levels []GapLevel, total stats.Count) float64 {
	p := make([]float64, len(levels))
	var below stats.Count
	for i := range levels {
		l := &levels[i]
		above := stats.Count{Events: total.Events - below.Events, Effort: total.Effort - below.Effort}
		p[i] = math.NaN()
		if r, ok := stats.ExactRatio(below, above, Confidence); ok && below.Effort > 0 {
			l.Below, p[i] = r, r.P
		}
		below.Events += l.Tangles
		below.Effort += l.Hours
	}
	best := -1
	for i, adjusted := range stats.Holm(p) {
		levels[i].P = adjusted
		if adjusted < Alpha && levels[i].Below.Ratio > 1 && (best < 0 || p[i] < p[best]) {
			best = i
		}
	}
	if best < 0 {
		return math.NaN()
	}
	return levels[best].Lo
}
