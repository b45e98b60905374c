package reports

import (
	"context"

	"wakeledger/pipeline/store"
	"wakeledger/queries"
)

// gatherTracks asks what the tracks tell; nothing where no track is loaded.
func gatherTracks(ctx context.Context, db *store.DB) (Tracks, error) {
	var t Tracks
	var err error
	if t.Files, err = queries.AskTracks(ctx, db); err != nil || len(t.Files) == 0 {
		return Tracks{}, err
	}
	if t.Speeds, err = queries.AskTrackSpeed(ctx, db); err != nil {
		return t, err
	}
	if t.Currents, err = queries.AskCurrent(ctx, db); err != nil {
		return t, err
	}
	t.Turning, err = queries.AskStrikeRate(ctx, db, "turning")
	return t, err
}
