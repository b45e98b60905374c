package queries

import (
	"context"
	"maps"
	"math"
	"slices"
	"strings"

	"wakeledger/pipeline/factors"
	"wakeledger/pipeline/store"
	"wakeledger/queries/evidence"
)

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
	rows, err := strikeRates(ctx, db, factor)
	if err != nil {
		return Evidence{}, err
	}
	return weighed(rows[factor], all, slices.Index(factors.Names(), factor), evidence.Compare), nil
}

// AskAllEvidence compares the levels of every factor and judges the findings
// beside each other, in the order of Factors.
func AskAllEvidence(ctx context.Context, db *store.DB) ([]Evidence, error) {
	return allEvidence(ctx, db, func(string) compare { return evidence.Compare })
}

// compare weighs a factor beside the others: evidence.Compare, or evidence.Test where nobody asks
// for the intervals.
type compare func(f evidence.Factor, rest []evidence.Factor) evidence.Comparison

func tested(string) compare { return evidence.Test }

func allEvidence(ctx context.Context, db *store.DB, by func(factor string) compare) ([]Evidence, error) {
	factors, err := seasonFactors(ctx, db)
	if err != nil {
		return nil, err
	}
	groups, err := atOnce(ctx, db)
	if err != nil {
		return nil, err
	}
	rows := map[string][]StrikeRate{}
	for _, g := range groups {
		of, err := strikeRates(ctx, db, g...)
		if err != nil {
			return nil, err
		}
		maps.Copy(rows, of)
	}
	var all []Evidence
	var comparisons []evidence.Comparison
	for i, f := range factors {
		e := weighed(rows[f.Name], factors, i, by(f.Name))
		all, comparisons = append(all, e), append(comparisons, e.Comparison)
	}
	for i, f := range evidence.Find(comparisons) {
		all[i].Finding = f
	}
	return all, nil
}

// weighed is the evidence on factor i of all, of which the levels have these rows.
func weighed(rows []StrikeRate, all []evidence.Factor, i int, by compare) Evidence {
	f := all[i]
	e := Evidence{Factor: f.Name, Rows: rows}
	f.Levels = nil
	for _, r := range e.Rows {
		f.Levels = append(f.Levels, r.Level)
	}
	e.Comparison = by(f, all)
	for i := range e.Rows {
		e.Rows[i].weigh(e.Comparison, i)
	}
	return e
}

// strikeRates are the rows of strike-rate by each of some factors, before they are weighed.
func strikeRates(ctx context.Context, db *store.DB, factors ...string) (map[string][]StrikeRate, error) {
	counts, err := ask[struct {
		Factor    string  `json:"factor"`
		Level     string  `json:"level"`
		LineHours float64 `json:"line_hours"`
		Strikes   int64   `json:"strikes"`
		Hookups   int64   `json:"hookups"`
		Landed    int64   `json:"landed"`
		Released  int64   `json:"released"`
	}](ctx, db, "strike_rate", strings.Join(factors, ","))
	rows := map[string][]StrikeRate{}
	for _, f := range factors {
		rows[f] = []StrikeRate{}
	}
	for _, c := range counts {
		rows[c.Factor] = append(rows[c.Factor], StrikeRate{Level: c.Level, LineHours: c.LineHours, Strikes: c.Strikes,
			Hookups: c.Hookups, Landed: c.Landed, Released: c.Released})
	}
	return rows, err
}

// manyPieces of effort are asked about by one factor at a time: each factor has them all
// once more. Of fewer, what takes time is to plan a question, not to answer it.
const manyPieces = 50_000

// atOnce are the factors in groups that are asked about together.
func atOnce(ctx context.Context, db *store.DB) ([][]string, error) {
	n, err := ask[struct {
		Pieces int64 `json:"pieces"`
	}](ctx, db, "pieces")
	if err != nil {
		return nil, err
	}
	if n[0].Pieces > manyPieces {
		return slices.Collect(slices.Chunk(factors.Names(), 1)), nil
	}
	return [][]string{factors.Names()}, nil
}

// seasonFactors is the season's effort and strikes by every factor.
func seasonFactors(ctx context.Context, db *store.DB) ([]evidence.Factor, error) {
	var all []evidence.Factor
	for _, f := range factors.All() {
		of := evidence.Factor{Name: f.Name, ByLeg: f.ByLine}
		if f.Ordered {
			of.Score = map[string]float64{}
		}
		all = append(all, of)
	}
	groups, err := atOnce(ctx, db)
	if err != nil {
		return nil, err
	}
	for _, g := range groups {
		cells, err := ask[TripCell](ctx, db, "cells", strings.Join(g, ","))
		if err != nil {
			return nil, err
		}
		var f *evidence.Factor
		for _, c := range cells {
			if f == nil || f.Name != c.Factor {
				f = &all[slices.Index(factors.Names(), c.Factor)]
			}
			f.Cells = append(f.Cells, evidence.Cell{Trip: c.Trip, Leg: c.Leg, Line: c.Line, Level: c.Level,
				LineHours: c.Hours, Strikes: c.Strikes})
			if slices.Contains(f.Levels, c.Level) {
				continue
			}
			f.Levels = append(f.Levels, c.Level)
			if s, ok := factors.Score(f.Name, c.Level); ok {
				f.Score[c.Level] = s
			}
		}
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
