package queries

import (
	"context"

	"wakeledger/pipeline/factors"
	"wakeledger/pipeline/store"
	"wakeledger/queries/evidence"
)

// SpreadGap is the legs whose smallest gap between two lines is in [GapLo, GapHi).
type SpreadGap struct {
	GapLo   float64  `json:"gap_lo_m"`
	GapHi   *float64 `json:"gap_hi_m"` // nil: and up
	Legs    int64    `json:"legs"`
	Hours   float64  `json:"leg_hours"`
	Tangles int64    `json:"tangles"` // legs with one or more
	Rate    *float64 `json:"tangles_per_leg_hour"`
	RateLo  *float64 `json:"rate_lo"` // 95 % interval, Garwood 1936
	RateHi  *float64 `json:"rate_hi"`
	// BelowRatio is tangles per leg-hour at gaps below GapLo over those from there up.
	BelowRatio *float64 `json:"below_ratio"`
	PValue     *float64 `json:"p_value"` // of BelowRatio, adjusted by Holm over the edges
	// Supported: GapLo is the smallest gap that the season supports.
	Supported bool `json:"smallest_supported"`
}

// gapEdges are the lower ends of the classes of gaps, in metres.
func gapEdges(ctx context.Context, db *store.DB) ([]float64, error) {
	rows, err := ask[struct {
		Lo float64 `json:"lo_m"`
	}](ctx, db, "gap_edges")
	if err != nil || len(rows) == 0 {
		return factors.Of(factors.Gap).Classes.Edges, err
	}
	edges := make([]float64, len(rows))
	for i, r := range rows {
		edges[i] = r.Lo
	}
	return edges, nil
}

// AskSpread answers spread: tangles by the smallest gap between the setbacks of
// lines fished together.
func AskSpread(ctx context.Context, db *store.DB) ([]SpreadGap, error) {
	legs, err := ask[struct {
		Gap    float64 `json:"gap_m"`
		Hours  float64 `json:"hours"`
		Tangle bool    `json:"tangle"`
	}](ctx, db, "gaps")
	if err != nil {
		return nil, err
	}
	var all []evidence.GapLeg
	for _, l := range legs {
		all = append(all, evidence.GapLeg{Gap: l.Gap, Hours: l.Hours, Tangle: l.Tangle})
	}
	edges, err := gapEdges(ctx, db)
	if err != nil {
		return nil, err
	}
	rows := []SpreadGap{}
	levels, supported := evidence.Gaps(all, edges)
	for _, l := range levels {
		rows = append(rows, SpreadGap{GapLo: l.Lo, GapHi: finite(l.Hi), Legs: l.Legs,
			Hours: l.Hours, Tangles: l.Tangles,
			Rate: finite(l.Rate), RateLo: finite(l.Interval.Lo), RateHi: finite(l.Interval.Hi),
			BelowRatio: finite(l.Below.Ratio), PValue: finite(l.P), Supported: l.Lo == supported})
	}
	return rows, nil
}
