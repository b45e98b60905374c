package main

import (
	"context"
	"fmt"
	"slices"
	"strings"
	"time"

	"github.com/spf13/pflag"

	"wakeledger/pipeline"
	"wakeledger/pipeline/sentence"
	"wakeledger/pipeline/species"
	"wakeledger/pipeline/store"
	"wakeledger/queries"
)

// part is which part of the season is asked about.
type part struct{ year, boat, species, since, until string }

func (p *part) add(f *pflag.FlagSet) {
	f.StringVar(&p.year, "year", "", "only trips of this `year`, such as 2026")
	f.StringVar(&p.boat, "boat", "", "only trips of this `boat`")
	f.StringVar(&p.species, "species", "", "only fish and strikes logged as this `species` (name or FAO code); the "+
		"hours stay whole")
	f.StringVar(&p.since, "since", "", "only trips from this `day` on, such as 2026-06-01")
	f.StringVar(&p.until, "until", "", "only trips up to this `day`, that day too")
}

func (p *part) given() bool { return *p != part{} }

// check reads the days; its errors are of usage.
func (p *part) check() error {
	if p.year != "" && p.since+p.until != "" {
		return usage("give --year, or --since and --until, not both")
	}
	if p.year != "" && !yearForm.MatchString(p.year) {
		return usage("--year %q: expected four figures, such as 2026", p.year)
	}
	for flag, day := range map[string]string{"since": p.since, "until": p.until} {
		if _, err := time.Parse(time.DateOnly, day); day != "" && err != nil {
			return usage("--%s %q: expected a day as year-month-day, such as 2026-06-01", flag, day)
		}
	}
	if p.since != "" && p.until != "" && p.until < p.since {
		return usage("--until %s is before --since %s", p.until, p.since)
	}
	return nil
}

// narrow leaves of a season that was opened to be read the part asked about, and says what
// is left out by it.
func (a *app) narrow(ctx context.Context, s *pipeline.Season, p part) error {
	if !p.given() {
		return nil
	}
	trips, err := queries.AskTrips(ctx, s.DB)
	if err != nil {
		return err
	}
	f := store.Part{Since: p.since, Until: p.until}
	if p.year != "" {
		f.Since, f.Until = p.year+"-01-01", p.year+"-12-31"
	}
	if f.Boat, err = boatNamed(p.boat, trips); err != nil {
		return err
	}
	if f.Species, err = speciesNamed(ctx, s, p.species); err != nil {
		return err
	}
	left, err := s.DB.Narrow(ctx, f)
	if err != nil {
		return err
	}
	if left.Trips == 0 {
		return usage("no trip %s: the season file has trips %s", p.words(), spanOf(trips))
	}
	if left.Undated > 0 && f.Since+f.Until != "" {
		a.note("left out: %s without a date", sentence.Count(left.Undated, "trip", "trips"))
	}
	if left.Unnamed > 0 && f.Species != "" {
		a.note("left out: %s with no species logged", sentence.Count(left.Unnamed, "strike", "strikes"))
	}
	return nil
}

// words are the part in words: "of 2026 by Tansy Reach".
func (p *part) words() string {
	var w []string
	for _, x := range []struct{ before, text string }{{"of ", p.year}, {"by ", p.boat},
		{"since ", p.since}, {"until ", p.until}} {
		if x.text != "" {
			w = append(w, x.before+x.text)
		}
	}
	return strings.Join(w, " ")
}

// suffix is what a page's title says of the part that it is of, where the years do not.
func (p *part) suffix() string {
	var w []string
	for _, x := range []struct{ before, text string }{{"", p.boat}, {"only ", p.species},
		{"since ", p.since}, {"until ", p.until}} {
		if x.text != "" {
			w = append(w, ", "+x.before+x.text)
		}
	}
	return strings.Join(w, "")
}

// spanOf is from when to when trips are.
func spanOf(trips []queries.Trip) string {
	var days []string
	for _, t := range trips {
		if t.Date != nil {
			days = append(days, *t.Date)
		}
	}
	if len(days) == 0 {
		return "without a date"
	}
	return fmt.Sprintf("from %s to %s", dayWords(slices.Min(days)), dayWords(slices.Max(days)))
}

// boatNamed is a boat of the season file, in either case.
func boatNamed(name string, trips []queries.Trip) (string, error) {
	var boats []string
	for _, t := range trips {
		if strings.EqualFold(t.Boat, strings.TrimSpace(name)) {
			return t.Boat, nil
		}
		if !slices.Contains(boats, t.Boat) {
			boats = append(boats, t.Boat)
		}
	}
	if name == "" || len(boats) == 0 {
		return "", nil
	}
	return "", notOne("--boat", name, boats)
}

// speciesNamed is the code of a species by name or code, as the season's ocean settles it.
func speciesNamed(ctx context.Context, s *pipeline.Season, name string) (string, error) {
	if name == "" {
		return "", nil
	}
	list, err := species.Default()
	if err != nil {
		return "", err
	}
	ocean, err := s.DB.Setting(ctx, "ocean")
	if err != nil {
		return "", err
	}
	got := list.Find(name, ocean)
	switch {
	case got.Found:
		return got.Species.Code, nil
	case len(got.Candidates) > 0:
		return "", usage("--species %q can be several: give %s", name, namesOf(list, got.Candidates))
	}
	return "", usage("--species %q is not known. %s'wakeledger ask fish' lists those of your logs", name,
		didYouMean(name, speciesNames(list)))
}

// speciesNames are the codes of all species, then every name.
func speciesNames(list *species.List) []string {
	var codes []string
	for _, s := range list.All() {
		codes = append(codes, s.Code)
	}
	return append(codes, list.Names()...)
}

// namesOf are species' names by their codes, to choose from.
func namesOf(list *species.List, codes []string) string {
	var names []string
	for _, c := range codes {
		names = append(names, fmt.Sprintf("%s (%s)", c, nameOfSpecies(list, c)))
	}
	return strings.Join(names, " or ")
}

// nameOfSpecies is a species' name for its code; a name as logged stays.
func nameOfSpecies(list *species.List, code string) string {
	if s, ok := list.ByCode(code); ok && len(code) == 3 {
		return s.Name
	}
	return code
}
