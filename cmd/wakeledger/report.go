package main

import (
	"context"
	"errors"
	"io"
	"slices"

	"github.com/spf13/cobra"

	"wakeledger/pipeline"
	"wakeledger/queries"
	"wakeledger/reports"
	"wakeledger/reports/output"
	"wakeledger/reports/page"
)

// reportFlags are those of every command that writes a report.
type reportFlags struct {
	out, units, title string
	compare           string   // of report season: another season file, or a year of this one
	cell              cellFlag // of report track
}

func (r *reportFlags) add(c *cobra.Command) {
	c.Flags().StringVar(&r.out, "out", "season.html", "the report's file")
	c.Flags().StringVar(&r.units, "units", "metric", "us (lb, in) or metric (kg, cm)")
	c.Flags().StringVar(&r.title, "title", "", "the report's title; the season's years otherwise")
}

func (r *reportFlags) check() error {
	if r.units != "us" && r.units != "metric" {
		return usage("--units %q: expected us or metric", r.units)
	}
	return nil
}

func (a *app) reportCmd() *cobra.Command {
	var r reportFlags
	c := &cobra.Command{
		Use:       "report KIND",
		Short:     "Write a report of the season file: season, scale (tape against scale), deck (a printed page for the boat) or track (where it ran, for the boat alone)",
		Example:   "  wakeledger report season --units us --out 2026.html\n  wakeledger report season --compare 2025.duckdb\n  wakeledger report scale\n  wakeledger report deck --units us",
		ValidArgs: []string{"season", "scale", "deck", "track"},
		Args:      takes(cobra.MatchAll(cobra.ExactArgs(1), cobra.OnlyValidArgs)),
		RunE: func(c *cobra.Command, args []string) (err error) {
			if err := r.check(); err != nil {
				return err
			}
			if r.compare != "" && args[0] != "season" {
				return usage("--compare is for report season")
			}
			if c.Flags().Changed("cell") && args[0] != "track" {
				return usage("--cell is for report track")
			}
			if err := r.cell.check(); err != nil {
				return err
			}
			if !c.Flags().Changed("out") {
				r.out = args[0] + ".html"
			}
			to := a.target(r.out, pageFile(page.Report(args[0])), r.compare)
			if err := to.Check(); err != nil {
				return err
			}
			s, err := a.openRead(c.Context(), a.db)
			if err != nil {
				return err
			}
			defer func() { err = errors.Join(err, s.DB.Close()) }()
			switch args[0] {
			case "scale":
				return a.writeScale(c.Context(), s, r, to)
			case "deck":
				return a.writeDeck(c.Context(), s, r, to)
			case "track":
				return a.writeTrack(c.Context(), s, r, to)
			}
			return a.writeSeason(c.Context(), s, r, to)
		},
	}
	r.add(c)
	c.Flags().StringVar(&r.compare, "compare", "", "report season: show it beside another season file, or beside a year of this one (2025)")
	r.cell.add(c.Flags(), "report track")
	a.forceFlag(c)
	c.AddCommand(a.reportClubCmd())
	return c
}

func (a *app) writeSeason(ctx context.Context, s *pipeline.Season, r reportFlags, to output.Target) error {
	in, err := reports.Gather(ctx, s.DB, r.units)
	if err != nil {
		return err
	}
	if in.Beside, err = a.beside(ctx, s, r.compare); err != nil {
		return err
	}
	in.Generated = s.Now()
	in.Title = r.title
	if in.Title == "" {
		in.Title = boatTitle(in.Boats, seasonTitle(in.Trips))
	}
	return a.writePage(to, func(w io.Writer) error { return reports.Season(w, in) })
}

// boatTitle puts the boat first where there is one.
func boatTitle(boats []string, season string) string {
	if len(boats) != 1 {
		return season
	}
	return boats[0] + ", " + lowerFirst(season)
}

func seasonTitle(trips []queries.Trip) string {
	var years []string
	for _, t := range trips {
		if t.Date != nil && !slices.Contains(years, (*t.Date)[:4]) {
			years = append(years, (*t.Date)[:4])
		}
	}
	slices.Sort(years)
	switch len(years) {
	case 0:
		return "Season"
	case 1:
		return "Season " + years[0]
	}
	between := " to "
	if len(years) == 2 {
		between = " and "
	}
	return "Seasons " + years[0] + between + years[len(years)-1]
}
