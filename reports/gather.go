package reports

import (
	"context"
	"slices"

	"wakeledger/pipeline/estimate"
	"wakeledger/pipeline/factors"
	"wakeledger/pipeline/store"
	"wakeledger/pipeline/unit"
	"wakeledger/queries"
)

const bySpeed = factors.Speed

// Gather asks a season file all that the season report needs, levels worded for
// reading and classes round in the units shown. Title and Generated are the caller's.
func Gather(ctx context.Context, db *store.DB, units string) (in SeasonInput, err error) {
	err = InUnits(ctx, db, units, func() error {
		in, err = gather(ctx, db, units)
		return err
	})
	return in, err
}

func gather(ctx context.Context, db *store.DB, units string) (SeasonInput, error) {
	in := SeasonInput{Units: units}
	var err error
	if in.Effort, err = queries.AskEffort(ctx, db, bySpeed); err != nil {
		return in, err
	}
	if in.Outcomes, err = queries.AskOutcomes(ctx, db, bySpeed); err != nil {
		return in, err
	}
	if in.Fish, err = queries.AskFish(ctx, db); err != nil {
		return in, err
	}
	if in.Sizes, err = queries.AskSizes(ctx, db, bySpeed, classWidth(in.Fish, units)); err != nil {
		return in, err
	}
	if in.Trips, err = queries.AskTrips(ctx, db); err != nil {
		return in, err
	}
	if in.Troubles, err = queries.AskTroubles(ctx, db); err != nil {
		return in, err
	}
	if in.Logs, err = gatherLogs(ctx, db); err != nil {
		return in, err
	}
	if in.Drag, err = queries.AskDrag(ctx, db); err != nil {
		return in, err
	}
	if in.Failures, err = queries.AskFailures(ctx, db); err != nil {
		return in, err
	}
	if in.Worked, err = gatherWorked(ctx, db); err != nil {
		return in, err
	}
	in.StrikeRate = in.Worked.rates(bySpeed)
	if in.Tracks, err = gatherTracks(ctx, db, in.Worked); err != nil {
		return in, err
	}
	if in.Open, err = queries.AskOpen(ctx, db); err != nil {
		return in, err
	}
	if in.Fates, err = queries.AskFates(ctx, db); err != nil {
		return in, err
	}
	if in.Pairs, err = queries.AskPairs(ctx, db, bySpeed, byLureWeight); err != nil {
		return in, err
	}
	if in.Doubts, err = queries.AskDoubts(ctx, db); err != nil {
		return in, err
	}
	if in.Checks, in.Own, err = gatherTape(ctx, db); err != nil {
		return in, err
	}
	in.word()
	return in, nil
}

// gatherTape is how the tape has done against the scale.
func gatherTape(ctx context.Context, db *store.DB) ([]queries.ScaleCheck, map[string]estimate.Own, error) {
	checks, err := queries.AskScaleCheck(ctx, db)
	if err != nil {
		return nil, nil, err
	}
	pairs, err := queries.AskOwnPairs(ctx, db)
	return checks, estimate.FitOwn(pairs), err
}

// classWidth is a width of weight classes in kg that is round in the units shown.
func classWidth(fish []queries.Fish, units string) float64 {
	scale := 1.0 // kg in one unit shown
	if units == "us" {
		scale = unit.KgPerPound
	}
	top := 0.0
	for _, f := range fish {
		if f.WeightKG != nil {
			top = max(top, *f.WeightKG)
		}
	}
	return scale * queries.ClassWidth(top/scale)
}

// word puts levels and boats into the words of a sentence.
func (in *SeasonInput) word() {
	for i := range in.Effort {
		in.Effort[i].Level = factors.Text(bySpeed, in.Effort[i].Level)
	}
	for i := range in.StrikeRate {
		in.StrikeRate[i].Level = factors.Text(bySpeed, in.StrikeRate[i].Level)
	}
	for i := range in.Outcomes {
		in.Outcomes[i].Level = factors.Text(bySpeed, in.Outcomes[i].Level)
	}
	for i := range in.Sizes {
		in.Sizes[i].Level = factors.Text(bySpeed, in.Sizes[i].Level)
	}
	for i := range in.Fish {
		in.Fish[i].SpeedBand = factors.Text(bySpeed, in.Fish[i].SpeedBand)
	}
	for _, t := range in.Trips {
		if t.Boat != "not logged" && !slices.Contains(in.Boats, t.Boat) {
			in.Boats = append(in.Boats, t.Boat)
		}
	}
}
