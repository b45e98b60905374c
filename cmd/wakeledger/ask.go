package main

import (
	"context"
	"errors"
	"strings"

	"github.com/spf13/cobra"

	"wakeledger/pipeline/store"
	"wakeledger/queries"
	"wakeledger/queries/evidence"
)

// question is one that ask answers; rows are a slice of a row of queries.
type question struct {
	name     string
	byFactor bool
	answer   func(ctx context.Context, db *store.DB, a asked) (rows any, err error)
}

// asked is what the flags of ask settle.
type asked struct {
	factor string
	ratio  float64 // of rates, to be told by next-season and plan
	trips  int     // of plan
	cell   cellFlag
}

func typed[T any](f func(context.Context, *store.DB, string) ([]T, error)) func(context.Context, *store.DB, asked) (any, error) {
	return func(ctx context.Context, db *store.DB, a asked) (any, error) { return f(ctx, db, a.factor) }
}

func plain[T any](f func(context.Context, *store.DB) ([]T, error)) func(context.Context, *store.DB, asked) (any, error) {
	return func(ctx context.Context, db *store.DB, _ asked) (any, error) { return f(ctx, db) }
}

func questions() []question {
	return []question{
		{"effort", true, typed(queries.AskEffort)},
		{"strike-rate", true, typed(queries.AskStrikeRate)},
		{"outcomes", true, typed(queries.AskOutcomes)},
		{"fish", false, plain(queries.AskFish)},
		{"sizes", true, func(ctx context.Context, db *store.DB, a asked) (any, error) {
			return queries.AskSizes(ctx, db, a.factor, 0)
		}},
		{"size-medians", true, typed(queries.AskSizeMedians)},
		{"findings", false, plain(queries.AskFindings)},
		{"mixed-up", false, plain(queries.AskMixedUp)},
		{"next-season", false, func(ctx context.Context, db *store.DB, a asked) (any, error) {
			return queries.AskNextSeason(ctx, db, a.ratio)
		}},
		{"plan", false, func(ctx context.Context, db *store.DB, a asked) (any, error) {
			return queries.AskPlan(ctx, db, a.ratio, a.trips)
		}},
		{"spread", false, plain(queries.AskSpread)},
		{"methods", false, plain(queries.AskMethods)},
		{"trips", false, plain(queries.AskTrips)},
		{"set-aside", false, plain(queries.AskSetAside)},
		{"questions", false, plain(queries.AskQuestions)},
		{"doubts", false, plain(queries.AskDoubts)},
		{"scale-check", false, plain(queries.AskScaleCheck)},
		{"scale-fish", false, plain(queries.AskScaleFish)},
		{"gear", false, plain(queries.AskDrag)},
		{"failures", false, plain(queries.AskFailures)},
		{"track-speed", false, plain(queries.AskTrackSpeed)},
		{"tracks", false, plain(queries.AskTracks)},
		{"strike-speed", false, plain(queries.AskStrikeSpeed)},
		{"current", false, plain(queries.AskCurrent)},
		{"area", false, func(ctx context.Context, db *store.DB, a asked) (any, error) {
			return queries.AskArea(ctx, db, a.cell.minutes)
		}},
	}
}

func (a *app) askCmd() *cobra.Command {
	var format string
	var want asked
	var names []string
	for _, q := range questions() {
		names = append(names, q.name)
	}
	c := &cobra.Command{
		Use:       "ask QUESTION",
		Short:     "Answer one question of the season file as a table: " + strings.Join(names, ", "),
		Example:   "  wakeledger ask strike-rate --by lure\n  wakeledger ask fish --format csv",
		ValidArgs: names,
		Args:      takes(cobra.MatchAll(cobra.ExactArgs(1), cobra.OnlyValidArgs)),
		RunE: func(c *cobra.Command, args []string) (err error) {
			if !queries.IsFactor(want.factor) {
				return usage("--by %q: expected one of %s", want.factor, strings.Join(queries.Factors(), ", "))
			}
			if !(want.ratio > 0) || want.ratio == 1 || want.trips < 1 || want.trips > 1000 {
				return usage("--ratio must be above 0 and not 1, --trips 1 to 1000")
			}
			write, ok := formats[format]
			if !ok {
				return usage("--format %q: expected table, csv or json", format)
			}
			q := find(args[0])
			if c.Flags().Changed("by") && !q.byFactor {
				return usage("%s has no levels: leave --by out", q.name)
			}
			if c.Flags().Changed("cell") && q.name != "area" {
				return usage("--cell is for ask area")
			}
			if err := want.cell.check(); err != nil {
				return err
			}
			s, err := a.openRead(c.Context(), a.db)
			if err != nil {
				return err
			}
			defer func() { err = errors.Join(err, s.DB.Close()) }()
			rows, err := q.answer(c.Context(), s.DB, want)
			if err != nil {
				return err
			}
			return write(a.forFormat(format), rows)
		},
	}
	c.Flags().StringVar(&want.factor, "by", "speed-band", "the factor: "+strings.Join(queries.Factors(), ", "))
	c.Flags().Float64Var(&want.ratio, "ratio", evidence.DefaultRatio, "next-season and plan: the ratio of strike rates to be told")
	c.Flags().IntVar(&want.trips, "trips", queries.DefaultPlanTrips, "plan: the number of trips")
	want.cell.add(c.Flags(), "area")
	c.Flags().StringVar(&format, "format", "table", "table, csv or json")
	return c
}

func find(name string) question {
	for _, q := range questions() {
		if q.name == name {
			return q
		}
	}
	return question{}
}
