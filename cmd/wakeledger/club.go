package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"slices"
	"time"

	"github.com/spf13/cobra"

	"wakeledger/pipeline"
	"wakeledger/pipeline/store"
	"wakeledger/queries"
	"wakeledger/reports"
	"wakeledger/reports/bundle"
	"wakeledger/reports/output"
	"wakeledger/reports/page"
)

// clubFlags are what a boat settles of what it shares.
type clubFlags struct {
	names, noHeaviest, show bool
}

func (f *clubFlags) add(c *cobra.Command) {
	c.Flags().BoolVar(&f.names, "names", false, "share the boat's name and those of captain and crew")
	c.Flags().BoolVar(&f.noHeaviest, "no-heaviest", false, "leave out the lists of the heaviest fish")
	c.Flags().BoolVar(&f.show, "show-what-is-shared", false, "print all that would leave the boat, and write nothing")
}

func (f *clubFlags) options(id string) reports.ShareOptions {
	o := reports.ShareOptions{ID: id, Names: f.names, Top: reports.DefaultTop}
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
		Args: takes(cobra.MaximumNArgs(1)),
		RunE: func(c *cobra.Command, args []string) (err error) {
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
			if err := a.target(args[0], summaryFile).Write(func(w io.Writer) error { return bundle.Write(w, season) }); err != nil {
				return err
			}
			a.keepID(c.Context(), keep)
			a.note("club summary of boat %s: %s; 'wakeledger export club --show-what-is-shared' prints all that is in it", season.ID, args[0])
			return nil
		},
	}
	f.add(c)
	c.Flags().StringVar(&id, "id", "", "the id by which the club knows the boat; kept in the season file")
	c.Flags().StringVar(&boat, "boat", "", "the boat, where the season file holds several")
	a.forceFlag(c)
	return c
}

// chosenID is the id of a boat that the season file does not keep yet; none where boat is "".
type chosenID struct{ boat, id string }

// share is what the boat shares, and the id that is new to the season file.
func (a *app) share(ctx context.Context, boat, id string, f clubFlags) (shared bundle.Season, keep chosenID, err error) {
	s, err := a.openRead(ctx, a.db)
	if err != nil {
		return shared, keep, err
	}
	defer func() { err = errors.Join(err, s.DB.Close()) }()
	shared, boat, err = a.shareOf(ctx, s, boat, id, f)
	if err != nil {
		return shared, keep, err
	}
	kept, err := s.DB.Setting(ctx, idSetting(boat))
	if kept != shared.ID {
		keep = chosenID{boat, shared.ID}
	}
	return shared, keep, err
}

// keepID keeps an id in the season file for next time. Where that cannot be, the summary
// is written all the same, and it is said.
func (a *app) keepID(ctx context.Context, keep chosenID) {
	if keep.id == "" {
		return
	}
	db, err := store.Open(ctx, a.db)
	if err == nil {
		err = errors.Join(db.PutSetting(ctx, idSetting(keep.boat), keep.id), db.Close())
	}
	if err != nil {
		a.note("the id %s could not be kept in %s: give --id again next time", keep.id, a.db)
	}
}

// shareOf is what the boat shares under the id given, or the one that the season file keeps.
func (a *app) shareOf(ctx context.Context, s *pipeline.Season, boat, id string, f clubFlags) (bundle.Season, string, error) {
	boats, err := boatsOf(ctx, s)
	if err != nil {
		return bundle.Season{}, "", err
	}
	switch {
	case boat == "" && len(boats) == 1:
		boat = boats[0]
	case boat == "" && len(boats) > 1:
		return bundle.Season{}, "", usage("export club: the season file holds %d boats: name one with --boat", len(boats))
	case !slices.Contains(boats, boat):
		return bundle.Season{}, "", fmt.Errorf("no trips of boat %q in %s", boat, a.db)
	}
	if id == "" {
		if id, err = s.DB.Setting(ctx, idSetting(boat)); err != nil {
			return bundle.Season{}, "", err
		}
	}
	if id == "" {
		return bundle.Season{}, "", usage("export club: choose an id for the boat with --id, such as blue-7; it need not be the boat's name")
	}
	if err := bundle.CheckID(id); err != nil {
		return bundle.Season{}, "", usage("--id: %v", err)
	}
	season, err := reports.GatherShare(ctx, s.DB, boat, f.options(id))
	return season, boat, err
}

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
		Short: "Write one summary page of many boats, from season files (--db, repeated) and from what 'export club' wrote",
		Example: "  wakeledger report club blue-7.zip red-2.zip\n" +
			"  wakeledger report club --db mine.duckdb --db yours.duckdb --out club.html",
		RunE: func(c *cobra.Command, args []string) error {
			if err := r.check(); err != nil {
				return err
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
			g := gathering{app: a, flags: f}
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
	r.add(c)
	c.Flags().Lookup("out").DefValue = "club.html"
	r.out = "club.html"
	a.forceFlag(c)
	c.Flags().StringArrayVar(&files, "db", nil, "a season file; may be given several times")
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
	now    time.Time
}

// gather reads bundles, then season files, one at a time.
func (g *gathering) gather(ctx context.Context, bundles, files []string) error {
	g.chosen, g.byName, g.now = map[string]bool{}, map[string]int{}, time.Now()
	if g.cfg.Now != nil {
		g.now = g.cfg.Now()
	}
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
		season, err := reports.GatherShare(ctx, s.DB, boat, g.flags.options(id))
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
	in := reports.ClubInput{Title: r.title, Generated: g.now, Units: r.units, Boats: boats, Names: g.flags.names, Repeats: len(repeats), TooFew: g.tooFew}
	if in.Title == "" {
		in.Title = "The club's season"
	}
	return g.writePage(to, func(w io.Writer) error { return reports.Club(w, in) })
}
