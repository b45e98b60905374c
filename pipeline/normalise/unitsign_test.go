package normalise

import "testing"

// TestUnitsExplained holds that a unit which a legend explains as a sign in cells is none of bare numbers.
func TestUnitsExplained(t *testing.T) {
	got := unitSign.ReplaceAllString("FL cm; kg = by the balance; lb=by eye, Length = cm", "")
	if want := "FL cm; ; , Length = cm"; got != want {
		t.Errorf("%q, want %q", got, want)
	}
}
