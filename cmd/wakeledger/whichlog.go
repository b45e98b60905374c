package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"slices"
	"strconv"
	"strings"

	"github.com/spf13/cobra"

	"wakeledger/pipeline"
	"wakeledger/pipeline/identity"
	"wakeledger/pipeline/sentence"
	"wakeledger/pipeline/store"
	"wakeledger/queries"
)

// errWhichLog tells of files of which it is not certain which log they are. They are
// printed where it is returned.
var errWhichLog = errors.New("it is not certain which log a file is")

// identityFlags settle which log a file is.
func (a *app) identityFlags(c *cobra.Command) {
	f := c.Flags()
	f.StringArrayVar(&a.cfg.Replaces, "replaces", nil, "this is that `log`, changed: its number or name in "+
		"'wakeledger logs'; give it again for each")
	f.BoolVar(&a.cfg.Another, "another", false, "this is a log of its own, whatever it shares with others")
	c.MarkFlagsMutuallyExclusive("replaces", "another")
}

// loadedLine says what became of a log.
func loadedLine(r pipeline.LogReport) string {
	n := sentence.Count(r.Kept, "row", "rows")
	aside := problems(r.SetAside) + " set aside"
	switch {
	case r.Known == pipeline.Unchanged && r.KnownAs.Name == r.Name:
		return fmt.Sprintf("%s: unchanged, %s as before", r.Label, n)
	case r.Known == pipeline.Unchanged:
		return fmt.Sprintf("%s: the same as log %d, %s, %s: nothing to do", r.Name, r.KnownAs.ID, r.KnownAs.Label, n)
	case r.Known == pipeline.EarlierVersion:
		return fmt.Sprintf("%s: a version of log %d, %s, which took its place: nothing to do; 'wakeledger logs "+
			"restore %d' takes it back",
			r.Name, r.KnownAs.ID, r.KnownAs.Label, r.Replaced[0].ID)
	case r.Known == pipeline.ReadAgain && len(r.Replaced) == 0:
		return fmt.Sprintf("%s: read again, %s (%d before), %s", r.Label, n, r.Before, aside)
	case len(r.Replaced) == 1 && r.Replaced[0].Name == r.Name:
		return fmt.Sprintf("%s: read again, %s (%d before), %s", r.Label, n, r.Replaced[0].Rows, aside)
	case len(r.Replaced) > 0:
		var names []string
		rows := int64(0)
		for _, l := range r.Replaced {
			names, rows = append(names, fmt.Sprintf("log %d, %s", l.ID, l.Label)), rows+l.Rows
		}
		return fmt.Sprintf("%s: takes the place of %s: %s (%d before), %s", r.Label,
			strings.Join(names, " and "), n, rows, aside)
	case r.Known == pipeline.Back:
		return fmt.Sprintf("%s: is back, it was %s: %s, %s", r.Label, r.KnownAs.State, n, aside)
	}
	return fmt.Sprintf("%s: %s, %s", r.Label, n, aside)
}

// mostDays of changes are told; the rest are counted.
const mostDays = 7

// tellChanges says, by day, what is new, changed and gone since the log was read before.
func (a *app) tellChanges(r pipeline.LogReport) {
	if len(r.Replaced) == 0 {
		return
	}
	all := identity.Sum(r.Changes)
	if len(r.Replaced) > 1 || len(r.Changes) == 0 {
		a.note("  'wakeledger logs restore %d' has it back", r.Replaced[0].ID)
		return
	}
	a.note("  since the last reading: %s; 'wakeledger logs restore %d' has that back",
		changeWords(all), r.Replaced[0].ID)
	told := 0
	for _, d := range r.Changes {
		if d.Found == d.Equal && d.Now == d.Found && d.Before == d.Found {
			continue
		}
		if told++; told <= mostDays {
			day := dayWords(d.Day)
			if d.Day == "" {
				day = "without a day"
			}
			a.note("    %s: %s", day, changeWords(d))
		}
	}
	if told > mostDays {
		a.note("    and %d days more", told-mostDays)
	}
}

func changeWords(d identity.Day) string {
	return fmt.Sprintf("%d new, %d changed, %d gone", d.Now-d.Found, d.Found-d.Equal, d.Before-d.Found)
}

// tellBoats says what is odd about the boats of a log.
func (a *app) tellBoats(r pipeline.LogReport) {
	if boat := r.KnownAs.Boat; r.Known == pipeline.Unchanged && a.cfg.Boat != "" && boat != "" && boat != a.cfg.Boat {
		a.note("  it is in as a log of %s: 'wakeledger logs boat %q %q' renames the boat", boat, boat, a.cfg.Boat)
	}
	for _, n := range r.Near {
		a.note("  boat %q is nearly %q: if they are one, 'wakeledger logs boat %q %q' joins them",
			n.Boat, n.Other, n.Boat, n.Other)
	}
}

// tellAsked prints what must be settled before a log is stored. Its error is errWhichLog
// where there is any.
func (a *app) tellAsked(reports []pipeline.LogReport) error {
	var err error
	for _, r := range reports {
		if r.Asked == nil {
			continue
		}
		err = errWhichLog
		writeAsked(a.notes, r)
		a.note("To settle it, give the same command, for this log alone, with")
		for _, l := range r.Asked.Of {
			a.note("  --replaces %d  %s", l.ID, itIsThatLog)
		}
		a.note("  --another     %s", itIsAnother)
	}
	return err
}

// What may be answered to which log a file is.
const (
	itIsThatLog = "it is that log, changed, and takes its place"
	itIsAnother = "it is a log of its own; a leg that stands in both is counted once"
)

// writeAsked prints which logs a log may be, and why it is asked.
func writeAsked(to io.Writer, r pipeline.LogReport) {
	fmt.Fprintf(to, "\n%s: not stored, for it may be ", r.Path)
	for i, l := range r.Asked.Of {
		if i > 0 {
			fmt.Fprint(to, " or ")
		}
		fmt.Fprint(to, logWords(l))
	}
	fmt.Fprintf(to, ":\n  %s\n", r.Asked.Why)
	for _, n := range r.Near {
		fmt.Fprintf(to, "  boat %q is nearly %q: a slip of the pen is put right in the log\n", n.Boat, n.Other)
	}
}

// settleWhich asks on a terminal which log each file is of which that is not certain. stop
// says that the user has enough.
func (a *app) settleWhich(ctx context.Context, d *dialogue, s *pipeline.Season,
	reports []pipeline.LogReport) (stop bool, err error) {
	passed := map[string]bool{}
	for {
		i := slices.IndexFunc(reports, func(r pipeline.LogReport) bool { return r.Asked != nil && !passed[r.Path] })
		if i < 0 {
			return false, nil
		}
		path := reports[i].Path
		passed[path] = true
		answered, err := d.which(ctx, s, &reports[i])
		if errors.Is(err, io.EOF) {
			return true, nil
		}
		if err != nil {
			return true, err
		}
		for j := range reports { // the answer may settle others, or take away what they may be
			if !answered || j == i || reports[j].Asked == nil {
				continue
			}
			again, err := s.Load(ctx, []string{reports[j].Path})
			if err != nil {
				return true, err
			}
			reports[j] = again[0]
		}
	}
}

// which asks until an answer fits, or is left open, and loads the log by it.
func (d *dialogue) which(ctx context.Context, s *pipeline.Season, r *pipeline.LogReport) (answered bool, err error) {
	writeAsked(d.say, *r)
	of := r.Asked.Of
	for i, l := range of {
		fmt.Fprintf(d.say, "  %d  it is log %d, changed, and takes its place\n", i+1, l.ID)
	}
	fmt.Fprintf(d.say, "  %d  %s\n", len(of)+1, itIsAnother)
	for {
		text, err := d.read()
		if err != nil || text == "" {
			return false, err
		}
		n, err := strconv.Atoi(strings.TrimSpace(text))
		if err != nil || n < 1 || n > len(of)+1 {
			fmt.Fprintf(d.say, "%q: expected a number from 1 to %d\n", text, len(of)+1)
			continue
		}
		var replaces []string
		if n <= len(of) {
			replaces = []string{strconv.FormatInt(of[n-1].ID, 10)}
		}
		*r, err = s.LoadAs(ctx, r.Path, replaces...)
		return true, err
	}
}

// logWords name a log with what a captain knows it by.
func logWords(l store.Log) string {
	what := l.Boat
	if l.First != "" {
		if what != "" {
			what += ", "
		}
		what += dayWords(l.First)
		if l.Last != l.First {
			what += " to " + dayWords(l.Last)
		}
	}
	if what != "" {
		what = " (" + what + ")"
	}
	return fmt.Sprintf("log %d, %s%s", l.ID, l.Label, what)
}

// notCounted is a number of trips that is not known: the season's tables are not made.
const notCounted = -1

// tripsNow is the number of the season's trips.
func (a *app) tripsNow(ctx context.Context, s *pipeline.Season) (int64, error) {
	stale, err := s.DB.Stale(ctx)
	if err != nil || stale {
		return notCounted, err
	}
	trips, err := queries.AskTrips(ctx, s.DB)
	return int64(len(trips)), err
}

// tellTrips says by how many trips a season has grown.
func (a *app) tellTrips(ctx context.Context, s *pipeline.Season, before int64) error {
	now, err := a.tripsNow(ctx, s)
	if err != nil || before < 1 || now == before {
		return err
	}
	if now > before {
		a.note("%s before, %d more", sentence.Count(before, "trip", "trips"), now-before)
	} else {
		a.note("%s before, %d now", sentence.Count(before, "trip", "trips"), now)
	}
	return nil
}
