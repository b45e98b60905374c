package queries

import (
	"context"
	"fmt"
	"strings"

	"wakeledger/pipeline/factors"
	"wakeledger/pipeline/store"
)

// ClubPiece is one day of one trip's part of one level. It is for package reports to add
// up; it must not leave the boat as it is.
type ClubPiece struct {
	Trip      int64   `json:"trip_id"`
	Start     string  `json:"start"` // YYYY-MM-DD, the trip's first day; "" where not known
	Day       string  `json:"day"`   // YYYY-MM-DD; "" where not known
	Level     string  `json:"level"`
	BoatHours float64 `json:"boat_hours"` // 0 by speed and lure
	LineHours float64 `json:"line_hours"`
	Strikes   int64   `json:"strikes"`
	OnHours   int64   `json:"strikes_on_hours"`
	Hookups   int64   `json:"hookups"`
	Landed    int64   `json:"landed"`
	Released  int64   `json:"released"`
}

// ClubFish is one fish.
type ClubFish struct {
	Trip       int64    `json:"trip_id"`
	Start      string   `json:"start"`   // as in ClubPiece
	Day        string   `json:"day"`     // as in ClubPiece
	Species    string   `json:"species"` // FAO ASFIS code, other or not logged: never a log's own word
	Month      string   `json:"month"`   // YYYY-MM or not logged
	WeightKG   *float64 `json:"weight_kg"`
	WeightLoKG *float64 `json:"weight_lo_kg"`
	WeightHiKG *float64 `json:"weight_hi_kg"`
	Method     *string  `json:"method"`
	Landed     bool     `json:"landed"`
	Released   bool     `json:"released"`
	File       string   `json:"file"` // with sheet and row: where the log tells of it
	Sheet      string   `json:"sheet"`
	Row        int64    `json:"row"`
	Doubt      string   `json:"doubt"` // the check that doubts its measures; "" for none
}

// ClubName is a name of the boat or of someone aboard.
type ClubName struct {
	Role string `json:"role"` // boat, captain or crew
	Name string `json:"name"`
}

// Club is one boat's season, trip by trip and day by day.
type Club struct {
	Months, Speeds, Lures []ClubPiece
	Fish                  []ClubFish
	Names                 []ClubName
}

// AskClub gathers what the club's summary of a boat is made of. Classes have the
// same edges for every boat, whatever the season file's.
func AskClub(ctx context.Context, db *store.DB, boat string) (Club, error) {
	var c Club
	var err error
	if c.Months, err = ask[ClubPiece](ctx, db, "club_days", boat); err != nil {
		return c, err
	}
	if c.Speeds, err = ask[ClubPiece](ctx, db, "club_levels", bySpeed, boat); err != nil {
		return c, err
	}
	if c.Lures, err = ask[ClubPiece](ctx, db, "club_levels", byLure, boat); err != nil {
		return c, err
	}
	if c.Fish, err = ask[ClubFish](ctx, db, "club_fish", boat); err != nil {
		return c, err
	}
	doubts, err := doubtedFish(ctx, db)
	if err != nil {
		return c, err
	}
	for i, f := range c.Fish {
		c.Fish[i].Doubt = doubts[place{f.File, f.Sheet, f.Row}].Check
	}
	c.Names, err = ask[ClubName](ctx, db, "club_people", boat)
	return c, err
}

const bySpeed, byLure = factors.Speed, factors.LureWeight

// clubBands puts the club's classes in the place of the season file's.
func clubBands(levels string) (string, error) {
	bands, err := files.ReadFile("sql/_club_bands.sql")
	var edges []string
	for _, f := range factors.All() {
		for i, lo := range f.Club.Edges {
			edges = append(edges, fmt.Sprintf("('%s', %d, %s)", f.Name, i, factors.Number(lo)))
		}
	}
	own := strings.Replace(string(bands), "EDGES", strings.Join(edges, ", "), 1)
	return strings.Replace(levels, "WITH ", own+" ", 1), err
}
