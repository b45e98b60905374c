package spelling

import (
	"strings"
	"testing"
)

// TestShort holds which texts are a phrase cut short, and that the phrase itself, its plural, other
// orders and other letters are none.
func TestShort(t *testing.T) {
	for _, c := range []struct {
		text, phrase string
		want         bool
	}{
		{"nl", "number lines", true}, {"nlines", "number lines", true}, {"no ln", "number lines", false},
		{"num ln", "number lines", true},
		{"st", "start", true}, {"st", "start time", true}, {"et", "end time", true},
		{"tid", "trip id", true}, {"tm", "time", true},
		{"wght", "weight", true}, {"lgth", "length", true}, {"spd", "speed", true},
		{"len", "length", true}, {"g", "girth", true},
		{"sx", "sex", true}, {"wm", "weight method", true}, {"st tm", "start time", true}, {"lnout", "line out", true},
		{"length", "length", false}, {"line", "lines", false}, {"dps", "speed", false},
		{"spx", "speed", false}, {"", "speed", false},
		{"time st", "start time", false}, {"long", "length", false},
		{"speeds", "speed", false}, {"n", "number lines", false},
	} {
		if got := Short(c.text, strings.Fields(c.phrase)); got != c.want {
			t.Errorf("%q for %q: %v, expected %v", c.text, c.phrase, got, c.want)
		}
	}
}
