package queries

import (
	"context"
	"fmt"
	"math"

	"wakeledger/pipeline/store"
)

// trackPlace is where a track is on average, beside what the boat's legs tell.
type trackPlace struct {
	LogID     int64    `json:"log_id"`
	TrackNo   int64    `json:"track_no"`
	LatDeg    float64  `json:"lat_deg"`
	LonDeg    float64  `json:"lon_deg"`
	LegLatDeg *float64 `json:"leg_lat_deg"` // as logged
	LegLonDeg *float64 `json:"leg_lon_deg"`
	ZoneHours *float64 `json:"zone_hours"` // of the legs' zone, ahead of UTC
}

// Degrees within which places are taken to be of one season's grounds, and a zone's
// clock to be of a place's sun: zones are 15 degrees wide by the sun, and by law up to
// three hours off it (IANA time zone database: western China).
const (
	sameGrounds = 8.0
	farGrounds  = 20.0
	zoneReach   = 45.0
)

// changedOver tells whether a track's latitudes and longitudes seem to be changed over:
// changed back, it is where the legs are, or where their zone is, and is not as it stands.
func (p trackPlace) changedOver() bool {
	if math.Abs(p.LonDeg) > 90 {
		return false
	}
	if p.LegLatDeg != nil && p.LegLonDeg != nil {
		as := math.Max(math.Abs(p.LatDeg-*p.LegLatDeg), around(p.LonDeg-*p.LegLonDeg))
		back := math.Max(math.Abs(p.LonDeg-*p.LegLatDeg), around(p.LatDeg-*p.LegLonDeg))
		return as > farGrounds && back < sameGrounds
	}
	if p.ZoneHours != nil {
		return around(p.LonDeg-15**p.ZoneHours) > zoneReach+15 && around(p.LatDeg-15**p.ZoneHours) < zoneReach
	}
	return false
}

// around is the size of a difference of longitudes.
func around(deg float64) float64 { return math.Abs(math.Remainder(deg, 360)) }

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
		if x, y := of[[2]int64{a.LogID, a.TrackNo}], of[used]; x.File == y.File && x.Member == y.Member && x.Fixes == y.Fixes {
			continue // the same track with another clock: clocks.note says so
		}
		notes[[2]int64{a.LogID, a.TrackNo}] = placeNote{beside: used, text: fmt.Sprintf("it is %.1f nmi from %s at the same times, %d min: is one of them another boat's, or a device left ashore, or its clock off? One of the two is used; load the other with its own --boat",
			a.Nmi, names[used], a.Minutes)}
	}
	places, err := ask[trackPlace](ctx, db, "track_places")
	if err != nil {
		return nil, err
	}
	for _, p := range places {
		if p.changedOver() {
			notes[[2]int64{p.LogID, p.TrackNo}] = placeNote{text: "latitude and longitude seem to be changed over in it: as they stand it is far from the boat's legs"}
		}
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
