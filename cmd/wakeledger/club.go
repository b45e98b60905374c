package main

import (
	"cmp"
	"context"
	"errors"
	"fmt"
	"io"
	"slices"
	"strings"
	"time"

	"github.com/spf13/cobra"

	"wakeledger/pipeline"
	"wakeledger/pipeline/store"
	"wakeledger/queries"
	"wakeledger/reports"
	"wakeledger/reports/bundle"
	"wakeledger/reports/gather"
	"wakeledger/reports/output"
	"wakeledger/reports/page"
)

// clubFlags are what a boat settles of what it shares.
type clubFlags struct {
	names, noHeaviest, show bool
	again                   bool // of export: whatever the difference shows
}

func (f *clubFlags) add(c *cobra.Command) {
	c.Flags().BoolVar(&f.names, "names", false, "share the names of boat, captain and crew")
	c.Flags().BoolVar(&f.noHeaviest, "no-heaviest", false, "leave out the lists of the heaviest fish")
	c.Flags().BoolVar(&f.show, "show-what-is-shared", false, "print all that would leave the boat, and write nothing")
}

func (f *clubFlags) options(id string) gather.ShareOptions {
	o := gather.ShareOptions{ID: id, Names: f.names, Top: gather.DefaultTop}
	if f.noHeaviest {
		o.Top = 0
	}
	return o
}

func (a *app) exportClubCmd() *cobra.Command {
	var f clubFlags
	var id, boat string
	c := &cobra.Command{
		Use:   "club FILE.zip",
		Short: "Write what a boat shares with its club: counts by class, no position, no name, no day",
		Example: "  wakeledger export club --id blue-7 --show-what-is-shared\n" +
			"  wakeledger export club --id blue-7 blue-7.zip",
		Args: cobra.ArbitraryArgs,
		RunE: func(c *cobra.Command, args []string) (err error) {
			if len(args) > 1 {
				return usage("export club writes one file: %q is one word too many", args[1])
			}
			if len(args) == 0 && !f.show {
				return usage("export club: name the file to write, or give --show-what-is-shared")
			}
			season, keep, err := a.share(c.Context(), boat, id, f)
			if err != nil {
				return err
			}
			if f.show {
				return bundle.List(a.out, season)
			}
			if err := a.target(args[0], summaryFile).Write(func(w io.Writer) error {
				return bundle.Write(w, season)
			}); err != nil {
				return err
			}
			if err := a.remember(c.Context(), keep); err != nil {
				return fmt.Errorf("%s is written, but the season file does not remember it, "+
					"so that the next summary cannot be held against it: %w", args[0], err)
			}
			a.note(
				"club summary of boat %s: %s; 'wakeledger export club --show-what-is-shared' prints all that is in it",
				season.ID, args[0])
			return nil
		},
	}
	f.add(c)
	c.Flags().StringVar(&id, "id", "", "the `id` by which the club knows the boat; the season file keeps it")
	c.Flags().StringVar(&boat, "boat", "", "the `boat`, where the season file holds several")
	c.Flags().BoolVar(&f.again, "again", false,
		"write it although it shows single trips or days beside the last summary")
	a.forceFlag(c)
	return c
}

// toRemember is what the season file remembers of a summary: the boat's id with the club, and
// what was told, for the next one to be held against.
type toRemember struct{ boat, id, text string }

// share is what the boat shares, from a season file that is only read.
func (a *app) share(ctx context.Context, boat, id string, f clubFlags) (season bundle.Season, keep toRemember,
	err error) {
	s, err := a.openRead(ctx, a.db)
	if err != nil {
		return season, keep, err
	}
	defer func() { err = errors.Join(err, s.DB.Close()) }()
	return a.shareOf(ctx, s, boat, id, f)
}

// remember keeps in the season file what was shared.
func (a *app) remember(ctx context.Context, x toRemember) error {
	db, err := store.Open(ctx, a.db)
	if err != nil {
		return err
	}
	return errors.Join(db.PutSetting(ctx, idSetting(x.boat), x.id), db.PutSetting(ctx, sharedSetting(x.boat), x.text),
		db.Close())
}

// shareOf is what the boat shares, held against what it shared last. keep is for the season
// file to remember.
func (a *app) shareOf(ctx context.Context, s *pipeline.Season, boat, id string,
	f clubFlags) (season bundle.Season, keep toRemember, err error) {
	if boat, err = a.boatFor(ctx, s, boat); err != nil {
		return season, keep, err
	}
	if id == "" {
		if id, err = s.DB.Setting(ctx, idSetting(boat)); err != nil {
			return season, keep, err
		}
	}
	if id == "" {
		return season, keep, usage("export club: choose an id for the boat with --id, such as blue-7; it need not " +
			"be the boat's name")
	}
	if err := bundle.CheckID(id); err != nil {
		return season, keep, usage("--id: %v", err)
	}
	last, err := lastShared(ctx, s, boat)
	if err != nil && !f.again {
		return season, keep, err
	}
	season, src, err := gather.Share(ctx, s.DB, boat, f.options(id), last)
	var d *bundle.Difference
	if errors.As(err, &d) {
		if !f.again && !a.agreed(d) {
			return season, keep, usage("export club: %v. Wait for more trips, or write it all the same with --again", d)
		}
		a.note("written all the same: %v", d)
		season, src, err = gather.Share(ctx, s.DB, boat, f.options(id), nil)
	} else if err == nil && last != nil && !f.show {
		if says := last.Grown(season, src); says != "" {
			a.note("%s", says)
		}
	}
	if err != nil {
		return season, keep, err
	}
	text, err := bundle.Shared{On: a.clock().Format(time.DateOnly), Season: season, Source: src}.Remember()
	return season, toRemember{boat, id, text}, err
}

// boatFor is the boat that is named, or the only one.
func (a *app) boatFor(ctx context.Context, s *pipeline.Season, boat string) (string, error) {
	boats, err := boatsOf(ctx, s)
	switch {
	case err != nil:
		return "", err
	case boat == "" && len(boats) == 1:
		return boats[0], nil
	case boat == "" && len(boats) > 1:
		return "", usage("export club: the season file holds %d boats: name one with --boat", len(boats))
	case !slices.Contains(boats, boat):
		return "", fmt.Errorf("no trips of boat %q in %s", boat, a.db)
	}
	return boat, nil
}

// agreed asks on a terminal whether to write a summary that shows what d says.
func (a *app) agreed(d *bundle.Difference) bool {
	talk := a.dialogue()
	if talk == nil {
		return false
	}
	a.note("%v. Write it all the same? yes or no", d)
	line, err := talk.read()
	return err == nil && strings.EqualFold(strings.TrimSpace(line), "yes")
}

func (a *app) clock() time.Time {
	if a.cfg.Now != nil {
		return a.cfg.Now()
	}
	return time.Now()
}

// lastShared is the summary that the boat shared last, as the season file remembers it;
// nil where there is none.
func lastShared(ctx context.Context, s *pipeline.Season, boat string) (*bundle.Shared, error) {
	text, err := s.DB.Setting(ctx, sharedSetting(boat))
	if err != nil {
		return nil, err
	}
	return bundle.Recall(text)
}

func sharedSetting(boat string) string { return "club summary of " + boat }

func idSetting(boat string) string { return "club id of " + boat }

// boatsOf are the boats of a season file, in the order of their trips.
func boatsOf(ctx context.Context, s *pipeline.Season) ([]string, error) {
	trips, err := queries.AskTrips(ctx, s.DB)
	var boats []string
	for _, t := range trips {
		if !slices.Contains(boats, t.Boat) {
			boats = append(boats, t.Boat)
		}
	}
	return boats, err
}

func (a *app) reportClubCmd() *cobra.Command {
	var f clubFlags
	var r reportFlags
	var files []string
	c := &cobra.Command{
		Use:   "club [BUNDLE...]",
		Short: "The club's season on one page, from what each boat shared ('export club')",
		Long: "The club's season on one page, from what each boat shared with 'export club', or from season files " +
			"(--db, once for each). " +
			"--edges puts classes of speed or lure weight together; it cannot part them.",
		Example: "  wakeledger report club blue-7.zip red-2.zip\n" +
			"  wakeledger report club --db mine.duckdb --db yours.duckdb --out club.html\n" +
			"  wakeledger report club --units us --edges lure-weight=0,500,1000 blue-7.zip",
		RunE: func(c *cobra.Command, args []string) error {
			if err := r.check(); err != nil {
				return err
			}
			if err := reports.CheckClubEdges(a.cfg.Edges); err != nil {
				return usage("report club: %v", err)
			}
			if len(files) == 0 && len(args) == 0 {
				files = []string{a.db}
			}
			to := a.target(r.out, pageFile(page.ClubReport), append(slices.Clone(args), files...)...)
			if !f.show {
				if err := to.Check(); err != nil {
					return err
				}
			}
			g := gathering{app: a, flags: f, units: r.units}
			if err := g.gather(c.Context(), args, files); err != nil {
				return err
			}
			if f.show {
				return g.list(a.out)
			}
			return g.write(r, to)
		},
	}
	f.add(c)
	r.add(c.Flags(), "club.html")
	a.completeReport(c)
	a.forceFlag(c)
	c.Flags().StringArrayVar(&files, "db", nil, "a season `file`; give it again for each")
	return c
}

// gathering is the club's seasons on their way to the page.
type gathering struct {
	*app
	flags  clubFlags
	given  []bundle.Given
	chosen map[string]bool // ids that boats chose
	byName map[string]int  // place in unnamed of boats without an id
	tooFew int
	units  string // as asked, else as the first season file remembers
	now    time.Time
}

// gather reads bundles, then season files, one at a time.
func (g *gathering) gather(ctx context.Context, bundles, files []string) error {
	g.chosen, g.byName, g.now = map[string]bool{}, map[string]int{}, g.clock()
	for _, name := range bundles {
		s, err := bundle.ReadFile(name)
		if err != nil {
			return err
		}
		if !g.flags.names {
			s.People = nil
		}
		if g.flags.noHeaviest {
			s.Heaviest = nil
		}
		g.chosen[s.ID] = true
		g.given = append(g.given, bundle.Given{File: name, Season: s})
	}
	for _, name := range files {
		if err := g.file(ctx, name); err != nil {
			return fmt.Errorf("%s: %w", name, err)
		}
	}
	return nil
}

func (g *gathering) file(ctx context.Context, name string) (err error) {
	s, err := g.openRead(ctx, name)
	if err != nil {
		return err
	}
	defer func() { err = errors.Join(err, s.DB.Close()) }()
	if g.units, err = unitsAsked(ctx, s, g.units); err != nil {
		return err
	}
	boats, err := boatsOf(ctx, s)
	if err != nil {
		return err
	}
	for _, boat := range boats {
		id, err := s.DB.Setting(ctx, idSetting(boat))
		if err != nil {
			return err
		}
		if id == "" {
			id = g.idFor(boat)
		}
		g.chosen[id] = true
		season, err := g.share(ctx, s, boat, id)
		if errors.Is(err, bundle.ErrTooFew) {
			g.tooFew++
			g.note("%s: a boat of fewer than %d trips is left out", name, bundle.MinTrips)
			continue
		}
		if err != nil {
			return err
		}
		g.given = append(g.given, bundle.Given{File: name, Season: season})
	}
	return nil
}

// share is what a boat of a season file shows on the page, held against the summary that
// it shared last.
func (g *gathering) share(ctx context.Context, s *pipeline.Season, boat, id string) (bundle.Season, error) {
	last, err := lastShared(ctx, s, boat)
	if err != nil {
		return bundle.Season{}, err
	}
	season, _, err := gather.Share(ctx, s.DB, boat, g.flags.options(id), last)
	var d *bundle.Difference
	if errors.As(err, &d) {
		g.note("boat %s: %v. Keep this page to yourself", id, d)
		season, _, err = gather.Share(ctx, s.DB, boat, g.flags.options(id), nil)
	}
	return season, err
}

// idFor is the id of a boat that chose none: the same for the same boat, and
// nothing of its name.
func (g *gathering) idFor(boat string) string {
	n, known := g.byName[boat]
	for !known {
		n++
		id := fmt.Sprintf("boat-%d", n)
		if !g.chosen[id] {
			g.byName[boat], known = n, true
		}
	}
	return fmt.Sprintf("boat-%d", n)
}

func (g *gathering) list(w io.Writer) error {
	for _, s := range g.given {
		if err := bundle.List(w, s.Season); err != nil {
			return err
		}
	}
	return nil
}

func (g *gathering) write(r reportFlags, to output.Target) error {
	boats, repeats, err := bundle.Match(g.given)
	if err != nil {
		return err
	}
	for _, line := range repeats {
		g.note("%s", line)
	}
	in := reports.ClubInput{Title: r.title, Generated: g.now, Units: cmp.Or(g.units, "metric"), Boats: boats,
		Names: g.flags.names, Edges: g.cfg.Edges, Repeats: len(repeats), TooFew: g.tooFew}
	if in.Title == "" {
		in.Title = "The club's season"
	}
	return g.writePage(to, func(w io.Writer) error { return reports.Club(w, in) })
}
