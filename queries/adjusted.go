package queries

import (
	"cmp"
	"context"
	"slices"

	"wakeledger/pipeline/store"
	"wakeledger/queries/evidence"
)

// Adjusted is one level's strike rate with the other factors held as they were.
// A factor that did not enter has one row, without a level, and Note says why;
// what holds for the whole fit has a row without a factor.
type Adjusted struct {
	Factor    *string  `json:"factor"`
	Level     *string  `json:"level"`
	LineHours *float64 `json:"line_hours"`
	Strikes   *int64   `json:"strikes"`
	Rate      *float64 `json:"adjusted_rate"`
	RateLo    *float64 `json:"adjusted_lo"` // 95 % interval, robust to clusters by trip
	RateHi    *float64 `json:"adjusted_hi"`
	Ratio     *float64 `json:"adjusted_ratio"` // to the factor's level with the most effort
	RatioLo   *float64 `json:"adjusted_ratio_lo"`
	RatioHi   *float64 `json:"adjusted_ratio_hi"`
	PValue    *float64 `json:"p_value"` // of Ratio, not adjusted for their number
	Note      string   `json:"note"`
}

// adjustOrder is the order in which factors ask to enter the regression: first
// what differs most between stretches of water and days, so that what the crew
// chose is freed of it. Hour of day stands behind light, which says the same in
// fewer levels.
func adjustOrder() []string {
	return []string{"speed-band", "light", "sea-temp", "month", "setback", "lure-weight", "approach", "sea-state",
		"colour", "hooks", "position", "lure", "moon", "boat"}
}

// AskAdjusted answers adjusted: Poisson regression on the factors with enough
// data, by the rule of package evidence.
func AskAdjusted(ctx context.Context, db *store.DB) ([]Adjusted, error) {
	season, err := seasonPieces(ctx, db, adjustOrder())
	if err != nil {
		return nil, err
	}
	a, err := evidence.Adjust(season, LevelText)
	if err != nil {
		return nil, err
	}
	if err := inOrder(ctx, db, &a); err != nil {
		return nil, err
	}
	rows := []Adjusted{}
	for _, l := range a.Levels {
		r := Adjusted{Factor: &l.Factor, Level: &l.Level, LineHours: &l.Count.Effort, Strikes: &l.Count.Events, Note: l.Why,
			Rate: finite(l.Rate), RateLo: finite(l.Interval.Lo), RateHi: finite(l.Interval.Hi)}
		if l.Told {
			r.Ratio, r.RatioLo, r.RatioHi = finite(l.Ratio.Ratio), finite(l.Ratio.Interval.Lo), finite(l.Ratio.Interval.Hi)
			r.PValue = finite(l.Ratio.P)
		}
		if l.Reference {
			r.Note = "the level that the others are compared with"
		}
		rows = append(rows, r)
	}
	for _, l := range a.Left {
		rows = append(rows, Adjusted{Factor: &l.Factor, Note: "did not enter: " + l.Why})
	}
	for _, n := range append(a.Notes, evidence.Confounded(season, LevelText)...) {
		rows = append(rows, Adjusted{Note: n})
	}
	return rows, nil
}

// inOrder puts the levels of each factor in the order of its other answers.
func inOrder(ctx context.Context, db *store.DB, a *evidence.Adjusted) error {
	place := map[[2]string]int{}
	for i, factor := range a.Entered {
		levels, err := AskEffort(ctx, db, factor)
		if err != nil {
			return err
		}
		for j, l := range levels {
			place[[2]string{factor, l.Level}] = j - len(levels)
		}
		place[[2]string{factor}] = i
	}
	slices.SortStableFunc(a.Levels, func(x, y evidence.AdjustedLevel) int {
		return cmp.Or(place[[2]string{x.Factor}]-place[[2]string{y.Factor}],
			place[[2]string{x.Factor, x.Level}]-place[[2]string{y.Factor, y.Level}])
	})
	return nil
}

type piece struct {
	Trip  int64   `json:"trip_id"`
	Leg   int64   `json:"leg_id"`
	Line  int64   `json:"line_id"`
	Level string  `json:"level"`
	Hours float64 `json:"line_hours"`
}

type hit struct {
	Strike int64  `json:"strike_id"`
	Trip   int64  `json:"trip_id"`
	Leg    int64  `json:"leg_id"`
	Level  string `json:"level"`
}

// seasonPieces is every piece of effort and every strike with its levels of all
// the factors. Light splits a leg into several pieces; the other factors give
// each piece of a line one level.
func seasonPieces(ctx context.Context, db *store.DB, factors []string) (evidence.Season, error) {
	s := evidence.Season{Factors: factors}
	split, err := ask[piece](ctx, db, "pieces", "light")
	if err != nil {
		return s, err
	}
	rows := make([]evidence.Row, len(split))
	for i, p := range split {
		rows[i] = evidence.Row{Trip: p.Trip, Levels: make([]string, len(factors)), LineHours: p.Hours}
	}
	var strikes []evidence.Row
	for at, factor := range factors {
		if err := levelsOf(ctx, db, factor, func(level func(leg, line int64) string) {
			for i, p := range split {
				rows[i].Levels[at] = p.Level
				if factor != "light" {
					rows[i].Levels[at] = level(p.Leg, p.Line)
				}
			}
		}); err != nil {
			return s, err
		}
		hits, err := ask[hit](ctx, db, "hits", factor)
		if err != nil {
			return s, err
		}
		if strikes == nil {
			strikes = make([]evidence.Row, len(hits))
		}
		for i, h := range hits {
			if at == 0 {
				strikes[i] = evidence.Row{Trip: h.Trip, Levels: make([]string, len(factors)), Strikes: 1}
			}
			strikes[i].Levels[at] = h.Level
		}
	}
	s.Rows = append(rows, strikes...)
	return s, nil
}

// levelsOf gives use the level of each line's effort by a factor that does not
// split it.
func levelsOf(ctx context.Context, db *store.DB, factor string, use func(func(leg, line int64) string)) error {
	pieces, err := ask[piece](ctx, db, "pieces", factor)
	if err != nil {
		return err
	}
	level := make(map[[2]int64]string, len(pieces))
	for _, p := range pieces {
		level[[2]int64{p.Leg, p.Line}] = p.Level
	}
	use(func(leg, line int64) string { return level[[2]int64{leg, line}] })
	return nil
}
