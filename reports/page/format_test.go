package page

import (
	"math"
	"testing"
)

func TestNumber(t *testing.T) {
	for _, c := range []struct {
		v        float64
		decimals int
		want     string
	}{
		{0, 0, "0"}, {-0.04, 1, "0.0"}, {-3.25, 1, "−3.3"}, {999.96, 1, "1\u202f000.0"},
		{1234567, 0, "1\u202f234\u202f567"}, {123, 0, "123"}, {24.5, 0, "25"}, {0.21, 2, "0.21"},
		{math.NaN(), 1, Unknown}, {math.Inf(1), 1, Unknown},
	} {
		if got := Number(c.v, c.decimals); got != c.want {
			t.Errorf("Number(%v, %d) = %q, want %q", c.v, c.decimals, got, c.want)
		}
	}
}

func TestDecimals(t *testing.T) {
	for _, c := range []struct {
		v    float64
		want int
	}{{0.21, 2}, {0.0996, 2}, {0.0984, 3}, {9.96, 0}, {9.94, 1}, {1.2, 1}, {148, 0},
		{0, 0}, {math.NaN(), 0}, {1e-9, 6}} {
		if got := Decimals(c.v, 2); got != c.want {
			t.Errorf("Decimals(%v, 2) = %d, want %d", c.v, got, c.want)
		}
	}
}

func TestAxisEnd(t *testing.T) {
	for _, c := range []struct{ v, end, tick float64 }{
		{0, 1, 0.2}, {0.31, 0.4, 0.1}, {148, 150, 50}, {100, 100, 20}, {101, 150, 50}, {7.2, 8, 2}, {-1, 1, 0.2},
	} {
		end, tick := axisEnd(c.v)
		if math.Abs(end-c.end) > 1e-9 || math.Abs(tick-c.tick) > 1e-9 {
			t.Errorf("axisEnd(%v) = %v, %v, want %v, %v", c.v, end, tick, c.end, c.tick)
		}
	}
}

func TestCells(t *testing.T) {
	lo, hi := 0.142, 0.297
	for _, c := range []struct {
		cell      Cell
		column    Column
		text, key string
	}{
		{Words("a"), Column{}, "a", ""},
		{Words(""), Column{}, Unknown, ""},
		{WordsOf(nil), Column{}, Unknown, ""},
		{Value(1234.56), Column{Kind: Measure, Decimals: 1}, "1\u202f234.6", "1234.56"},
		{Value(math.NaN()), Column{Kind: Measure}, Unknown, ""},
		{ValueOf(nil), Column{Kind: Measure}, Unknown, ""},
		{Value(0.714), Column{Kind: Share}, "71 %", "0.714"},
		{Span(&lo, &hi), Column{Kind: Interval, Decimals: 2}, "0.14 to 0.30", "0.142"},
		{Span(&lo, &hi), Column{Kind: ShareGap}, "14 to 30 %", "0.142"},
		{Span(&lo, nil), Column{Kind: Interval}, Unknown, ""},
	} {
		if got := c.cell.print(c.column); got != c.text {
			t.Errorf("%+v prints %q, want %q", c.cell, got, c.text)
		}
		if got := c.cell.key(c.column); got != c.key {
			t.Errorf("%+v sorts by %q, want %q", c.cell, got, c.key)
		}
	}
}

func TestRateLimit(t *testing.T) {
	marks := []RateMark{
		{Level: Level{Thin: true}, Rate: f(0), Hi: f(7.4)},
		{Rate: f(0.21), Hi: f(0.30)},
	}
	if got := rateLimit(marks); got > 0.4 {
		t.Errorf("the axis ends at %v: a level with little effort stretches it", got)
	}
	if got := rateLimit(marks[:1]); got < 7.4 {
		t.Errorf("the axis ends at %v: with thin levels only, their intervals count", got)
	}
}
