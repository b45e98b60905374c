package proof

import (
	"fmt"
	"slices"
	"strings"

	"wakeledger/pipeline/plan"
)

// Totals are what a log comes to, as far as its rows alone tell: stretches that two tables
// tell, and fish that belong to strikes of another, are put together in the season file.
type Totals struct {
	Hours, LineHours float64
	Bites, Landed    int
}

// TotalsOf adds up what blocks came to. Of counts, rows of strikes and lists of fish, which tell
// of the same strikes, the most count.
func TotalsOf(subjects []Subject) Totals {
	var t Totals
	var counts, strikes, fish, landed, boated, kept int
	for _, s := range subjects {
		t.Hours += s.Stats.Hours
		t.LineHours += s.Stats.LineHours
		counts, landed = counts+s.Stats.ByCount, landed+s.Stats.Landed
		if s.Plan.Kind == plan.Fish {
			fish, kept = fish+s.Stats.Listed, kept+s.Stats.Boated
		} else {
			strikes, boated = strikes+s.Stats.Listed, boated+s.Stats.Boated
		}
	}
	t.Bites, t.Landed = max(counts, strikes, fish), max(landed, boated, kept)
	return t
}

// Differences are each of several totals in words, of what is not the same in all; empty
// where all come to the same.
func Differences(all []Totals) []string {
	words := [][]string{}
	for _, t := range all {
		words = append(words, []string{fmt.Sprintf("%.1f h", t.Hours), fmt.Sprintf("%.1f line-hours", t.LineHours), plural(t.Bites, "bite", "bites"), fmt.Sprintf("%d landed", t.Landed)})
	}
	out := make([]string, len(all))
	for i := range all {
		var say []string
		for k, w := range words[i] {
			if slices.ContainsFunc(words, func(o []string) bool { return o[k] != w }) {
				say = append(say, w)
			}
		}
		out[i] = strings.Join(say, ", ")
	}
	return out
}

// Tries tells a question whose answers can each be tried out on the log's plan.
func (q *Question) Tries() bool { return settles[q.Kind] != nil && len(q.Choices) > 1 }
