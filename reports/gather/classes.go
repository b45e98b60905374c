package gather

import (
	"context"
	"math"
	"strings"

	"wakeledger/pipeline/factors"
	"wakeledger/pipeline/store"
)

// wordsIn is a class of the season file as it is written in a sentence in a scale's unit. Edges that
// are not round in it, because they were set in another, have one decimal.
func wordsIn(s factors.Scale, c factors.Class) string {
	edge := func(inside float64) string { return factors.Number(math.Round(s.ToShow(inside)*10) / 10) }
	if math.IsInf(c.Hi, 1) {
		return edge(c.Lo) + " " + s.Unit + " or more"
	}
	return edge(c.Lo) + " to " + edge(c.Hi) + " " + s.Unit
}

// usBands are the classes of a factor for readers of pounds and yards: where the user has set
// edges, those.
func usBands(f factors.Factor, stored []store.Band, set bool) []store.Band {
	var out []store.Band
	if set {
		for _, b := range stored {
			if b.Factor == f.Name {
				b.Level = wordsIn(f.US, factors.Class{Lo: b.Lo, Hi: b.Hi})
				out = append(out, b)
			}
		}
		return out
	}
	for _, c := range factors.Split(f.US.Edges) {
		c.Lo, c.Hi = f.US.Inside(c.Lo), f.US.Inside(c.Hi)
		out = append(out, store.Band{Factor: f.Name, Lo: c.Lo, Hi: c.Hi, Level: wordsIn(f.US, c)})
	}
	return out
}

// InUnits runs f with the classes of lure weight, setback, gap and sea temperature in the
// units shown: round ones, or those that the user has set, in their words.
func InUnits(ctx context.Context, db *store.DB, units string, f func() error) error {
	if units != "us" {
		return f()
	}
	stored, err := db.Bands(ctx)
	if err != nil {
		return err
	}
	edges, err := db.Setting(ctx, "edges")
	if err != nil {
		return err
	}
	var bands []store.Band
	for _, f := range factors.Shown() {
		bands = append(bands, usBands(f, stored, strings.Contains(" "+edges, " "+f.Name+"="))...)
	}
	return db.WithBands(ctx, bands, f)
}
