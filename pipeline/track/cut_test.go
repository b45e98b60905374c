package track

import (
	"math"
	"slices"
	"testing"
	"time"

	"wakeledger/pipeline/unit"
)

// straight is a boat on a straight course at a speed, a fix each second.
func straight(n int, kn float64, from time.Time) []Fix {
	p := planeAt(-36.4, 176.2)
	fixes := make([]Fix, n)
	for i := range fixes {
		fixes[i] = Fix{At: from.UnixMilli() + int64(i)*1000, SpeedKn: math.NaN(),
			Lat: p.lat, Lon: p.lon + float64(i)*kn*unit.KnotMS/p.east}
	}
	return fixes
}

var noon = time.Date(2026, 2, 14, 12, 0, 3, 0, time.UTC)

// What is wrong with a track is dropped and counted, and the rest keeps its speed.
func TestFaults(t *testing.T) {
	at := func(i int) func([]Fix) []Fix { return func(f []Fix) []Fix { f[i].Lat += 0.1; return f } }
	for name, c := range map[string]struct {
		spoil func([]Fix) []Fix
		check func(Summary) bool
		lost  float64 // seconds that no piece covers
	}{
		"none":     {func(f []Fix) []Fix { return f }, func(s Summary) bool { return s.Used == s.Fixes }, 0},
		"one jump": {at(300), func(s Summary) bool { return s.Jumps == 1 }, 0},
		"two together": {func(f []Fix) []Fix { return at(301)(at(300)(f)) },
			func(s Summary) bool { return s.Jumps == 2 }, 0},
		"the boat is elsewhere": {func(f []Fix) []Fix {
			for i := 300; i < len(f); i++ {
				f[i].Lat += 0.1
			}
			return f
		}, func(s Summary) bool { return s.Jumps == 1 && s.Used == 600 }, 1},
		"repeated": {func(f []Fix) []Fix { return append(f[:300:300], f[299:]...) },
			func(s Summary) bool { return s.Repeated == 1 }, 0},
		"out of order": {func(f []Fix) []Fix { f[300], f[304] = f[304], f[300]; return f },
			func(s Summary) bool { return s.Reordered > 0 && s.Late == 0 && s.Used == 600 }, 0},
		"far out of order": {func(f []Fix) []Fix {
			return append(append(f[:100:100], f[101:500]...), append([]Fix{f[100]}, f[500:]...)...)
		},
			func(s Summary) bool { return s.Late == 0 && s.Reordered == 1 && s.Used == 600 }, 0},
		"a gap": {func(f []Fix) []Fix { return append(f[:100:100], f[500:]...) },
			func(s Summary) bool { return s.Gaps == 1 && s.GapSeconds == 401 }, 401},
		"no gap below five minutes": {func(f []Fix) []Fix { return append(f[:100:100], f[399:]...) },
			func(s Summary) bool { return s.Gaps == 0 }, 0},
		"a break without a loss": {func(f []Fix) []Fix { f[300].Break = true; return f },
			func(s Summary) bool { return s.Breaks == 0 && s.Joined == 1 && s.Gaps == 0 }, 0},
		"a break": {func(f []Fix) []Fix { f[330].Break = true; return append(f[:300:300], f[330:]...) },
			func(s Summary) bool { return s.Breaks == 1 && s.Joined == 0 && s.Gaps == 0 }, 31},
		"newest first": {func(f []Fix) []Fix { slices.Reverse(f); return f },
			func(s Summary) bool { return s.Late == 0 && s.Reordered == 600 && s.Used == 600 }, 0},
		"the later half first": {func(f []Fix) []Fix { return append(f[300:600:600], f[:300]...) },
			func(s Summary) bool { return s.Late == 0 && s.Reordered == 300 && s.Used == 600 }, 1},
	} {
		t.Run(name, func(t *testing.T) {
			found, sum := pieces(t, c.spoil(straight(600, 12.4, noon)), Settings{})
			if !c.check(sum) {
				t.Errorf("%+v", sum)
			}
			seconds := 0.0
			for _, p := range found {
				seconds += p.Seconds
				if !near(p.RunKn, 12.4, 0.05) {
					t.Errorf("at %d: %.2f kn, want 12.4", p.At, p.RunKn)
				}
				if p.At/10000 != (p.At+int64(p.Seconds*1000)-1)/10000 {
					t.Errorf("a piece from %d on lasts %g s, into the next", p.At, p.Seconds)
				}
			}
			if seconds != 599-c.lost || sum.Seconds != seconds {
				t.Errorf("%g s covered, want %g", seconds, 599-c.lost)
			}
		})
	}
}

// The small track of known legs, with fixes minutes apart: positions rounded to
// six digits, speeds from geodesics by GeographicLib's GeodSolve.
func TestSparseTrack(t *testing.T) {
	rows := []struct {
		minute   int
		lat, lon float64
	}{{0, 32.5, -117.5}, {10, 32.499998, -117.521349}, {20, 32.499996, -117.544997}, {40, 32.453235, -117.544997},
		{45, 32.452678, -117.544997}, {55, 32.452657, -117.472776}, {100, 32.539082, -117.472776},
		{110, 32.561071, -117.472776}}
	var fixes []Fix
	for _, r := range rows {
		fixes = append(fixes, Fix{At: noon.Truncate(time.Hour).UnixMilli() + int64(r.minute)*60000, Lat: r.lat,
			Lon: r.lon, SpeedKn: math.NaN()})
	}
	for gap, want := range map[time.Duration]map[float64]float64{
		30 * time.Minute: {6.5: 10, 7.2: 10, 8.4: 20, 0.4: 5, 22.0: 10, 7.9: 10},
		60 * time.Minute: {6.5: 10, 7.2: 10, 8.4: 20, 0.4: 5, 22.0: 10, 7.9: 10, 6.9: 45},
	} {
		found, sum := pieces(t, fixes, Settings{Gap: gap})
		minutes, total := map[float64]float64{}, 0.0
		for _, p := range found {
			minutes[math.Round(p.RunKn*10)/10] += p.Seconds / 60
			total += p.Seconds
		}
		for kn, m := range want {
			if !near(minutes[kn], m, 1e-9) {
				t.Errorf("gap %s: %g minutes at %g kn, want %g", gap, minutes[kn], kn, m)
			}
		}
		if len(minutes) != len(want) || !near(total+sum.GapSeconds, 6600, 1e-9) {
			t.Errorf("gap %s: %v, in all %g s and %g s of gaps, want 6600", gap, minutes, total, sum.GapSeconds)
		}
	}
}

// A turn's speed is along its arc, and its rate is told.
func TestTurns(t *testing.T) {
	r := sail([]spell{{20, 11, 110}})
	found, _ := pieces(t, r.fixes(1, 0, rng(1)), Settings{})
	for _, p := range found[6 : len(found)-6] {
		if !near(p.Turn, 110, 6) || !near(p.RunKn, 11, 0.45) {
			t.Errorf("%.1f degrees a minute at %.2f kn, want 110 at 11", p.Turn, p.RunKn)
		}
	}
	r = sail([]spell{{60, 9, 0}})
	for _, every := range []float64{1, 5, 10} {
		found, _ = pieces(t, r.fixes(every, 3, rng(2)), Settings{})
		turning := 0
		for _, p := range found {
			if math.Abs(p.Turn) >= TurningRate {
				turning++
			}
		}
		if turning > len(found)/50 {
			t.Errorf("fixes each %g s: straight running is taken for turning in %d of %d pieces", every, turning,
				len(found))
		}
	}
}

// The standard error is that of the speeds about the truth.
func TestErrorOfSpeed(t *testing.T) {
	for _, every := range []float64{1, 5, 10} {
		var squares, claimed, n float64
		for seed := range uint64(20) {
			fixes := straight(1800, 12.4, noon)
			p := planeAt(-36.4, 176.2)
			noise := rng(seed)
			var thin []Fix
			for i := 0; i < len(fixes); i += int(every) {
				f := fixes[i]
				f.Lat += 3 * noise.NormFloat64() / p.north
				f.Lon += 3 * noise.NormFloat64() / p.east
				thin = append(thin, f)
			}
			found, _ := pieces(t, thin, Settings{})
			for _, q := range found[6 : len(found)-6] {
				squares += (q.RunKn - 12.4) * (q.RunKn - 12.4)
				claimed += q.ErrKn * q.ErrKn
				n++
			}
		}
		real, said := math.Sqrt(squares/n), math.Sqrt(claimed/n)
		t.Logf("fixes each %g s: off by %.3f kn (one sigma), said %.3f", every, real, said)
		if said < real/1.5 || said > real*1.5 {
			t.Errorf("fixes each %g s: said %.3f kn, is %.3f", every, said, real)
		}
	}
}

// Across 180 degrees and over a receiver's own speeds.
func TestAntimeridianAndSaidSpeed(t *testing.T) {
	fixes := straight(200, 10, noon)
	for i := range fixes {
		fixes[i].Lon = math.Remainder(fixes[i].Lon-176.2+179.997, 360)
		fixes[i].SpeedKn = 10.2
	}
	fixes[100].SpeedKn = 55
	found, _ := pieces(t, fixes, Settings{})
	for _, p := range found {
		if !near(p.RunKn, 10, 0.05) || p.SaidKn != 10.2 || !near(p.Course, 90, 0.1) || math.Abs(p.Lon) < 179.9 {
			t.Errorf("%+v", p)
		}
	}
}
