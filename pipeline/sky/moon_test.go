package sky

import (
	"math"
	"testing"
	"time"
)

// Meeus 1998, Astronomical Algorithms, example 48.a and the remark on formula
// 48.4 after it: 1992 April 12, 0 h, D 113.8423, i 68.88, share .6801. The full
// positions of the example give .6786.
func TestMeeusExample(t *testing.T) {
	at := time.Date(1992, 4, 12, 0, 0, 0, 0, time.UTC)
	i, d := phaseAngle(at)
	lit, phase := Moon(at)
	if math.Abs(d-113.8423037) > 1e-5 || math.Abs(i-68.8833551) > 1e-5 ||
		math.Abs(lit-.6801339) > 1e-6 || phase != FirstQuarter {
		t.Errorf("D %v, i %v, share %v, %s", d, i, lit, phase)
	}
	if math.Abs(lit-.6786) > .002 {
		t.Errorf("share %v, by full positions .6786", lit)
	}
}

// Shares by PyEphem; new moons of the total solar eclipses of 2024 April 8 and
// 2026 August 12 (greatest eclipse, NASA eclipse catalogue).
func TestMoonShare(t *testing.T) {
	for _, c := range []struct {
		at    string
		share float64
	}{
		{"2026-07-01T12:00:00Z", .978826}, {"2026-01-03T10:03:00Z", .998611}, {"1992-04-12T00:00:00Z", .678651},
		{"2024-04-08T18:21:00Z", 0}, {"2026-08-12T17:37:00Z", 0},
	} {
		at, err := time.Parse(time.RFC3339, c.at)
		if err != nil {
			t.Fatal(err)
		}
		if lit, _ := Moon(at); math.Abs(lit-c.share) > .01 {
			t.Errorf("%s: share %v, want %v", c.at, lit, c.share)
		}
	}
}

// Phases of July 2026 by PyEphem, in UTC. A quarter is where half is lit.
func TestMoonPhases(t *testing.T) {
	for _, c := range []struct {
		at    string
		phase Phase
		share float64
	}{
		{"2026-07-07T19:29:00Z", LastQuarter, .5}, {"2026-07-14T09:44:00Z", NewMoon, 0},
		{"2026-07-21T11:06:00Z", FirstQuarter, .5}, {"2026-07-29T14:36:00Z", FullMoon, 1},
	} {
		at, err := time.Parse(time.RFC3339, c.at)
		if err != nil {
			t.Fatal(err)
		}
		// A phase is named for an eighth of a month on either side.
		for _, days := range []int{-3, 0, 3} {
			if _, phase := Moon(at.AddDate(0, 0, days)); phase != c.phase {
				t.Errorf("%s %+d days: %s, want %s", c.at, days, phase, c.phase)
			}
		}
		if lit, _ := Moon(at); math.Abs(lit-c.share) > .01 {
			t.Errorf("%s: share %v, want %v", c.at, lit, c.share)
		}
	}
}

// Meeus 1998, examples 49.a and 49.b: the new moon of 1977 February 18,
// 03:37:42, and the last quarter of 2044 January 21, 23:48:17, in dynamical time.
func TestMeeusPhaseInstants(t *testing.T) {
	if lit, _ := Moon(time.Date(1977, 2, 18, 3, 37, 42, 0, time.UTC)); lit > .001 {
		t.Errorf("new moon of 1977: share %v", lit)
	}
	if lit, phase := Moon(time.Date(2044, 1, 21, 23, 48, 17, 0, time.UTC)); math.Abs(lit-.5) > .01 ||
		phase != LastQuarter {
		t.Errorf("last quarter of 2044: share %v, %s", lit, phase)
	}
}
