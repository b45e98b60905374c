package unit_test

import (
	"errors"
	"math"
	"strings"
	"testing"

	"wakeledger/pipeline/unit"
)

func TestConvert(t *testing.T) {
	tests := []struct {
		v        float64
		from, to unit.Unit
		want     float64
	}{
		{74, unit.Inch, unit.Centimetre, 187.96},            // 74 x 2.54
		{187, unit.Pound, unit.Kilogram, 84.82177319},       // 187 x 0.45359237
		{12, unit.Knot, unit.MetrePerSecond, 22224. / 3600}, // 12 x 1852 m in 3600 s = 6.17333...
		{200, unit.Ounce, unit.Pound, 12.5},                 // 16 oz a pound
		{68, unit.Fahrenheit, unit.Celsius, 20},             // (68-32) x 5/9
		{-40, unit.Fahrenheit, unit.Celsius, -40},           // where the scales meet
		{-40, unit.Celsius, unit.Fahrenheit, -40},           //
		{100, unit.Celsius, unit.Fahrenheit, 212},           //
		{135, unit.Minute, unit.Hour, 2.25},                 //
		{1, unit.Hour, unit.Second, 3600},                   //
		{1.88, unit.Metre, unit.Centimetre, 188},            //
		{3, unit.Yard, unit.Foot, 9},                        //
		{20, unit.Fathom, unit.Metre, 36.576},               // 120 ft
		{1, unit.Fathom, unit.Foot, 6},                      //
		{270, unit.Degree, unit.Degree, 270},                //
	}
	for _, tt := range tests {
		got, err := unit.Convert(tt.v, tt.from, tt.to)
		if err != nil || math.Abs(got-tt.want) > 1e-12*math.Abs(tt.want) {
			t.Errorf("Convert(%v, %s, %s) = %.17g, %v; want %.17g", tt.v, tt.from, tt.to, got, err, tt.want)
		}
	}
}

// TestFactors checks every factor against NIST Special Publication 811, appendix B.8,
// "Factors for units listed alphabetically", as printed there to seven figures (exact
// factors in full). The figures are from memory of that table.
func TestFactors(t *testing.T) {
	tests := []struct {
		from, si unit.Unit
		factor   float64
	}{
		{unit.Inch, unit.Metre, 2.54e-2},
		{unit.Foot, unit.Metre, 3.048e-1},
		{unit.Yard, unit.Metre, 9.144e-1},
		{unit.Mile, unit.Metre, 1.609344e3},
		{unit.NauticalMile, unit.Metre, 1.852e3},
		{unit.Ounce, unit.Kilogram, 2.834952e-2},
		{unit.Pound, unit.Kilogram, 4.535924e-1},
		{unit.Knot, unit.MetrePerSecond, 5.144444e-1},
		{unit.MilePerHour, unit.MetrePerSecond, 4.4704e-1},
		{unit.KilometrePerHour, unit.MetrePerSecond, 2.777778e-1},
		{unit.Minute, unit.Second, 60},
		{unit.Hour, unit.Second, 3600},
		{unit.Millimetre, unit.Metre, 1e-3},
		{unit.Centimetre, unit.Metre, 1e-2},
		{unit.Kilometre, unit.Metre, 1e3},
		{unit.Gram, unit.Kilogram, 1e-3},
	}
	for _, tt := range tests {
		got, err := unit.Convert(1, tt.from, tt.si)
		if err != nil || math.Abs(got-tt.factor) > 5e-7*tt.factor {
			t.Errorf("1 %s = %.10g %s, %v; want %g", tt.from, got, tt.si, err, tt.factor)
		}
		back, err := unit.Convert(got, tt.si, tt.from)
		if err != nil || math.Abs(back-1) > 1e-15 {
			t.Errorf("1 %s there and back = %.17g, %v", tt.from, back, err)
		}
	}
}

func TestConvertRefuses(t *testing.T) {
	tests := []struct {
		v        float64
		from, to unit.Unit
		want     error
		text     string
	}{
		{1, unit.Knot, unit.Inch, unit.ErrDimension, "kn is a unit of speed, not of length"},
		{1, unit.Pound, unit.Minute, unit.ErrDimension, "lb is a unit of weight, not of duration"},
		{1, "furlong", unit.Metre, unit.ErrUnknownUnit, `unknown unit "furlong"`},
		{1, unit.Metre, "", unit.ErrUnknownUnit, `unknown unit ""`},
		{math.MaxFloat64, unit.Hour, unit.Second, unit.ErrTooLarge, "number too large"},
		{math.NaN(), unit.Hour, unit.Hour, unit.ErrTooLarge, "number too large"},
	}
	for _, tt := range tests {
		got, err := unit.Convert(tt.v, tt.from, tt.to)
		if !errors.Is(err, tt.want) || err.Error() != tt.text || got != 0 {
			t.Errorf("Convert(%v, %s, %s) = %v, %v; want %q", tt.v, tt.from, tt.to, got, err, tt.text)
		}
	}
}

func TestLookup(t *testing.T) {
	want := map[unit.Unit]string{
		unit.Millimetre:       "mm, MM, millimetres, Millimeters",
		unit.Centimetre:       "cm, Cm., CM, cms, centimetres, centimeters",
		unit.Metre:            "m, metres, Meter",
		unit.Inch:             `in, in., IN, ins, inches, Inch, pulg., Pulgadas, polegadas, Pouces, Zoll, ", '', ″, ”, ′′, ’’`,
		unit.Foot:             "ft, ft., FT, feet, foot, ', ′, ’",
		unit.Yard:             "yd, yds, Yds., yards",
		unit.Fathom:           "fathom, Fathoms, fm, fms.",
		unit.Kilometre:        "km, KM, kilometres",
		unit.Mile:             "mi, statute miles",
		unit.NauticalMile:     "nmi, NM, nm, n.m., n. mi., nautical miles, Nautical Mile",
		unit.Gram:             "g, G, gr, grams",
		unit.Kilogram:         "kg, KG, Kgs., kilos, kilograms",
		unit.Ounce:            "oz, oz., OZ, ounces, onzas, onças",
		unit.Pound:            "lb, lbs, lbs., LBS, #, pounds, Pound, libras",
		unit.Knot:             "kn, kt, kts, KTS, Kts., knots, Knot",
		unit.MilePerHour:      "mph, MPH, m.p.h., miles per hour, miles/hr, mi/hr",
		unit.KilometrePerHour: "km/h, kph, kmh, KM/H, km / h",
		unit.MetrePerSecond:   "m/s, mps, metres per second",
		unit.Celsius:          "C, c, °C, deg C, degC, º C, ˚C, ℃, Celsius",
		unit.Fahrenheit:       "F, f, °F, deg F, ° F, ℉, Fahrenheit",
		unit.Second:           "s, sec, secs, seconds",
		unit.Minute:           "min, mins, min., minutes",
		unit.Hour:             "h, hr, hrs, Hrs., hours",
		unit.Degree:           "deg, °, degrees, º",
	}
	for u, list := range want {
		if got, ok := unit.Lookup(string(u)); !ok || got != u || u.Dimension() == 0 {
			t.Errorf("Lookup(%q) = %q, %v", u, got, ok)
		}
		for _, s := range strings.Split(list, ", ") {
			if got, ok := unit.Lookup(s); !ok || got != u {
				t.Errorf("Lookup(%q) = %q, %v; want %s", s, got, ok, u)
			}
		}
	}
	// "M" and "miles" have two meanings at sea.
	for _, s := range []string{"", " ", ".", "M", "miles", "Mile", "x", "kgm", "FL", "lb ft", "12",
		strings.Repeat("m", 99), "\xff"} {
		if got, ok := unit.Lookup(s); ok {
			t.Errorf("Lookup(%q) = %q, want none", s, got)
		}
	}
}
