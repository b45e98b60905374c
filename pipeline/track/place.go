package track

import (
	"bytes"
	"math"
	"unicode/utf8"
)

// coordinate is a latitude or longitude as written.
type coordinate struct {
	deg    float64
	letter byte // N, S, E or W; 0 where none was written
}

// readCoordinate reads decimal degrees, degrees and minutes, or degrees, minutes
// and seconds, with a point or a comma, marks or spaces between, and a minus or
// the letter of a hemisphere: -36.5, 36,5 S, 36°30.0'S, N 36 30 00.
func readCoordinate(b []byte) (c coordinate, ok bool) {
	if v, ok := plainDecimal(b); ok {
		return coordinate{deg: v}, true
	}
	var parts [3]float64
	n, minus := 0, false
	for len(b) > 0 {
		switch r := b[0]; {
		case r == '-' && n == 0 && !minus && c.letter == 0:
			minus, b = true, b[1:]
		case r == '+' && n == 0:
			b = b[1:]
		case r >= '0' && r <= '9':
			size := numeral(b)
			v, ok := decimal(bytes.Replace(b[:size], []byte(","), []byte("."), 1))
			if !ok || n == len(parts) || (n > 0 && (v >= 60 || parts[n-1] != math.Floor(parts[n-1]))) {
				return c, false
			}
			parts[n], b, n = v, b[size:], n+1
		case bytes.IndexByte([]byte("NSEWnsew"), r) >= 0 && c.letter == 0 && !minus:
			c.letter, b = r&^0x20, b[1:]
		default:
			size := between(b)
			if size == 0 {
				return c, false
			}
			b = b[size:]
		}
	}
	c.deg = parts[0] + parts[1]/60 + parts[2]/3600
	if minus || c.letter == 'S' || c.letter == 'W' {
		c.deg = -c.deg
	}
	return c, n > 0
}

// numeral is the length of the digits at the beginning of b, with a mark among them.
func numeral(b []byte) int {
	n, mark := 0, false
	for ; n < len(b); n++ {
		if (b[n] == '.' || b[n] == ',') && !mark && n+1 < len(b) && b[n+1] >= '0' && b[n+1] <= '9' {
			mark = true
			continue
		}
		if b[n] < '0' || b[n] > '9' {
			break
		}
	}
	return n
}

// between is the length of a mark or space between the parts of a coordinate.
func between(b []byte) int {
	if b[0] == 0xb0 || b[0] == 0xba { // a degree sign in Windows-1252
		return 1
	}
	switch r, size := utf8.DecodeRune(b); r {
	case ' ', '\t', '\u00a0', '°', 'º', '˚', '\'', '’', '′', '´', '"', '”', '″', ':', 'd', 'm', '.':
		return size
	}
	return 0
}

// readPair reads a latitude and a longitude in one cell.
func readPair(b []byte) (lat, lon coordinate, ok bool) {
	for i := 1; i < len(b)-1; i++ {
		if bytes.IndexByte([]byte("NSns ,;/"), b[i]) < 0 {
			continue
		}
		left, right := b[:i], bytes.TrimLeft(b[i+1:], " ,;/")
		if bytes.IndexByte([]byte("NSns"), b[i]) >= 0 {
			left = b[:i+1]
		}
		lat, ok1 := readCoordinate(bytes.TrimSpace(left))
		lon, ok2 := readCoordinate(right)
		if ok1 && ok2 && lat.fits('N', 'S') && lon.fits('E', 'W') && precise(left) && precise(right) {
			return lat, lon, true
		}
	}
	return lat, lon, false
}

// precise tells whether a coordinate has enough digits to be one, so that a clock
// time or a count is none.
func precise(b []byte) bool {
	digits := 0
	for _, c := range b {
		if c >= '0' && c <= '9' {
			digits++
		}
	}
	return digits >= 4
}

// fits tells whether a coordinate may have one of two letters.
func (c coordinate) fits(plus, minus byte) bool {
	return c.letter == 0 || c.letter == plus || c.letter == minus
}

// withLetter is a coordinate whose hemisphere stands in a cell of its own. Such a
// number may be in degrees and minutes written together, as NMEA 0183 has it.
func (c coordinate) withLetter(b []byte, most float64) (coordinate, bool) {
	if len(b) != 1 || c.letter != 0 {
		return c, len(b) == 0
	}
	c.letter = b[0] &^ 0x20
	if c.deg > most {
		whole := math.Floor(c.deg / 100)
		minutes := c.deg - 100*whole
		if minutes >= 60 {
			return c, false
		}
		c.deg = whole + minutes/60
	}
	if (c.letter == 'S' || c.letter == 'W') && c.deg > 0 {
		c.deg = -c.deg
	}
	return c, true
}
