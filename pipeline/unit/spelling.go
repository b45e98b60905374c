package unit

import "unicode/utf8"

// spellings maps a folded spelling (see foldUnit: lower case, no spaces or full stops,
// plain quotes) to its unit. Spellings are common practice, no source.
var spellings = map[string]Unit{
	"mm": Millimetre, "mms": Millimetre, "millimetre": Millimetre, "millimetres": Millimetre,
	"millimeter": Millimetre, "millimeters": Millimetre,
	"cm": Centimetre, "cms": Centimetre, "centimetre": Centimetre, "centimetres": Centimetre,
	"centimeter": Centimetre, "centimeters": Centimetre,
	"m": Metre, "metre": Metre, "metres": Metre, "meter": Metre, "meters": Metre,
	"in": Inch, "ins": Inch, "inch": Inch, "inches": Inch, `"`: Inch, "''": Inch,
	"pulg": Inch, "pulgada": Inch, "pulgadas": Inch, "polegada": Inch, "polegadas": Inch,
	"pouce": Inch, "pouces": Inch, "pollice": Inch, "pollici": Inch, "zoll": Inch,
	"ft": Foot, "foot": Foot, "feet": Foot, "'": Foot,
	"yd": Yard, "yds": Yard, "yard": Yard, "yards": Yard,
	"fathom": Fathom, "fathoms": Fathom, "fm": Fathom, "fms": Fathom, "fth": Fathom, "fths": Fathom,
	"fthm": Fathom, "fthms": Fathom,
	"km": Kilometre, "kms": Kilometre, "kilometre": Kilometre, "kilometres": Kilometre,
	"kilometer": Kilometre, "kilometers": Kilometre,
	"mi": Mile, "statutemile": Mile, "statutemiles": Mile,
	"nmi": NauticalMile, "nm": NauticalMile, "nauticalmile": NauticalMile,
	"nauticalmiles": NauticalMile, "nautmi": NauticalMile,

	"g": Gram, "gr": Gram, "gram": Gram, "grams": Gram, "gramme": Gram, "grammes": Gram,
	"kg": Kilogram, "kgs": Kilogram, "kilo": Kilogram, "kilos": Kilogram, "kilogram": Kilogram, "kilograms": Kilogram,
	"oz": Ounce, "ozs": Ounce, "ounce": Ounce, "ounces": Ounce, "onza": Ounce, "onzas": Ounce,
	"onça": Ounce, "onças": Ounce,
	"lb": Pound, "lbs": Pound, "#": Pound, "##": Pound, "pound": Pound, "pounds": Pound, "libra": Pound,
	"libras": Pound,

	"kn": Knot, "kns": Knot, "kt": Knot, "kts": Knot, "knot": Knot, "knots": Knot, "nudo": Knot, "nudos": Knot,
	"nd": Knot, "nds": Knot, "noeud": Knot, "noeuds": Knot, "nœud": Knot, "nœuds": Knot, "nodo": Knot, "nodi": Knot,
	"nós": Knot, "knoten": Knot, "nmi/h": Knot, "nm/h": Knot,
	"mph": MilePerHour, "mi/h": MilePerHour, "mileperhour": MilePerHour, "milesperhour": MilePerHour,
	"mi/hr": MilePerHour, "mile/h": MilePerHour, "miles/h": MilePerHour, "miles/hr": MilePerHour,
	"mile/hr": MilePerHour, "miles/hour": MilePerHour,
	"km/h": KilometrePerHour, "kmh": KilometrePerHour, "kph": KilometrePerHour,
	"kmph": KilometrePerHour, "km/hr": KilometrePerHour, "km/hour": KilometrePerHour,
	"kilometresperhour": KilometrePerHour, "kilometersperhour": KilometrePerHour,
	"m/s": MetrePerSecond, "mps": MetrePerSecond, "m/sec": MetrePerSecond, "metrespersecond": MetrePerSecond,
	"meterspersecond": MetrePerSecond,

	"c": Celsius, "°c": Celsius, "degc": Celsius, "celsius": Celsius, "degreesc": Celsius, "degreescelsius": Celsius,
	"degcelsius": Celsius, "℃": Celsius,
	"f": Fahrenheit, "°f": Fahrenheit, "degf": Fahrenheit, "fahrenheit": Fahrenheit, "degreesf": Fahrenheit,
	"degreesfahrenheit": Fahrenheit,
	"degfahrenheit":     Fahrenheit, "℉": Fahrenheit,

	"s": Second, "sec": Second, "secs": Second, "second": Second, "seconds": Second,
	"min": Minute, "mins": Minute, "mn": Minute, "minute": Minute, "minutes": Minute,
	"minuto": Minute, "minutos": Minute, "minuti": Minute, "minuten": Minute,
	"h": Hour, "hr": Hour, "hrs": Hour, "hour": Hour, "hours": Hour, "dayshare": DayShare,
	"deg": Degree, "degs": Degree, "degree": Degree, "degrees": Degree, "°": Degree,
}

// doubtful spellings have two meanings at sea: a "mile" in a boat's log is as often
// nautical as statute, and a capital M is a nautical mile on a chart.
var doubtful = map[string]bool{"mile": true, "miles": true, "M": true}

// maxSpelling bounds a unit's spelling, in bytes; longer text is no unit.
const maxSpelling = 32

// Lookup finds the unit that a spelling means where no dimension is known, as in a
// header: "lbs", "#", "Kts.", "inches", `"`, "feet", "deg C". Case, spaces, full stops
// and the style of quotes do not matter. It returns false for text that is no unit and
// for spellings with two meanings at sea ("M", "miles").
func Lookup(spelling string) (Unit, bool) {
	if u, ok := spellings[spelling]; ok {
		return u, true
	}
	var buf [maxSpelling]byte
	key, ok := foldUnit(buf[:0], spelling)
	if !ok || doubtful[string(key)] {
		return "", false
	}
	u, ok := spellings[string(key)]
	return u, ok
}

// lookupFor is Lookup for text beside a number of a known dimension, which settles
// "m" and quotes in a duration and a bare degree sign in a temperature (no unit at all).
func lookupFor(spelling string, dim Dimension) (u Unit, err error) {
	if u, ok := spellings[spelling]; ok && u.Dimension() == dim {
		return u, nil
	}
	var buf [maxSpelling]byte
	key, ok := foldUnit(buf[:0], spelling)
	if !ok {
		return "", expected(dim)
	}
	if u, ok := inContext(string(key), dim); ok {
		return u, nil
	}
	if doubtful[string(key)] {
		return "", ErrAmbiguousUnit
	}
	u, ok = spellings[string(key)]
	switch {
	case !ok:
		return "", expected(dim)
	case u.Dimension() != dim:
		return "", wrongDimension(u, dim)
	}
	return u, nil
}

// inContext gives a spelling's meaning where the dimension changes it; "" with true
// means that the spelling names no unit.
func inContext(key string, dim Dimension) (Unit, bool) {
	switch dim {
	case Duration:
		switch key {
		case "m", "M", "'":
			return Minute, true
		case `"`, "''":
			return Second, true
		}
	case Temperature:
		switch key {
		case "deg", "degs", "degree", "degrees", "°":
			return "", true
		}
	}
	return "", false
}

// foldUnit appends the folded form of a spelling to dst: lower case, without spaces and
// full stops, typographic quotes and degree signs made plain. A lone capital M is kept,
// since it is not the metre's symbol. It returns false if nothing is left or the text is too long.
func foldUnit(dst []byte, s string) ([]byte, bool) {
	if len(s) > maxSpelling {
		return nil, false
	}
	capitals := 0
	for _, r := range s {
		switch {
		case isSpace(r) || r == '.':
		case r >= 'A' && r <= 'Z':
			capitals++
			dst = append(dst, byte(r)+'a'-'A')
		case r < utf8.RuneSelf:
			dst = append(dst, byte(r))
		default:
			dst = utf8.AppendRune(dst, plainSign(r))
		}
	}
	if len(dst) == 1 && dst[0] == 'm' && capitals == 1 {
		dst[0] = 'M'
	}
	return dst, len(dst) > 0
}

// plainSign replaces a typographic or look-alike sign by the one in the spelling table.
func plainSign(r rune) rune {
	switch r {
	case '′', '’', '‘', '´':
		return '\''
	case '″', '”', '“', '„', '＂':
		return '"'
	case 'º', '˚':
		return '°'
	}
	return r
}
