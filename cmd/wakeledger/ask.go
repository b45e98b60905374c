package main

import (
	"context"
	"errors"
	"fmt"
	"slices"
	"strings"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"

	"wakeledger/pipeline"
	"wakeledger/pipeline/factors"
	"wakeledger/queries"
	"wakeledger/queries/evidence"
	"wakeledger/reports/gather"
)

// askFlags are those of ask; which of them a question has, its takes say.
type askFlags struct {
	asked
	part                   part
	format, units, columns string
}

func (f *askFlags) add(to *pflag.FlagSet, t options) {
	to.StringVar(&f.format, "format", "table", "`one` of table, csv, json; csv and json have every column, in kg, "+
		"cm and m")
	to.StringVar(&f.columns, "columns", "", "the `columns` to show, with commas between, or all")
	to.StringVar(&f.units, "units", "", "`us` or metric; left out: as you last told season")
	if t.factor {
		to.StringVar(&f.factor, "by", "speed-band", "the `factor` to compare by: "+strings.Join(factors.Names(), ", "))
	}
	if t.part {
		f.part.add(to)
	}
	if t.ratio {
		to.Float64Var(&f.ratio, "ratio", evidence.DefaultRatio,
			"how many `times` the strikes one setting must bring to be worth knowing")
	}
	if t.trips {
		to.IntVar(&f.trips, "trips", queries.DefaultPlanTrips, "how `many` trips to plan")
	}
	if t.cell {
		f.cell.add(to)
	}
}

func newAskFlags() *askFlags {
	return &askFlags{asked: asked{factor: "speed-band", ratio: evidence.DefaultRatio, trips: queries.DefaultPlanTrips,
		cell: cellFlag{queries.AreaMinutes}}}
}

func (f *askFlags) check() error {
	if !factors.Is(f.factor) {
		return notOne("--by", f.factor, factors.Names())
	}
	if !(f.ratio > 0) || f.ratio == 1 {
		return usage("--ratio %g: expected a number above 0 that is not 1, such as 1.5", f.ratio)
	}
	if f.trips < 1 || f.trips > 1000 {
		return usage("--trips %d: expected 1 to 1000", f.trips)
	}
	if err := oneWord("format", f.format, "table", "csv", "json"); err != nil {
		return err
	}
	if f.units != "" {
		if err := oneWord("units", f.units, unitNames...); err != nil {
			return err
		}
	}
	if f.format != "table" && f.columns+f.units != "" {
		return usage("--columns and --units are for tables: %s has every column, in kg, cm and m", f.format)
	}
	if err := f.part.check(); err != nil {
		return err
	}
	return f.cell.check()
}

func (a *app) askCmd() *cobra.Command {
	c := &cobra.Command{
		Use:         "ask QUESTION",
		Short:       "Answer one question about the season, as a table",
		Long:        "Answer one question about the season, as a table. The questions:\n\n" + questionList(),
		Annotations: map[string]string{listed: "yes"},
		Example: "  wakeledger ask strike-rate --by lure\n  wakeledger ask fish --year 2026 --species bluefin\n" +
			"  wakeledger ask trips --columns date,strikes,heaviest\n  wakeledger ask fish --format csv",
		Args: func(_ *cobra.Command, args []string) error {
			if len(args) == 0 {
				return usage(
					"ask what? 'wakeledger ask --help' lists the questions, such as wakeledger ask strike-rate")
			}
			return notOne("question", args[0], questionNames())
		},
		RunE: func(*cobra.Command, []string) error { return nil },
	}
	newAskFlags().add(c.Flags(), options{true, true, true, true, true}) // so that a flag may stand before its question
	c.Flags().VisitAll(func(f *pflag.Flag) { f.Hidden = true })
	for _, q := range questions() {
		c.AddCommand(a.questionCmd(q))
	}
	return c
}

func questionNames() []string {
	var names []string
	for _, q := range questions() {
		names = append(names, q.name)
	}
	return names
}

func questionList() string {
	var lines []string
	for _, q := range questions() {
		lines = append(lines, folded(fmt.Sprintf("  %-13s ", q.name), q.about))
	}
	return strings.Join(lines, "\n")
}

// questionCmd is a question as a command, so that it has a help of its own.
func (a *app) questionCmd(q question) *cobra.Command {
	f := newAskFlags()
	c := &cobra.Command{
		Use:     q.name,
		Short:   q.about,
		Long:    q.about,
		Example: "  wakeledger ask " + q.name + exampleOf(q),
		Args:    takesNothing,
		RunE: func(c *cobra.Command, _ []string) (err error) {
			if err := f.check(); err != nil {
				return err
			}
			s, err := a.openRead(c.Context(), a.db)
			if err != nil {
				return err
			}
			defer func() { err = errors.Join(err, s.DB.Close()) }()
			if err := a.narrow(c.Context(), s, f.part); err != nil {
				return err
			}
			return a.answer(c.Context(), s, q, f)
		},
	}
	f.add(c.Flags(), q.takes)
	a.completeAsk(c, q)
	return c
}

func exampleOf(q question) string {
	switch {
	case q.takes.factor:
		return " --by lure --year 2026"
	case q.takes.trips:
		return " --trips 6"
	case q.takes.part:
		return " --since 2026-06-01"
	}
	return " --format csv"
}

// answer writes a question's answer.
func (a *app) answer(ctx context.Context, s *pipeline.Season, q question, f *askFlags) error {
	if f.format != "table" {
		rows, err := q.answer(ctx, s.DB, f.asked)
		if err != nil {
			return err
		}
		return formats[f.format](a.plain, rows)
	}
	units, err := unitsAsked(ctx, s, f.units)
	if err != nil {
		return err
	}
	f.us = units == "us"
	return gather.InUnits(ctx, s.DB, units, func() error {
		rows, err := q.answer(ctx, s.DB, f.asked)
		if err != nil {
			return err
		}
		if err := a.writeAnswer(q, f, rows); err != nil || q.name != "strike-rate" || f.columns != "" {
			return err
		}
		return a.tellFinding(ctx, s, f.factor)
	})
}

// tellFinding says below the rates of a factor what they come to, with its verdict; nothing
// where nothing could be compared.
func (a *app) tellFinding(ctx context.Context, s *pipeline.Season, factor string) error {
	f, ok, err := queries.AskFinding(ctx, s.DB, factor)
	if err != nil || !ok {
		return err
	}
	fmt.Fprintln(a.out)
	a.tellFolded("", f.Sentence)
	return nil
}

// unitsAsked are the units of a flag, else those that the season file remembers, else
// metric ones.
func unitsAsked(ctx context.Context, s *pipeline.Season, flag string) (string, error) {
	if flag != "" {
		return flag, nil
	}
	units, err := s.DB.Setting(ctx, unitsSetting)
	if err == nil && !slices.Contains(unitNames, units) {
		units = "metric"
	}
	return units, err
}

// unitsSetting is the season file's setting of the units that season was last given.
const unitsSetting = "units shown"
