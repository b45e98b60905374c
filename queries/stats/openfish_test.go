package stats

import (
	"fmt"
	"math"
	"strconv"
	"testing"
)

// TestOpenFishAgainstR: the 157 weighed fish of Laengelmavesi (testdata/openfish.R,
// rrcov, GPL-2 or later), pooled and by species, fitted here and by R's lm: the same
// coefficients to 8 digits. Each fish is then predicted from the others: the share
// that its 90 % interval holds is printed, and must be R's, fish for fish in number.
func TestOpenFishAgainstR(t *testing.T) {
	var want []struct {
		Species  string
		N, Held  int
		LnA      float64 `json:"ln_a"`
		B, S, R2 float64
		LnASE    float64 `json:"ln_a_se"`
		BSE      float64 `json:"b_se"`
	}
	loadOracle(t, "openfish.json", &want)
	d := readColumns(t, "openfish.csv")
	if len(d["weight_g"]) != 159 {
		t.Fatalf("%d fish, want 159", len(d["weight_g"]))
	}
	held, all := 0, 0
	for _, w := range want {
		lengths, weights := fishOf(t, d, w.Species)
		f, ok := FitLogLog(lengths, weights)
		if !ok || f.N != w.N {
			t.Fatalf("species %s: %d fish, R has %d", w.Species, f.N, w.N)
		}
		for _, c := range []struct {
			name      string
			got, want float64
		}{{"ln a", f.LnA, w.LnA}, {"b", f.B, w.B}, {"ln a s.e.", f.LnASE, w.LnASE}, {"b s.e.", f.BSE, w.BSE}, {"s", f.S, w.S}, {"R2", f.R2, w.R2}} {
			if math.Abs(c.got-c.want) > 1e-8*math.Abs(c.want) {
				t.Errorf("species %s, %s: %.12g, R's lm has %.12g", w.Species, c.name, c.got, c.want)
			}
		}
		in := heldByOthers(t, lengths, weights)
		t.Logf("species %s: the 90 %% interval from the others held %d of %d fish (%.1f %%)", w.Species, in, w.N, 100*float64(in)/float64(w.N))
		if in != w.Held {
			t.Errorf("species %s: %d held, by R %d", w.Species, in, w.Held)
		}
		if w.Species != "all" {
			held, all = held+in, all+w.N
		}
	}
	share := float64(held) / float64(all)
	t.Logf("fitted by species: %d of %d fish held (%.1f %%)", held, all, 100*share)
	// Two standard errors of a share of 0.9 in 157.
	if math.Abs(share-0.9) > 2*math.Sqrt(0.9*0.1/float64(all)) {
		t.Errorf("%.1f %% held", 100*share)
	}
}

// fishOf are the weighed fish of a species, or of all.
func fishOf(t *testing.T, d map[string][]string, species string) (lengths, weights []float64) {
	t.Helper()
	for i, s := range d["species"] {
		w, err := strconv.ParseFloat(d["weight_g"][i], 64)
		if err != nil && d["weight_g"][i] != "NA" {
			t.Fatal(err)
		}
		if (species == "all" || s == species) && w > 0 {
			l, err := strconv.ParseFloat(d["length_cm"][i], 64)
			if err != nil {
				t.Fatal(fmt.Errorf("row %d: %w", i+2, err))
			}
			lengths, weights = append(lengths, l), append(weights, w)
		}
	}
	return lengths, weights
}

// heldByOthers is how many fish lie in the 90 % interval fitted to all others.
func heldByOthers(t *testing.T, lengths, weights []float64) int {
	t.Helper()
	held := 0
	for i := range lengths {
		f, ok := FitLogLog(without(lengths, i), without(weights, i))
		p, ok2 := f.At(lengths[i], .9)
		if !ok || !ok2 {
			t.Fatal("no fit without fish", i)
		}
		if p.Interval.Contains(weights[i]) {
			held++
		}
	}
	return held
}
