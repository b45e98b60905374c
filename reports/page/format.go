package page

import (
	"math"
	"strconv"
	"strings"
)

// Unknown is printed where a value is not known.
const Unknown = "–"

// thin space that does not break, between thousands
const thousands = "\u202f"

// Number prints v with the given decimals, thousands apart, and a true minus.
// A half is rounded away from zero, as a spreadsheet does. What is not finite is
// Unknown.
func Number(v float64, decimals int) string {
	if math.IsNaN(v) || math.IsInf(v, 0) {
		return Unknown
	}
	scale := math.Pow(10, float64(decimals))
	s := strconv.FormatFloat(math.Round(math.Abs(v)*scale)/scale, 'f', decimals, 64)
	whole, frac, hasFrac := strings.Cut(s, ".")
	for i := len(whole) - 3; i > 0; i -= 3 {
		whole = whole[:i] + thousands + whole[i:]
	}
	if hasFrac {
		whole += "." + frac
	}
	if v < 0 && strings.Trim(s, "0.") != "" {
		return "−" + whole
	}
	return whole
}

// Count prints a whole number.
func Count(n int64) string { return Number(float64(n), 0) }

// Percent prints a share of 0 to 1 in whole per cent.
func Percent(share float64) string {
	if math.IsNaN(share) || math.IsInf(share, 0) {
		return Unknown
	}
	return Number(share*100, 0) + " %"
}

// Plural joins a count and its word: Plural(1, "strike", "strikes").
func Plural(n int64, one, many string) string {
	if n == 1 {
		return Count(n) + " " + one
	}
	return Count(n) + " " + many
}

// Decimals is how many decimals show v with the given significant digits;
// at least none, at most six. Zero and what is not finite need none.
func Decimals(v float64, digits int) int {
	v = math.Abs(v)
	if v == 0 || math.IsNaN(v) || math.IsInf(v, 0) {
		return 0
	}
	// The magnitude after rounding counts: 0.0996 to two digits is 0.10.
	e := int(math.Floor(math.Log10(v)))
	scale := math.Pow(10, float64(digits-1-e))
	if math.Round(v*scale) >= math.Pow(10, float64(digits)) {
		e++
	}
	return min(6, max(0, digits-1-e))
}

// axisSteps are the round numbers that an axis may end at, as multiples of a
// power of ten, and into how many equal parts each divides roundly.
var axisSteps = []struct{ end, parts float64 }{
	{1, 5}, {1.5, 3}, {2, 4}, {2.5, 5}, {3, 3}, {4, 4}, {5, 5}, {6, 3}, {8, 4}, {10, 5},
}

// axisEnd is the next round number at or above v, and the distance of the
// ticks; 1 and 0.2 where v is not a positive number.
func axisEnd(v float64) (end, tick float64) {
	if !(v > 0) || math.IsInf(v, 0) {
		return 1, 0.2
	}
	unit := math.Pow(10, math.Floor(math.Log10(v)))
	for _, s := range axisSteps {
		if s.end*unit >= v*(1-1e-12) {
			return tidy(s.end * unit), tidy(s.end * unit / s.parts)
		}
	}
	return tidy(10 * unit), tidy(2 * unit)
}

// tidy takes off what a product of decimals leaves in the last digits, which the
// chart library would print.
func tidy(v float64) float64 {
	t, err := strconv.ParseFloat(strconv.FormatFloat(v, 'g', 12, 64), 64)
	if err != nil {
		return v
	}
	return t
}
