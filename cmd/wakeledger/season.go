package main

import (
	"context"
	"fmt"

	"github.com/spf13/cobra"

	"wakeledger/pipeline"
	"wakeledger/pipeline/sentence"
	"wakeledger/reports"
	"wakeledger/reports/page"
)

func (a *app) seasonCmd() *cobra.Command {
	var r reportFlags
	var open bool
	c := &cobra.Command{
		Use:   "season LOG...",
		Short: "The whole job: read the logs, keep them, weigh the fish, write the report",
		Example: "  wakeledger season trips.csv legs.csv lines.csv strikes.csv fish.csv\n  wakeledger season " +
			"--units us --out 2026.html log.xlsx",
		Args: takesLogs,
		RunE: func(c *cobra.Command, args []string) error {
			if err := r.check(); err != nil {
				return err
			}
			to := a.target(r.out, pageFile(page.SeasonReport), args...)
			if err := to.Check(); err != nil {
				return err
			}
			return a.withSeason(c.Context(), args, true, func(s *pipeline.Season) (err error) {
				if r.units, err = rememberUnits(c.Context(), s, r.units); err != nil {
					return err
				}
				in, err := a.seasonPage(c.Context(), s, r, to)
				if err != nil {
					return err
				}
				a.note("season file: %s", wholePath(a.db))
				if open {
					a.show(r.out)
				}
				a.summary(in)
				return nil
			})
		},
	}
	a.readingFlags(c)
	a.identityFlags(c)
	r.add(c.Flags(), "season.html")
	c.Flags().BoolVar(&open, "open", false, "open the report in the browser")
	completeReading(c)
	a.forceFlag(c)
	return c
}

// show opens a report in the browser; where none can be opened, the report is there all the same.
func (a *app) show(file string) {
	if err := show(wholePath(file)); err != nil {
		a.note("the report could not be opened: %v. Open it in a browser yourself", err)
	}
}

// rememberUnits keeps the units that were asked for, for later questions and reports; where
// none were, they are those that are kept.
func rememberUnits(ctx context.Context, s *pipeline.Season, asked string) (string, error) {
	if asked == "" {
		return unitsAsked(ctx, s, "")
	}
	return asked, s.DB.PutSetting(ctx, unitsSetting, asked)
}

// problems counts cells and rows that could not be used.
func problems(n int64) string {
	if n == 1 {
		return "1 problem"
	}
	return fmt.Sprintf("%d problems", n)
}

// summary prints the season in a few lines.
func (a *app) summary(in reports.SeasonInput) {
	var legs, strikes, landed, released int64
	var boat, lines float64
	for _, t := range in.Trips {
		legs += t.Legs
		boat += t.BoatHours
	}
	for _, r := range in.StrikeRate {
		strikes += r.Strikes
		landed += r.Landed
		released += r.Released
		lines += r.LineHours
	}
	if in.Open.Questions > 0 {
		fmt.Fprintf(a.out, "%s: these figures may change. %s\n", questionsOpen(in.Open.Questions), in.Open.Brief)
	}
	fmt.Fprintf(a.out, "%s, %s, %.1f boat-hours, %.1f line-hours\n",
		sentence.Count(int64(len(in.Trips)), "trip", "trips"), sentence.Count(legs, "leg", "legs"), boat, lines)
	fmt.Fprintf(a.out, "%s: %d landed, %d released\n", sentence.Count(strikes, "strike", "strikes"), landed, released)
	for _, r := range in.StrikeRate {
		if r.Rate == nil {
			continue
		}
		// a strike on a leg whose lines are not logged has no line-hours to be divided by
		counted, word := r.Strikes-r.WithoutHours, "strikes"
		if counted == 1 {
			word = "strike"
		}
		fmt.Fprintf(a.out, "  %-16s %4d %-7s in %7.1f line-hours: %.2f per line-hour (%.2f to %.2f)\n",
			r.Level, counted, word, r.LineHours, *r.Rate, *r.RateLo, *r.RateHi)
	}
	a.tellTroubles(in.Troubles)
}
