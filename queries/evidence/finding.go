package evidence

import (
	"fmt"
	"math"
	"slices"

	"wakeledger/pipeline/factors"
	"wakeledger/pipeline/sentence"
	"wakeledger/queries/stats"
)

// Verdict is how far a season settles a difference.
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
	// MinStrikes is the number of strikes behind a ratio below which nothing is
	// settled. A choice.
	MinStrikes = 10
	// MinLeanTrips is the number of trips at each of two levels below which
	// nothing leans. A choice.
	MinLeanTrips = 3
)

// Others are all levels of a factor but one.
const Others = "the others"

// Finding is what the season says of one factor: the level that differs from
// another, or the trend, beyond the least doubt, or else the best guess.
type Finding struct {
	Factor  string
	ByLeg   bool
	Verdict Verdict
	// Better brought more strikes per line-hour than Other, by Ratio; empty where
	// no two levels can be compared. One of them is Others where there are more
	// than two. With Trend they are the two ends of the levels with enough effort,
	// and Ratio is that of the trend between them.
	Better, Other string
	Trend         bool
	Ratio         Ratio
	P             float64     // of Ratio, adjusted over what the factor compares
	PSeason       float64     // and over all factors of the season
	Behind        stats.Count // at the two levels; for a trend all that were compared
	Strata        int         // trips, or legs where ByLeg, that fished both; for a trend two levels or more
	Compared      int         // comparisons that were tested, the trend among them
	Factors       int         // factors that could be compared at all
	Season        stats.Count
	Trips         int
	Levels        int     // levels that the log names and that have effort
	Thin          int     // of them with little effort
	Blocked       string  // what keeps a leaning finding from being settled; empty for none
	few           int     // trips at the level with fewer
	paired        int     // trips that tie levels of the factor
	allowed       float64 // times that P counts among the factors, before any is settled
}

// Find turns comparisons into findings, in their order. The smallest p-value of a
// factor, adjusted by Holm over its levels and trend, is adjusted over the factors:
// kin, which say much the same, by the square root of their number (Tukey, Ciminera
// and Heyse 1985, Biometrics 41:295-301, from memory), and then by Holm. Then:
//
//   - settled: the p-value adjusted over levels and factors is below Alpha, with
//     MinStrikes strikes or more, on stats.MinTrips trips or more that fished two
//     levels;
//   - leaning: the p-value adjusted over the factor's levels is below Alpha, and
//     MinLeanTrips trips or more fished each level;
//   - not settled: all else.
//
// So the interval of a finding that is settled or leaning leaves out 1.
func Find(all []Comparison) []Finding {
	findings := make([]Finding, len(all))
	group, sizes, told := make([]int, len(all)), map[int]float64{}, 0
	for i, c := range all {
		findings[i] = find(c)
		group[i] = slices.IndexFunc(all[:i+1], func(d Comparison) bool { return factors.Related(c.Factor, d.Factor) })
		if !math.IsNaN(findings[i].P) {
			sizes[group[i]]++
			told++
		}
	}
	least := make([]float64, len(all)) // of each group
	for i := range least {
		least[i] = math.NaN()
	}
	for i, f := range findings {
		if g := group[i]; !math.IsNaN(f.P) {
			findings[i].allowed = math.Sqrt(sizes[g])
			if q := f.P * findings[i].allowed; !(q >= least[g]) {
				least[g] = q
			}
		}
	}
	adjusted := stats.Holm(least)
	for i := range findings {
		f, g := &findings[i], group[i]
		f.Factors = told
		f.PSeason = math.Min(1, adjusted[g]*f.P*f.allowed/math.Max(least[g], math.SmallestNonzeroFloat64))
		f.allowed = math.Max(1, f.allowed) * float64(max(1, len(sizes)))
		f.judge()
	}
	return findings
}

// find picks the comparison with the smallest p-value.
func find(c Comparison) Finding {
	nan := math.NaN()
	f := Finding{Factor: c.Factor, ByLeg: c.ByLeg, Verdict: NotSettled, P: nan, PSeason: nan,
		Season: c.Season, Trips: c.Trips, Ratio: unknownRatio(), paired: c.Paired}
	for _, l := range c.Levels {
		if l.Level == NotLogged || l.Count.Effort <= 0 {
			continue
		}
		f.Levels++
		if l.Thin {
			f.Thin++
		}
		if math.IsNaN(l.RestP) {
			continue
		}
		f.Compared++
		if f.Better == "" || below(l.RestP, f.P) || !below(f.P, l.RestP) && below(l.Rest.P, f.Ratio.P) {
			f.P, f.Ratio, f.Better, f.Other = l.RestP, l.Rest, l.Level, Others
			f.Behind, f.Strata, f.few = l.Beside, l.BesideStrata, l.Trips
		}
	}
	if f.Compared == 1 && f.Levels == 2 { // the other is one level
		f.Other = c.Levels[c.Reference].Level
		f.few = min(f.few, c.Levels[c.Reference].Trips)
	}
	if t := c.Trend; t.Known {
		f.Compared++
		if f.Better == "" || below(t.Adj, f.P) || !below(f.P, t.Adj) && below(t.P, f.Ratio.P) {
			f.P, f.Ratio, f.Better, f.Other, f.Trend = t.Adj, t.Ratio, t.High, t.Low, true
			f.Behind, f.Strata, f.few = t.Behind, t.Strata, c.Paired
		}
	}
	if f.Ratio.Ratio < 1 {
		f.Better, f.Other, f.Ratio = f.Other, f.Better, f.Ratio.upside()
	}
	return f
}

// below reports whether a p-value is less than another by more than the last digits, which differ
// from one machine to another: of two levels each says what the other does.
func below(a, b float64) bool { return a < b-1e-9*b }

// judge sets the verdict by the rules of Find.
func (f *Finding) judge() {
	switch {
	case f.Better == "" || !(f.P < Alpha) || f.few < MinLeanTrips:
		return
	case !(f.PSeason < Alpha):
		f.Blocked = fmt.Sprintf("with %s compared, luck alone could do this",
			sentence.Count(int64(f.Factors), "factor", "factors"))
	case f.paired < stats.MinTrips:
		f.Blocked = "too few trips"
	case f.Behind.Events < MinStrikes:
		f.Blocked = "too few strikes"
	default:
		f.Verdict = Settled
		return
	}
	f.Verdict = Leaning
}

// Before says whether a is to be told before b: by verdict, then by the
// smallest p-value, then by the number of levels.
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
