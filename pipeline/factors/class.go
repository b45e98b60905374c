package factors

import (
	"math"
	"slices"
	"strconv"
	"strings"
)

// Class is a half-open class [Lo, Hi) of a number; an infinite Hi is "and up".
type Class struct{ Lo, Hi float64 }

const andUp = " and up"

// Split are the classes that begin at some edges, each above the one before; the last is open above.
func Split(edges []float64) []Class {
	all := make([]Class, len(edges))
	for i, lo := range edges {
		all[i] = Class{lo, math.Inf(1)}
		if i+1 < len(edges) {
			all[i].Hi = edges[i+1]
		}
	}
	return all
}

// Within is the place of a number among Split(edges): what lies below the first edge is in the first
// class. There must be an edge.
func Within(edges []float64, v float64) int {
	for i := len(edges) - 1; i > 0; i-- {
		if v >= edges[i] {
			return i
		}
	}
	return 0
}

// Level is the level of a number among Split(edges).
func Level(edges []float64, v float64) string { return Split(edges)[Within(edges, v)].String() }

// String is the class as a level: "[8, 10)", or "16 and up".
func (c Class) String() string {
	if math.IsInf(c.Hi, 1) {
		return Number(c.Lo) + andUp
	}
	return "[" + Number(c.Lo) + ", " + Number(c.Hi) + ")"
}

// Parse reads what String writes.
func Parse(level string) (c Class, ok bool) {
	if lo, open := strings.CutSuffix(level, andUp); open {
		v, err := strconv.ParseFloat(lo, 64)
		return Class{v, math.Inf(1)}, err == nil
	}
	inner, opened := strings.CutPrefix(level, "[")
	inner, closed := strings.CutSuffix(inner, ")")
	lo, hi, two := strings.Cut(inner, ", ")
	from, err := strconv.ParseFloat(lo, 64)
	to, err2 := strconv.ParseFloat(hi, 64)
	return Class{from, to}, opened && closed && two && err == nil && err2 == nil
}

// Lower is the lower end of a level that is a class, or -1 for one that is none.
func Lower(level string) float64 {
	if c, ok := Parse(level); ok {
		return c.Lo
	}
	return -1
}

// Words is the class as a sentence names it: "8 to 10 kn", "16 kn and up".
func (c Class) Words(unit string) string {
	if math.IsInf(c.Hi, 1) {
		return Number(c.Lo) + " " + unit + andUp
	}
	return Number(c.Lo) + " to " + Number(c.Hi) + " " + unit
}

// Middle is the number that the class stands for: its middle, or its lower edge where it is open.
func (c Class) Middle() float64 {
	if math.IsInf(c.Hi, 1) {
		return c.Lo
	}
	return (c.Lo + c.Hi) / 2
}

// Inside is a value shown in the season file's unit, to the six decimals that the questions round to,
// so that what is logged as 70 °F stands in the class from 70.
func (s Scale) Inside(shown float64) float64 {
	if s.Size == 0 {
		return shown
	}
	return math.Round(s.Size*(shown-s.Zero)*1e6) / 1e6
}

// ToShow is a value of the season file in the scale's unit.
func (s Scale) ToShow(inside float64) float64 {
	if s.Size == 0 {
		return inside
	}
	return inside/s.Size + s.Zero
}

// Has reports whether a class of the scale begins at an edge.
func (s Scale) Has(edge float64) bool { return slices.Contains(s.Edges, edge) }

// Number is a number as levels and settings have it: with the decimals that it needs.
func Number(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }
