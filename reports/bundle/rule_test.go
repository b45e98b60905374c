package bundle

import (
	"errors"
	"fmt"
	"math"
	"reflect"
	"strings"
	"testing"
)

// Worked examples of the Handbook on Statistical Disclosure Control (Hundepool et al.),
// section 4.2: 1 (one of 50,000 and one of 49,000 in 100,000: the second takes its own off
// and is 2 % out), 2 (52,000 and 50,000 in 110,000: 15.4 % out, safe at p = 10 and so not at
// our 25) and 4 (300, 20 and 10: unsafe). Hours, because of a count we take off one more.
func TestRuleByTheHandbook(t *testing.T) {
	for _, c := range []struct {
		of   []float64
		safe bool
	}{
		{[]float64{50000, 49000, 1000}, false},
		{[]float64{52000, 50000, 8000}, false},
		{[]float64{300, 20, 10}, false},
		{[]float64{52000, 50000, 13000}, true}, // by hand: 52,000 is four fifths of 65,000
		{[]float64{52000, 50000, 12999}, false},
		{[]float64{80, 20}, false},
		{[]float64{1, 1, 1}, true},
		{nil, false},
	} {
		u, sum := units{}, 0.0
		for i, v := range c.of {
			u.add(fmt.Sprint("day ", i), amounts{lineHours: v}, 1)
			sum += v
		}
		if u.spread(lineHours, sum) != c.safe {
			t.Errorf("%v: safe %v, want %v", c.of, !c.safe, c.safe)
		}
	}
}

// Example 3 of the same section (after Geurts 1992): of the hidden cells of a table of two
// rows and two columns with their sums, the first is between 3 and 6.
func TestAttackerByTheHandbook(t *testing.T) {
	var p program
	at := func(vars ...int) map[int]float64 {
		sum := map[int]float64{}
		for _, v := range vars {
			sum[v] = 1
		}
		return sum
	}
	a, b, c, d := p.new(), p.new(), p.new(), p.new()
	p.add(7, 7, at(a, b))
	p.add(3, 3, at(c, d))
	p.add(6, 6, at(a, c))
	p.add(4, 4, at(b, d))
	solved, ok := p.solve()
	if !ok {
		t.Fatal("no solution")
	}
	for v, want := range map[int][2]float64{a: {3, 6}, b: {1, 4}, c: {0, 3}, d: {0, 3}} {
		if lo, hi := solved.bounds(at(v)); math.Abs(lo-want[0]) > 1e-9 || math.Abs(hi-want[1]) > 1e-9 {
			t.Errorf("cell %d: %v to %v, want %v", v, lo, hi, want)
		}
	}
	p.add(8, 8, at(a))
	if _, ok := p.solve(); ok {
		t.Error("8 of 7 has a solution")
	}
}

// sail is a source of trips, one a day: hours by speed, strikes by speed.
func sail(days ...[2][2]float64) Source {
	var src Source
	for i, d := range days {
		day := fmt.Sprintf("2026-06-%02d", i+1)
		whole := Piece{Trip: int64(i + 1), Start: day, Day: day, Level: "2026-06", BoatHours: 5}
		for j, level := range []string{"[6, 8)", "[8, 10)"} {
			p := Piece{Trip: int64(i + 1), Start: day, Day: day, Level: level, LineHours: d[j][0],
				Strikes: int64(d[j][1]), Afloat: 5}
			src.Speeds = append(src.Speeds, p)
			whole.LineHours, whole.Strikes = whole.LineHours+p.LineHours, whole.Strikes+p.Strikes
		}
		src.Months = append(src.Months, whole)
	}
	return src
}

// told is a table as text: level=hours/strikes.
func told(rows []Cell) string {
	var out []string
	for _, c := range rows {
		text := "-"
		if c.Strikes != nil {
			text = fmt.Sprint(*c.Strikes)
		}
		out = append(out, fmt.Sprintf("%s=%v/%s", c.Level, c.LineHours, text))
	}
	return strings.Join(out, " ")
}

func TestCellsByHand(t *testing.T) {
	even := [2][2]float64{{10, 1}, {10, 2}}
	oneDay := func(src Source) Source {
		for _, pieces := range [][]Piece{src.Months, src.Speeds} {
			for i := range pieces {
				if pieces[i].Trip > 2 {
					pieces[i].Start, pieces[i].Day = pieces[0].Start, pieces[0].Day
				}
			}
		}
		return src
	}
	for name, c := range map[string]struct {
		src  Source
		want string // of the speeds
		err  error
	}{
		"four alike":       {sail(even, even, even, even), "[6, 8)=40/4 [8, 10)=40/8", nil},
		"four on two days": {oneDay(sail(even, even, even, even)), "", ErrTooFew},
		"two of them with effort": {sail(even, even, [2][2]float64{}, [2][2]float64{}),
			"[6, 8)=20/- [8, 10)=20/-", ErrTooFew},
		"two with effort at a speed": {sail(even, even, [2][2]float64{{0, 1}, {9, 2}}, [2][2]float64{{0, 1}, {9, 2}}),
			"merged=58/12", nil},
		// three of 10 hours and one of 80: without one of the 10, the 80 are four fifths of 100
		"one of four fifths": {sail(even, even, even, [2][2]float64{{80, 1}, {10, 2}}),
			"[6, 8)=110/4 [8, 10)=40/8", nil},
		"one of over four fifths": {sail(even, even, even, [2][2]float64{{81, 1}, {10, 2}}), "merged=151/12", nil},
		"nothing at a speed": {sail([2][2]float64{{10, 0}, {10, 2}}, [2][2]float64{{10, 0}, {10, 2}},
			[2][2]float64{{10, 0}, {10, 2}}, [2][2]float64{{10, 0}, {10, 2}}), "[6, 8)=40/- [8, 10)=40/-", nil},
		"one of most strikes": {sail(even, even, even, [2][2]float64{{10, 20}, {10, 20}}),
			"[6, 8)=40/- [8, 10)=40/-", nil},
	} {
		s, err := Make("a", c.src, nil)
		if !errors.Is(err, c.err) {
			t.Errorf("%s: %v, want %v", name, err, c.err)
		}
		if c.err == nil && told(s.Speeds) != c.want {
			t.Errorf("%s: %s, want %s", name, told(s.Speeds), c.want)
		}
	}
}

// A second summary, by hand: nothing new is the same again; one trip more is refused, with
// what it shows; three more that are spread go in; what was merged stays merged; a trip that
// was changed is refused.
func TestSecondSummaryByHand(t *testing.T) {
	even, few := [2][2]float64{{10, 1}, {10, 2}}, [2][2]float64{{0, 0}, {10, 2}}
	first := sail(even, even, few, few, few)
	s, err := Make("a", first, nil)
	if err != nil || told(s.Speeds) != "merged=70/12" {
		t.Fatalf("%s, %v", told(s.Speeds), err)
	}
	text, err := Shared{On: "2026-06-06", Season: s, Source: first}.Remember()
	if err != nil {
		t.Fatal(err)
	}
	last, err := Recall(text)
	if err != nil {
		t.Fatal(err)
	}
	if again, err := Make("a", first, last); err != nil || !reflect.DeepEqual(again, s) ||
		last.Grown(again, first) != "" {
		t.Errorf("the same again: %+v, %v", again, err)
	}
	changed := sail(even, even, few, few, few)
	changed.Months[1].Strikes--
	for name, c := range map[string]struct {
		src  Source
		want string
	}{
		"one more": {sail(even, even, few, few, few, even), "since the summary of 2026-06-06, one day is new " +
			"(2026-06-06): who has both reads off 20.0 line-hours and 3 strikes"},
		"one changed": {changed, "since the summary of 2026-06-06, one day is changed (2026-06-02): who has both " +
			"reads off what was changed"},
		"no strike": {sail(even, even, few, few, few, [2][2]float64{{9, 0}}, [2][2]float64{{9, 0}},
			[2][2]float64{{9, 0}}), "3 days are new (2026-06-06, 2026-06-07, 2026-06-08): who has both reads off " +
			"27.0 line-hours and 0 strikes; of these, strikes would be those"},
		"one of three": {sail(even, even, few, few, few, even, even, [2][2]float64{{150, 9}, {0, 0}}),
			"nearly all of one trip or day"},
	} {
		_, err := Make("a", c.src, last)
		var d *Difference
		if !errors.As(err, &d) || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s: %v, want %s", name, err, c.want)
		}
	}
	grown := sail(even, even, few, few, few, even, even, even, even)
	next, err := Make("a", grown, last)
	if err != nil || told(next.Speeds) != "merged=150/24" {
		t.Errorf("four more: %s, %v", told(next.Speeds), err)
	}
	if says := last.Grown(next, grown); !strings.Contains(says,
		"4 days are new: who has both reads off what they sum up to, 80.0 line-hours") {
		t.Errorf("four more: %s", says)
	}
	if fresh, err := Make("a", grown, nil); err != nil || told(fresh.Speeds) != "[6, 8)=60/6 [8, 10)=90/18" {
		t.Errorf("with nothing remembered: %s, %v", told(fresh.Speeds), err)
	}
	if _, err := Recall("{"); err == nil {
		t.Error("half a memory is read")
	}
}
