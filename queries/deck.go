package queries

import (
	"context"

	"wakeledger/pipeline/store"
)

// SpeciesSeen is a species of the season: how many fish and how large.
type SpeciesSeen struct {
	Species      string   `json:"species"`
	Name         string   `json:"name"`
	Fish         int64    `json:"fish"`
	ShortestCM   *float64 `json:"shortest_cm"`
	LongestCM    *float64 `json:"longest_cm"`
	LeastGirthCM *float64 `json:"least_girth_cm"`
	MostGirthCM  *float64 `json:"most_girth_cm"`
	Relation     *string  `json:"relation"` // that weighed most of them by length; nil for none
}

// SpreadPlace is one place of the spread as the boat fished it.
type SpreadPlace struct {
	Position string  `json:"position"`
	SetbackM float64 `json:"setback_m"` // the middle one
	Legs     int64   `json:"legs"`      // that it rests on
}

// AskSpreadPlaces lists the places of the spread that have a setback on 3 legs or more, the
// nearest first.
func AskSpreadPlaces(ctx context.Context, db *store.DB) ([]SpreadPlace, error) {
	return ask[SpreadPlace](ctx, db, "deck_spread")
}

// AskSpeciesSeen lists the species of the season, most fish first.
func AskSpeciesSeen(ctx context.Context, db *store.DB) ([]SpeciesSeen, error) {
	return ask[SpeciesSeen](ctx, db, "deck_species")
}
