package gather

import (
	"context"

	"wakeledger/pipeline/factors"
	"wakeledger/pipeline/store"
	"wakeledger/queries"
	"wakeledger/reports"
	"wakeledger/reports/page"
)

// tracks asks what the tracks tell beside what worked; nothing where no track is loaded.
func tracks(ctx context.Context, db *store.DB, w reports.Worked) (reports.Tracks, error) {
	var t reports.Tracks
	var err error
	if t.Files, err = queries.AskTracks(ctx, db); err != nil || len(t.Files) == 0 {
		return reports.Tracks{}, err
	}
	if t.Speeds, err = queries.AskTrackSpeed(ctx, db); err != nil {
		return t, err
	}
	if t.Currents, err = queries.AskCurrent(ctx, db); err != nil {
		return t, err
	}
	t.Turning = w.Rates("turning")
	return t, nil
}

// mostPoints are as many as a page draws without delay.
const mostPoints = 4000

// Track asks a season file all that the page of the track needs; minutes of
// arc are the side of the cells that it counts by.
func Track(ctx context.Context, db *store.DB, minutes float64) (reports.TrackInput, error) {
	in := reports.TrackInput{Minutes: minutes}
	var err error
	if in.Points, err = queries.AskTrackPath(ctx, db, mostPoints); err != nil {
		return in, err
	}
	if in.Speeds, err = queries.AskTrackHours(ctx, db); err != nil {
		return in, err
	}
	if in.Cells, err = queries.AskArea(ctx, db, minutes); err != nil {
		return in, err
	}
	if in.Edges, err = trackEdges(ctx, db); err != nil {
		return in, err
	}
	in.Open, err = queries.AskOpen(ctx, db)
	return in, err
}

// trackEdges are the lower ends of the season's classes of speed: as many as the drawing has marks
// for, so that the fastest may stand together.
func trackEdges(ctx context.Context, db *store.DB) ([]float64, error) {
	bands, err := db.Bands(ctx)
	var edges []float64
	for _, b := range bands {
		if b.Factor == factors.Speed && len(edges) < page.TrackMarks {
			edges = append(edges, b.Lo)
		}
	}
	return edges, err
}
