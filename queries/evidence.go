package queries

import (
	"context"
	"math"
	"slices"

	"wakeledger/pipeline/store"
	"wakeledger/queries/evidence"
)

// together are the factors that differ between lines fished together, so that
// their levels are compared within legs.
var together = []string{"lure", "lure-weight", "colour", "hooks", "setback", "position"}

// Evidence is strike-rate by one factor with all that it follows from.
type Evidence struct {
	Factor     string
	Rows       []StrikeRate
	Comparison evidence.Comparison
	Finding    evidence.Finding // judged beside the other factors by AskAllEvidence only
}

// AskEvidence compares the levels of one factor, with those it is mixed up with
// held still.
func AskEvidence(ctx context.Context, db *store.DB, factor string) (Evidence, error) {
	all, err := seasonFactors(ctx, db)
	if err != nil {
		return Evidence{}, err
	}
	return weighed(ctx, db, all, slices.IndexFunc(all, func(f evidence.Factor) bool { return f.Name == factor }))
}

// AskAllEvidence compares the levels of every factor and judges the findings
// beside each other, in the order of Factors.
func AskAllEvidence(ctx context.Context, db *store.DB) ([]Evidence, error) {
	factors, err := seasonFactors(ctx, db)
	if err != nil {
		return nil, err
	}
	var all []Evidence
	var comparisons []evidence.Comparison
	for i := range factors {
		e, err := weighed(ctx, db, factors, i)
		if err != nil {
			return nil, err
		}
		all, comparisons = append(all, e), append(comparisons, e.Comparison)
	}
	for i, f := range evidence.Find(comparisons) {
		all[i].Finding = f
	}
	return all, nil
}

// weighed is the evidence on factor i of all.
func weighed(ctx context.Context, db *store.DB, all []evidence.Factor, i int) (Evidence, error) {
	f := all[i]
	e := Evidence{Factor: f.Name}
	var err error
	if e.Rows, err = ask[StrikeRate](ctx, db, "strike_rate", f.Name); err != nil {
		return e, err
	}
	f.Levels = nil
	for _, r := range e.Rows {
		f.Levels = append(f.Levels, r.Level)
	}
	e.Comparison = evidence.Compare(f, all)
	for i := range e.Rows {
		e.Rows[i].weigh(e.Comparison, i)
	}
	return e, nil
}

// seasonFactors is the season's effort and strikes by every factor.
func seasonFactors(ctx context.Context, db *store.DB) ([]evidence.Factor, error) {
	var all []evidence.Factor
	for _, name := range Factors() {
		cells, err := ask[struct {
			Trip    int64   `json:"trip_id"`
			Leg     int64   `json:"leg_id"`
			Line    int64   `json:"line_id"`
			Level   string  `json:"level"`
			Hours   float64 `json:"line_hours"`
			Strikes int64   `json:"strikes"`
		}](ctx, db, "cells", name)
		if err != nil {
			return nil, err
		}
		f := evidence.Factor{Name: name, ByLeg: slices.Contains(together, name), Score: scores(name)}
		for _, c := range cells {
			if !slices.Contains(f.Levels, c.Level) {
				f.Levels = append(f.Levels, c.Level)
			}
			f.Cells = append(f.Cells, evidence.Cell{Trip: c.Trip, Leg: c.Leg, Line: c.Line, Level: c.Level, LineHours: c.Hours, Strikes: c.Strikes})
			if s, ok := levelScore(name, c.Level); ok {
				f.Score[c.Level] = s
			}
		}
		all = append(all, f)
	}
	return all, nil
}

// weigh takes the evidence for level i into its row.
func (r *StrikeRate) weigh(c evidence.Comparison, i int) {
	l := c.Levels[i]
	r.Rate, r.RateLo, r.RateHi = finite(l.Rate), finite(l.Interval.Lo), finite(l.Interval.Hi)
	r.ShrunkRate = finite(l.Shrunk)
	r.Widened, r.Dispersion = l.Phi > 1, finite(l.Phi)
	r.WithoutHours = r.Strikes - l.Count.Events
	r.Trips, r.LittleEffort, r.Note = int64(l.Trips), l.Thin, l.Why
	r.Ratio, r.RatioLo, r.RatioHi = finite(l.Ratio.Ratio), finite(l.Ratio.Interval.Lo), finite(l.Ratio.Interval.Hi)
	r.PValue, r.SharedStrata, r.Inflation = finite(l.P), int64(l.Strata), finite(l.Inflated)
	if c.Reference >= 0 && l.Level != evidence.NotLogged && i != c.Reference {
		r.ComparedWith = c.Levels[c.Reference].Level
	}
}

// finite is a number, nil where it is not known or has no end.
func finite(v float64) *float64 {
	if math.IsNaN(v) || math.IsInf(v, 0) {
		return nil
	}
	return &v
}
