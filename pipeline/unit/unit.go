package unit

import (
	"fmt"
	"math"
)

// Unit is a unit of measurement, written as its usual symbol.
type Unit string

// The units of a log. NauticalMile and Knot use the symbols of the nautical trade,
// since "M" and "kt" have other meanings ashore.
const (
	Millimetre       Unit = "mm"
	Centimetre       Unit = "cm"
	Metre            Unit = "m"
	Inch             Unit = "in"
	Foot             Unit = "ft"
	Yard             Unit = "yd"
	Fathom           Unit = "fathom" // 6 ft
	Kilometre        Unit = "km"
	Mile             Unit = "mi" // statute mile
	NauticalMile     Unit = "nmi"
	Gram             Unit = "g"
	Kilogram         Unit = "kg"
	Ounce            Unit = "oz" // avoirdupois
	Pound            Unit = "lb" // avoirdupois
	Knot             Unit = "kn"
	MilePerHour      Unit = "mph"
	KilometrePerHour Unit = "km/h"
	MetrePerSecond   Unit = "m/s"
	Celsius          Unit = "C"
	Fahrenheit       Unit = "F"
	Second           Unit = "s"
	Minute           Unit = "min"
	Hour             Unit = "h"
	DayShare         Unit = "dayshare" // 24 h: a workbook's number under a time's format
	Degree           Unit = "deg"      // of arc: a heading or a position
)

// Dimension is the kind of thing a unit measures. The zero Dimension belongs to no unit.
type Dimension int

// The dimensions of a log.
const (
	Length Dimension = iota + 1
	Mass
	Speed
	Temperature
	Duration
	Angle
)

// String names the dimension as a captain would: Mass is "weight".
func (d Dimension) String() string {
	switch d {
	case Length:
		return "length"
	case Mass:
		return "weight"
	case Speed:
		return "speed"
	case Temperature:
		return "temperature"
	case Duration:
		return "duration"
	case Angle:
		return "angle"
	}
	return "unknown kind"
}

// measure is a unit's dimension and its size as a whole number of a small common
// unit, so that a conversion is one multiplication and one division of exact numbers.
type measure struct {
	dim  Dimension
	size float64
}

// measures holds the exact definitions: inch, foot, yard, mile and pound by the
// international yard and pound agreement of 1959 (1 yd = 0.9144 m and a fathom two of them, 1 lb = 0.45359237 kg),
// nautical mile 1852 m and knot 1852 m per hour; all as in NIST Special Publication 811,
// appendix B. Sizes are in 0.1 mm, in nanograms, in mm per hour, in seconds and in degrees;
// temperatures are shifted as well as scaled and have a function of their own.
var measures = map[Unit]measure{
	Millimetre:       {Length, 10},
	Centimetre:       {Length, 100},
	Metre:            {Length, 10_000},
	Inch:             {Length, 254},
	Foot:             {Length, 3_048},
	Yard:             {Length, 9_144},
	Fathom:           {Length, 18_288},
	Kilometre:        {Length, 10_000_000},
	Mile:             {Length, 16_093_440},
	NauticalMile:     {Length, 18_520_000},
	Gram:             {Mass, 1_000_000_000},
	Kilogram:         {Mass, 1_000_000_000_000},
	Ounce:            {Mass, 28_349_523_125},
	Pound:            {Mass, 453_592_370_000},
	Knot:             {Speed, 1_852_000},
	MilePerHour:      {Speed, 1_609_344},
	KilometrePerHour: {Speed, 1_000_000},
	MetrePerSecond:   {Speed, 3_600_000},
	Celsius:          {Temperature, 0},
	Fahrenheit:       {Temperature, 0},
	Second:           {Duration, 1},
	Minute:           {Duration, 60},
	Hour:             {Duration, 3_600},
	DayShare:         {Duration, 86_400},
	Degree:           {Angle, 1},
}

// Dimension returns what u measures, or the zero Dimension if u is no unit of this package.
func (u Unit) Dimension() Dimension { return measures[u].dim }

// Convert expresses v, given in from, in the unit to. It returns ErrUnknownUnit for a
// unit that is not the package's, ErrDimension if the two measure different things and
// ErrTooLarge if the result is not finite.
func Convert(v float64, from, to Unit) (float64, error) {
	f, t := measures[from], measures[to]
	switch {
	case f.dim == 0:
		return 0, &reason{ErrUnknownUnit, fmt.Sprintf("unknown unit %q", string(from))}
	case t.dim == 0:
		return 0, &reason{ErrUnknownUnit, fmt.Sprintf("unknown unit %q", string(to))}
	case f.dim != t.dim:
		return 0, wrongDimension(from, t.dim)
	}
	switch {
	case from == to:
	case f.dim == Temperature:
		v = convertTemperature(v, to)
	default:
		v = v * f.size / t.size
	}
	if math.IsInf(v, 0) || math.IsNaN(v) {
		return 0, ErrTooLarge
	}
	return v, nil
}

// convertTemperature turns degrees F into C or, if to is Fahrenheit, C into F.
// t/F = 1.8 t/C + 32 (NIST Special Publication 811, appendix B), kept in whole numbers.
func convertTemperature(v float64, to Unit) float64 {
	if to == Fahrenheit {
		return v*9/5 + 32
	}
	return (v - 32) * 5 / 9
}

// wrongDimension says that got is not a unit of the dimension want.
func wrongDimension(got Unit, want Dimension) error {
	return &reason{ErrDimension, fmt.Sprintf("%s is a unit of %s, not of %s", got, got.Dimension(), want)}
}
