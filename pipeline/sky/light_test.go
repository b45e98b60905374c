package sky

import (
	"math"
	"testing"
	"time"
)

// The lights of 1 January 2008 by the Naval Observatory's table (sun_test.go):
// sunrise 07:22, sunset 17:00, so dawn from 06:22, day from 08:22, dusk from
// 16:00, night from 18:00.
func TestLightAt(t *testing.T) {
	pst := time.FixedZone("PST", -8*3600)
	for clock, want := range map[string]Light{
		"00:00": Night, "06:20": Night, "06:24": Dawn, "08:20": Dawn, "08:24": Day, "15:58": Day, "16:02": Dusk,
		"17:58": Dusk, "18:02": Night,
	} {
		at, err := time.ParseInLocation("2006-01-02 15:04", "2008-01-01 "+clock, pst)
		if err != nil {
			t.Fatal(err)
		}
		if got := LightAt(at, 37.4, -121.9167, time.Hour); got != want {
			t.Errorf("%s: %s, want %s", clock, got, want)
		}
	}
}

// Six hours from 06:23 to 12:23: two of dawn, but for a minute, and four of day.
func TestSplit(t *testing.T) {
	from := time.Date(2008, 1, 1, 14, 23, 0, 0, time.UTC)
	got := Split(from, from.Add(6*time.Hour), 37.4, -121.9167, time.Hour)
	if len(got) != 2 || got[0].Light != Dawn || got[1].Light != Day || math.Abs(got[0].Share-1./3) > 1.5/360 {
		t.Errorf("%v, want a third of dawn and the rest day", got)
	}
}

// A whole day has each light for as long as it lasts, and shares add up,
// wherever and whenever.
func TestSplitAddsUp(t *testing.T) {
	for _, lat := range []float64{-64, -34, 0, 33, 58, 66, 70} {
		for month := time.January; month <= time.December; month++ {
			from := time.Date(2026, month, 11, 3, 7, 0, 0, time.UTC)
			sum, seen := 0.0, map[Light]bool{}
			for _, s := range Split(from, from.Add(31*time.Hour), lat, 171, time.Hour) {
				sum += s.Share
				if seen[s.Light] || s.Share <= 0 {
					t.Errorf("latitude %v, %v: %s twice or empty", lat, month, s.Light)
				}
				seen[s.Light] = true
			}
			if math.Abs(sum-1) > 1e-9 {
				t.Errorf("latitude %v, %v: shares add up to %v", lat, month, sum)
			}
		}
	}
}

// The parts of a stretch are those that a minute-by-minute count finds.
func TestSplitAgainstMinutes(t *testing.T) {
	from := time.Date(2026, 6, 2, 9, 0, 0, 0, time.UTC)
	for _, lat := range []float64{12, 47, 62, 65.5} {
		count := map[Light]float64{}
		for m := range 24 * 60 {
			count[LightAt(from.Add(time.Duration(m)*time.Minute+30*time.Second), lat, -30, time.Hour)] += 1. / (24 * 60)
		}
		for _, s := range Split(from, from.Add(24*time.Hour), lat, -30, time.Hour) {
			if math.Abs(s.Share-count[s.Light]) > 3./(24*60) {
				t.Errorf("latitude %v: %s has %v of the day, by minutes %v", lat, s.Light, s.Share, count[s.Light])
			}
			delete(count, s.Light)
		}
		for l, share := range count {
			if share > 3./(24*60) {
				t.Errorf("latitude %v: %s is missing", lat, l)
			}
		}
	}
}

func TestSplitOfAnInstant(t *testing.T) {
	at := time.Date(2026, 6, 2, 12, 0, 0, 0, time.UTC)
	if got := Split(at, at, 0, 0, time.Hour); len(got) != 1 || got[0] != (Stretch{Day, 1}) {
		t.Errorf("%v, want day", got)
	}
}
