package track

import (
	"flag"
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"wakeledger/pipeline/unit"
)

// run is a simulated boat: where it is and how fast, each tenth of a second.
type run struct {
	x, y, kn []float64 // metres east and north, knots
}

var seed = flag.Uint64("seed", 6, "of the simulated noise")

// spell is a time at one set speed; turn is in degrees a minute.
type spell struct{ minutes, kn, turn float64 }

// sail runs the boat: about each set speed it surges by 0.4 kn over 45 s, as in
// a following sea, and it takes 15 s to come to a new one.
func sail(spells []spell) run {
	var r run
	var x, y, course, kn float64
	kn = spells[0].kn
	for _, s := range spells {
		for range int(s.minutes * 600) {
			kn += (s.kn - kn) / 50
			t := float64(len(r.kn)) / 10
			now := kn + 0.4*math.Sin(2*math.Pi*t/45)
			course += s.turn / 600 * radian
			x += now * unit.KnotMS / 10 * math.Sin(course)
			y += now * unit.KnotMS / 10 * math.Cos(course)
			r.x, r.y, r.kn = append(r.x, x), append(r.y, y), append(r.kn, now)
		}
	}
	return r
}

// fixes are positions each so many seconds, 3 m off either way (one sigma).
func (r run) fixes(every, noise float64, rng *rand.Rand) []Fix {
	p := planeAt(-36.4, 176.2)
	var all []Fix
	for i := 0; i < len(r.kn); i += int(every * 10) {
		all = append(all, Fix{At: 1767225600000 + int64(i)*100, SpeedKn: math.NaN(),
			Lat: p.lat + (r.y[i]+noise*rng.NormFloat64())/p.north, Lon: p.lon +
				(r.x[i]+noise*rng.NormFloat64())/p.east})
	}
	return all
}

func rng(stream uint64) *rand.Rand { return rand.New(rand.NewPCG(*seed, stream)) }

type listed struct{ fixes []Fix }

func (l *listed) Next() (Fix, bool, error) {
	if len(l.fixes) == 0 {
		return Fix{}, false, nil
	}
	f := l.fixes[0]
	l.fixes = l.fixes[1:]
	return f, true, nil
}

func (l *listed) Notes() []string { return nil }

func pieces(t testing.TB, fixes []Fix, s Settings) ([]Piece, Summary) {
	t.Helper()
	var all []Piece
	sum, err := Cut(&listed{fixes}, s, func(p Piece) error {
		all = append(all, p)
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	return all, sum
}

var edges = []float64{0, 6, 8, 10, 12, 14, 16}

// band is the class of a speed, rounded as the season file rounds it.
func band(kn float64) int {
	kn = math.Round(kn*10) / 10
	b := 0
	for i, e := range edges {
		if kn >= e {
			b = i
		}
	}
	return b
}

// A day of nine hours: set speeds inside bands, circles about a school, runs at
// speed, a stop.
var outing = []spell{
	{50, 7.1, 0}, {35, 9.1, 3}, {12, 7.0, 70}, {60, 11.0, 0}, {15, 9.0, -90}, {20, 21, 0}, {70, 13.1, 2}, {30, 15.0, 0},
	{12, 13.0, 60}, {55, 10.9, -2}, {20, 0.2, 0}, {35, 14.9, 0}, {10, 8.9, 120},
	{50, 7.0, 0}, {25, 17.2, 0}, {40, 5.1, 0},
}

// Time in each band within 2 % of the truth, where differencing of raw fixes is
// off by more.
func TestTimeInBands(t *testing.T) {
	r := sail(outing)
	truth := make([]float64, len(edges))
	for _, kn := range r.kn {
		truth[band(kn)] += 0.1
	}
	for _, every := range []float64{1, 2, 5, 10} {
		t.Run(fmt.Sprintf("fixes each %g s", every), func(t *testing.T) {
			fixes := r.fixes(every, 3, rng(uint64(every)))
			raw := make([]float64, len(edges))
			for i := 1; i < len(fixes); i++ {
				a, b := fixes[i-1], fixes[i]
				raw[band(Distance(a.Lat, a.Lon, b.Lat, b.Lon)/every/unit.KnotMS)] += every
			}
			ours := make([]float64, len(edges))
			found, _ := pieces(t, fixes, Settings{})
			for _, p := range found {
				ours[band(p.RunKn)] += p.Seconds
			}
			worstRaw := 0.0
			for i := range edges {
				off, offRaw := ours[i]/truth[i]-1, raw[i]/truth[i]-1
				worstRaw = max(worstRaw, math.Abs(offRaw))
				t.Logf("from %2g kn: truth %6.0f s, pieces %6.0f s (%+.1f %%), raw differences %6.0f s (%+.1f %%)",
					edges[i], truth[i], ours[i], 100*off, raw[i], 100*offRaw)
				if math.Abs(off) > 0.02 {
					t.Errorf("from %g kn: off by %.1f %%", edges[i], 100*off)
				}
			}
			if worstRaw < 0.02 {
				t.Errorf("raw differences are within 2 %% too: the noise of this test is too small to tell")
			}
		})
	}
}
