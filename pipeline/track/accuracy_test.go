package track

import (
	"math"
	"testing"
)

// schooling is a day on which much of the trolling circles surface schools, as
// fast as 150 degrees a minute.
var schooling = []spell{
	{30, 7.1, 0}, {20, 9.1, 150}, {25, 13.1, 0}, {15, 13.0, -120}, {20, 11.0, 60}, {30, 9.0, 0}, {15, 9.1, -150}, {20, 15.0, 90},
	{15, 7.0, 100}, {20, 11.1, -150}, {25, 15.0, 0}, {10, 0.3, 0}, {15, 13.1, 150}, {20, 21, 0},
}

// accuracy is how far a way of reckoning is off, in shares.
type accuracy struct {
	moved float64 // time in another band than the truth's
	worst float64 // of a band, of its own time
}

func accuracyOf(truth, got []float64) accuracy {
	var a accuracy
	all := 0.0
	for i := range truth {
		all += truth[i]
		a.moved += math.Abs(got[i]-truth[i]) / 2
		if truth[i] > 0 {
			a.worst = max(a.worst, math.Abs(got[i]/truth[i]-1))
		}
	}
	a.moved /= all
	return a
}

func (r run) truth() []float64 {
	truth := make([]float64, len(edges))
	for _, kn := range r.kn {
		truth[band(kn)] += 0.1
	}
	return truth
}

// gappy leaves out every so many fixes a stretch of them, shorter than a gap that
// parts the track.
func gappy(fixes []Fix, seconds float64) []Fix {
	var left []Fix
	first := fixes[0].At
	for _, f := range fixes {
		if (f.At-first)%900000 >= int64(seconds*1000) || f.At == first {
			left = append(left, f)
		}
	}
	return left
}

// differenced is the time in each band by the speeds between raw fixes.
func differenced(fixes []Fix) []float64 {
	raw := make([]float64, len(edges))
	for i := 1; i < len(fixes); i++ {
		a, b := fixes[i-1], fixes[i]
		s := float64(b.At-a.At) / 1000
		raw[band(Distance(a.Lat, a.Lon, b.Lat, b.Lon)/s/metresPerKnotSecond)] += s
	}
	return raw
}

// TestAccuracy prints how far the time in speed bands is off, by spacing of fixes,
// noise, times without a fix and circling, beside what differences of raw fixes
// give; and holds bounds. What cannot be known must be said: as dropouts, of which
// no piece tells, or as loose.
func TestAccuracy(t *testing.T) {
	t.Log("per cent of the time                              pieces                           | differences of raw fixes")
	t.Log("                                          wrong band  worst band  dropouts  loose  | wrong band  worst band")
	for _, day := range []struct {
		name   string
		spells []spell
	}{{"straight", outing}, {"circling", schooling}} {
		r := sail(day.spells)
		truth := r.truth()
		for _, noise := range []float64{0, 3, 10} {
			for _, every := range []float64{1, 3, 5, 10, 30, 60} {
				for _, gap := range []float64{0, 120} {
					fixes := r.fixes(every, noise, rng(uint64(every)))
					if gap > 0 {
						fixes = gappy(fixes, gap)
					}
					ours := make([]float64, len(edges))
					found, sum := pieces(t, fixes, Settings{})
					for _, p := range found {
						ours[band(p.RunKn)] += p.Seconds
					}
					o, w := accuracyOf(truth, ours), accuracyOf(truth, differenced(fixes))
					all := float64(len(r.kn)) / 10
					lost, loose := sum.DropoutSeconds/all, sum.Loose/all
					t.Logf("%s, %2g m, each %2g s, gaps of %3g s: %10.1f %11.1f %9.1f %6.1f  | %10.1f %11.1f",
						day.name, noise, every, gap, 100*o.moved, 100*o.worst, 100*lost, 100*loose, 100*w.moved, 100*w.worst)
					if noise <= 3 && gap == 0 && o.worst > 0.05 && loose < o.moved {
						t.Errorf("%s, %g m, each %g s: a band is off by %.1f %%, and only %.1f %% is said to be loose", day.name, noise, every, 100*o.worst, 100*loose)
					}
					if most := 0.01 + lost + loose + noise/1000*3; o.moved > most {
						t.Errorf("%s, %g m, each %g s, gaps of %g s: %.1f %% in the wrong band, at most %.1f", day.name, noise, every, gap, 100*o.moved, 100*most)
					}
				}
			}
		}
	}
}
