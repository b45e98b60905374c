package main

import (
	"context"
	"errors"
	"fmt"
	"strings"

	"github.com/spf13/cobra"

	"wakeledger/pipeline"
	"wakeledger/pipeline/identity"
	"wakeledger/pipeline/store"
	"wakeledger/queries"
)

// errWhichLog tells of files of which it is not certain which log they are. They are
// printed where it is returned.
var errWhichLog = errors.New("it is not certain which log a file is")

// identityFlags settle which log a file is.
func (a *app) identityFlags(c *cobra.Command) {
	f := c.Flags()
	f.StringArrayVar(&a.cfg.Replaces, "replaces", nil, "the log, by its number or name in 'wakeledger logs', whose place the log given takes; may be repeated")
	f.BoolVar(&a.cfg.Another, "another", false, "the log given is a log of its own, whatever it has in common with others")
	c.MarkFlagsMutuallyExclusive("replaces", "another")
}

// loadedLine says what became of a log.
func loadedLine(r pipeline.LogReport) string {
	n := count(r.Kept, "row", "rows")
	aside := problems(r.SetAside) + " set aside"
	switch {
	case r.Known == pipeline.Unchanged && r.KnownAs.Name == r.Name:
		return fmt.Sprintf("%s: unchanged, %s as before", r.Label, n)
	case r.Known == pipeline.Unchanged:
		return fmt.Sprintf("%s: the same as log %d, %s, %s: nothing to do", r.Name, r.KnownAs.ID, r.KnownAs.Label, n)
	case r.Known == pipeline.EarlierVersion:
		return fmt.Sprintf("%s: a version of log %d, %s, which took its place: nothing to do; 'wakeledger logs restore %d' takes it back",
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
		return fmt.Sprintf("%s: takes the place of %s: %s (%d before), %s", r.Label, strings.Join(names, " and "), n, rows, aside)
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
	a.note("  since the last reading: %s; 'wakeledger logs restore %d' has that back", changeWords(all), r.Replaced[0].ID)
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
		a.note("  boat %q is nearly %q: if they are one, 'wakeledger logs boat %q %q' joins them", n.Boat, n.Other, n.Boat, n.Other)
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
		fmt.Fprintf(a.notes, "\n%s: not stored, for it may be ", r.Path)
		for i, l := range r.Asked.Of {
			if i > 0 {
				fmt.Fprint(a.notes, " or ")
			}
			fmt.Fprint(a.notes, logWords(l))
		}
		fmt.Fprintf(a.notes, ":\n  %s\n", r.Asked.Why)
		a.note("To settle it, give the same command, for this log alone, with")
		for _, l := range r.Asked.Of {
			a.note("  --replaces %d  it is that log, changed, and takes its place", l.ID)
		}
		a.note("  --another     it is a log of its own; a leg that stands in both is counted once")
	}
	return err
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
		a.note("%s before, %d more", count(before, "trip", "trips"), now-before)
	} else {
		a.note("%s before, %d now", count(before, "trip", "trips"), now)
	}
	return nil
}
