package main

import (
	"bufio"
	"context"
	"errors"
	"fmt"
	"io"
	"slices"
	"time"

	"github.com/spf13/cobra"

	"wakeledger/pipeline"
	"wakeledger/queries"
	"wakeledger/reports"
	"wakeledger/reports/bundle"
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
			s, err := a.openExisting(c.Context())
			if err != nil {
				return err
			}
			defer func() { err = errors.Join(err, s.DB.Close()) }()
			season, err := a.shareOf(c.Context(), s, boat, id, f)
			if err != nil {
				return err
			}
			if f.show {
				return bundle.List(a.out, season)
			}
			if err := writeWhole(args[0], func(w *bufio.Writer) error { return bundle.Write(w, season) }); err != nil {
				return err
			}
			a.note("club summary of boat %s: %s; 'wakeledger export club --show-what-is-shared' prints all that is in it", season.ID, args[0])
			return nil
		},
	}
	f.add(c)
	c.Flags().StringVar(&id, "id", "", "the id by which the club knows the boat; kept in the season file")
	c.Flags().StringVar(&boat, "boat", "", "the boat, where the season file holds several")
	return c
}

// shareOf is what the boat shares, its id kept in the season file for next time.
func (a *app) shareOf(ctx context.Context, s *pipeline.Season, boat, id string, f clubFlags) (bundle.Season, error) {
	boats, err := boatsOf(ctx, s)
	if err != nil {
		return bundle.Season{}, err
	}
	switch {
	case boat == "" && len(boats) == 1:
		boat = boats[0]
	case boat == "" && len(boats) > 1:
		return bundle.Season{}, usage("export club: the season file holds %d boats: name one with --boat", len(boats))
	case !slices.Contains(boats, boat):
		return bundle.Season{}, fmt.Errorf("no trips of boat %q in %s", boat, a.db)
	}
	if id == "" {
		if id, err = s.DB.Setting(ctx, idSetting(boat)); err != nil {
			return bundle.Season{}, err
		}
	}
	if id == "" {
		return bundle.Season{}, usage("export club: choose an id for the boat with --id, such as blue-7; it need not be the boat's name")
	}
	if err := bundle.CheckID(id); err != nil {
		return bundle.Season{}, usage("--id: %v", err)
	}
	season, err := reports.GatherShare(ctx, s.DB, boat, f.options(id))
	if err == nil && !f.show {
		err = s.DB.PutSetting(ctx, idSetting(boat), id)
	}
	return season, err
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
			g := gathering{app: a, flags: f}
			if err := g.gather(c.Context(), args, files); err != nil {
				return err
			}
			if f.show {
				return g.list(a.out)
			}
			return g.write(r)
		},
	}
	f.add(c)
	r.add(c)
	c.Flags().Lookup("out").DefValue = "club.html"
	r.out = "club.html"
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
	one := *g.app
	one.db = name
	s, err := one.openExisting(ctx)
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

func (g *gathering) write(r reportFlags) error {
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
	return g.writeReport(r.out, func(w io.Writer) error { return reports.Club(w, in) })
}
