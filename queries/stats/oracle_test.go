package stats

import (
	"encoding/json"
	"fmt"
	"math"
	"os"
	"testing"
)

// oracleTol is how near the random data sets must come to R and statsmodels.
const oracleTol = 1e-6

// num reads a number, or "NaN", "Inf" and "-Inf", which JSON has no word for.
type num float64

func (v *num) UnmarshalJSON(b []byte) error {
	switch string(b) {
	case `"NaN"`:
		*v = num(math.NaN())
	case `"Inf"`:
		*v = num(math.Inf(1))
	case `"-Inf"`:
		*v = num(math.Inf(-1))
	default:
		return json.Unmarshal(b, (*float64)(v))
	}
	return nil
}

func values(vs []num) []float64 {
	out := make([]float64, len(vs))
	for i, v := range vs {
		out[i] = float64(v)
	}
	return out
}

// loadOracle reads a file that a script in testdata made.
func loadOracle(t *testing.T, file string, into any) {
	t.Helper()
	b, err := os.ReadFile("testdata/" + file)
	if err != nil {
		t.Fatal(err)
	}
	if err := json.Unmarshal(b, into); err != nil {
		t.Fatalf("%s: %v", file, err)
	}
}

// wantCases guards against a file that was cut short.
func wantCases(t *testing.T, got int) {
	t.Helper()
	if got != 200 {
		t.Fatalf("%d data sets, want 200", got)
	}
}

// counts makes Counts of parallel slices.
func counts(x []int64, t []float64) []Count {
	out := make([]Count, len(x))
	for i := range x {
		out[i] = Count{x[i], t[i]}
	}
	return out
}

func caseName(what string, i int) string { return fmt.Sprintf("%s %d", what, i) }
