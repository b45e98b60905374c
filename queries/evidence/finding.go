package evidence

import (
	"fmt"
	"math"

	"wakeledger/queries/stats"
)

// Verdict is how far a season settles which level of a factor brought more.
type Verdict string

// The verdicts, from the strongest.
const (
	Settled    Verdict = "settled"
	Leaning    Verdict = "leaning"
	NotSettled Verdict = "not settled"
)

// The rules behind the verdicts.
const (
	// Alpha is the chance that a season in which nothing matters has any factor
	// called settled.
	Alpha = 1 - Confidence
	// MinStrikes is the number of strikes on shared trips below which nothing
	// is settled: with fewer the normal law behind the interval is a poor one. A
	// choice.
	MinStrikes = 10
	// MinLeanTrips is the number of shared trips below which nothing leans. A
	// choice.
	MinLeanTrips = 3
)

// Finding is what a season says of one factor: the level that differs from
// another on the same trips beyond the least doubt, or else the best guess.
type Finding struct {
	Factor  string
	ByLeg   bool
	Verdict Verdict
	// Better brought more strikes per line-hour than Other on the same trips, by
	// Ratio; empty where no two levels can be compared.
	Better, Other string
	Ratio         stats.RateRatio
	P             float64 // of Ratio, adjusted over the factor's levels
	PSeason       float64 // and over all factors of the season
	Compared      int     // levels that were compared with the reference
	Factors       int     // factors that could be compared at all
	Season        stats.Count
	Trips         int
	Leader        string  // the level with the highest shrunk rate among those with enough effort; may be empty
	LeaderRate    float64 // its shrunk rate
	Levels        int     // levels that the log names and that have effort
	Thin          int     // of them with little effort
	Blocked       string  // what keeps a leaning finding from being settled; empty for none
}

// Find turns comparisons into findings, in their order. Every ratio to a
// reference has a p-value adjusted by Holm over its factor's levels; a factor's
// own p-value, the smallest of them, is adjusted by Holm over the factors. Then:
//
//   - settled: the p-value adjusted over levels and factors is below Alpha, the
//     two levels have enough effort, and stats.MinTrips trips or more shared
//     them with MinStrikes strikes or more;
//   - leaning: the p-value adjusted over the levels is below Alpha, the levels
//     have enough effort, and MinLeanTrips trips or more shared them;
//   - not settled: all else.
//
// So the interval of a finding that is settled or leaning leaves out 1.
func Find(all []Comparison) []Finding {
	p := make([]float64, len(all))
	findings := make([]Finding, len(all))
	factors := 0
	for i, c := range all {
		findings[i] = find(c)
		p[i] = findings[i].P
		if !math.IsNaN(p[i]) {
			factors++
		}
	}
	for i, adjusted := range stats.Holm(p) {
		findings[i].PSeason, findings[i].Factors = adjusted, factors
		findings[i].judge()
	}
	return findings
}

// find picks the comparison with the smallest p-value among levels with enough
// effort; without any p-value, the ratio that rests on most strikes.
func find(c Comparison) Finding {
	nan := math.NaN()
	f := Finding{Factor: c.Factor, ByLeg: c.ByLeg, Verdict: NotSettled, P: nan, PSeason: nan, LeaderRate: nan,
		Season: c.Season, Trips: c.Trips, Ratio: stats.RateRatio{Ratio: nan, Interval: stats.Interval{Lo: nan, Hi: nan}, P: nan}}
	for _, l := range c.Levels {
		if l.Level == NotLogged || l.Count.Effort <= 0 {
			continue
		}
		f.Levels++
		if l.Thin {
			f.Thin++
			continue
		}
		if l.Count.Events > 0 && (f.Leader == "" || l.Shrunk > f.LeaderRate) {
			f.Leader, f.LeaderRate = l.Level, l.Shrunk
		}
	}
	for i := range c.Levels {
		if c.Levels[i].Told {
			f.Compared++
			f.consider(c, i)
		}
	}
	return f
}

// consider takes level i's ratio where it is the clearest so far.
func (f *Finding) consider(c Comparison, i int) {
	l, ref := c.Levels[i], c.Levels[c.Reference]
	if l.Thin || ref.Thin || !l.Ratio.Interval.Known() {
		return
	}
	clearer := f.Better == "" || l.P < f.P || l.P == f.P && l.Ratio.P < f.Ratio.P
	if !clearer {
		return
	}
	f.P, f.Ratio, f.Better, f.Other = l.P, l.Ratio, l.Level, ref.Level
	if l.Ratio.Ratio < 1 {
		f.Better, f.Other, f.Ratio = ref.Level, l.Level, upside(l.Ratio)
	}
}

// upside is the ratio seen from the other level.
func upside(r stats.RateRatio) stats.RateRatio {
	r.Ratio = 1 / r.Ratio
	r.Interval = stats.Interval{Lo: 1 / r.Interval.Hi, Hi: 1 / r.Interval.Lo}
	r.Events[0], r.Events[1] = r.Events[1], r.Events[0]
	r.Effort[0], r.Effort[1] = r.Effort[1], r.Effort[0]
	return r
}

// judge sets the verdict by the rules of Find.
func (f *Finding) judge() {
	switch {
	case f.Better == "" || !(f.P < Alpha) || f.Ratio.Strata < MinLeanTrips:
		return
	case !(f.PSeason < Alpha):
		f.Blocked = fmt.Sprintf("with %s compared, luck alone could do this", plural(int64(f.Factors), "factor"))
	case f.Trips < stats.MinTrips || f.Ratio.Strata < stats.MinTrips:
		f.Blocked = "too few trips"
	case f.Ratio.Events[0]+f.Ratio.Events[1] < MinStrikes:
		f.Blocked = "too few strikes"
	default:
		f.Verdict = Settled
		return
	}
	f.Verdict = Leaning
}

// Before says whether a is to be told before b: by verdict, then by the
// smallest adjusted p-value, then by the strikes behind the ratio.
func Before(a, b Finding) bool {
	rank := map[Verdict]int{Settled: 0, Leaning: 1, NotSettled: 2}
	switch {
	case rank[a.Verdict] != rank[b.Verdict]:
		return rank[a.Verdict] < rank[b.Verdict]
	case (a.Better == "") != (b.Better == ""):
		return b.Better == ""
	case a.Better != "" && a.Ratio.P != b.Ratio.P:
		return a.Ratio.P < b.Ratio.P
	}
	return a.Levels > b.Levels
}
