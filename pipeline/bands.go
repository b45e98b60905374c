package pipeline

import (
	"fmt"
	"maps"
	"math"
	"slices"
	"strconv"
	"strings"
	"time"

	"wakeledger/pipeline/sky"
	"wakeledger/pipeline/store"
)

// Edges are the lower ends of the classes of factors that are numbers, by
// factor; the last class is open above. Under "light" stand the minutes about
// sunrise and sunset that are dawn and dusk.
type Edges map[string][]float64

// defaultEdges are those of the design: knots over ground, g, m, degrees C.
func defaultEdges() Edges {
	return Edges{
		"speed-band":  {0, 6, 8, 10, 12, 14, 16},
		"lure-weight": {0, 250, 500, 750, 1000, 1250, 1500},
		"setback":     {0, 50, 100, 150, 200, 250, 300, 350, 400, 450},
		"sea-temp":    {-3, 10, 12, 14, 16, 18, 20, 22, 24, 26, 28, 30},
		"light":       {sky.Margin.Minutes()},
	}
}

// ParseEdges reads settings such as "speed-band=0,7,9,11" or "light=45". Factors
// that are not set keep the default. The error names the setting at fault.
func ParseEdges(settings []string) (Edges, error) {
	all := defaultEdges()
	set := Edges{}
	for _, s := range settings {
		factor, list, _ := strings.Cut(s, "=")
		if all[factor] == nil {
			return nil, fmt.Errorf("edges %q: expected one of %s, then = and numbers", s, strings.Join(EdgeFactors(), ", "))
		}
		var values []float64
		for _, word := range strings.Split(list, ",") {
			v, err := strconv.ParseFloat(strings.TrimSpace(word), 64)
			if err != nil || math.IsNaN(v) || math.IsInf(v, 0) {
				return nil, fmt.Errorf("edges %q: %q is no number", s, word)
			}
			if len(values) > 0 && v <= values[len(values)-1] {
				return nil, fmt.Errorf("edges %q: each must be above the one before", s)
			}
			values = append(values, v)
		}
		if factor == "light" && (len(values) != 1 || values[0] < 0 || values[0] > 360) {
			return nil, fmt.Errorf("edges %q: expected minutes about sunrise and sunset, 0 to 360", s)
		}
		set[factor] = values
	}
	return set, nil
}

// EdgeFactors are the factors whose classes may be set.
func EdgeFactors() []string { return slices.Sorted(maps.Keys(defaultEdges())) }

// String is the edges as settings, one a factor, in a fixed order.
func (e Edges) String() string {
	var out []string
	for _, factor := range slices.Sorted(maps.Keys(e)) {
		words := make([]string, len(e[factor]))
		for i, v := range e[factor] {
			words[i] = number(v)
		}
		out = append(out, factor+"="+strings.Join(words, ","))
	}
	return strings.Join(out, " ")
}

// margin is how long about sunrise and sunset is dawn and dusk.
func (e Edges) margin() time.Duration {
	return time.Duration(e.of("light")[0] * float64(time.Minute))
}

func (e Edges) of(factor string) []float64 {
	if lower, ok := e[factor]; ok {
		return lower
	}
	return defaultEdges()[factor]
}

// bands are the classes of all factors. Where the user's edges begin above the
// default's, what lies below them is a class too, so that nothing falls out.
func (e Edges) bands() []store.Band {
	var bands []store.Band
	for _, factor := range []string{"speed-band", "lure-weight", "setback", "sea-temp"} {
		lower := e.of(factor)
		if first := defaultEdges()[factor][0]; lower[0] > first {
			lower = append([]float64{first}, lower...)
		}
		for i, lo := range lower {
			b := store.Band{Factor: factor, Lo: lo, Hi: math.Inf(1), Level: number(lo) + " and up"}
			if i+1 < len(lower) {
				b.Hi = lower[i+1]
				b.Level = fmt.Sprintf("[%s, %s)", number(lo), number(b.Hi))
			}
			bands = append(bands, b)
		}
	}
	return bands
}

func number(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }
