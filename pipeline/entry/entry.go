// Package entry is the row of a log once it has been understood: typed values
// under the season file's column names, in the order of its fields.
package entry

// Type is how a field's values are kept.
type Type uint8

// The types of field. A Day is days since 1970-01-01, a Flag is 0 or 1.
const (
	Text Type = iota
	Real
	Int
	Day
	Flag
)

// Field is one column of a sheet's entries.
type Field struct {
	Name string
	Type Type
}

// Value is a cell; the zero Value is one that is not logged. Which of the
// three holds it follows from the field's Type: Text, Real, or Int for the rest.
type Value struct {
	Known bool
	Text  string
	Real  float64
	Int   int64
}

// OfText is a text; blank text is not logged.
func OfText(s string) Value { return Value{Known: s != "", Text: s} }

// OfReal is a number.
func OfReal(v float64) Value { return Value{Known: true, Real: v} }

// OfInt is a whole number, or a day.
func OfInt(v int64) Value { return Value{Known: true, Int: v} }

// OfFlag is a yes or a no.
func OfFlag(b bool) Value {
	if b {
		return OfInt(1)
	}
	return OfInt(0)
}
