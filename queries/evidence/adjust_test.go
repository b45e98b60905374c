package evidence

import (
	"math"
	"slices"
	"strings"
	"testing"

	"wakeledger/queries/stats"
)

func word(_, level string) string { return level }

// rowsOf is a season in which the boat ran fast mostly at dusk, where there are
// twice the strikes; speed itself does nothing.
func rowsOf(seed uint64, trips int) Season {
	s := Season{Factors: []string{"speed-band", "light"}}
	r := seeded(seed)
	for trip := range trips {
		for range 6 {
			light, rate := "day", .2
			if r.Float64() < .4 {
				light, rate = "dusk", .4
			}
			speed := "slow"
			if r.Float64() < map[string]float64{"day": .25, "dusk": .75}[light] {
				speed = "fast"
			}
			hours := 3 + 3*r.Float64()
			s.Rows = append(s.Rows, Row{Trip: int64(trip), Levels: []string{speed, light}, LineHours: hours, Strikes: poisson(r, rate*hours)})
		}
	}
	return s
}

// The raw ratio of the speeds is off, the adjusted one is not.
func TestAdjustFreesFromTheOther(t *testing.T) {
	var adjusted, raw []float64
	for seed := range uint64(100) {
		s := rowsOf(seed, 40)
		a, err := Adjust(s, word)
		if err != nil || len(a.Entered) != 2 {
			t.Fatalf("%v, entered %v, left %v", err, a.Entered, a.Left)
		}
		sums := map[string]stats.Count{}
		for _, r := range s.Rows {
			c := sums[r.Levels[0]]
			c.Events += r.Strikes
			c.Effort += r.LineHours
			sums[r.Levels[0]] = c
		}
		raw = append(raw, math.Log(float64(sums["fast"].Events)/sums["fast"].Effort*sums["slow"].Effort/float64(sums["slow"].Events)))
		for _, l := range a.Levels {
			if l.Factor == "speed-band" && !l.Reference {
				sign := 1.0
				if l.Level == "slow" {
					sign = -1
				}
				adjusted = append(adjusted, sign*math.Log(l.Ratio.Ratio))
			}
		}
	}
	if math.Abs(mean(adjusted)) > .04 || mean(raw) < .2 {
		t.Errorf("adjusted log ratio %.3f, raw %.3f: want 0 and well above", mean(adjusted), mean(raw))
	}
}

// The rule looks at effort, strikes and logging alone.
func TestWhichFactorsEnter(t *testing.T) {
	s := Season{Factors: []string{"speed-band", "light", "lure", "colour", "boat"}}
	for trip := range 12 {
		for i := range 4 {
			lure := string(rune('a' + (trip+i)%9))
			light := NotLogged
			if i == 0 {
				light = "day"
			}
			s.Rows = append(s.Rows, Row{Trip: int64(trip), Levels: []string{[]string{"slow", "fast"}[i%2], light, lure, []string{"red", "blue"}[i/2], "one"}, LineHours: 5, Strikes: 2})
		}
	}
	a, err := Adjust(s, word)
	if err != nil {
		t.Fatal(err)
	}
	if !slices.Equal(a.Entered, []string{"speed-band", "colour"}) {
		t.Errorf("entered %v", a.Entered)
	}
	want := map[string]string{"light": "not logged for more than a fifth", "lure": "fewer than two levels with enough effort", "boat": "fewer than two levels"}
	for _, l := range a.Left {
		if !strings.HasPrefix(l.Why, want[l.Factor]) {
			t.Errorf("%s left out: %s", l.Factor, l.Why)
		}
	}
	if len(a.Left) != 3 {
		t.Errorf("left out %v", a.Left)
	}
}

// Separation and collinearity come back as plain sentences, not as numbers.
func TestAdjustSaysWhatItCannotTell(t *testing.T) {
	s := Season{Factors: []string{"speed-band", "month"}}
	for trip := range 60 {
		level, month, strikes := "slow", "May", int64(2)
		switch {
		case trip%3 == 0:
			level, month = "fast", "September"
		case trip%3 == 1:
			level, strikes = "idle", 0
		}
		s.Rows = append(s.Rows, Row{Trip: int64(trip), Levels: []string{level, month}, LineHours: 8, Strikes: strikes})
	}
	a, err := Adjust(s, word)
	if err != nil {
		t.Fatal(err)
	}
	notes := strings.Join(a.Notes, "\n")
	for _, want := range []string{"There is no strike to estimate speed idle by", "the log cannot tell them apart"} {
		if !strings.Contains(notes, want) {
			t.Errorf("no %q in:\n%s", want, notes)
		}
	}
	for _, l := range a.Levels {
		if l.Level == "idle" && (l.Told || !math.IsNaN(l.Rate)) {
			t.Errorf("idle has a number: %+v", l)
		}
	}
	mixed := strings.Join(Confounded(s, word), "\n")
	if !strings.Contains(mixed, "Every hour with speed fast was with September, and the other way round: the log cannot tell speed from month there.") {
		t.Errorf("mixed up:\n%s", mixed)
	}
}

func TestConfoundedNothing(t *testing.T) {
	if got := Confounded(rowsOf(1, 30), word); len(got) != 0 {
		t.Errorf("mixed up where nothing is: %v", got)
	}
}

func TestAdjustNothing(t *testing.T) {
	a, err := Adjust(Season{Factors: []string{"speed-band"}}, word)
	if err != nil || len(a.Levels) != 0 || len(a.Left) != 1 {
		t.Errorf("%+v, %v", a, err)
	}
	lost := Season{Factors: []string{"speed-band"}, Rows: []Row{{1, []string{"slow"}, 0, 3}}}
	if a, _ = Adjust(lost, word); len(a.Notes) != 1 || !strings.HasPrefix(a.Notes[0], "3 strikes could not be put") {
		t.Errorf("%v", a.Notes)
	}
}
