package track

import (
	"fmt"
	"math"
	"testing"

	"wakeledger/pipeline/unit"
)

// schooling is a day on which much of the trolling circles surface schools, as
// fast as 150 degrees a minute.
var schooling = []spell{
	{30, 7.1, 0}, {20, 9.1, 150}, {25, 13.1, 0}, {15, 13.0, -120}, {20, 11.0, 60}, {30, 9.0, 0},
	{15, 9.1, -150}, {20, 15.0, 90},
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
	if seconds == 0 {
		return fixes
	}
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
		raw[band(Distance(a.Lat, a.Lon, b.Lat, b.Lon)/s/unit.KnotMS)] += s
	}
	return raw
}

// eights are figures of eight about a school, circling now to one side and now to
// the other, and a straight hour.
func eights() (all []spell) {
	for i := range 60 {
		all = append(all, spell{3, []float64{7, 9, 11, 13}[i/15], 120 * float64(1-2*(i%2))})
	}
	return append(all, spell{60, 11, 0})
}

// spirals close in on a school, tighter and tighter.
func spirals() (all []spell) {
	for i := range 80 {
		all = append(all, spell{1.5, []float64{9, 11, 13, 7}[i/20], 30 + 6.5*float64(i%20)})
	}
	return all
}

// zigzags are two minutes on one course and one of turning to the next.
func zigzags() (all []spell) {
	for i := range 60 {
		kn := []float64{7.1, 9.1, 11, 13, 15}[i/12]
		all = append(all, spell{2, kn, 0}, spell{1, kn, 90 * float64(1-2*(i%2))})
	}
	return all
}

// TestAccuracy prints how far the time in speed bands is off, by spacing of fixes,
// noise, times without a fix and the shape of the way, beside what differences of raw
// fixes give; and holds bounds. A band is right to 5 %, or what cannot be known is
// said: as dropouts, of which no piece tells, or as loose, because fixes are far
// apart or noisy.
func TestAccuracy(t *testing.T) {
	t.Log("per cent of the time                              pieces                                   | differences " +
		"of raw fixes")
	t.Log("                                          wrong band  worst band  dropouts  loose  astray | wrong band  " +
		"worst band")
	for _, day := range []struct {
		name   string
		spells []spell
		gaps   []float64
	}{
		{"straight", outing, []float64{0, 120}}, {"circling", schooling, []float64{0, 120}},
		{"eights", eights(), []float64{0}}, {"spirals", spirals(), []float64{0}}, {"zigzags", zigzags(), []float64{0}},
	} {
		r := sail(day.spells)
		for _, noise := range []float64{0, 3, 10} {
			for _, every := range []float64{1, 3, 5, 10, 20, 30, 60} {
				for _, gap := range day.gaps {
					name := fmt.Sprintf("%s, %2g m, each %2g s, gaps of %3g s", day.name, noise, every, gap)
					r.accuracy(t, name, gappy(r.fixes(every, noise, rng(uint64(every))), gap),
						noise <= 3 && every <= 10 && gap == 0)
				}
			}
		}
	}
}

// accuracy holds a day's bounds. With close fixes of little noise nothing is loose.
func (r run) accuracy(t *testing.T, name string, fixes []Fix, good bool) {
	ours := make([]float64, len(edges))
	found, sum := pieces(t, fixes, Settings{})
	for _, p := range found {
		ours[band(p.RunKn)] += p.Seconds
	}
	o, w := accuracyOf(r.truth(), ours), accuracyOf(r.truth(), differenced(fixes))
	all := float64(len(r.kn)) / 10
	lost, loose, strays := sum.DropoutSeconds/all, sum.Loose/all, sum.Astray/all
	t.Logf("%s: %10.1f %11.1f %9.1f %6.1f %7.1f | %10.1f %11.1f",
		name, 100*o.moved, 100*o.worst, 100*lost, 100*loose, 100*strays, 100*w.moved, 100*w.worst)
	if lost == 0 && o.worst > 0.05 && loose < o.moved {
		t.Errorf("%s: a band is off by %.1f %%, and only %.1f %% is said to be loose", name, 100*o.worst, 100*loose)
	}
	if far := loose - sum.Noisy/all; o.moved > 0.01+lost+far+strays {
		t.Errorf("%s: %.1f %% in the wrong band, said are %.1f %%", name, 100*o.moved, 100*(0.01+lost+far+strays))
	}
	if good && loose > 0.01 {
		t.Errorf("%s: %.1f %% is said to be loose", name, 100*loose)
	}
}
