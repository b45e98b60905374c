package queries

import (
	"context"
	"math"

	"wakeledger/pipeline/store"
	"wakeledger/queries/stats"
)

const confidence = 0.95

// AskEffort answers effort by a factor.
func AskEffort(ctx context.Context, db *store.DB, factor string) ([]Effort, error) {
	return ask[Effort](ctx, db, "effort", factor)
}

// AskStrikeRate answers strike-rate by a factor: each level's rate with its
// interval, its rate for ranking, and its same-trip ratio to the level with the
// most effort. See Evidence.
func AskStrikeRate(ctx context.Context, db *store.DB, factor string) ([]StrikeRate, error) {
	e, err := AskEvidence(ctx, db, factor)
	return e.Rows, err
}

// AskOutcomes answers outcomes by a factor, with the Wilson interval of each
// share. A strike of which an outcome is not logged is in neither part of it.
func AskOutcomes(ctx context.Context, db *store.DB, factor string) ([]Outcomes, error) {
	rows, err := ask[Outcomes](ctx, db, "outcomes", factor)
	for i := range rows {
		r := &rows[i]
		if share, iv, ok := stats.Wilson(r.Hookups, r.Strikes-r.HookingNotLogged, confidence); ok {
			r.HookupShare, r.HookupLo, r.HookupHi = &share, &iv.Lo, &iv.Hi
		}
		if share, iv, ok := stats.Wilson(r.Boated, r.Strikes-r.NotLogged, confidence); ok {
			r.BoatedShare, r.BoatedLo, r.BoatedHi = &share, &iv.Lo, &iv.Hi
		}
	}
	return rows, err
}

// AskFish lists the fish, each with what is doubtful of its measures.
func AskFish(ctx context.Context, db *store.DB) ([]Fish, error) {
	fish, err := ask[Fish](ctx, db, "fish")
	if err != nil {
		return nil, err
	}
	doubts, err := doubtedFish(ctx, db)
	for i, f := range fish {
		if d, ok := doubts[place{f.File, f.Sheet, f.Row}]; ok {
			fish[i].Doubt = &d.Reason
		}
	}
	return fish, err
}

// AskSizes answers sizes by a factor in weight classes of width kg; 0 takes a
// width that suits the heaviest fish.
func AskSizes(ctx context.Context, db *store.DB, factor string, width float64) ([]Sizes, error) {
	if width <= 0 {
		var err error
		if width, err = RoundClass(ctx, db, 1); err != nil {
			return nil, err
		}
	}
	return ask[Sizes](ctx, db, "sizes", factor, width)
}

// RoundClass is a width of weight classes in kg that suits the heaviest fish and is round in
// a unit of so many kg.
func RoundClass(ctx context.Context, db *store.DB, kgPerUnit float64) (float64, error) {
	top, err := ask[struct {
		KG float64 `json:"heaviest_kg"`
	}](ctx, db, "heaviest")
	if err != nil {
		return 0, err
	}
	return kgPerUnit * ClassWidth(top[0].KG/kgPerUnit), nil
}

// ClassWidth is a round width that puts weights up to top into some ten classes.
func ClassWidth(top float64) float64 {
	if top <= 0 {
		return 1
	}
	step := math.Pow(10, math.Floor(math.Log10(top/10)))
	for _, m := range []float64{1, 2, 5} {
		if top/(m*step) <= 12 {
			return m * step
		}
	}
	return 10 * step
}

// AskTrips lists the trips, each with what is doubtful of its heaviest fish.
func AskTrips(ctx context.Context, db *store.DB) ([]Trip, error) {
	trips, err := ask[Trip](ctx, db, "trips")
	if err != nil {
		return nil, err
	}
	fish, err := AskFish(ctx, db)
	for i, t := range trips {
		for _, f := range fish {
			if f.Doubt != nil && f.Trip != nil && *f.Trip == t.Trip && f.Boat != nil && *f.Boat == t.Boat &&
				f.WeightKG != nil && t.HeaviestKG != nil && *f.WeightKG == *t.HeaviestKG {
				trips[i].HeaviestDoubt = f.Doubt
			}
		}
	}
	return trips, err
}

// AskSetAside lists the rows that could not be used.
func AskSetAside(ctx context.Context, db *store.DB) ([]SetAside, error) {
	return ask[SetAside](ctx, db, "set_aside")
}

// AskUnsettled lists the names of fish, as logged, that no species stands for.
func AskUnsettled(ctx context.Context, db *store.DB) ([]Unsettled, error) {
	return ask[Unsettled](ctx, db, "unsettled")
}
