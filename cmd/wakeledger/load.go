package main

import (
	"context"
	"errors"
	"fmt"
	"io/fs"
	"slices"
	"sort"
	"strings"

	"github.com/spf13/cobra"

	"wakeledger/pipeline"
	"wakeledger/pipeline/normalise"
	"wakeledger/pipeline/sentence"
)

func (a *app) loadCmd() *cobra.Command {
	c := &cobra.Command{
		Use:   "load LOG...",
		Short: "Read logs and keep them in the season file",
		Example: "  wakeledger load trips.csv legs.csv strikes.csv\n  wakeledger load --boat \"Sea Wren\" --zone " +
			"UTC-9 log.xlsx",
		Args: takesLogs,
		RunE: func(c *cobra.Command, args []string) error {
			return a.withSeason(c.Context(), args, false, nil)
		},
	}
	a.readingFlags(c)
	a.identityFlags(c)
	completeReading(c)
	return c
}

// manyRows is from where load leaves the making of the season's tables to the
// first question: below it they are made in a moment.
const manyRows = 50_000

// withSeason loads logs, asks on a terminal what is open where ask says so, makes the
// season's tables, and calls then, if there is something to do.
func (a *app) withSeason(ctx context.Context, logs []string, ask bool, then func(*pipeline.Season) error) (err error) {
	cfg, err := a.config()
	if err != nil {
		return err
	}
	if logs, err = a.files(logs); err != nil {
		return err
	}
	if len(cfg.Replaces) > 0 && len(logs) > 1 {
		return usage("--replaces is for one log at a time")
	}
	if err := anyReadable(logs); err != nil {
		return err
	}
	given, err := a.given(ctx, cfg, logs)
	if err != nil {
		return err
	}
	cfg.Progress = a.watch(logs)
	s, err := pipeline.Open(ctx, a.db, cfg)
	if err != nil {
		return err
	}
	defer func() { err = errors.Join(err, s.DB.Close()) }()
	a.tellOlder(s)
	if err := s.DB.PutAnswers(ctx, given); err != nil {
		return err
	}
	before, err := a.tripsNow(ctx, s)
	if err != nil {
		return err
	}
	reports, loadErr := s.Load(ctx, logs)
	if ctx.Err() != nil {
		return ctx.Err()
	}
	if ask {
		if reports, err = a.settle(ctx, s, logs, reports); err != nil {
			return err
		}
	}
	setAside, err := a.tellLoaded(ctx, s, reports, before, then == nil)
	if err != nil {
		return err
	}
	if then != nil {
		if err := then(s); err != nil {
			return err
		}
	}
	openErr := a.tellOpen(ctx, s)
	if err := a.tellAsked(reports); err != nil {
		openErr = err
	}
	if a.strict && setAside > 0 {
		return outcome(loadErr, fmt.Errorf("%w: see 'wakeledger ask set-aside'", errSetAside), openErr)
	}
	return outcome(loadErr, openErr)
}

// tellLoaded says what came of the logs. Where nothing follows and they are long, the
// season's tables are left to the first question.
func (a *app) tellLoaded(ctx context.Context, s *pipeline.Season, reports []pipeline.LogReport, before int64,
	last bool) (setAside int64, err error) {
	var kept int64
	folded := foldQuiet(reports)
	for i, r := range reports {
		if !folded[i] {
			a.tellLog(r)
		}
		setAside += r.SetAside
		kept += r.Kept
	}
	if len(folded) > 0 {
		a.note("and %s, read whole in the same ways", sentence.Count(int64(len(folded)), "log more", "logs more"))
	}
	if last && kept > manyRows {
		a.note("%d rows: the season's tables are made at the first question", kept)
		if a.cfg.Ocean == "" {
			a.note("'wakeledger check' says which names of fish need --ocean")
		}
		if hasTrack(reports) {
			a.note("'wakeledger ask tracks' says whether the tracks' clocks fit the legs")
		}
		return setAside, nil
	}
	if err := s.Derive(ctx); err != nil {
		return setAside, err
	}
	if err := a.tellTrips(ctx, s, before); err != nil {
		return setAside, err
	}
	if err := a.tellRead(ctx, s, reports, folded, a.notes); err != nil {
		return setAside, err
	}
	if _, err := tellTracks(ctx, s, a.notes); err != nil {
		return setAside, err
	}
	return setAside, tellNames(ctx, s, reports, a.notes)
}

func hasTrack(reports []pipeline.LogReport) bool { return slices.ContainsFunc(reports, isTrack) }

func isTrack(r pipeline.LogReport) bool {
	return slices.ContainsFunc(r.Sheets, func(s pipeline.SheetReport) bool { return s.Kind == "track" })
}

// mostLogs are told one by one, however they were read. Of more, those that leave nothing
// to say are counted, but for the first few.
const mostLogs, firstQuiet = 20, 3

// foldQuiet are the places of the logs that are only counted.
func foldQuiet(reports []pipeline.LogReport) map[int]bool {
	folded, seen := map[int]bool{}, 0
	if len(reports) <= mostLogs {
		return folded
	}
	for i, r := range reports {
		if !quiet(r) {
			continue
		}
		if seen++; seen > firstQuiet {
			folded[i] = true
		}
	}
	return folded
}

// quiet reports whether a log is new and was read whole, with nothing that its owner should know.
func quiet(r pipeline.LogReport) bool {
	return r.Known == pipeline.Unknown && r.Asked == nil && r.SetAside == 0 && len(r.Near)+len(r.Replaced)+
		len(r.Passed) == 0 && len(r.Sheets) > 0 &&
		!slices.ContainsFunc(r.Sheets, func(s pipeline.SheetReport) bool {
			return s.Kind == "" || len(s.Notes)+len(s.Unknown()) > 0 || passedOver(s.Skipped) != ""
		})
}

// files has the files of folders in their place, and says which of them are passed over.
func (a *app) files(logs []string) ([]string, error) {
	files, passed, err := pipeline.Files(logs)
	for _, p := range passed {
		a.note("%s", p)
	}
	return files, err
}

// anyReadable fails where not one of the logs can be opened, so that a slip of
// the pen makes no season file.
func anyReadable(logs []string) error {
	var errs []error
	for _, l := range logs {
		err := pipeline.Readable(l)
		if err == nil {
			return nil
		}
		if near := nearFileOf(l); near != "" && errors.Is(err, fs.ErrNotExist) {
			err = fmt.Errorf("%w. %s", err, near)
		}
		errs = append(errs, err)
	}
	return errors.Join(errs...)
}

func (a *app) tellLog(r pipeline.LogReport) {
	if r.Asked != nil {
		return // tellAsked ends the run with it
	}
	a.note("%s", loadedLine(r))
	a.tellBoats(r)
	if r.Known == pipeline.Unchanged || r.Known == pipeline.EarlierVersion {
		return
	}
	a.tellChanges(r)
	for _, s := range r.Sheets {
		a.tellSheet(s)
	}
	for _, p := range r.Passed {
		a.note("  %s: %s", sheetWord(p.Sheet), p.Why)
	}
}

func sheetWord(name string) string {
	if name == "" {
		return "the table"
	}
	return name
}

func (a *app) tellSheet(s pipeline.SheetReport) {
	name := sheetWord(s.Name)
	if s.Kind == "" {
		a.note("  %s: not understood, not read", name)
		return
	}
	a.note("  %s: read as %s (%s), %s%s", name, s.Kind, s.Why,
		sentence.Count(s.Kept, "row", "rows"), passedOver(s.Skipped))
	if unknown := s.Unknown(); len(unknown) > 0 {
		a.note("    kept under their own names: %s", strings.Join(unknown, ", "))
	}
	for _, n := range s.Notes {
		a.note("    %s", n)
	}
}

// passedOver names the rows that are no data, blank ones left out.
func passedOver(skipped map[normalise.Skip]int64) string {
	var parts []string
	for why, n := range skipped {
		if why != normalise.Blank {
			parts = append(parts, fmt.Sprintf("%d %s", n, why))
		}
	}
	if len(parts) == 0 {
		return ""
	}
	sort.Strings(parts)
	return "; passed over: " + strings.Join(parts, ", ")
}
