package reports

import (
	"bytes"
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"wakeledger/queries"
)

// trolled is a season of trips at two speeds, so many strikes on each.
func trolled(strikes ...int64) queries.SeasonTrips {
	s := queries.SeasonTrips{Bands: []string{"[8, 10)", "[10, 12)", "not logged"}}
	for i, n := range strikes {
		trip := int64(i + 1)
		s.Trips = append(s.Trips, queries.ClubPiece{Trip: trip, Level: "2026-07", BoatHours: 5, LineHours: 20,
			Strikes: n, OnHours: n, Hookups: n, Landed: n})
		s.Cells = append(s.Cells, queries.TripCell{Trip: trip, Level: "[8, 10)", Hours: 10, Strikes: n},
			queries.TripCell{Trip: trip, Level: "[10, 12)", Hours: 10})
	}
	return s
}

func paired(a, b queries.SeasonTrips) Beside {
	return Beside{Names: [2]string{"2026", "2025"}, Season: [2]queries.SeasonTrips{a, b}}
}

// By hand: 12 strikes in 60 line-hours beside 6 in 60, on fewer than 8 trips, so
// that nothing is widened: a ratio of 2, and Clopper and Pearson's interval of 12 in
// 18 is 0.4099 to 0.8666 (R: binom.test(12, 18)), which as odds is
// 0.6947 to 6.4947.
func TestCompareByHand(t *testing.T) {
	c := paired(trolled(4, 4, 4), trolled(2, 2, 2)).compare()
	if math.Abs(c.overall.Ratio-2) > 1e-12 || c.phi != 1 || math.Abs(c.overall.Interval.Lo-0.6947) > 1e-4 ||
		math.Abs(c.overall.Interval.Hi-6.4947) > 1e-4 {
		t.Errorf("ratio %v, interval %v, dispersion %v", c.overall.Ratio, c.overall.Interval, c.phi)
	}
	if r := c.ratios["[8, 10)"]; math.Abs(r.Ratio-2) > 1e-12 {
		t.Errorf("8 to 10 kn: ratio %v", r.Ratio)
	}
	if _, told := c.ratios["[10, 12)"]; told {
		t.Error("a ratio where neither season has a strike")
	}
	if got := c.sentences()[0]; !strings.Contains(got, "2.00 times") || !strings.Contains(got, "No difference shown") {
		t.Errorf("verdict %q", got)
	}
}

// No verdict is stronger than its interval, and the other way round gives the same.
func TestCompareSaysNoMoreThanItsInterval(t *testing.T) {
	random := rand.New(rand.NewPCG(7, 1))
	season := func(mean int) queries.SeasonTrips {
		var n []int64
		for range 3 + random.IntN(20) {
			n = append(n, int64(random.IntN(1+mean)))
		}
		return trolled(n...)
	}
	told := 0
	for range 300 {
		a, b := season(random.IntN(12)), season(random.IntN(12))
		c := paired(a, b).compare()
		words := strings.Join(c.sentences(), " ")
		apart := strings.Contains(words, "than luck alone")
		if apart != (c.known && (c.overall.Interval.Lo > 1 || c.overall.Interval.Hi < 1)) {
			t.Fatalf("interval %v is told as %q", c.overall.Interval, words)
		}
		if apart {
			told++
		}
		back := paired(b, a).compare()
		if back.known != c.known || c.known && c.overall.Ratio > 0 &&
			math.Abs(back.overall.Ratio*c.overall.Ratio-1) > 1e-9 {
			t.Fatalf("ratio %v, the other way round %v", c.overall.Ratio, back.overall.Ratio)
		}
	}
	if told == 0 || told == 300 {
		t.Errorf("%d of 300 told apart: the test shows nothing", told)
	}
}

// The same season twice: never apart, whatever it holds.
func TestCompareWithItself(t *testing.T) {
	s := trolled(0, 9, 1, 0, 0, 12, 2, 0, 3, 5)
	c := paired(s, s).compare()
	if math.Abs(c.overall.Ratio-1) > 1e-12 || c.phi <= 1 || !strings.Contains(c.sentences()[0], "No difference shown") {
		t.Errorf("ratio %v, dispersion %v: %q", c.overall.Ratio, c.phi, c.sentences())
	}
	if html := writtenYears(t, paired(s, trolled())); !strings.Contains(html, "2026 and 2025 can&#39;t be compared") {
		t.Error("a season without trips is not said so")
	}
}

// writtenYears is the page of two invented seasons.
func writtenYears(t *testing.T, b Beside) string {
	t.Helper()
	var buf bytes.Buffer
	if err := Years(&buf, YearsInput{Title: "Two", Seasons: [2]SeasonInput{demoSeason(), demoSeason()},
		Beside: b}); err != nil {
		t.Fatal(err)
	}
	return buf.String()
}

func TestYears(t *testing.T) {
	s := queries.SeasonTrips{Trips: []queries.ClubPiece{{Trip: 1, Level: "2025-07"}, {Trip: 2, Level: "2025-08"},
		{Trip: 3, Level: "2026-07"}, {Trip: 4, Level: "not logged"}}}
	if got := strings.Join(s.Years(), " "); got != "2025 2026" {
		t.Errorf("years %s", got)
	}
}

func TestBandsThatCutAcross(t *testing.T) {
	b := Beside{}
	b.Season[0].Bands, b.Season[1].Bands = []string{"[8, 10)", "16 and up", "not logged"},
		[]string{"[8, 10)", "[10, 12)", "not logged"}
	if !b.sameBands() {
		t.Error("bands side by side are said to cut across")
	}
	b.Season[1].Bands = []string{"[9, 11)"}
	if b.sameBands() {
		t.Error("9 to 11 cuts across 8 to 10, and nothing is said")
	}
}
