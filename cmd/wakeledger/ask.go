package main

import (
	"context"
	"errors"
	"strings"

	"github.com/spf13/cobra"

	"wakeledger/pipeline/store"
	"wakeledger/queries"
)

// question is one that ask answers; rows are a slice of a row of queries.
type question struct {
	name     string
	byFactor bool
	answer   func(ctx context.Context, db *store.DB, factor string) (rows any, err error)
}

func typed[T any](f func(context.Context, *store.DB, string) ([]T, error)) func(context.Context, *store.DB, string) (any, error) {
	return func(ctx context.Context, db *store.DB, factor string) (any, error) { return f(ctx, db, factor) }
}

func plain[T any](f func(context.Context, *store.DB) ([]T, error)) func(context.Context, *store.DB, string) (any, error) {
	return func(ctx context.Context, db *store.DB, _ string) (any, error) { return f(ctx, db) }
}

func questions() []question {
	return []question{
		{"effort", true, typed(queries.AskEffort)},
		{"strike-rate", true, typed(queries.AskStrikeRate)},
		{"outcomes", true, typed(queries.AskOutcomes)},
		{"fish", false, plain(queries.AskFish)},
		{"sizes", true, func(ctx context.Context, db *store.DB, factor string) (any, error) {
			return queries.AskSizes(ctx, db, factor, 0)
		}},
		{"trips", false, plain(queries.AskTrips)},
		{"set-aside", false, plain(queries.AskSetAside)},
	}
}

func (a *app) askCmd() *cobra.Command {
	var by, format string
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
			if !queries.IsFactor(by) {
				return usage("--by %q: expected one of %s", by, strings.Join(queries.Factors(), ", "))
			}
			write, ok := formats[format]
			if !ok {
				return usage("--format %q: expected table, csv or json", format)
			}
			q := find(args[0])
			if c.Flags().Changed("by") && !q.byFactor {
				return usage("%s has no levels: leave --by out", q.name)
			}
			s, err := a.openExisting(c.Context())
			if err != nil {
				return err
			}
			defer func() { err = errors.Join(err, s.DB.Close()) }()
			rows, err := q.answer(c.Context(), s.DB, by)
			if err != nil {
				return err
			}
			return write(a.out, rows)
		},
	}
	c.Flags().StringVar(&by, "by", "speed-band", "the factor: "+strings.Join(queries.Factors(), ", "))
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
