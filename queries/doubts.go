package queries

import (
	"cmp"
	"context"
	"slices"

	"wakeledger/pipeline/estimate"
	"wakeledger/pipeline/store"
)

// Doubt is a row that is kept and counted, but may be wrong.
type Doubt struct {
	Check  string `json:"check"`
	File   string `json:"file"`
	Sheet  string `json:"sheet"`
	Row    int64  `json:"row"`
	Found  string `json:"found"`
	Reason string `json:"reason"`
	// The trip that the row is of; nil where it is of none, or of several.
	Trip *string `json:"trip"`
	Boat *string `json:"boat"`
}

// AskDoubts lists the rows that are kept with a warning.
func AskDoubts(ctx context.Context, db *store.DB) ([]Doubt, error) {
	out, err := ask[Doubt](ctx, db, "doubts")
	if err != nil {
		return nil, err
	}
	fish, err := ask[measured](ctx, db, "measures")
	if err != nil {
		return nil, err
	}
	for _, f := range fish {
		for _, d := range f.measures().Doubts() {
			out = append(out, Doubt{Check: d.Check, File: f.File, Sheet: f.Sheet, Row: f.Row, Found: d.Found,
				Reason: d.Reason, Trip: f.Trip, Boat: f.Boat})
		}
	}
	slices.SortStableFunc(out, func(a, b Doubt) int {
		return cmp.Or(cmp.Compare(a.Check, b.Check), cmp.Compare(a.File, b.File),
			cmp.Compare(a.Sheet, b.Sheet), cmp.Compare(a.Row, b.Row),
			cmp.Compare(a.Found, b.Found), cmp.Compare(a.Reason, b.Reason))
	})
	return out, nil
}

// measured is a fish as measures.sql gives it.
type measured struct {
	File       string   `json:"file"`
	Sheet      string   `json:"sheet"`
	Row        int64    `json:"row"`
	Trip       *string  `json:"trip"`
	Boat       *string  `json:"boat"`
	Name       *string  `json:"name"`
	LongestCM  *float64 `json:"longest_cm"`
	HeaviestKG *float64 `json:"heaviest_kg"`
	LengthCM   *float64 `json:"length_cm"`
	GirthCM    *float64 `json:"girth_cm"`
	ScaleKG    *float64 `json:"scale_kg"`
	RoundKG    *float64 `json:"round_kg"`
	TapeKG     *float64 `json:"tape_kg"`
	TapeMethod *string  `json:"tape_method"`
}

func (f measured) measures() estimate.Measures {
	m := estimate.Measures{LongestCM: known(f.LongestCM), HeaviestKG: known(f.HeaviestKG),
		LengthCM: known(f.LengthCM), GirthCM: known(f.GirthCM),
		ScaleKG: known(f.ScaleKG), RoundKG: known(f.RoundKG), TapeKG: known(f.TapeKG)}
	if f.Name != nil {
		m.Name = *f.Name
	}
	if f.TapeMethod != nil {
		m.TapeMethod = *f.TapeMethod
	}
	return m
}

// known is what is pointed to, else zero.
func known(v *float64) float64 {
	if v == nil {
		return 0
	}
	return *v
}

// place is the row of a log that tells of a fish.
type place struct {
	file, sheet string
	row         int64
}

// doubtedFish are the places of the fish whose measures are doubted, each with the first
// doubt.
func doubtedFish(ctx context.Context, db *store.DB) (map[place]estimate.Doubt, error) {
	fish, err := ask[measured](ctx, db, "measures")
	out := map[place]estimate.Doubt{}
	for _, f := range fish {
		if d := f.measures().Doubts(); len(d) > 0 {
			out[place{f.File, f.Sheet, f.Row}] = d[0]
		}
	}
	return out, err
}
