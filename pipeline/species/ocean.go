package species

import (
	"fmt"
	"slices"
	"strings"
)

// oceans are the accepted words. A word that ends in another one lies within it.
// Parts of an ocean stand here only where a name or a stock differs by them.
var oceans = []string{"pacific", "north pacific", "south pacific", "eastern pacific", "western pacific",
	"atlantic", "north atlantic", "south atlantic", "eastern atlantic", "western atlantic", "mediterranean", "indian"}

// oceanWords are other usual ways to write an ocean.
var oceanWords = map[string]string{
	"gulf of mexico": "western atlantic", "caribbean": "western atlantic",
	"gulf": "western atlantic", "med": "mediterranean",
	"east atlantic": "eastern atlantic", "west atlantic": "western atlantic", "northwest atlantic": "western atlantic",
	"northeast atlantic":    "eastern atlantic",
	"eastern north pacific": "eastern pacific", "east pacific": "eastern pacific", "west pacific": "western pacific",
	"northern pacific": "north pacific", "southern pacific": "south pacific", "northern atlantic": "north atlantic",
	"southern atlantic": "south atlantic", "hawaii": "north pacific", "baja": "eastern pacific",
	"california": "eastern pacific",
}

// Oceans returns the ocean words that Find understands.
func Oceans() []string { return slices.Clone(oceans) }

// ParseOcean returns the ocean word that s means, empty for an empty s. The error
// lists the accepted words.
func ParseOcean(s string) (string, error) {
	key := strings.TrimSuffix(strings.TrimSuffix(normalise(s), " ocean"), " sea")
	if key == "" || slices.Contains(oceans, key) {
		return key, nil
	}
	if o, ok := oceanWords[key]; ok {
		return o, nil
	}
	return "", fmt.Errorf("%q is no ocean known here: use one of %s", s, strings.Join(oceans, ", "))
}

// within tells whether ocean a is a part of ocean b.
func within(a, b string) bool { return b != "" && strings.HasSuffix(a, " "+b) }
