package stats

import (
	"math"
	"testing"
)

// near fails unless got equals want to the relative tolerance; a want of 0
// must be met to the tolerance itself, NaN by NaN and infinity by infinity.
func near(t *testing.T, what string, got, want, tol float64) {
	t.Helper()
	if math.IsNaN(want) || math.IsInf(want, 0) || math.IsNaN(got) || math.IsInf(got, 0) {
		if got != want && !(math.IsNaN(got) && math.IsNaN(want)) {
			t.Errorf("%s = %v, want %v", what, got, want)
		}
		return
	}
	scale := math.Abs(want)
	if scale == 0 {
		scale = 1
	}
	if math.Abs(got-want) > tol*scale {
		t.Errorf("%s = %.12g, want %.12g", what, got, want)
	}
}

func nearInterval(t *testing.T, what string, got, want Interval, tol float64) {
	t.Helper()
	near(t, what+" lower", got.Lo, want.Lo, tol)
	near(t, what+" upper", got.Hi, want.Hi, tol)
}
