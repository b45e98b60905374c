package queries

import (
	"context"
	"math"
	"slices"

	"wakeledger/pipeline/store"
	"wakeledger/queries/evidence"
)

// NextSeason is one open question and the effort that would settle it.
type NextSeason struct {
	Factor      string  `json:"factor"`
	SettingA    string  `json:"setting_a"` // the level with the most effort so far
	SettingB    string  `json:"setting_b"` // of the others, the one that ranks best
	Ratio       float64 `json:"ratio"`     // of the two rates, to be told with 80 % power
	Rate        float64 `json:"rate"`      // the season's strikes per line-hour
	HoursSame   float64 `json:"line_hours_each_same_trips"`
	TripsSame   int64   `json:"trips_same_trips"` // at the season's line-hours a trip
	HoursApart  float64 `json:"line_hours_each_other_trips"`
	TripsApart  int64   `json:"trips_other_trips"`
	StrikesA    float64 `json:"strikes_a_same_trips"` // expected in HoursSame
	StrikesB    float64 `json:"strikes_b_same_trips"`
	PhiSame     float64 `json:"dispersion_same_trips"`
	PhiApart    float64 `json:"dispersion_other_trips"`
	HadA        float64 `json:"line_hours_a"` // so far
	HadB        float64 `json:"line_hours_b"`
	Leaning     bool    `json:"leaning"`       // the season leans to setting_a over setting_b
	SideBySide  bool    `json:"side_by_side"`  // both settings can be out together, on different lines
	CanBeChosen bool    `json:"can_be_chosen"` // false for what comes with the day
	PairedDay   string  `json:"paired_day"`
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

// AskNextSeason answers next-season: for each open question the line-hours at
// each setting that tell the given ratio of rates: those the crew can choose
// first, of them those that take the fewest hours. A ratio of 0 takes evidence.DefaultRatio.
func AskNextSeason(ctx context.Context, db *store.DB, ratio float64) ([]NextSeason, error) {
	all, err := AskAllEvidence(ctx, db)
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
	slices.SortStableFunc(open, func(a, b evidence.Question) int {
		if a.Settable != b.Settable {
			if a.Settable {
				return -1
			}
			return 1
		}
		return int(math.Copysign(1, a.Paired.Effort-b.Paired.Effort))
	})
	return open
}

func nextSeason(q evidence.Question) NextSeason {
	text := func(level string) string { return LevelText(q.Factor, level) }
	return NextSeason{
		Factor: q.Factor, SettingA: q.A, SettingB: q.B, Ratio: q.Ratio, Rate: q.Rate,
		HoursSame: q.Paired.Effort, TripsSame: int64(q.PairedTrips), HoursApart: q.Apart.Effort, TripsApart: int64(q.ApartTrips),
		StrikesA: q.Paired.Events[0], StrikesB: q.Paired.Events[1], PhiSame: q.PairedPhi, PhiApart: q.Phi,
		HadA: q.Had[0], HadB: q.Had[1], Leaning: q.Leaning, SideBySide: q.ByLeg, CanBeChosen: q.Settable, PairedDay: q.PairedDay(text),
	}
}

// AskPlan answers plan: what to fish on each of a number of trips. Trips of 0
// takes DefaultPlanTrips.
func AskPlan(ctx context.Context, db *store.DB, ratio float64, trips int) ([]PlanDay, error) {
	all, err := AskAllEvidence(ctx, db)
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
	for _, d := range evidence.Plan(open, trips, LevelText) {
		rows = append(rows, PlanDay{Trip: int64(d.Trip), FirstHalf: d.First, SecondHalf: d.Second, Port: d.Port, Starboard: d.Starb,
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
