package queries

import (
	"context"

	"wakeledger/pipeline/store"
)

// TripCell is the effort of one trip, leg and line at one level of a factor, and the strikes that
// belong to it.
type TripCell struct {
	Factor  string  `json:"factor"`
	Trip    int64   `json:"trip_id"`
	Leg     int64   `json:"leg_id"`
	Line    int64   `json:"line_id"`
	Level   string  `json:"level"`
	Hours   float64 `json:"line_hours"`
	Strikes int64   `json:"strikes"`
}

// SeasonTrips is a season trip by trip, for comparing it with another.
type SeasonTrips struct {
	Trips []ClubPiece // Level is the trip's month, YYYY-MM
	Cells []TripCell  // by speed band
	Bands []string    // the speed bands in their order
}

// AskSeasonTrips lists the trips of all boats and their effort by speed band.
func AskSeasonTrips(ctx context.Context, db *store.DB) (SeasonTrips, error) {
	var s SeasonTrips
	var err error
	if s.Trips, err = ask[ClubPiece](ctx, db, "season_trips"); err != nil {
		return s, err
	}
	if s.Cells, err = ask[TripCell](ctx, db, "cells", bySpeed); err != nil {
		return s, err
	}
	rows, err := strikeRates(ctx, db, bySpeed)
	for _, r := range rows[bySpeed] {
		s.Bands = append(s.Bands, r.Level)
	}
	return s, err
}

// Years are the years of the trips, each once, the latest last.
func (s SeasonTrips) Years() []string {
	var years []string
	for _, t := range s.Trips { // in the order of their months
		if y := t.Level[:4]; t.Level != "not logged" && (len(years) == 0 || years[len(years)-1] != y) {
			years = append(years, y)
		}
	}
	return years
}
