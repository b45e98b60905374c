package pipeline

import (
	"fmt"
	"maps"
	"math"
	"slices"
	"strconv"
	"strings"
	"time"

	"wakeledger/pipeline/factors"
	"wakeledger/pipeline/sky"
	"wakeledger/pipeline/store"
)

// Edges are the lower ends of the classes of factors that are numbers, by
// factor; the last class is open above. Under "light" stand the minutes about
// sunrise and sunset that are dawn and dusk.
type Edges map[string][]float64

// light is the setting of the minutes about sunrise and sunset that are dawn and dusk.
const light = "light"

// defaultEdges are those of the factors' table.
func defaultEdges() Edges {
	e := Edges{light: {sky.Margin.Minutes()}}
	for _, f := range classed() {
		e[f.Name] = f.Classes.Edges
	}
	return e
}

// classed are the factors that are parted into classes.
func classed() []factors.Factor {
	return slices.DeleteFunc(factors.All(), func(f factors.Factor) bool { return len(f.Classes.Edges) == 0 })
}

// ParseEdges reads settings such as "speed-band=0,7,9,11" or "light=45". Factors
// that are not set keep the default. The error names the setting at fault.
func ParseEdges(settings []string) (Edges, error) {
	all := defaultEdges()
	set := Edges{}
	for _, s := range settings {
		factor, list, _ := strings.Cut(s, "=")
		if all[factor] == nil {
			return nil, fmt.Errorf("edges %q: expected one of %s, then = and numbers", s,
				strings.Join(EdgeFactors(), ", "))
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
		if factor == light && (len(values) != 1 || values[0] < 0 || values[0] > 360) {
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
			words[i] = factors.Number(v)
		}
		out = append(out, factor+"="+strings.Join(words, ","))
	}
	return strings.Join(out, " ")
}

// margin is how long about sunrise and sunset is dawn and dusk.
func (e Edges) margin() time.Duration {
	return time.Duration(e.of(light)[0] * float64(time.Minute))
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
	for _, f := range classed() {
		lower := e.of(f.Name)
		if first := f.Classes.Edges[0]; lower[0] > first {
			lower = append([]float64{first}, lower...)
		}
		for _, c := range factors.Split(lower) {
			bands = append(bands, store.Band{Factor: f.Name, Lo: c.Lo, Hi: c.Hi, Level: c.String()})
		}
	}
	return bands
}
