package seasons

import (
	"math/big"
	"strings"
)

// Amount is a quantity in the unit it was measured in; the zero Amount was not logged.
type Amount struct {
	Known bool
	value *big.Rat
	unit  string
}

// sizes are the units' exact sizes, in m, kg, m/s, s and degrees: the
// international yard and pound agreement of 1959, nautical mile 1852 m.
var sizes = map[string]string{
	"m": "1", "cm": "0.01", "in": "0.0254", "yd": "0.9144", "ft": "0.3048", "nmi": "1852",
	"kg": "1", "g": "0.001", "lb": "0.45359237", "oz": "0.028349523125",
	"m/s": "1", "kn": "1852/3600", "km/h": "1000/3600", "mph": "1609.344/3600",
	"s": "1", "min": "60", "deg": "1",
}

// of is n/d of a unit.
func of(n, d int64, unit string) Amount {
	return Amount{Known: true, value: big.NewRat(n, d), unit: unit}
}

func size(unit string) *big.Rat {
	top, bottom, ok := strings.Cut(sizes[unit], "/")
	if !ok {
		bottom = "1"
	}
	a, _ := new(big.Rat).SetString(top)
	b, _ := new(big.Rat).SetString(bottom)
	return a.Quo(a, b)
}

// in is the exact value in another unit of the same kind.
func (a Amount) in(unit string) *big.Rat {
	v := new(big.Rat).Set(a.value)
	switch {
	case a.unit == unit:
		return v
	case a.unit == "C" && unit == "F":
		return v.Add(v.Mul(v, big.NewRat(9, 5)), big.NewRat(32, 1))
	}
	v.Mul(v, size(a.unit))
	return v.Quo(v, size(unit))
}

// float is the value in a unit for a cell of the season file, nil if not logged.
func (a Amount) float(unit string) any {
	if !a.Known {
		return nil
	}
	f, _ := a.in(unit).Float64()
	return f
}

// decimal writes the value in a unit in full; ok is false where it has no end.
func (a Amount) decimal(unit string) (string, bool) {
	v := a.in(unit)
	s := v.FloatString(14)
	back, _ := new(big.Rat).SetString(s)
	if strings.Contains(s, ".") {
		s = strings.TrimRight(strings.TrimRight(s, "0"), ".")
	}
	return s, back.Cmp(v) == 0
}

func (a Amount) whole(unit string) bool { return a.in(unit).IsInt() }
