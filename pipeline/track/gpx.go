package track

import (
	"bufio"
	"bytes"
	"errors"
	"fmt"
	"io"
	"math"
	"regexp"
	"strconv"

	"wakeledger/pipeline/record"
	"wakeledger/pipeline/tag"
	"wakeledger/pipeline/unit"
)

// gpx reads GPX 1.1 (topografix.com/GPX/1/1, 2004), and 1.0, which differs in
// what is read only by a speed of its own. Elements are told by their local
// names, because programs disagree on prefixes.
type gpx struct {
	tags   *tag.Reader
	pos    record.Pos
	bad    Keeper
	depth  int  // in a trkpt: 1, in an element of it 2, and so on; 0 outside
	broken bool // a trkseg began since the last fix
	now    point
	cut    bool // the file ends in the middle
	closed bool // the document does
	done   bool
	// swapped tells that the file has latitude and longitude changed over
	swapped          bool
	timeless, points int
	marks, route     int // waypoints, and points of routes
}

// point is a trkpt as far as it has been read.
type point struct {
	lat, lon, time, speed []byte
	own                   bool // the time is the point's own and not of an extension
	line                  int
}

// mostText bounds the text kept before a tag, in bytes: times and speeds are shorter.
const mostText = 64

func newGPX(r *bufio.Reader, pos record.Pos, bad Keeper) *gpx {
	return &gpx{tags: tag.NewReader(r, mostText), pos: pos, bad: bad, broken: true, swapped: changedOver(peek(r))}
}

var pointPlace = regexp.MustCompile(`<(?:\w+:)?trkpt\s+lat\s*=\s*["']([^"']*)["']\s+lon\s*=\s*["']([^"']*)["']`)

// changedOver tells whether most of a document's first latitudes are none, and its
// longitudes might be.
func changedOver(head []byte) bool {
	n, over := 0, 0
	for _, m := range pointPlace.FindAllSubmatch(head, -1) {
		lat, ok1 := decimal(m[1])
		lon, ok2 := decimal(m[2])
		if n++; ok1 && ok2 && math.Abs(lat) > 90 && math.Abs(lon) <= 90 {
			over++
		}
	}
	return 2*over > n
}

func (g *gpx) Notes() []string {
	var notes []string
	if g.timeless > 0 && g.timeless == g.points {
		notes = append(notes, noTimes(g.timeless))
	} else if g.timeless > 0 {
		notes = append(notes, fmt.Sprintf("points without a time: %d. No speed is known of them, and none is used",
			g.timeless))
	}
	if g.marks > 0 || g.route > 0 {
		word := "waypoints and routes, which tell of no way run, are passed over"
		if g.points == 0 {
			word = "it holds waypoints or routes and no track, and is passed over"
		}
		notes = append(notes, fmt.Sprintf("%s (%s, %s)", word, counted(g.marks, "waypoint"),
			counted(g.route, "route point")))
	}
	if g.swapped {
		notes = append(notes, "latitude and longitude are changed over in it: read the other way round")
	}
	if g.cut {
		notes = append(notes, endsEarly)
	}
	return notes
}

// counted is a number of things in words.
func counted(n int, thing string) string {
	if n == 1 {
		return "1 " + thing
	}
	return fmt.Sprintf("%d %ss", n, thing)
}

func (g *gpx) Next() (Fix, bool, error) {
	for !g.done {
		err := g.tags.Next()
		if errors.Is(err, io.EOF) || errors.Is(err, io.ErrUnexpectedEOF) {
			g.done, g.cut = true, !g.closed
			break
		}
		if err != nil {
			return Fix{}, false, err
		}
		if !g.tag() {
			continue
		}
		g.points++
		f, why := g.fix()
		if why == "" {
			g.broken = false
			return f, true, nil
		}
		if len(g.now.time) == 0 {
			g.timeless++
			continue
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
	switch name := string(t.Name); {
	case name == "trkpt" && !t.End:
		g.now.lat, g.now.lon = g.copied(g.now.lat, "lat"), g.copied(g.now.lon, "lon")
		g.now.time, g.now.own, g.now.speed, g.now.line = g.now.time[:0], false, g.now.speed[:0], t.Line
		if g.depth = 1; t.Empty {
			g.depth = 0
		}
		return t.Empty
	case name == "trkpt":
		ends := g.depth > 0
		g.depth = 0
		return ends
	case g.depth == 0:
		g.outside(name)
	case t.Empty:
	case !t.End:
		g.depth++
	default:
		g.depth = max(g.depth-1, 1)
		g.element(name)
	}
	return false
}

// outside takes in a tag that is in no point of a track.
func (g *gpx) outside(name string) {
	switch {
	case name == "trkseg" && !g.tags.End:
		g.broken = true
	case name == "wpt" && !g.tags.End:
		g.marks++
	case name == "rtept" && !g.tags.End:
		g.route++
	case name == "gpx" && g.tags.End:
		g.closed = true
	}
}

// element takes in an element of a point. Extensions may have times of their own:
// the point's own goes before.
func (g *gpx) element(name string) {
	switch own := g.depth == 1; {
	case name == "time" && (own || !g.now.own && len(g.now.time) == 0):
		g.now.time = append(g.now.time[:0], bytes.TrimSpace(g.tags.Text)...)
		g.now.own = own
	case name == "speed":
		g.now.speed = append(g.now.speed[:0], bytes.TrimSpace(g.tags.Text)...)
	}
}

func (g *gpx) copied(into []byte, attr string) []byte {
	v := g.tags.Attr(attr)
	return append(into[:0], v...)
}

// fix is the point that has been read, or why it is none.
func (g *gpx) fix() (f Fix, why string) {
	var ok1, ok2 bool
	f.Lat, ok1 = decimal(g.now.lat)
	f.Lon, ok2 = decimal(g.now.lon)
	if g.swapped {
		f.Lat, f.Lon = f.Lon, f.Lat
	}
	if !ok1 || !ok2 || !place(f.Lat, f.Lon) {
		return f, noPlace
	}
	if len(g.now.time) == 0 {
		return f, "no time"
	}
	var ok bool
	if f.At, ok = instant(g.now.time); !ok {
		return f, "not a time such as 2026-07-01T13:00:00Z"
	}
	f.SpeedKn = math.NaN()
	if v, ok := decimal(g.now.speed); ok && v >= 0 {
		f.SpeedKn = v / unit.KnotMS
	}
	f.Break = g.broken
	return f, ""
}

func (g *gpx) aside(why string) error {
	pos := g.pos
	pos.Row = g.now.line
	// the time alone: a place is for the boat
	return g.bad(record.Problem{Pos: pos, Column: "trkpt", Reason: why, Cell: shorten(string(g.now.time))})
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
