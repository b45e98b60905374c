package store

import (
	"context"
	"database/sql"
)

// Measured is one fish with what its weight can be estimated from. Zero and ""
// are not logged.
type Measured struct {
	ID                         int64
	Species, Kind, State       string
	Area                       string // of the leg, as logged
	LengthCM, GirthCM, ScaleKG float64
	Certified                  bool
}

// MeasuredFish lists the season's fish.
func (db *DB) MeasuredFish(ctx context.Context) ([]Measured, error) {
	rows, err := db.Query(ctx, statement("fish"))
	if err != nil {
		return nil, err
	}
	var fish []Measured
	err = each(rows, func() error {
		var m Measured
		var species, kind, state, area sql.NullString
		var length, girth, scale sql.NullFloat64
		var certified sql.NullBool
		if err := rows.Scan(&m.ID, &species, &length, &kind, &girth, &scale, &state, &certified, &area); err != nil {
			return err
		}
		m.Species, m.Kind, m.State, m.Area = species.String, kind.String, state.String, area.String
		m.LengthCM, m.GirthCM, m.ScaleKG = length.Float64, girth.Float64, scale.Float64
		m.Certified = certified.Bool
		fish = append(fish, m)
		return nil
	})
	return fish, err
}

// Weight is one estimate of one fish's weight, as kept.
type Weight struct {
	FishID           int64
	Rank             int // 1 is the best
	Method           string
	KG               float64
	LoKG, HiKG       *float64 // nil: no interval is known
	Relation, Source string
	Notes            string
}

// PutWeights replaces all estimates.
func (db *DB) PutWeights(ctx context.Context, weights []Weight) error {
	rows := make([][]any, len(weights))
	for i, w := range weights {
		rows[i] = []any{w.FishID, w.Rank, w.Method, w.KG, pointed(w.LoKG), pointed(w.HiKG),
			nullable(w.Relation), w.Source, nullable(w.Notes)}
	}
	return db.refill(ctx, "estimate", rows)
}

func pointed(v *float64) any {
	if v == nil {
		return nil
	}
	return *v
}

// PutReference replaces the rows of a reference table, species or relation;
// the values are in the order of the table's columns.
func (db *DB) PutReference(ctx context.Context, table string, rows [][]any) error {
	return db.refill(ctx, table, rows)
}
