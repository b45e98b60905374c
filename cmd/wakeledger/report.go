package main

import (
	"context"
	"errors"
	"io"
	"slices"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"

	"wakeledger/pipeline"
	"wakeledger/queries"
	"wakeledger/reports"
	"wakeledger/reports/gather"
	"wakeledger/reports/output"
	"wakeledger/reports/page"
)

// reportFlags are those of every command that writes a report.
type reportFlags struct {
	out, units, title string
	part              part
	compare           string   // of report season and years: another season file, or a year of this one
	cell              cellFlag // of report track
}

func (r *reportFlags) add(f *pflag.FlagSet, out string) {
	f.StringVar(&r.out, "out", out, "the `file` to write")
	f.StringVar(&r.units, "units", "", "`us` (lb, in) or metric (kg, cm); left out: as you last told season")
	f.StringVar(&r.title, "title", "", "the page's `title`")
}

func (r *reportFlags) check() error {
	if r.units != "" {
		if err := oneWord("units", r.units, unitNames...); err != nil {
			return err
		}
	}
	return r.part.check()
}

// reportKind is a report as a command.
type reportKind struct {
	page           page.Report
	short, example string
	write          func(*app, context.Context, *pipeline.Season, reportFlags, output.Target) error
}

var reportKinds = []reportKind{
	{page.SeasonReport, "The season: what to do next, what worked, the fish, and what was not read",
		"  wakeledger report season --units us --out 2026.html\n  wakeledger report season --year 2026",
		(*app).writeSeason},
	{page.YearsReport, "Two seasons side by side: what changed since last year",
		"  wakeledger report years\n  wakeledger report years --compare 2024\n  wakeledger report years --compare " +
			"2025.duckdb", (*app).writeYears},
	{page.ScaleReport, "The tape against the scale: whether to trust it, and by what to divide",
		"  wakeledger report scale --units us", (*app).writeScale},
	{page.DeckReport, "A page to print for the boat: today's plan, this boat's spread, weights by length and girth",
		"  wakeledger report deck --units us", (*app).writeDeck},
	{page.TrackReport, "Where the boat ran and where fish struck. It shows positions: for the boat alone",
		"  wakeledger report track --cell 5", (*app).writeTrack},
}

// reportNames are the kinds of report.
func reportNames() []string {
	var names []string
	for _, k := range reportKinds {
		names = append(names, string(k.page))
	}
	return append(names, "club")
}

func (a *app) reportCmd() *cobra.Command {
	kinds := reportNames()
	c := &cobra.Command{
		Use:   "report KIND",
		Short: "Write a page about the season: season, years, scale, deck, track or club",
		Long:  "Write a page about the season, to be opened in a browser. It needs no network.",
		Example: "  wakeledger report season --units us --out 2026.html\n  wakeledger report scale\n  wakeledger " +
			"report deck --units us",
		Args: func(_ *cobra.Command, args []string) error {
			if len(args) == 0 {
				return usage("report what? %s, such as: wakeledger report season", oneOf(kinds))
			}
			return notOne("report", args[0], kinds)
		},
		RunE: func(*cobra.Command, []string) error { return nil },
	}
	flags := reportFlags{cell: cellFlag{queries.AreaMinutes}}
	flags.addAll(a, c, "season", "season.html") // so that a flag may stand before its kind
	flags.cell.add(c.Flags())
	c.Flags().VisitAll(func(f *pflag.Flag) { f.Hidden = true })
	for _, k := range reportKinds {
		c.AddCommand(a.reportKindCmd(k))
	}
	c.AddCommand(a.reportClubCmd())
	return c
}

// addAll adds the flags of a kind of report.
func (r *reportFlags) addAll(a *app, c *cobra.Command, kind page.Report, out string) {
	r.add(c.Flags(), out)
	r.part.add(c.Flags())
	if kind == page.YearsReport { // of two whole seasons
		for _, name := range []string{"year", "since", "until"} {
			c.Flags().Lookup(name).Hidden = true
		}
	}
	if kind == page.SeasonReport || kind == page.YearsReport {
		c.Flags().StringVar(&r.compare, "compare", "", "set it beside a year of this season file (2025), or beside "+
			"another season `file`")
	}
	if kind == page.TrackReport {
		r.cell.add(c.Flags())
	}
	a.forceFlag(c)
}

func (a *app) reportKindCmd(k reportKind) *cobra.Command {
	r := reportFlags{cell: cellFlag{queries.AreaMinutes}}
	c := &cobra.Command{
		Use:     string(k.page),
		Short:   k.short,
		Long:    k.short + ".",
		Example: k.example,
		Args:    takesNothing,
		RunE: func(c *cobra.Command, _ []string) (err error) {
			if err := errors.Join(r.check(), r.cell.check()); err != nil {
				return err
			}
			if r.compare != "" {
				k = reportKinds[slices.IndexFunc(reportKinds,
					func(k reportKind) bool { return k.page == page.YearsReport })]
				if !c.Flags().Changed("out") {
					r.out = string(k.page) + ".html"
				}
			}
			if k.page == page.YearsReport && r.part.year+r.part.since+r.part.until != "" {
				return usage("two whole seasons are set beside each other: leave --year, --since and --until out")
			}
			to := a.target(r.out, pageFile(k.page), r.compare)
			if err := to.Check(); err != nil {
				return err
			}
			s, err := a.openRead(c.Context(), a.db)
			if err != nil {
				return err
			}
			defer func() { err = errors.Join(err, s.DB.Close()) }()
			if r.units, err = unitsAsked(c.Context(), s, r.units); err != nil {
				return err
			}
			if err := a.narrow(c.Context(), s, r.part); err != nil {
				return err
			}
			return k.write(a, c.Context(), s, r, to)
		},
	}
	r.addAll(a, c, k.page, string(k.page)+".html")
	a.completeReport(c)
	return c
}

func (a *app) writeSeason(ctx context.Context, s *pipeline.Season, r reportFlags, to output.Target) error {
	_, err := a.seasonPage(ctx, s, r, to)
	return err
}

// seasonPage writes the season's page and returns what it shows.
func (a *app) seasonPage(ctx context.Context, s *pipeline.Season, r reportFlags,
	to output.Target) (reports.SeasonInput, error) {
	in, err := gather.Season(ctx, s.DB, r.units)
	if err != nil {
		return in, err
	}
	in.Generated = s.Now()
	in.Title = r.titleOr(boatTitle(in.Boats, seasonTitle(in.Trips)))
	return in, a.writePage(to, func(w io.Writer) error { return reports.Season(w, in) })
}

// titleOr is the title that was asked for, else usual; either names the part of the season
// that the page is of.
func (r *reportFlags) titleOr(usual string) string {
	title := r.title
	if title == "" {
		title = usual
	}
	return title + r.part.suffix()
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
