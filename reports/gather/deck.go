package gather

import (
	"context"
	"slices"

	"wakeledger/pipeline/estimate"
	"wakeledger/pipeline/factors"
	"wakeledger/pipeline/store"
	"wakeledger/queries"
	"wakeledger/reports"
)

// Deck asks a season file all that the printed page needs. Title and Generated
// are the caller's.
func Deck(ctx context.Context, db *store.DB, units string) (reports.DeckInput, error) {
	in := reports.DeckInput{Units: units}
	var err error
	if in.Species, err = queries.AskSpeciesSeen(ctx, db); err != nil {
		return in, err
	}
	if in.Own, err = own(ctx, db); err != nil {
		return in, err
	}
	if in.Open, err = queries.AskOpen(ctx, db); err != nil {
		return in, err
	}
	if in.Spread, err = queries.AskSpreadPlaces(ctx, db); err != nil {
		return in, err
	}
	if in.Plan, err = queries.AskPlan(ctx, db, 0, reports.DeckTrips); err != nil {
		return in, err
	}
	trips, err := queries.AskTrips(ctx, db)
	if err != nil {
		return in, err
	}
	for _, t := range trips {
		if t.Boat != factors.NotLogged && !slices.Contains(in.Boats, t.Boat) {
			in.Boats = append(in.Boats, t.Boat)
		}
	}
	in.Catalogue, err = estimate.Default()
	return in, err
}
