package reports

import (
	"context"

	"wakeledger/pipeline/store"
	"wakeledger/queries"
	"wakeledger/reports/bundle"
)

// DefaultTop is how many fish a list of the heaviest takes from a boat.
const DefaultTop = 3

// sizeEdges are the lower edges of the club's classes of round weight in kg.
var sizeEdges = []float64{0, 10, 25, 50, 75, 100, 150, 200, 300}

// ShareOptions are what a boat settles of what it shares.
type ShareOptions struct {
	ID    string // that the boat is matched by
	Names bool   // the boat's name and those aboard
	Top   int    // fish of each list of the heaviest; 0 for no list
}

// GatherShare is what one boat of a season file shares.
func GatherShare(ctx context.Context, db *store.DB, boat string, o ShareOptions) (bundle.Season, error) {
	c, err := queries.AskClub(ctx, db, boat)
	if err != nil {
		return bundle.Season{}, err
	}
	src := bundle.Source{Months: pieces(c.Months), Speeds: pieces(c.Speeds), Lures: pieces(c.Lures), Top: o.Top}
	for _, f := range c.Fish {
		piece, size := clubFish(f)
		src.Fish, src.Sizes = append(src.Fish, piece), append(src.Sizes, size)
	}
	if o.Names {
		for _, n := range c.Names {
			src.People = append(src.People, bundle.Person{Role: n.Role, Name: n.Name})
		}
	}
	open, err := queries.AskOpen(ctx, db)
	if err != nil {
		return bundle.Season{}, err
	}
	src.Open = open.Questions
	return bundle.Make(o.ID, src)
}

func pieces(rows []queries.ClubPiece) []bundle.Piece {
	out := make([]bundle.Piece, len(rows))
	for i, r := range rows {
		out[i] = bundle.Piece{Trip: r.Trip, Level: r.Level, BoatHours: r.BoatHours, LineHours: r.LineHours, Strikes: r.Strikes,
			OnHours: r.OnHours, Hookups: r.Hookups, Landed: r.Landed, Released: r.Released}
	}
	return out
}

// clubFish is one fish as a piece, and its class of size.
func clubFish(f queries.ClubFish) (bundle.Piece, string) {
	p := bundle.Piece{Trip: f.Trip, Fish: 1, Species: f.Species, Month: f.Month}
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
	if isScale(f.Method) {
		p.OnScale, p.List, p.LoKG, p.HiKG = 1, *f.Method, nil, nil
	}
	return p, bundle.Class(sizeEdges, p.WeightKG)
}
