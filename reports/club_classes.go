package reports

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"wakeledger/pipeline/factors"
	"wakeledger/reports/bundle"
)

// CheckClubEdges says which edges there are where those asked for, by factor, are none that boats
// share. What boats share is cut alike, because two ways to cut it would show the trips between:
// a reader can put classes together, and part none.
func CheckClubEdges(edges map[string][]float64) error {
	for factor, lower := range edges {
		shared := factors.Of(factor).Club
		if len(shared.Edges) == 0 {
			return fmt.Errorf("--edges %s: boats share no such classes. Give speed-band or lure-weight", factor)
		}
		for _, e := range lower {
			if !shared.Has(e) {
				return fmt.Errorf("--edges %s: boats share classes that begin at %s. Choose some of these; %s is none",
					factor, numbers(shared.Edges), numbers([]float64{e}))
			}
		}
	}
	return nil
}

// wider puts the classes that boats share together to those that the reader asks for.
func wider(boats []bundle.Boat, edges map[string][]float64) []bundle.Boat {
	out := slices.Clone(boats)
	for i := range out {
		out[i].Seasons = slices.Clone(out[i].Seasons)
		for j := range out[i].Seasons {
			s := &out[i].Seasons[j]
			s.Speeds, s.Lures = widerCells(s.Speeds, edges[factors.Speed]),
				widerCells(s.Lures, edges[factors.LureWeight])
		}
	}
	return out
}

func numbers(all []float64) string {
	words := make([]string, len(all))
	for i, v := range all {
		words[i] = factors.Number(v)
	}
	return strings.Join(words, ", ")
}

// widerCells names each cell by the class asked for that holds its own; without edges it is
// left as it is. Below the first edge is a class too.
func widerCells(cells []bundle.Cell, lower []float64) []bundle.Cell {
	if len(lower) == 0 {
		return cells
	}
	if lower[0] > 0 {
		lower = append([]float64{0}, lower...)
	}
	out := slices.Clone(cells)
	for i, c := range out {
		if class, ok := factors.Parse(c.Level); ok {
			out[i].Level = factors.Level(lower, class.Lo)
		}
	}
	return out
}

// lureClass is a club's class of lure weight, "[250, 500)", in the unit shown. Boats share it
// in whole grams; lures are made in whole ounces, so that the first of these above the edge is
// where the class begins: 750 g are 26.5 oz, and the class holds lures from 27 oz.
func (u units) lureClass(level string) (string, bool) {
	c, ok := factors.Parse(level)
	if u.weight != "lb" || !ok {
		return "", false
	}
	edge := func(grams float64) string {
		return factors.Number(max(0, math.Ceil(factors.Of(factors.LureWeight).US.ToShow(grams)-1e-9)))
	}
	if math.IsInf(c.Hi, 1) {
		return edge(c.Lo) + " oz or more", true
	}
	return edge(c.Lo) + " to " + edge(c.Hi) + " oz", true
}
