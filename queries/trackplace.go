package queries

import (
	"context"
	"fmt"

	"wakeledger/pipeline/store"
)

// trackApart is two tracks of one boat that are elsewhere at the same time.
type trackApart struct {
	LogID       int64   `json:"log_id"`
	TrackNo     int64   `json:"track_no"`
	UsedLogID   int64   `json:"used_log_id"`
	UsedTrackNo int64   `json:"used_track_no"`
	Minutes     int64   `json:"minutes"`
	Nmi         float64 `json:"nmi"`
}

// placeNote says what is wrong with where a track is; beside is the track that it is
// apart from, none where that is 0.
type placeNote struct {
	text   string
	beside [2]int64
}

// placeNotes say what is wrong with where the tracks are, by log and track.
func placeNotes(ctx context.Context, db *store.DB, tracks []Track) (map[[2]int64]placeNote, error) {
	notes, names := map[[2]int64]placeNote{}, map[[2]int64]string{}
	of := map[[2]int64]Track{}
	for _, t := range tracks {
		names[[2]int64{t.LogID, t.TrackNo}], of[[2]int64{t.LogID, t.TrackNo}] = t.name(), t
	}
	apart, err := ask[trackApart](ctx, db, "track_apart")
	if err != nil {
		return nil, err
	}
	for _, a := range apart {
		used := [2]int64{a.UsedLogID, a.UsedTrackNo}
		if x, y := of[[2]int64{a.LogID, a.TrackNo}], of[used]; x.File == y.File &&
			x.Member == y.Member && x.Fixes == y.Fixes {
			continue // the same track with another clock: clocks.note says so
		}
		notes[[2]int64{a.LogID, a.TrackNo}] = placeNote{beside: used,
			text: fmt.Sprintf("it is %.1f nmi from %s at the same times, %d min: is one of them another boat's, or "+
				"a device left ashore, or its clock off? One of the two is used; load the other with its own --boat",
				a.Nmi, names[used], a.Minutes)}
	}
	return notes, nil
}

// name is the track's file, and its file in a zip.
func (t *Track) name() string {
	if t.Member != "" {
		return t.File + " " + t.Member
	}
	return t.File
}
