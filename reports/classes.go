package reports

import (
	"context"
	"math"
	"strconv"
	"strings"

	"wakeledger/pipeline/store"
	"wakeledger/queries"
)

// usClass is how a factor that is a number is parted for readers of pounds and yards:
// the lower edges of its classes, and what a unit is in the season file's unit.
type usClass struct {
	factor, unit string
	size, zero   float64 // value = size * (shown - zero)
	edges        []float64
}

// usClasses are round in the units shown. The ounce is 28.349523125 g and the yard
// 0.9144 m, both exactly (international yard and pound agreement, 1959).
var usClasses = []usClass{
	{"lure-weight", "oz", 28.349523125, 0, []float64{0, 8, 16, 24, 32, 40, 48}},
	{"setback", "yd", 0.9144, 0, []float64{0, 50, 100, 150, 200, 250, 300, 350, 400, 450, 500}},
	{queries.GapFactor, "yd", 0.9144, 0, []float64{0, 5, 10, 15, 20, 30, 50}},
	{"sea-temp", "°F", 5.0 / 9, 32, []float64{26, 50, 54, 58, 62, 66, 70, 74, 78, 82, 86}},
}

// inside is a value shown in the season file's unit, to the six decimals that the
// questions round to, so that what is logged as 70 °F stands in the class from 70.
func (u usClass) inside(shown float64) float64 {
	return math.Round(u.size*(shown-u.zero)*1e6) / 1e6
}

func (u usClass) shown(inside float64) float64 { return inside/u.size + u.zero }

// words is a class as it is written in a sentence. Edges that are not round in the
// unit shown, because they were set in another, have one decimal.
func (u usClass) words(lo, hi float64) string {
	edge := func(inside float64) string {
		return strconv.FormatFloat(math.Round(u.shown(inside)*10)/10, 'f', -1, 64)
	}
	if math.IsInf(hi, 1) {
		return edge(lo) + " " + u.unit + " or more"
	}
	return edge(lo) + " to " + edge(hi) + " " + u.unit
}

// bands are the classes of the factor: where the user has set edges, those.
func (u usClass) bands(stored []store.Band, set bool) []store.Band {
	var out []store.Band
	if set {
		for _, b := range stored {
			if b.Factor == u.factor {
				b.Level = u.words(b.Lo, b.Hi)
				out = append(out, b)
			}
		}
		return out
	}
	for i, edge := range u.edges {
		b := store.Band{Factor: u.factor, Lo: u.inside(edge), Hi: math.Inf(1)}
		if i+1 < len(u.edges) {
			b.Hi = u.inside(u.edges[i+1])
		}
		b.Level = u.words(b.Lo, b.Hi)
		out = append(out, b)
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
	for _, u := range usClasses {
		bands = append(bands, u.bands(stored, strings.Contains(" "+edges, " "+u.factor+"="))...)
	}
	return db.WithBands(ctx, bands, f)
}
