package track

import (
	"bufio"
	"errors"
	"fmt"
	"io"
	"math"
	"slices"
	"strings"
	"time"

	"wakeledger/pipeline/record"
	"wakeledger/pipeline/unit"
)

var toKnots = map[string]float64{"kn": 1, "m/s": 1 / unit.KnotMS, "km/h": 1000.0 / unit.MetresPerNmi,
	"mph": unit.MetresPerMile / unit.MetresPerNmi}

// table reads rows of fixes.
type table struct {
	shape
	lines  *lineReader
	pos    record.Pos
	bad    Keeper
	zone   *time.Location
	cells  [][]byte
	parted string // the last value of what parts the track
	last   int64  // the fix before
	local  int    // times that named no zone
	places int    // rows with a place and no time
	spoken int    // rows that speak of fishing
	ended  bool   // the last line has no end and holds no fix
}

// newTable reads a text of a shape that sniff has told.
func newTable(r *bufio.Reader, s shape, pos record.Pos, zone *time.Location, bad Keeper) (*table, error) {
	if zone == nil || s.utc {
		zone = time.UTC
	}
	t := &table{shape: s, lines: &lineReader{r: r}, pos: pos, bad: bad, zone: zone}
	for range s.skip {
		if _, err := t.lines.next(); err != nil {
			return nil, err
		}
	}
	return t, nil
}

func (t *table) Notes() []string {
	var notes []string
	if t.timeless {
		notes = append(notes, noTimes(t.places))
	}
	if t.local > 0 {
		notes = append(notes, fmt.Sprintf("%d times name no zone and are read as %s", t.local, t.zone))
	}
	if t.unsure && t.order != unit.OrderUnknown {
		notes = append(notes, "its days are read "+t.order.String())
	}
	if t.unsure && t.order == unit.OrderUnknown {
		return append(notes, "nothing in it tells whether its days are day first or month first, so that none of it "+
			"is used: give --dates")
	}
	if t.swapped {
		notes = append(notes, "latitude and longitude are changed over in it: read the other way round")
	}
	if t.guessed {
		notes = append(notes, "no heading tells latitude from longitude: the first is read as latitude")
	}
	if passed := t.passedOver(); len(passed) > 0 {
		notes = append(notes, "passed over: "+strings.Join(passed, ", "))
	}
	if t.spoken > 0 {
		notes = append(notes, fmt.Sprintf("%d rows speak of lines or fish, which a track is not read for: keep "+
			"those in a log of their own", t.spoken))
	}
	if t.ended || t.lines.torn {
		notes = append(notes, endsEarly)
	}
	return notes
}

// passedOver are the headings that are not read.
func (t *table) passedOver() []string {
	var names []string
	for c, name := range t.names {
		if name != "" && !slices.Contains(t.at[:], c) {
			names = append(names, name)
		}
	}
	return names
}

func noTimes(n int) string {
	return fmt.Sprintf("it has no times: of its %d points no speed is known, and none is used", n)
}

func (t *table) Next() (Fix, bool, error) {
	if t.unsure && t.order == unit.OrderUnknown {
		return Fix{}, false, nil
	}
	for {
		line, err := t.lines.next()
		if errors.Is(err, io.EOF) {
			return Fix{}, false, nil
		}
		if err != nil {
			return Fix{}, false, err
		}
		if len(line) == 0 && !t.lines.long {
			continue
		}
		t.pos.Row = t.lines.no
		f, ok, column, why := t.row(line)
		if ok {
			return f, true, nil
		}
		if why == "" {
			continue
		}
		if t.ended = t.lines.open && !t.lines.long; t.ended {
			continue
		}
		if err := t.bad(record.Problem{Pos: t.pos, Column: column,
			Cell: shorten(t.cell(column)), Reason: why}); err != nil {
			return Fix{}, false, err
		}
	}
}

// row reads a line. column and why tell what is wrong with it, and are "" where it
// is passed over: a heading again, or a place in a table without times.
func (t *table) row(line []byte) (f Fix, ok bool, column, why string) {
	t.cells = t.cells[:0]
	if t.lines.long {
		return f, false, "", "a line of more than 64 KiB is no fix"
	}
	var whole bool
	if t.cells, whole = fields(t.cells, line, t.sep); !whole {
		return f, false, "", "a quote does not end in its line"
	}
	if len(t.cells) < t.width {
		t.cells = append(t.cells, make([][]byte, t.width-len(t.cells))...)[:len(t.cells)]
	}
	r, column, why := t.fix(t.cells, t.order)
	if column != "" || why != "" {
		if t.again() {
			return f, false, "", ""
		}
		return f, false, column, why
	}
	if t.timeless {
		t.places++
		return f, false, "", ""
	}
	f = Fix{Lat: r.lat, Lon: r.lon, SpeedKn: math.NaN()}
	f.At, _ = r.stamp.at(t.zone, t.last)
	t.last = f.At
	if r.stamp.Offset == nil && !r.stamp.unix && !t.utc {
		t.local++
	}
	if v, ok := readCoordinate(t.of(isSpeed)); ok && v.deg >= 0 {
		f.SpeedKn = v.deg * toKnots[t.unit]
	}
	if s := t.of(isParted); t.at[isParted] >= 0 && string(s) != t.parted {
		f.Break, t.parted = true, string(s)
	}
	t.listen()
	return f, true, "", ""
}

// listen counts rows that speak of fishing in a column that is not read.
func (t *table) listen() {
	for c, cell := range t.cells {
		if len(cell) > 3 && (cell[0] < '0' || cell[0] > '9') && cell[0] != '-' &&
			!slices.Contains(t.at[:], c) && ofFishing(string(cell)) {
			t.spoken++
			return
		}
	}
}

// again tells whether the row is the heading once more.
func (t *table) again() bool {
	same := false
	for c, cell := range t.cells {
		if c < len(t.names) && t.names[c] != "" {
			if string(cell) != t.names[c] {
				return false
			}
			same = true
		}
	}
	return same
}

func (t *table) of(r role) []byte { return cellOf(t.cells, t.at[r]) }

func cellOf(cells [][]byte, at int) []byte {
	if at < 0 || at >= len(cells) {
		return nil
	}
	return cells[at]
}

// cell is what stands in the column that is wrong; never a place, which is for the
// boat alone.
func (t *table) cell(column string) string {
	if column != "time" {
		return ""
	}
	return strings.TrimSpace(string(t.of(isDate)) + " " + string(cellOf(t.cells, t.timeColumn())))
}

// rowFix is a row's place and time.
type rowFix struct {
	lat, lon float64
	stamp    stamp
	at       int64 // its instant as if its zone were UTC
}

const (
	noPlace = "no position: expected a latitude of -90 to 90 and a longitude of -180 to 180"
	noTime  = "not a date and time such as 2026-07-01 13:00:00"
)

// fix reads a row. column and why tell what is wrong with it.
func (s *shape) fix(cells [][]byte, order unit.Order) (f rowFix, column, why string) {
	var ok bool
	if f.lat, f.lon, ok = s.place(cells); !ok {
		return f, "position", noPlace
	}
	if s.timeless {
		return f, "", ""
	}
	if order == unit.OrderUnknown && s.unsure {
		order = unit.DayFirst // only to tell whether it is a time: unsure tables are not read
	}
	var err error
	if s.at[isStamp] >= 0 {
		f.stamp, err = readStamp(cellOf(cells, s.at[isStamp]), order)
	} else {
		f.stamp, err = readStamp(cellOf(cells, s.at[isDate]), order)
		if err == nil {
			var c stamp
			if c, err = readStamp(clockText(cellOf(cells, s.at[isClock])), order); err == nil {
				f.stamp, ok = f.stamp.clockOf(c)
			}
		}
	}
	if err == nil && ok {
		f.at, ok = f.stamp.at(time.UTC, 0)
	}
	if err != nil || !ok {
		return f, "time", noTime
	}
	return f, "", ""
}

// clockText has the marks of a clock time as colons: 17.12.00 and 171200 are 17:12:00.
func clockText(b []byte) []byte {
	if len(b) >= 8 && b[2] == '.' && b[5] == '.' {
		c := append([]byte(nil), b...)
		c[2], c[5] = ':', ':'
		return c
	}
	if len(b) == 6 {
		for _, d := range b {
			if d < '0' || d > '9' {
				return b
			}
		}
		return []byte{b[0], b[1], ':', b[2], b[3], ':', b[4], b[5]}
	}
	return b
}

// place reads a row's place.
func (s *shape) place(cells [][]byte) (lat, lon float64, ok bool) {
	var a, b coordinate
	if s.at[isPlace] >= 0 {
		if a, b, ok = readPair(cellOf(cells, s.at[isPlace])); !ok {
			return 0, 0, false
		}
	} else {
		var ok1, ok2 bool
		a, ok1 = readCoordinate(cellOf(cells, s.at[isLat]))
		b, ok2 = readCoordinate(cellOf(cells, s.at[isLon]))
		if !ok1 || !ok2 {
			return 0, 0, false
		}
	}
	if s.at[isNorth] >= 0 && s.at[isEast] >= 0 {
		var ok1, ok2 bool
		a, ok1 = a.withLetter(cellOf(cells, s.at[isNorth]), 90)
		b, ok2 = b.withLetter(cellOf(cells, s.at[isEast]), 180)
		if !ok1 || !ok2 {
			return 0, 0, false
		}
	}
	if s.swapped || (a.letter != 0 && !a.fits('N', 'S') && b.fits('N', 'S')) {
		a, b = b, a
	}
	return a.deg, b.deg, a.fits('N', 'S') && b.fits('E', 'W') && place(a.deg, b.deg)
}
