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

// AskEvidence compares the levels of one factor.
func AskEvidence(ctx context.Context, db *store.DB, factor string) (Evidence, error) {
	e := Evidence{Factor: factor}
	var err error
	if e.Rows, err = ask[StrikeRate](ctx, db, "strike_rate", factor); err != nil {
		return e, err
	}
	byLeg := slices.Contains(together, factor)
	cells, err := ask[struct {
		Trip    int64   `json:"trip_id"`
		Leg     int64   `json:"leg_id"`
		Level   string  `json:"level"`
		Hours   float64 `json:"line_hours"`
		Strikes int64   `json:"strikes"`
	}](ctx, db, "cells", factor, byLeg)
	if err != nil {
		return e, err
	}
	f := evidence.Factor{Name: factor, ByLeg: byLeg}
	for _, c := range cells {
		f.Cells = append(f.Cells, evidence.Cell{Trip: c.Trip, Leg: c.Leg, Level: c.Level, LineHours: c.Hours, Strikes: c.Strikes})
	}
	for _, r := range e.Rows {
		f.Levels = append(f.Levels, r.Level)
	}
	e.Comparison = evidence.Compare(f)
	for i := range e.Rows {
		e.Rows[i].weigh(e.Comparison, i)
	}
	return e, nil
}

// AskAllEvidence compares the levels of every factor and judges the findings
// beside each other, in the order of Factors.
func AskAllEvidence(ctx context.Context, db *store.DB) ([]Evidence, error) {
	var all []Evidence
	var comparisons []evidence.Comparison
	for _, factor := range Factors() {
		e, err := AskEvidence(ctx, db, factor)
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

// weigh takes the evidence for level i into its row.
func (r *StrikeRate) weigh(c evidence.Comparison, i int) {
	l := c.Levels[i]
	r.Rate, r.RateLo, r.RateHi = finite(l.Rate), finite(l.Interval.Lo), finite(l.Interval.Hi)
	r.ShrunkRate = finite(l.Shrunk)
	r.Widened, r.Dispersion = c.Widened, finite(c.Dispersion.Phi)
	if c.Widened {
		r.Dispersion = finite(l.Phi)
	}
	r.WithoutHours = r.Strikes - l.Count.Events
	r.Trips, r.LittleEffort, r.Note = int64(l.Trips), l.Thin, l.Why
	if l.Told {
		r.Ratio, r.RatioLo, r.RatioHi = finite(l.Ratio.Ratio), finite(l.Ratio.Interval.Lo), finite(l.Ratio.Interval.Hi)
		r.PValue, r.SharedStrata = finite(l.P), int64(l.Ratio.Strata)
	}
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
