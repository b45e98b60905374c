package main

import (
	"context"
	"errors"
	"fmt"
	"maps"
	"os"
	"slices"
	"strings"
	"time"

	"github.com/spf13/cobra"

	"wakeledger/pipeline"
	"wakeledger/pipeline/sentence"
	"wakeledger/pipeline/store"
)

// logRow is one log as it is listed.
type logRow struct {
	Log       int64  `json:"log"`
	Boat      string `json:"boat"`
	File      string `json:"file"`
	State     string `json:"state"` // in, replaced or forgotten
	Loaded    string `json:"loaded"`
	First     string `json:"first_day"`
	Last      string `json:"last_day"`
	Rows      int64  `json:"rows"`
	SetAside  int64  `json:"set_aside"`
	Questions int64  `json:"questions"`
	Replaced  string `json:"replaced"` // the numbers of the logs whose place it took
}

func (a *app) logsCmd() *cobra.Command {
	var format string
	c := &cobra.Command{
		Use:   "logs",
		Short: "Which logs the season file holds, and those that can be had back",
		Example: "  wakeledger logs\n  wakeledger logs forget 3\n  wakeledger logs restore 3\n  wakeledger logs " +
			"boat \"Sea Wrem\" \"Sea Wren\"",
		Args: takesNothing,
		RunE: func(c *cobra.Command, _ []string) error {
			if err := oneWord("format", format, "table", "csv", "json"); err != nil {
				return err
			}
			return a.withExisting(c.Context(), func(s *pipeline.Season) error {
				all, err := s.DB.Logs(c.Context())
				if err != nil {
					return err
				}
				if err := a.writeAs(format, logRows(all)); err != nil {
					return err
				}
				return a.tellBoatNames(c.Context(), s)
			})
		},
	}
	c.Flags().StringVar(&format, "format", "table", "`one` of table, csv, json")
	c.AddCommand(a.forgetCmd(), a.restoreCmd(), a.boatCmd(), a.tidyCmd())
	return c
}

func logRows(all []store.Log) []logRow {
	rows := []logRow{}
	for _, l := range all {
		rows = append(rows, logRow{Log: l.ID, Boat: l.Boat, File: l.Label, State: stateWords(l),
			Loaded: l.LoadedAt.UTC().Format("2006-01-02 15:04"),
			First:  l.First, Last: l.Last, Rows: l.Rows, SetAside: l.SetAside,
			Questions: l.Questions, Replaced: l.Replaced})
	}
	return rows
}

func stateWords(l store.Log) string {
	if l.State == store.Replaced {
		return fmt.Sprintf("replaced by %d", l.ReplacedBy)
	}
	return l.State
}

// tellBoatNames says which boats are shown under another name than was logged, and which
// have nearly the same.
func (a *app) tellBoatNames(ctx context.Context, s *pipeline.Season) error {
	names, err := s.DB.BoatNames(ctx)
	if err != nil {
		return err
	}
	for _, logged := range slices.Sorted(maps.Keys(names)) {
		a.note("boat %q is shown as %q; 'wakeledger logs boat --take-back %q' parts them",
			logged, names[logged], logged)
	}
	near, err := s.NearBoats(ctx)
	for _, n := range near {
		a.note("boat %q is nearly %q: if they are one, 'wakeledger logs boat %q %q' joins them",
			n.Boat, n.Other, n.Boat, n.Other)
	}
	return err
}

// withExisting opens a season file that must be there, calls do, and makes the season's
// tables anew where that changed the logs.
func (a *app) withExisting(ctx context.Context, do func(*pipeline.Season) error) (err error) {
	s, err := a.openExisting(ctx)
	if err != nil {
		return err
	}
	defer func() { err = errors.Join(err, s.DB.Close()) }()
	if err := do(s); err != nil {
		return err
	}
	return s.Derive(ctx)
}

func (a *app) forgetCmd() *cobra.Command {
	return &cobra.Command{
		Use:     "forget LOG...",
		Short:   "Take logs out of the season, by number or name; 'logs restore' has them back",
		Example: "  wakeledger logs forget 3\n  wakeledger logs forget \"season 2025/log.xlsx\"",
		Args:    takesLogs,
		RunE: func(c *cobra.Command, names []string) error {
			return a.withExisting(c.Context(), func(s *pipeline.Season) error {
				gone, err := s.Forget(c.Context(), names)
				for _, l := range gone {
					fmt.Fprintf(a.out, "%s: forgotten; 'wakeledger logs restore %d' has it back\n", logWords(l), l.ID)
				}
				return err
			})
		},
	}
}

func (a *app) restoreCmd() *cobra.Command {
	c := &cobra.Command{
		Use:     "restore LOG",
		Short:   "Have a log back that was forgotten or replaced; what took its place leaves the season",
		Example: "  wakeledger logs restore 3",
		Args:    takesOne("a log, by its number or name", "3"),
		RunE: func(c *cobra.Command, names []string) error {
			return a.withExisting(c.Context(), func(s *pipeline.Season) error {
				r, err := s.Restore(c.Context(), names[0])
				if err != nil {
					return err
				}
				if r.Asked != nil {
					return a.tellAsked([]pipeline.LogReport{r})
				}
				fmt.Fprintf(a.out, "log %d, %s: back, %s\n", r.ID, r.Label, sentence.Count(r.Kept, "row", "rows"))
				for _, l := range r.Replaced {
					fmt.Fprintf(a.out, "%s: replaced by it\n", logWords(l))
				}
				if r.Known == pipeline.ReadAgain {
					a.note("answers have changed since it was read: load its file again")
				}
				return nil
			})
		},
	}
	a.identityFlags(c)
	return c
}

func (a *app) boatCmd() *cobra.Command {
	var takeBack bool
	c := &cobra.Command{
		Use:   "boat OLD NEW",
		Short: "Rename a boat, or join two spellings of one; the logs stay as they were read",
		Example: "  wakeledger logs boat \"Sea Wrem\" \"Sea Wren\"\n" +
			"  wakeledger logs boat --take-back \"Sea Wrem\"",
		Args: func(c *cobra.Command, args []string) error {
			if n := map[bool]int{true: 1, false: 2}[takeBack]; len(args) != n {
				return usage("boat: expected OLD NEW, or --take-back and the name as it was logged")
			}
			return nil
		},
		RunE: func(c *cobra.Command, args []string) error {
			return a.withExisting(c.Context(), func(s *pipeline.Season) error {
				if takeBack {
					if err := s.PartBoat(c.Context(), args[0]); err != nil {
						return boatUsage(err)
					}
					fmt.Fprintf(a.out, "%s: shown as logged again\n", args[0])
					return nil
				}
				if err := s.RenameBoat(c.Context(), args[0], args[1]); err != nil {
					return boatUsage(err)
				}
				fmt.Fprintf(a.out, "%s: shown as %s; 'wakeledger logs boat --take-back' parts them again\n", args[0],
					args[1])
				return nil
			})
		},
	}
	c.Flags().BoolVar(&takeBack, "take-back", false, "show the rows that were logged under this name under it again")
	return c
}

func boatUsage(err error) error {
	if errors.Is(err, pipeline.ErrNoBoat) {
		return usage("%s", strings.TrimPrefix(err.Error(), pipeline.ErrNoBoat.Error()+": "))
	}
	return err
}

func (a *app) tidyCmd() *cobra.Command {
	return &cobra.Command{
		Use:     "tidy",
		Short:   "Remove what is kept of logs that were replaced or forgotten; a copy of the season file is made first",
		Example: "  wakeledger logs tidy",
		Args:    takesNothing,
		RunE: func(c *cobra.Command, _ []string) error {
			var gone []store.Log
			err := a.withExisting(c.Context(), func(s *pipeline.Season) error {
				all, err := s.DB.Logs(c.Context())
				for _, l := range all {
					if l.State != store.In {
						gone = append(gone, l)
					}
				}
				return err
			})
			if err != nil {
				return err
			}
			if len(gone) == 0 {
				fmt.Fprintln(a.out, "nothing to tidy: no log was replaced or forgotten")
				return nil
			}
			beside, err := store.CopyBeside(a.db, "before tidy", time.Now())
			if err != nil {
				return err
			}
			if err := a.withExisting(c.Context(), func(s *pipeline.Season) error {
				return s.DB.Tidy(c.Context())
			}); err != nil {
				return err
			}
			before := size(a.db)
			if err := store.Compact(c.Context(), a.db); err != nil {
				return err
			}
			fmt.Fprintf(a.out, "%s removed that were replaced or forgotten; %s is %.1f MB now, %.1f MB before\n",
				sentence.Count(int64(len(gone)), "log", "logs"), a.db, size(a.db), before)
			fmt.Fprintf(a.out, "the season file as it was is in %s\n", beside)
			return nil
		},
	}
}

// size is that of a file in millions of bytes; 0 where it cannot be told.
func size(file string) float64 {
	st, err := os.Stat(file)
	if err != nil {
		return 0
	}
	return float64(st.Size()) / 1e6
}
