package store

import (
	"context"
	"fmt"
)

// Part is which part of a season is asked about; what is "" asks for no part.
type Part struct {
	Boat         string
	Since, Until string // days, YYYY-MM-DD, both included
	Species      string // FAO code
}

// Left is what Narrow leaves.
type Left struct {
	Trips   int64
	Undated int64 // trips without a date, which Since and Until leave out
	Unnamed int64 // strikes of no named species, which Species leaves out
}

// Narrow has all that is asked from now on answered by a part of the season: trips of the
// boat and the days, with their legs, lines, strikes and fish; of these those of the
// species. Effort stays that of all those trips. It is for a season file that OpenRead
// opened: the views that it puts before the tables are in memory.
func (db *DB) Narrow(ctx context.Context, p Part) (left Left, err error) {
	for _, step := range []struct {
		name string
		args []any
	}{
		{"narrow_tables", nil}, {"narrow_trips", []any{p.Boat, p.Since, p.Until}},
		{"narrow_strikes", []any{p.Boat, p.Since, p.Until, p.Species}}, {"narrow_fish", []any{p.Species}},
	} {
		if err := db.exec(ctx, step.name, step.args...); err != nil {
			return left, fmt.Errorf("a part of the season: %w", err)
		}
	}
	row := db.conn.QueryRowContext(ctx, statement("narrow_left"), p.Boat)
	if err := row.Scan(&left.Trips, &left.Undated, &left.Unnamed); err != nil {
		return left, fmt.Errorf("a part of the season: %w", err)
	}
	if err := db.exec(ctx, "narrow_views"); err != nil {
		return left, fmt.Errorf("a part of the season: %w", err)
	}
	return left, nil
}
