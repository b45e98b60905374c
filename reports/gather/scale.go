package gather

import (
	"context"
	"slices"

	"wakeledger/pipeline/factors"
	"wakeledger/pipeline/store"
	"wakeledger/queries"
	"wakeledger/reports"
)

// Scale asks a season file all that the report of the tape against the scale
// needs. Title and Generated are the caller's.
func Scale(ctx context.Context, db *store.DB, units string) (reports.ScaleInput, error) {
	in := reports.ScaleInput{Units: units}
	var err error
	if in.Fish, err = queries.AskScaleFish(ctx, db); err != nil {
		return in, err
	}
	if in.Logs, err = logs(ctx, db); err != nil {
		return in, err
	}
	in.Checks = queries.CheckScale(in.Fish)
	if in.Own, err = own(ctx, db); err != nil {
		return in, err
	}
	if in.Open, err = queries.AskOpen(ctx, db); err != nil {
		return in, err
	}
	for _, f := range in.Fish {
		if b := f.Boat; b != nil && *b != "" && *b != factors.NotLogged && !slices.Contains(in.Boats, *b) {
			in.Boats = append(in.Boats, *b)
		}
	}
	return in, nil
}
