package queries

import (
	"context"
	"slices"

	"wakeledger/pipeline/factors"
	"wakeledger/pipeline/store"
	"wakeledger/queries/evidence"
)

// Finding is what the season says of one factor.
type Finding struct {
	Factor   string   `json:"factor"`
	Verdict  string   `json:"verdict"` // settled, leaning or not settled
	Sentence string   `json:"sentence"`
	Better   *string  `json:"better"` // brought more strikes per line-hour than Other, by Ratio
	Other    *string  `json:"other"`
	Ratio    *float64 `json:"ratio"`
	RatioLo  *float64 `json:"ratio_lo"` // 95 % interval
	RatioHi  *float64 `json:"ratio_hi"`
	PValue   *float64 `json:"p_value"`        // adjusted over the factor's levels
	PSeason  *float64 `json:"p_value_season"` // and over the season's factors
	Strikes  int64    `json:"strikes"`        // behind the ratio
	Hours    float64  `json:"line_hours"`
	Shared   int64    `json:"shared"` // trips, or legs where By is leg
	By       string   `json:"by"`
	// Better and Other are the ends of the levels, Ratio that of the trend between them
	Trend bool `json:"trend"`
}

// AskFindings answers findings: one sentence a factor, the clearest first.
func AskFindings(ctx context.Context, db *store.DB) ([]Finding, error) {
	all, err := AskAllEvidence(ctx, db)
	if err != nil {
		return nil, err
	}
	return FindingsOf(all), nil
}

// AskFinding is what findings says of one factor. ok is false where there is no such factor.
func AskFinding(ctx context.Context, db *store.DB, factor string) (f Finding, ok bool, err error) {
	all, err := allEvidence(ctx, db, func(name string) compare {
		if name == factor {
			return evidence.Compare
		}
		return evidence.Test
	})
	for _, e := range all {
		if e.Factor == factor {
			return findingRow(e.Finding), true, err
		}
	}
	return f, false, err
}

// FindingsOf are the findings of evidence, the clearest first.
func FindingsOf(all []Evidence) []Finding {
	found := make([]evidence.Finding, len(all))
	for i, e := range all {
		found[i] = e.Finding
	}
	slices.SortStableFunc(found, func(a, b evidence.Finding) int {
		switch {
		case evidence.Before(a, b):
			return -1
		case evidence.Before(b, a):
			return 1
		}
		return 0
	})
	rows := []Finding{}
	for _, f := range found {
		rows = append(rows, findingRow(f))
	}
	return rows
}

func findingRow(f evidence.Finding) Finding {
	r := Finding{Factor: f.Factor, Verdict: string(f.Verdict), By: "trip",
		Sentence: f.Sentence(func(level string) string { return factors.Text(f.Factor, level) })}
	if f.ByLeg {
		r.By = "leg"
	}
	if f.Better == "" {
		return r
	}
	r.Better, r.Other = &f.Better, &f.Other
	r.Ratio, r.RatioLo, r.RatioHi = finite(f.Ratio.Ratio), finite(f.Ratio.Interval.Lo), finite(f.Ratio.Interval.Hi)
	r.PValue, r.PSeason = finite(f.P), finite(f.PSeason)
	r.Strikes, r.Hours, r.Shared, r.Trend = f.Behind.Events, f.Behind.Effort, int64(f.Strata), f.Trend
	return r
}
