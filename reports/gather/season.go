package gather

import (
	"context"
	"slices"

	"wakeledger/pipeline/estimate"
	"wakeledger/pipeline/factors"
	"wakeledger/pipeline/store"
	"wakeledger/pipeline/unit"
	"wakeledger/queries"
	"wakeledger/queries/evidence"
	"wakeledger/reports"
)

// Season asks a season file all that the season report needs, levels worded for
// reading and classes round in the units shown. Title and Generated are the caller's.
func Season(ctx context.Context, db *store.DB, units string) (in reports.SeasonInput, err error) {
	err = InUnits(ctx, db, units, func() error {
		in, err = season(ctx, db, units)
		return err
	})
	return in, err
}

func season(ctx context.Context, db *store.DB, units string) (reports.SeasonInput, error) {
	in := reports.SeasonInput{Units: units}
	var err error
	if in.Effort, err = queries.AskEffort(ctx, db, factors.Speed); err != nil {
		return in, err
	}
	if in.Outcomes, err = queries.AskOutcomes(ctx, db, factors.Speed); err != nil {
		return in, err
	}
	if in.Fish, err = queries.AskFish(ctx, db); err != nil {
		return in, err
	}
	if in.Sizes, err = queries.AskSizes(ctx, db, factors.Speed, classWidth(in.Fish, units)); err != nil {
		return in, err
	}
	if in.Trips, err = queries.AskTrips(ctx, db); err != nil {
		return in, err
	}
	if in.Troubles, err = queries.AskTroubles(ctx, db); err != nil {
		return in, err
	}
	if in.Logs, err = logs(ctx, db); err != nil {
		return in, err
	}
	if in.Drag, err = queries.AskDrag(ctx, db); err != nil {
		return in, err
	}
	if in.Failures, err = queries.AskFailures(ctx, db); err != nil {
		return in, err
	}
	if in.Worked, err = worked(ctx, db); err != nil {
		return in, err
	}
	in.StrikeRate = in.Worked.Rates(factors.Speed)
	if in.Tracks, err = tracks(ctx, db, in.Worked); err != nil {
		return in, err
	}
	if in.Open, err = queries.AskOpen(ctx, db); err != nil {
		return in, err
	}
	if in.Fates, err = queries.AskFates(ctx, db); err != nil {
		return in, err
	}
	if in.Pairs, err = queries.AskPairs(ctx, db, factors.Speed, factors.LureWeight); err != nil {
		return in, err
	}
	if in.Doubts, err = queries.AskDoubts(ctx, db); err != nil {
		return in, err
	}
	if in.Checks, in.Own, err = tape(ctx, db); err != nil {
		return in, err
	}
	word(&in)
	return in, nil
}

// tape is how the tape has done against the scale.
func tape(ctx context.Context, db *store.DB) ([]queries.ScaleCheck, map[string]estimate.Own, error) {
	checks, err := queries.AskScaleCheck(ctx, db)
	if err != nil {
		return nil, nil, err
	}
	fitted, err := own(ctx, db)
	return checks, fitted, err
}

// own is the boat's own coefficients, by species.
func own(ctx context.Context, db *store.DB) (map[string]estimate.Own, error) {
	pairs, err := queries.AskOwnPairs(ctx, db)
	return estimate.FitOwn(pairs), err
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
func word(in *reports.SeasonInput) {
	for i := range in.Effort {
		in.Effort[i].Level = factors.Text(factors.Speed, in.Effort[i].Level)
	}
	for i := range in.StrikeRate {
		in.StrikeRate[i].Level = factors.Text(factors.Speed, in.StrikeRate[i].Level)
	}
	for i := range in.Outcomes {
		in.Outcomes[i].Level = factors.Text(factors.Speed, in.Outcomes[i].Level)
	}
	for i := range in.Sizes {
		in.Sizes[i].Level = factors.Text(factors.Speed, in.Sizes[i].Level)
	}
	for i := range in.Fish {
		in.Fish[i].SpeedBand = factors.Text(factors.Speed, in.Fish[i].SpeedBand)
	}
	for _, t := range in.Trips {
		if t.Boat != factors.NotLogged && !slices.Contains(in.Boats, t.Boat) {
			in.Boats = append(in.Boats, t.Boat)
		}
	}
}

// worked asks what the season says of what worked.
func worked(ctx context.Context, db *store.DB) (w reports.Worked, err error) {
	if w.Evidence, err = queries.AskAllEvidence(ctx, db); err != nil {
		return w, err
	}
	w.Findings = queries.FindingsOf(w.Evidence)
	w.Mixed = queries.MixedUpOf(w.Evidence)
	if w.Medians, err = queries.AskSizeMedians(ctx, db, factors.Speed); err != nil {
		return w, err
	}
	w.Next, w.Plan = queries.Outlook(w.Evidence, evidence.DefaultRatio, queries.DefaultPlanTrips)
	if w.Spread, err = queries.AskSpread(ctx, db); err != nil {
		return w, err
	}
	w.Methods, err = queries.Methods()
	w.Methods = slices.DeleteFunc(w.Methods, func(m queries.Method) bool { return m.Method == queries.ClubMethod })
	return w, err
}

// logs are the file names of the logs, in the order of loading.
func logs(ctx context.Context, db *store.DB) (reports.Logs, error) {
	read, err := queries.AskLogRead(ctx, db)
	var all reports.Logs
	for _, l := range read {
		all = append(all, l.File)
	}
	return all, err
}
