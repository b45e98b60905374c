package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"regexp"
	"slices"
	"strings"

	"wakeledger/pipeline"
	"wakeledger/queries"
	"wakeledger/reports"
	"wakeledger/reports/gather"
	"wakeledger/reports/output"
)

var yearForm = regexp.MustCompile(`^[0-9]{4}$`)

// writeYears writes the page of two seasons: two years of the season file s, or s beside
// another season file.
func (a *app) writeYears(ctx context.Context, s *pipeline.Season, r reportFlags, to output.Target) error {
	in := reports.YearsInput{Generated: s.Now()}
	err := error(nil)
	if with := r.compare; with != "" && !yearForm.MatchString(with) {
		err = a.twoFiles(ctx, s, r, &in)
	} else {
		err = a.twoYears(ctx, s, r, &in)
	}
	if err != nil {
		return err
	}
	names := in.Beside.Names
	in.Title = r.titleOr(boatTitle(in.Seasons[0].Boats, strings.ToUpper(names[0][:1])+names[0][1:]+" beside "+names[1]))
	return a.writePage(to, func(w io.Writer) error { return reports.Years(w, in) })
}

// twoYears gathers the year that --compare names, else the last but one, and the latest
// other year of the season file.
func (a *app) twoYears(ctx context.Context, s *pipeline.Season, r reportFlags, in *reports.YearsInput) error {
	all, err := queries.AskSeasonTrips(ctx, s.DB)
	if err != nil {
		return err
	}
	have := all.Years()
	if len(have) < 2 {
		return usage("two years are set beside each other, and the season file holds one or none. --compare FILE " +
			"names another season file")
	}
	with := r.compare
	if with == "" {
		with = have[len(have)-2]
	}
	rest := slices.DeleteFunc(slices.Clone(have), func(y string) bool { return y == with })
	if len(rest) == len(have) {
		return usage("--compare %s: the season file holds the years %s: name one of them",
			with, strings.Join(have, ", "))
	}
	in.Beside.Names = [2]string{rest[len(rest)-1], with}
	for i, year := range in.Beside.Names {
		p := r.part
		p.year = year
		if err := a.oneSeason(ctx, a.db, p, r.units, i, in); err != nil {
			return err
		}
	}
	return nil
}

// twoFiles gathers the season file s and the one that --compare names.
func (a *app) twoFiles(ctx context.Context, s *pipeline.Season, r reportFlags, in *reports.YearsInput) error {
	for i, file := range []string{a.db, r.compare} {
		if err := a.oneSeason(ctx, file, r.part, r.units, i, in); err != nil {
			return err
		}
		in.Beside.Names[i] = strings.Join(in.Beside.Season[i].Years(), " and ")
	}
	if in.Beside.Names[0] == in.Beside.Names[1] || in.Beside.Names[0] == "" || in.Beside.Names[1] == "" {
		in.Beside.Names = [2]string{"this season", "the other season"}
	}
	return nil
}

// oneSeason gathers a part of a season file as season i of two.
func (a *app) oneSeason(ctx context.Context, file string, p part, units string, i int,
	in *reports.YearsInput) (err error) {
	s, err := a.openRead(ctx, file)
	if err != nil {
		if file != a.db {
			err = fmt.Errorf("--compare: %w", err)
		}
		return err
	}
	defer func() { err = errors.Join(err, s.DB.Close()) }()
	if err := a.narrow(ctx, s, p); err != nil {
		return err
	}
	if in.Seasons[i], err = gather.Season(ctx, s.DB, units); err != nil {
		return err
	}
	in.Beside.Season[i], err = queries.AskSeasonTrips(ctx, s.DB)
	return err
}
