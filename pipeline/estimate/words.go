package estimate

import (
	"fmt"
	"math"
	"slices"
	"strings"
)

// oceans are the ocean words of the tables. A word that ends in another one
// lies within it: "north pacific" in "pacific".
var oceans = []string{"pacific", "north pacific", "south pacific", "eastern pacific", "western pacific",
	"atlantic", "north atlantic", "south atlantic", "eastern atlantic", "western atlantic", "mediterranean", "indian"}

// logged is v, or 0 where v cannot be a measure.
func logged(v float64) float64 {
	if v > 0 && !math.IsInf(v, 0) {
		return v
	}
	return 0
}

// oceanWord is an ocean as the tables write it.
func oceanWord(s string) string {
	s = strings.ToLower(strings.Join(strings.Fields(strings.ReplaceAll(s, "-", " ")), " "))
	return strings.TrimSuffix(s, " ocean")
}

// oceanName is an ocean as oceanWord gives it, with its capitals: North Atlantic.
func oceanName(ocean string) string {
	words := strings.Fields(ocean)
	for i, w := range words {
		words[i] = strings.ToUpper(w[:1]) + w[1:]
	}
	return strings.Join(words, " ")
}

// oceanFit tells how well a row's oceans fit the fish's: 3 the same, 2 the row's
// holds the fish's, 1 the fish's holds the row's, 0 neither or not set.
func oceanFit(row, fish string) int {
	best := 0
	for _, o := range strings.Split(row, ";") {
		switch {
		case fish == "":
		case o == fish:
			best = max(best, 3)
		case strings.HasSuffix(fish, " "+o):
			best = max(best, 2)
		case strings.HasSuffix(o, " "+fish):
			best = max(best, 1)
		}
	}
	return best
}

var kindWords = map[string]string{
	"": "", "FL": ForkLength, "SFL": ForkLength, "FORK": ForkLength, "FORK LENGTH": ForkLength, "STRAIGHT": ForkLength,
	"STRAIGHT FORK LENGTH": ForkLength, "CFL": CurvedFork, "CURVED": CurvedFork, "CURVED FORK LENGTH": CurvedFork,
	"TL": TotalLength, "TOTAL": TotalLength, "TOTAL LENGTH": TotalLength, "LJFL": LowerJaw,
	"LOWER JAW FORK LENGTH": LowerJaw,
	"SHORT":                 LowerJaw, "EFL": EyeFork, "EYE FORK LENGTH": EyeFork, "PCL": PreCaudal,
	"PRE CAUDAL": PreCaudal, "PFCFL": PectoralCFL,
	"PCKL": PectoralKL, "PECTORAL TO KEEL": PectoralKL,
}

// lengthKind is the length kind that a word means; an unknown word stays itself,
// in capitals, and meets no relation and no conversion.
func lengthKind(s string) string {
	s = strings.ToUpper(strings.Join(strings.Fields(strings.ReplaceAll(s, "-", " ")), " "))
	if k, ok := kindWords[s]; ok {
		return k
	}
	return s
}

// KnowsLengthKind tells whether a word means a length kind; an empty one is "not logged".
func KnowsLengthKind(s string) bool {
	_, ok := kindNames[lengthKind(s)]
	return ok || strings.TrimSpace(s) == ""
}

// KnowsWeightState tells whether a word means a weight state; an empty one is "not logged".
func KnowsWeightState(s string) bool {
	return slices.Contains([]string{"", Round, Bled, Gutted, GilledGutted, Dressed}, weightState(s))
}

var stateWords = map[string]string{
	"": "", "round": Round, "whole": Round, "bled": Bled, "gutted": Gutted, "eviscerated": Gutted, "gg": GilledGutted,
	"g&g": GilledGutted, "gilled gutted": GilledGutted, "gilled and gutted": GilledGutted,
	"gutted and gilled": GilledGutted,
	"dressed":           Dressed, "headed and gutted": Dressed,
}

// weightState is the weight state that a word means; an unknown word stays itself.
func weightState(s string) string {
	s = strings.ToLower(strings.Join(strings.Fields(strings.ReplaceAll(s, "-", " ")), " "))
	if w, ok := stateWords[s]; ok {
		return w
	}
	return s
}

var kindNames = map[string]string{
	ForkLength: "straight fork length", CurvedFork: "curved fork length", TotalLength: "total length",
	LowerJaw: "lower-jaw fork length", EyeFork: "eye-fork length", PreCaudal: "pre-caudal length",
	PectoralKL:  "pectoral-fin to keel length",
	PectoralCFL: "pectoral-fin curved fork length",
}

// kindName is a length kind in words.
func kindName(kind string) string {
	if n, ok := kindNames[kind]; ok {
		return n
	}
	return kind
}

// forkKinds are the straight lengths to the fork that stand for each other: the
// fork length of a billfish is taken from its lower jaw.
var forkKinds = []string{ForkLength, LowerJaw}

// sameKind tells whether a length of one kind may stand for the other as it is.
func sameKind(a, b string) bool {
	return a == b || slices.Contains(forkKinds, a) && slices.Contains(forkKinds, b)
}

// cm writes a length as a captain reads it.
func cm(v float64) string { return fmt.Sprintf("%.0f cm", v) }

var stateNames = map[string]string{GilledGutted: "gilled and gutted"}

// stateName is a weight state in words.
func stateName(state string) string {
	if n, ok := stateNames[state]; ok {
		return n
	}
	return state
}
