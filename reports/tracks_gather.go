package reports

import (
	"context"

	"wakeledger/pipeline/store"
	"wakeledger/queries"
)

// gatherTracks asks what the tracks tell beside what worked; nothing where no track is loaded.
func gatherTracks(ctx context.Context, db *store.DB, w Worked) (Tracks, error) {
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
	t.Turning = w.rates("turning")
	return t, nil
}
