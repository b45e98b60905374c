package phrase

import (
	"math"
	"testing"
)

// TestAround holds that a number before "around", behind a length, is the girth, and that a guess stays one.
func TestAround(t *testing.T) {
	for text, want := range map[string][2]float64{
		"tuna 67 lb, 44 1/2 inches long and 35 around": {113.03, 88.9},
		"tuna 44 in long, around 35 lb":                {111.76, 0},
		"tuna around 44 in":                            {0, 0},
	} {
		bites := Tell(text, Defaults{}).Bites
		if len(bites) != 1 || math.Abs(bites[0].LengthCm-want[0]) > 0.1 && want[0] > 0 ||
			math.Abs(bites[0].GirthCm-want[1]) > 0.1 {
			t.Errorf("%q: %+v, expected %v", text, bites, want)
		}
	}
}
