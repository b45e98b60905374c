package main

import (
	"context"
	"io"

	"wakeledger/pipeline"
	"wakeledger/queries"
	"wakeledger/reports"
	"wakeledger/reports/gather"
	"wakeledger/reports/output"
)

// writeScale writes the report of the tape against the scale.
func (a *app) writeScale(ctx context.Context, s *pipeline.Season, r reportFlags, to output.Target) error {
	in, err := gather.Scale(ctx, s.DB, r.units)
	if err != nil {
		return err
	}
	in.Generated = s.Now()
	if in.Title, err = titleOf(ctx, s, r, "Tape and scale"); err != nil {
		return err
	}
	return a.writePage(to, func(w io.Writer) error { return reports.Scale(w, in) })
}

// writeDeck writes the printed page for the boat.
func (a *app) writeDeck(ctx context.Context, s *pipeline.Season, r reportFlags, to output.Target) error {
	in, err := gather.Deck(ctx, s.DB, r.units)
	if err != nil {
		return err
	}
	in.Generated = s.Now()
	if in.Title, err = titleOf(ctx, s, r, "Deck page"); err != nil {
		return err
	}
	if r.title == "" {
		in.Title = boatTitle(in.Boats, in.Title)
	}
	return a.writePage(to, func(w io.Writer) error { return reports.Deck(w, in) })
}

// writeTrack writes the page of where the boat ran, for the boat alone.
func (a *app) writeTrack(ctx context.Context, s *pipeline.Season, r reportFlags, to output.Target) error {
	in, err := gather.Track(ctx, s.DB, r.cell.minutes)
	if err != nil {
		return err
	}
	in.Generated = s.Now()
	if in.Title, err = titleOf(ctx, s, r, "Track"); err != nil {
		return err
	}
	return a.writePage(to, func(w io.Writer) error { return reports.Track(w, in) })
}

// titleOf is the title that was asked for, else kind and the season's years.
func titleOf(ctx context.Context, s *pipeline.Season, r reportFlags, kind string) (string, error) {
	trips, err := queries.AskTrips(ctx, s.DB)
	return r.titleOr(kind + ", " + lowerFirst(seasonTitle(trips))), err
}

func lowerFirst(s string) string { return string(s[0]|0x20) + s[1:] }
