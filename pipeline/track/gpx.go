package track

import (
	"bufio"
	"bytes"
	"errors"
	"io"
	"math"
	"strconv"

	"wakeledger/pipeline/record"
)

// gpx reads GPX 1.1 (topografix.com/GPX/1/1, 2004), and 1.0, which differs in
// what is read only by a speed of its own. Elements are told by their local
// names, because programs disagree on prefixes.
type gpx struct {
	tags   *tags
	pos    record.Pos
	bad    Keeper
	inside bool // a trkpt
	broken bool // a trkseg began since the last fix
	now    point
	cut    bool // the file ends in the middle
	done   bool
}

// point is a trkpt as far as it has been read.
type point struct {
	lat, lon, time, speed []byte
	line                  int
}

func newGPX(r *bufio.Reader, pos record.Pos, bad Keeper) *gpx {
	return &gpx{tags: newTags(r), pos: pos, bad: bad, broken: true}
}

func (g *gpx) Notes() []string {
	if g.cut {
		return []string{"the file ends in the middle: what stands before is read"}
	}
	return nil
}

func (g *gpx) Next() (Fix, bool, error) {
	for !g.done {
		err := g.tags.next()
		if errors.Is(err, io.EOF) || errors.Is(err, io.ErrUnexpectedEOF) {
			g.done, g.cut = true, g.inside || errors.Is(err, io.ErrUnexpectedEOF)
			break
		}
		if err != nil {
			return Fix{}, false, err
		}
		if !g.tag() {
			continue
		}
		f, why := g.fix()
		if why == "" {
			g.broken = false
			return f, true, nil
		}
		if err := g.aside(why); err != nil {
			return Fix{}, false, err
		}
	}
	return Fix{}, false, nil
}

// tag takes in a tag and tells whether it ends a point.
func (g *gpx) tag() bool {
	t := g.tags
	switch name := string(t.name); {
	case name == "trkseg" && !t.end:
		g.broken = true
	case name == "trkpt" && !t.end:
		g.now.lat, g.now.lon = g.copied(g.now.lat, "lat"), g.copied(g.now.lon, "lon")
		g.now.time, g.now.speed, g.now.line = g.now.time[:0], g.now.speed[:0], t.line
		g.inside = !t.empty
		return t.empty
	case !g.inside || !t.end:
	case name == "time":
		g.now.time = append(g.now.time[:0], bytes.TrimSpace(t.text)...)
	case name == "speed":
		g.now.speed = append(g.now.speed[:0], bytes.TrimSpace(t.text)...)
	case name == "trkpt":
		g.inside = false
		return true
	}
	return false
}

func (g *gpx) copied(into []byte, attr string) []byte {
	v, _ := g.tags.attr(attr)
	return append(into[:0], v...)
}

// fix is the point that has been read, or why it is none.
func (g *gpx) fix() (f Fix, why string) {
	var ok1, ok2 bool
	f.Lat, ok1 = decimal(g.now.lat)
	f.Lon, ok2 = decimal(g.now.lon)
	if !ok1 || !ok2 || !place(f.Lat, f.Lon) {
		return f, "no position: lat must be -90 to 90 and lon -180 to 180"
	}
	if len(g.now.time) == 0 {
		return f, "no time: of a point without a time no speed is known"
	}
	var ok bool
	if f.At, ok = instant(g.now.time); !ok {
		return f, "not a time such as 2026-07-01T13:00:00Z"
	}
	f.SpeedKn = math.NaN()
	if v, ok := decimal(g.now.speed); ok && v >= 0 {
		f.SpeedKn = v / metresPerKnotSecond
	}
	f.Break = g.broken
	return f, ""
}

func (g *gpx) aside(why string) error {
	pos := g.pos
	pos.Row = g.now.line
	return g.bad(record.Problem{Pos: pos, Column: "trkpt", Reason: why,
		Cell: shorten(string(g.now.lat) + " " + string(g.now.lon) + " " + string(g.now.time))})
}

// decimal reads a number. Plain ones of up to 15 digits are a whole number over a
// power of ten, both of which a float64 holds, so that their quotient is right to
// the last bit.
func decimal(b []byte) (float64, bool) {
	if v, ok := plainDecimal(b); ok {
		return v, true
	}
	v, err := strconv.ParseFloat(string(b), 64)
	return v, err == nil && !math.IsNaN(v) && !math.IsInf(v, 0)
}

func plainDecimal(b []byte) (float64, bool) {
	minus := len(b) > 0 && b[0] == '-'
	if minus {
		b = b[1:]
	}
	if len(b) == 0 || len(b) > 16 || b[0] == '.' {
		return 0, false
	}
	digits, scale, point := int64(0), 1.0, false
	for _, c := range b {
		switch {
		case c == '.' && !point:
			point = true
		case c < '0' || c > '9':
			return 0, false
		default:
			digits = 10*digits + int64(c-'0')
			if point {
				scale *= 10
			}
		}
	}
	if digits >= 1e15 {
		return 0, false
	}
	if minus {
		return -float64(digits) / scale, true
	}
	return float64(digits) / scale, true
}
