package gather

import (
	"context"

	"wakeledger/pipeline/store"
	"wakeledger/queries"
	"wakeledger/reports"
	"wakeledger/reports/bundle"
)

// DefaultTop is how many fish a list of the heaviest takes from a boat.
const DefaultTop = 3

// ShareOptions are what a boat settles of what it shares.
type ShareOptions struct {
	ID    string // that the boat is matched by
	Names bool   // the boat's name and those aboard
	Top   int    // fish of each list of the heaviest; 0 for no list
}

// Share is what one boat of a season file shares after the summary that it shared
// last (nil: none), and what that is made of, to be remembered with it. See bundle.Make
// for the errors.
func Share(ctx context.Context, db *store.DB, boat string, o ShareOptions,
	last *bundle.Shared) (bundle.Season, bundle.Source, error) {
	c, err := queries.AskClub(ctx, db, boat)
	if err != nil {
		return bundle.Season{}, bundle.Source{}, err
	}
	src := bundle.Source{Months: pieces(c.Months), Speeds: pieces(c.Speeds), Lures: pieces(c.Lures), Top: o.Top}
	afloat(src)
	for _, f := range c.Fish {
		piece, size := clubFish(f)
		src.Fish, src.Sizes = append(src.Fish, piece), append(src.Sizes, size)
	}
	open, err := queries.AskOpen(ctx, db)
	if err != nil {
		return bundle.Season{}, bundle.Source{}, err
	}
	src.Open = open.Questions
	remember := src
	if o.Names {
		for _, n := range c.Names {
			src.People = append(src.People, bundle.Person{Role: n.Role, Name: n.Name})
		}
	}
	s, err := bundle.Make(o.ID, src, last)
	return s, remember, err
}

// afloat gives each piece by speed and lure the boat's hours of its day.
func afloat(src bundle.Source) {
	type day struct {
		trip int64
		day  string
	}
	hours := map[day]float64{}
	for _, p := range src.Months {
		hours[day{p.Trip, p.Day}] += p.BoatHours
	}
	for _, pieces := range [][]bundle.Piece{src.Speeds, src.Lures} {
		for i, p := range pieces {
			pieces[i].Afloat = hours[day{p.Trip, p.Day}]
		}
	}
}

func pieces(rows []queries.ClubPiece) []bundle.Piece {
	out := make([]bundle.Piece, len(rows))
	for i, r := range rows {
		out[i] = bundle.Piece{Trip: r.Trip, Start: r.Start, Day: r.Day, Level: r.Level, BoatHours: r.BoatHours,
			LineHours: r.LineHours, Strikes: r.Strikes,
			Hookups: r.Hookups, Landed: r.Landed, Released: r.Released}
	}
	return out
}

// clubFish is one fish as a piece, and its class of size.
func clubFish(f queries.ClubFish) (bundle.Piece, string) {
	p := bundle.Piece{Trip: f.Trip, Start: f.Start, Day: f.Day, Fish: 1, Species: f.Species,
		Month: f.Month, Doubt: f.Doubt}
	if f.Landed {
		p.Landed = 1
	}
	if f.Released {
		p.Released = 1
	}
	if f.WeightKG == nil {
		return p, bundle.NoWeight
	}
	p.WeightKG, p.LoKG, p.HiKG, p.List = *f.WeightKG, f.WeightLoKG, f.WeightHiKG, bundle.Estimate
	if reports.IsScale(f.Method) {
		p.OnScale, p.List, p.LoKG, p.HiKG = 1, *f.Method, nil, nil
	}
	return p, bundle.SizeClass(p.WeightKG)
}
