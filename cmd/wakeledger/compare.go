package main

import (
	"context"
	"errors"
	"fmt"
	"regexp"
	"slices"
	"strings"

	"wakeledger/pipeline"
	"wakeledger/queries"
	"wakeledger/reports"
)

var yearForm = regexp.MustCompile(`^[0-9]{4}$`)

// beside is the season beside another: the one in the season file with, or, where
// with is a year, that year of this file beside its latest other one. "" is none.
func (a *app) beside(ctx context.Context, s *pipeline.Season, with string) (b reports.Beside, err error) {
	if with == "" {
		return b, nil
	}
	this, err := queries.AskSeasonTrips(ctx, s.DB)
	if err != nil {
		return b, err
	}
	if yearForm.MatchString(with) {
		return years(this, with)
	}
	o, err := a.openRead(ctx, with)
	if err != nil {
		return b, fmt.Errorf("--compare: %w", err)
	}
	defer func() { err = errors.Join(err, o.DB.Close()) }()
	b.Season[0] = this
	if b.Season[1], err = queries.AskSeasonTrips(ctx, o.DB); err != nil {
		return b, err
	}
	b.Names = [2]string{strings.Join(b.Season[0].Years(), " and "), strings.Join(b.Season[1].Years(), " and ")}
	if b.Names[0] == b.Names[1] || b.Names[0] == "" || b.Names[1] == "" {
		b.Names = [2]string{"This season", "the other season"}
	}
	return b, nil
}

// years is the latest other year of a season file beside the year named.
func years(all queries.SeasonTrips, with string) (reports.Beside, error) {
	have := all.Years()
	rest := slices.DeleteFunc(slices.Clone(have), func(y string) bool { return y == with })
	if len(rest) == len(have) || len(rest) == 0 {
		return reports.Beside{}, usage("--compare %s: the season file holds the years %s: name one, and another must be left", with, strings.Join(have, ", "))
	}
	latest := rest[len(rest)-1]
	return reports.Beside{Names: [2]string{latest, with}, Season: [2]queries.SeasonTrips{all.Year(latest), all.Year(with)}}, nil
}
