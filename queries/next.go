package queries

import (
	"context"
	"slices"

	"wakeledger/pipeline/factors"
	"wakeledger/pipeline/store"
	"wakeledger/queries/evidence"
)

// NextSeason is one open question and the trips that would settle it, both
// settings fished on each of them.
type NextSeason struct {
	Factor     string   `json:"factor"`
	SettingA   string   `json:"setting_a"` // the level with the most effort so far
	SettingB   string   `json:"setting_b"` // of the others, the one that ranks best
	Ratio      float64  `json:"ratio"`     // of the two rates, to be called settled with 80 % chance
	Rate       float64  `json:"rate"`      // the season's strikes per line-hour
	Trips      *int64   `json:"trips"`     // at the season's line-hours a trip; nil where 120 are too few
	Hours      *float64 `json:"line_hours_each"`
	StrikesA   *float64 `json:"strikes_a"` // expected in Hours
	StrikesB   *float64 `json:"strikes_b"`
	Dispersion float64  `json:"dispersion"`
	HadA       float64  `json:"line_hours_a"` // so far
	HadB       float64  `json:"line_hours_b"`
	Leaning    bool     `json:"leaning"`      // the season leans to setting_a over setting_b
	SideBySide bool     `json:"side_by_side"` // both settings can be out together, on different lines
	PairedDay  string   `json:"paired_day"`
}

// PlanDay is one trip of a plan for next season.
type PlanDay struct {
	Trip       int64    `json:"trip"`
	FirstHalf  string   `json:"first_half"` // the whole boat's setting
	SecondHalf string   `json:"second_half"`
	Port       string   `json:"port"` // lines to port in the first half; sides change over at half time
	Starboard  string   `json:"starboard"`
	BoatChance *float64 `json:"boat_chance"` // to tell the ratio for the boat's setting after this trip
	LineChance *float64 `json:"line_chance"` // and for the lines'
}

// AskNextSeason answers next-season: for each open question on what the crew can
// choose the trips after which the given ratio of rates is called settled, the
// fewest first. A ratio of 0 takes evidence.DefaultRatio.
func AskNextSeason(ctx context.Context, db *store.DB, ratio float64) ([]NextSeason, error) {
	all, err := allEvidence(ctx, db, tested)
	if err != nil {
		return nil, err
	}
	rows, _ := Outlook(all, ratio, 1)
	return rows, nil
}

func openQuestions(all []Evidence, ratio float64) []evidence.Question {
	if ratio == 0 {
		ratio = evidence.DefaultRatio
	}
	var open []evidence.Question
	for _, e := range all {
		if q, ok := evidence.Next(e.Comparison, e.Finding, ratio); ok {
			open = append(open, q)
		}
	}
	slices.SortStableFunc(open, func(a, b evidence.Question) int { return a.Needs() - b.Needs() })
	return open
}

func nextSeason(q evidence.Question) NextSeason {
	text := func(level string) string { return factors.Text(q.Factor, level) }
	r := NextSeason{Factor: q.Factor, SettingA: q.A, SettingB: q.B, Ratio: q.Ratio, Rate: q.Rate, Dispersion: q.Phi,
		HadA: q.Had[0], HadB: q.Had[1], Leaning: q.Leaning, SideBySide: q.ByLeg, PairedDay: q.PairedDay(text)}
	if q.Trips > 0 {
		trips := int64(q.Trips)
		r.Trips, r.Hours, r.StrikesA, r.StrikesB = &trips, &q.Hours, &q.Strikes[0], &q.Strikes[1]
	}
	return r
}

// AskPlan answers plan: what to fish on each of a number of trips. Trips of 0
// takes DefaultPlanTrips.
func AskPlan(ctx context.Context, db *store.DB, ratio float64, trips int) ([]PlanDay, error) {
	all, err := allEvidence(ctx, db, tested)
	if err != nil {
		return nil, err
	}
	_, plan := Outlook(all, ratio, trips)
	return plan, nil
}

// DefaultPlanTrips is how many trips a plan is for where the user names no number.
const DefaultPlanTrips = 10

func planOf(open []evidence.Question, trips int) []PlanDay {
	if trips == 0 {
		trips = DefaultPlanTrips
	}
	rows := []PlanDay{}
	for _, d := range evidence.Plan(open, trips, factors.Text) {
		rows = append(rows, PlanDay{Trip: int64(d.Trip), FirstHalf: d.First, SecondHalf: d.Second,
			Port: d.Port, Starboard: d.Starb,
			BoatChance: finite(d.BoatChance), LineChance: finite(d.LineChance)})
	}
	return rows
}

// Outlook is next-season and plan from evidence that was asked for already.
func Outlook(all []Evidence, ratio float64, trips int) ([]NextSeason, []PlanDay) {
	open := openQuestions(all, ratio)
	rows := []NextSeason{}
	for _, q := range open {
		rows = append(rows, nextSeason(q))
	}
	return rows, planOf(open, trips)
}
