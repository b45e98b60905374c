package queries

import (
	"context"
	"fmt"
	"strings"

	"wakeledger/pipeline/factors"
	"wakeledger/pipeline/sentence"
	"wakeledger/pipeline/store"
	"wakeledger/queries/evidence"
)

// MixedUp is what a factor went together with.
type MixedUp struct {
	Factor    string   `json:"factor"`
	Held      string   `json:"held"`  // the factors that its ratios allow for, with commas
	With      *string  `json:"with"`  // the one that says most about it
	Share     *float64 `json:"share"` // of With's changes on one trip (or leg) that follow this factor's
	Inflation *float64 `json:"inflation"`
	Note      string   `json:"note"`
}

// AskMixedUp answers mixed-up: for each factor what it was changed together with,
// and how much that widens its ratios.
func AskMixedUp(ctx context.Context, db *store.DB) ([]MixedUp, error) {
	all, err := allEvidence(ctx, db, tested)
	return MixedUpOf(all), err
}

// MixedUpOf are the rows of mixed-up from evidence that was asked for already:
// the factors with two levels or more.
func MixedUpOf(all []Evidence) []MixedUp {
	rows := []MixedUp{}
	for _, e := range all {
		c := e.Comparison
		if e.Finding.Levels < 2 {
			continue
		}
		r := MixedUp{Factor: e.Factor, Held: strings.Join(c.Held, ", "), Inflation: finite(c.Inflation())}
		if c.Mixed != "" && c.MixedBy >= evidence.MixedShare {
			r.With, r.Share = &c.Mixed, &c.MixedBy
		}
		r.Note = mixedNote(e, r)
		rows = append(rows, r)
	}
	return rows
}

func mixedNote(e Evidence, r MixedUp) string {
	noun := factors.Noun(e.Factor)
	switch {
	case r.With == nil:
		return sentence.Capital(noun) + ": changed on its own."
	case *r.Share > 0.9 || r.Inflation != nil && *r.Inflation > 10:
		return fmt.Sprintf("%s and %s were changed together: the log cannot tell one from the other.",
			sentence.Capital(noun), factors.Noun(*r.With))
	case r.Inflation != nil && *r.Inflation > 2:
		return fmt.Sprintf("%s changed with %s: that makes its ratios %.1f times as wide.", sentence.Capital(noun),
			factors.Noun(*r.With), *r.Inflation)
	case !strings.Contains(r.Held, *r.With):
		return fmt.Sprintf("%s changed with %s, and its ratios do not allow for that: either may be the cause.",
			sentence.Capital(noun), factors.Noun(*r.With))
	}
	return fmt.Sprintf("%s changed partly with %s; its ratios allow for that.",
		sentence.Capital(noun), factors.Noun(*r.With))
}
