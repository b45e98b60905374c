package pipeline

import (
	"fmt"
	"strconv"

	"wakeledger/pipeline/store"
)

// edges are the lower ends of each factor's classes; the last is open above.
var edges = []struct {
	factor string
	lower  []float64
}{
	{"speed-band", []float64{0, 6, 8, 10, 12, 14, 16}},                      // knots over ground
	{"lure-weight", []float64{0, 250, 500, 750, 1000, 1250, 1500}},          // g
	{"setback", []float64{0, 50, 100, 150, 200, 250, 300, 350, 400, 450}},   // m
	{"sea-temp", []float64{-3, 10, 12, 14, 16, 18, 20, 22, 24, 26, 28, 30}}, // degrees C
}

func defaultBands() []store.Band {
	var bands []store.Band
	for _, e := range edges {
		for i, lo := range e.lower {
			b := store.Band{Factor: e.factor, Lo: lo, Level: number(lo) + " and up"}
			if i+1 < len(e.lower) {
				b.Hi = e.lower[i+1]
				b.Level = fmt.Sprintf("[%s, %s)", number(lo), number(b.Hi))
			}
			bands = append(bands, b)
		}
	}
	return bands
}

func number(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }
