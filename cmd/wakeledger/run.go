package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"slices"
	"strings"
	"syscall"
	"unicode/utf8"

	"github.com/spf13/cobra"

	"wakeledger/pipeline"
	"wakeledger/pipeline/store"
	"wakeledger/pipeline/unit"
)

// Exit codes.
const (
	done       = 0
	failed     = 1
	wrongUsage = 2
	// a question on effort, strikes or the year is open, or which log a file is; with --strict also: rows
	// were set aside
	notSettled = 3
)

var (
	errUsage    = errors.New("wrong usage")
	errSetAside = errors.New("rows or cells were set aside")
)

// app is what the commands share: where to write, and the flags of all.
type app struct {
	out, notes io.Writer // control characters of logs are shown there, not obeyed
	plain      io.Writer // standard output as it is, for JSON and CSV; on a terminal the same as out
	colours    io.Writer // standard output as it is, for tables: their cells are made safe one by one
	stdout     io.Writer // where standard output goes, to see whether it is a terminal
	screen     io.Writer // standard error as it is: the bar and the dialogue work on it
	db         string
	force      bool
	strict     bool
	cfg        pipeline.Config
	dates      string
	mapping    string
	decimal    string
	answers    []string // ID=CHOICE
	tracks     trackFlags
}

// run is the program: it returns the exit code.
func run(ctx context.Context, args []string, out, notes io.Writer) int {
	results := &sink{to: out}
	a := &app{out: readable{results}, plain: results, colours: results, stdout: out,
		notes: readable{notes}, screen: notes}
	if isTerminal(out) {
		a.plain = a.out
	}
	err := inUTF8(args)
	at := "wakeledger"
	if err == nil {
		root := a.root()
		root.SetArgs(asMeant(root, args))
		root.SetOut(a.out)
		root.SetErr(a.notes)
		var c *cobra.Command
		if c, err = root.ExecuteContextC(ctx); c != nil {
			at = c.CommandPath()
		}
	}
	if lost := results.failure(); lost != nil {
		return a.tellLost(lost)
	}
	return a.tellEnd(ctx, err, at)
}

// tellLost says that the results did not come where they were to go.
func (a *app) tellLost(err error) int {
	if !closedBefore(err) {
		a.note("wakeledger: the results could not all be written: %s", cause(err))
	}
	return failed
}

// cause is what the system says of a write that failed.
func cause(err error) string {
	var e syscall.Errno
	if errors.As(err, &e) {
		return e.Error()
	}
	return err.Error()
}

// inUTF8 fails where a word of the command is no UTF-8: no name of a log, boat or file
// could be kept or shown as it is.
func inUTF8(args []string) error {
	for _, w := range args {
		if !utf8.ValidString(w) {
			return usage("the name %q is not in UTF-8: rename it, in letters that every program can show", w)
		}
	}
	return nil
}

// tellEnd says how the run of a command ended, and gives its exit code.
func (a *app) tellEnd(ctx context.Context, err error, command string) int {
	notes := a.notes
	switch {
	case err == nil:
		return done
	case errors.Is(err, errSetAside):
		fmt.Fprintln(notes, "wakeledger:", err)
		return notSettled
	case errors.Is(err, errOpen), errors.Is(err, errWhichLog): // which were printed
		return notSettled
	case errors.Is(err, pipeline.ErrNoLog):
		fmt.Fprintln(notes, "wakeledger:", err)
		return wrongUsage
	case errors.Is(err, errUsage):
		fmt.Fprintf(notes, "wakeledger: %v\nTry '%s --help'.\n", strings.TrimPrefix(err.Error(), errUsage.Error()+": "),
			command)
		return wrongUsage
	case ctx.Err() != nil:
		fmt.Fprintln(notes, "wakeledger: stopped; the season file is as it was before the log that was being read")
		return failed
	}
	var lost *fs.PathError
	if errors.As(err, &lost) && errors.Is(lost, fs.ErrNotExist) && err.Error() == lost.Error() {
		fmt.Fprintln(notes, "wakeledger:", noFile(lost.Path))
		return failed
	}
	fmt.Fprintln(notes, "wakeledger:", store.InWords(err))
	if os.Getenv(detailsFlag) != "" {
		fmt.Fprintln(notes, err)
	}
	return failed
}

// detailsFlag names what has to be in the environment for the database's own words to be
// shown: they are for those who mend the program.
const detailsFlag = "WAKELEDGER_DETAILS"

func usage(format string, args ...any) error {
	return fmt.Errorf("%w: %s", errUsage, fmt.Sprintf(format, args...))
}

func (a *app) root() *cobra.Command {
	cobra.MousetrapHelpText = "" // which would turn away who drops logs on the program's icon
	root := &cobra.Command{
		Use:   "wakeledger [LOG...]",
		Short: "Reads a boat's fishing logs: what worked, how heavy the fish were, and a report of the season",
		Long: "Reads a boat's fishing logs: what worked, how heavy the fish were, and a report of the season.\n\n" +
			"Logs alone are read as by the command season: drop them on the program, or name them.",
		Example: "  wakeledger log-2026.xlsx\n  wakeledger ask strike-rate --by lure\n  wakeledger report " +
			"season --units us",
		Version:       version(),
		SilenceErrors: true, SilenceUsage: true,
		Args: func(c *cobra.Command, args []string) error {
			if len(args) > 0 {
				return noCommand(c, args[0])
			}
			return nil
		},
		RunE: func(c *cobra.Command, _ []string) error { return c.Help() },
	}
	root.PersistentFlags().StringVar(&a.db, "db", "season.duckdb", "the season `file`")
	var edges []string
	root.PersistentFlags().StringArrayVar(&edges, "edges", nil,
		"where a factor's `classes` begin, such as speed-band=0,7,9,11; or minutes of dawn and dusk: light=45. load "+
			"and season keep it")
	root.PersistentPreRunE = func(*cobra.Command, []string) (err error) {
		for _, e := range edges {
			factor, _, _ := strings.Cut(e, "=")
			if !slices.Contains(pipeline.EdgeFactors(), factor) {
				return notOne("--edges: factor", factor, pipeline.EdgeFactors())
			}
		}
		if edges != nil {
			if a.cfg.Edges, err = pipeline.ParseEdges(edges); err != nil {
				err = usage("--edges: %v", err)
			}
		}
		return err
	}
	root.SetFlagErrorFunc(wrongFlag)
	wordHelp(root)
	root.SetVersionTemplate("wakeledger {{.Version}}\n")
	root.AddCommand(a.seasonCmd(), a.loadCmd(), a.askCmd(), a.reportCmd(), a.weighCmd(), a.setbackCmd(), a.blankCmd(),
		a.checkCmd(), a.answersCmd(), a.logsCmd(), a.exportCmd())
	return root
}

// readingFlags are those of every command that reads logs.
func (a *app) readingFlags(c *cobra.Command) {
	f := c.Flags()
	f.StringVar(&a.cfg.Boat, "boat", "", "the `boat`, where a log names none")
	f.StringVar(&a.cfg.Zone, "zone", "", "the time `zone`, where a log names none, such as Pacific/Auckland or UTC-9")
	f.StringVar(&a.cfg.Units, "log-units", "", "`us` or metric: what numbers without a unit are in")
	f.StringVar(&a.dates, "dates", "", "how 03/04/2026 is meant: `day-first` or month-first")
	f.StringVar(&a.decimal, "decimal", "", "the decimal mark, `comma` or point: what 1,234 means")
	f.StringVar(&a.cfg.Ocean, "ocean", "", "the `ocean` (pacific, atlantic, ...): says which fish is meant by "+
		"bluefin or dorado")
	f.DurationVar(&a.cfg.TripGap, "trip-gap", 0, "so much `time` without lines out begins another trip, where the "+
		"log names none (6h)")
	f.StringVar(&a.mapping, "mapping", "", "a `file` that says how sheets are read; 'wakeledger check "+
		"--write-mapping' writes one")
	f.StringArrayVar(&a.answers, "answer", nil, "answer a question about a log, as `ID=CHOICE`: an option's number, "+
		"or the figure. The season file keeps it")
	a.tracks.add(f)
	f.BoolVar(&a.strict, "strict", false, "end with exit code 3 if anything was set aside")
}

// config completes the configuration from the flags.
func (a *app) config() (pipeline.Config, error) {
	orders := map[string]unit.Order{"": unit.OrderUnknown, "day-first": unit.DayFirst, "month-first": unit.MonthFirst}
	marks := map[string]unit.Mark{"": unit.MarkUnknown, "comma": unit.MarkComma, "point": unit.MarkPoint}
	a.cfg.Order, a.cfg.Mark = orders[a.dates], marks[a.decimal]
	for _, f := range []struct {
		flag, word string
		list       []string
	}{
		{"dates", a.dates, []string{"day-first", "month-first"}}, {"decimal", a.decimal, []string{"comma", "point"}},
		{"log-units", a.cfg.Units, unitNames},
	} {
		if f.word != "" {
			if err := oneWord(f.flag, f.word, f.list...); err != nil {
				return a.cfg, err
			}
		}
	}
	if err := a.tracks.into(&a.cfg); err != nil {
		return a.cfg, err
	}
	if a.mapping != "" {
		var err error
		if a.cfg.Mapping, err = pipeline.ReadMapping(a.mapping); err != nil {
			if errors.Is(err, fs.ErrNotExist) {
				return a.cfg, usage("--mapping: %s", noFile(a.mapping))
			}
			return a.cfg, usage("%v", err)
		}
	}
	return a.cfg, nil
}

// open opens the season file, its tables up to date.
func (a *app) open(ctx context.Context) (*pipeline.Season, error) {
	s, err := pipeline.Open(ctx, a.db, a.cfg)
	if err != nil {
		return nil, err
	}
	a.tellOlder(s)
	if err := s.Derive(ctx); err != nil {
		return nil, errors.Join(err, s.DB.Close())
	}
	return s, nil
}

// tellOlder says where a season file that was brought up to date is as it was.
func (a *app) tellOlder(s *pipeline.Season) {
	if older := s.DB.Older(); older != "" {
		a.note("%s was made by an earlier version and is brought up to date; as it was, it is in %s", a.db, older)
	}
}

func (a *app) note(format string, args ...any) { fmt.Fprintf(a.notes, format+"\n", args...) }
