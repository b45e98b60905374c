package unit

import "testing"

func TestParseRange(t *testing.T) {
	for _, c := range []struct {
		text     string
		fallback Unit
		lo, hi   float64
		unit     Unit
	}{
		{"7-8", Knot, 7, 8, Knot},
		{"7-8 kn", Knot, 7, 8, Knot},
		{"7 kn - 8 kn", "", 7, 8, Knot},
		{"6.5 to 7", Knot, 6.5, 7, Knot},
		{"6,5–7", Knot, 6.5, 7, Knot},
		{"8-9 mph", Knot, 8, 9, MilePerHour},
	} {
		lo, hi, err := ParseRange(c.text, Speed, c.fallback, MarkUnknown)
		if err != nil || lo.Value != c.lo || hi.Value != c.hi || lo.Unit != c.unit || hi.Unit != c.unit {
			t.Errorf("%q: %v to %v, %v: expected %v to %v %s", c.text, lo, hi, err, c.lo, c.hi, c.unit)
		}
	}
	for _, text := range []string{"", "7", "-7", "8-7", "7-7", "7-8-9", "7-", "-7-8", "slow-fast", "7-8 kg"} {
		if lo, hi, err := ParseRange(text, Speed, Knot, MarkUnknown); err == nil {
			t.Errorf("%q is read as %v to %v: expected no range", text, lo, hi)
		}
	}
}
