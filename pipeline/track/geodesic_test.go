package track

import (
	"encoding/csv"
	"math"
	"os"
	"strconv"
	"testing"
)

// The distances of testdata/geodesics.csv are GeographicLib's; geodesics.sh
// tells how they were made. Its first rows are those that GeographicLib's own
// tests hold as hard (GeodSolve0, 2, 4, 5 and near antipodes).
func TestDistanceAgainstGeographicLib(t *testing.T) {
	f, err := os.Open("testdata/geodesics.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	worst := 0.0
	for _, r := range rows[1:] {
		var v [5]float64
		for i := range v {
			if v[i], err = strconv.ParseFloat(r[i], 64); err != nil {
				t.Fatal(err)
			}
		}
		got := Distance(v[0], v[1], v[2], v[3])
		// 5 nm: what 17 digits of a longitude leave of a distance of metres
		if off := math.Abs(got - v[4]); v[4] > 19.9e6 {
			if off > 0.005*v[4] { // near antipodes
				t.Errorf("%v to %v: %.0f m, want %.0f", r[:2], r[2:4], got, v[4])
			}
		} else if off > 1e-9*v[4] && off > 5e-9 {
			t.Errorf("%v to %v: %.9f m, want %.9f", r[:2], r[2:4], got, v[4])
		} else if v[4] > 10 {
			worst = max(worst, off/v[4])
		}
	}
	if len(rows) < 300 {
		t.Errorf("only %d pairs", len(rows)-1)
	}
	t.Logf("%d pairs, largest relative difference %.1e", len(rows)-1, worst)
}

// A plane stands in for the geodesic within a window of fixes.
func TestPlaneIsTheGeodesicNearby(t *testing.T) {
	for _, lat := range []float64{-60, -36.8, 0, 12, 45, 70} {
		p := planeAt(lat, 179.999)
		x, y := p.of(lat+0.006, -179.994)
		if want := Distance(lat, 179.999, lat+0.006, -179.994); math.Abs(math.Hypot(x, y)/want-1) > 3e-4 {
			t.Errorf("at %v: %.4f m, want %.4f", lat, math.Hypot(x, y), want)
		}
	}
}
