package queries

import (
	"context"
	"fmt"
	"math"
	"strings"

	"wakeledger/pipeline/store"
)

// TrackSpeed is a trip's speed as logged beside that of its track. The means are
// over the time that the track covers, of legs whose speed is logged; a leg's own
// speed is its median.
type TrackSpeed struct {
	Trip            string   `json:"trip"`
	Boat            string   `json:"boat"`
	Date            *string  `json:"date"`
	Legs            int64    `json:"legs"`
	LegsWithTrack   int64    `json:"legs_with_track"`
	MeasuredHours   float64  `json:"measured_hours"`   // boat-hours that the track covers
	RememberedHours float64  `json:"remembered_hours"` // the rest, at the speed logged
	UnknownHours    float64  `json:"unknown_hours"`    // neither
	LoggedKn        *float64 `json:"logged_kn"`
	RanKn           *float64 `json:"ran_kn"`
	DifferenceKn    *float64 `json:"difference_kn"` // ran less logged
	DistanceNmi     *float64 `json:"distance_nmi"`  // run over ground, of the measured hours
	TurnDegMin      *float64 `json:"turn_deg_min"`  // mean change of course, either way
	Note            string   `json:"note"`
	StoppedHours    float64  `json:"stopped_hours"`   // of the measured hours, below 1 kn
	ClocklessHours  float64  `json:"clockless_hours"` // of legs without times, on a day with a track
}

// differs is from where a logged speed is said to differ from the track's.
const differs = 0.5

// AskTrackSpeed lists the trips with their speeds as logged and as run.
func AskTrackSpeed(ctx context.Context, db *store.DB) ([]TrackSpeed, error) {
	rows, err := ask[TrackSpeed](ctx, db, "track_speed")
	for i := range rows {
		rows[i].compare()
	}
	return rows, err
}

// compare sets the difference of the speeds, and says what is to be said of the trip.
func (r *TrackSpeed) compare() {
	var notes []string
	switch {
	case r.ClocklessHours > 0:
		notes = append(notes, fmt.Sprintf("%.1f h of its legs have no clock times: the day's track cannot be used "+
			"for them", r.ClocklessHours))
	case r.LegsWithTrack == 0:
		notes = append(notes, "no track")
	case r.LoggedKn == nil || r.RanKn == nil:
		notes = append(notes, "no speed logged")
	}
	if r.LegsWithTrack > 0 && r.LoggedKn != nil && r.RanKn != nil {
		d := math.Round(10*(*r.RanKn-*r.LoggedKn)) / 10
		if d == 0 {
			d = 0 // and not -0
		}
		r.DifferenceKn = &d
		if math.Abs(d) >= differs {
			notes = append(notes, fmt.Sprintf("logged %.1f, ran %.1f", *r.LoggedKn, *r.RanKn))
		}
	}
	if r.StoppedHours >= StoppedHours {
		notes = append(notes,
			fmt.Sprintf("stopped, below 1 kn, for %.1f h of its legs: counted as effort at that speed", r.StoppedHours))
	}
	r.Note = strings.Join(notes, "; ")
}

// StoppedHours inside a trip's legs are said.
const StoppedHours = 1.0 / 6

// Degrees is a latitude or longitude, north and east positive. It is shown with
// all its digits: the third is a mile.
type Degrees float64

// Area is the effort and strikes in one cell of the sea, named by its south-west
// corner.
type Area struct {
	LatDeg      Degrees `json:"lat_deg"`
	LonDeg      Degrees `json:"lon_deg"`
	Trips       int64   `json:"trips"`
	BoatHours   float64 `json:"boat_hours"`
	LineHours   float64 `json:"line_hours"`
	DistanceNmi float64 `json:"distance_nmi"`
	Strikes     int64   `json:"strikes"`
}

// AreaMinutes is the side of a cell, in minutes of arc.
const AreaMinutes = 10

// AskArea answers where the legs with a track were run, by cells of a number of
// minutes of arc. It is for the boat alone: nothing that is shared takes it up.
func AskArea(ctx context.Context, db *store.DB, minutes float64) ([]Area, error) {
	return ask[Area](ctx, db, "area", minutes)
}

// StrikeSpeed is a strike on a leg with a track.
type StrikeSpeed struct {
	Trip        *string  `json:"trip"`
	Boat        *string  `json:"boat"`
	At          *string  `json:"at"` // the boat's clock
	Outcome     string   `json:"outcome"`
	Species     *string  `json:"species"`
	LoggedKn    *float64 `json:"logged_kn"`
	RanKn       *float64 `json:"ran_kn"`        // median of the minute before; where Seconds is 0, the leg's
	PlusMinusKn *float64 `json:"plus_minus_kn"` // 95 %, of the track's own error
	Turning     *string  `json:"turning"`
	Seconds     int64    `json:"seconds"` // of track that ran_kn is the median of
	File        string   `json:"file"`
	Sheet       string   `json:"sheet"`
	Row         int64    `json:"row"`
}

// AskStrikeSpeed lists the strikes on legs with a track and the speed before each.
func AskStrikeSpeed(ctx context.Context, db *store.DB) ([]StrikeSpeed, error) {
	return ask[StrikeSpeed](ctx, db, "strike_speed")
}

// TrackPoint is a place of the legs' tracks, or of a strike on one.
type TrackPoint struct {
	LatDeg  float64 `json:"lat_deg"`
	LonDeg  float64 `json:"lon_deg"`
	SpeedKn float64 `json:"speed_kn"`
	Strike  bool    `json:"strike"`
	N       int64   `json:"n"`
}

// AskTrackPath lists about most points of the legs' tracks, evenly thinned, and
// the strikes on them. It is for the boat alone: nothing that is shared takes it
// up.
func AskTrackPath(ctx context.Context, db *store.DB, most int64) ([]TrackPoint, error) {
	return ask[TrackPoint](ctx, db, "track_path", most)
}

// TrackHours is the time of the legs' tracks at a speed.
type TrackHours struct {
	SpeedKn     float64 `json:"speed_kn"` // to a tenth
	Hours       float64 `json:"hours"`
	DistanceNmi float64 `json:"distance_nmi"`
}

// AskTrackHours lists the time of the legs' tracks by speed, slowest first.
func AskTrackHours(ctx context.Context, db *store.DB) ([]TrackHours, error) {
	return ask[TrackHours](ctx, db, "track_hours")
}
