package track

import (
	"bytes"
	"slices"
	"strings"
	"unicode"

	"wakeledger/pipeline/unit"
	"wakeledger/pipeline/words"
)

// role is what a column of a table holds.
type role int

const (
	noRole   role = iota
	isStamp       // date and time, or seconds since 1970
	isDate        // the date alone
	isClock       // the time of day alone
	isLat         // of which the hemisphere may stand in a column of its own
	isLon         //
	isPlace       // both in one cell
	isNorth       // N or S
	isEast        // E or W
	isSpeed       //
	isParted      // a new value parts the track
	roles         // how many there are
)

// shape is how a table of fixes is to be read.
type shape struct {
	sep      byte
	width    int        // columns
	skip     int        // lines before the first fix
	at       [roles]int // the column of each role; -1: none
	names    []string   // headings; "" where there is none
	unit     string     // of speed
	utc      bool       // the heading of the time says so
	timeless bool       // it has places and no times
	swapped  bool       // latitude and longitude are changed over
	guessed  bool       // no heading tells latitude from longitude
	order    unit.Order
	unsure   bool // dates that may be of either order
}

// sniffed is the most of a table's beginning that its shape is told from.
const sniffed = 64 << 10

// sniff tells how the beginning of a text is read as a table of fixes. It is one
// where most rows have a time and a place, whatever else they have, and nothing
// tells that it is a sheet of a log.
func sniff(head []byte) (shape, bool) {
	lines := headLines(head)
	for _, sep := range []byte{'\t', ';', ',', '|', 0} {
		t := newSample(lines, sep)
		if t == nil || !t.look() {
			continue
		}
		return t.shape, !t.ofLog()
	}
	return shape{}, false
}

// headLines are the whole lines of a text's beginning.
func headLines(head []byte) [][]byte {
	head = head[:min(len(head), sniffed)]
	if len(head) == sniffed {
		head = head[:bytes.LastIndexByte(head, '\n')+1]
	}
	var lines [][]byte
	for _, l := range bytes.Split(head, []byte{'\n'}) {
		if lines = append(lines, bytes.TrimRight(l, "\r")); len(lines) == mostSampled {
			break
		}
	}
	return lines
}

const mostSampled = 400 // lines

// sample is the beginning of a table, split into cells.
type sample struct {
	shape
	rows  [][][]byte // those of the usual width
	nos   []int      // their lines, from 0
	first int        // of rows, the first that holds a fix
	looks []look     // of the columns
}

// newSample splits lines; nil where most are no rows of one table.
func newSample(lines [][]byte, sep byte) *sample {
	counts, empty := map[int]int{}, 0
	split := make([][][]byte, len(lines))
	for i, l := range lines {
		cells, whole := fields(nil, l, sep)
		if len(bytes.TrimSpace(l)) == 0 {
			empty++
		} else if whole {
			split[i] = cells
			counts[len(cells)]++
		}
	}
	t := &sample{}
	t.sep = sep
	for width, n := range counts {
		if n > counts[t.width] || (n == counts[t.width] && width > t.width) {
			t.width = width
		}
	}
	if filled := len(split) - empty; t.width < 2 || 2*counts[t.width] < filled {
		return nil
	}
	for i, cells := range split {
		if len(cells) == t.width {
			t.rows, t.nos = append(t.rows, cells), append(t.nos, i)
		}
	}
	return t
}

// look is what the cells of a column look like: shares of those that are not empty.
type look struct {
	filled                                             int
	stamp, day, clock, midnight, degrees, pair, ns, ew float64
	number, decimals, words, unsure                    float64
	heading                                            []string // its words
}

// look finds the roles; ok is false where the rows hold no places.
func (t *sample) look() (ok bool) {
	if t.first = t.firstRow(); t.first == len(t.rows) {
		return false
	}
	t.skip = t.nos[t.first]
	t.headings()
	for i := range t.at {
		t.at[i] = -1
	}
	t.looks = make([]look, t.width)
	for c := range t.looks {
		t.looks[c] = t.columnLook(c)
	}
	if !t.places() {
		return false
	}
	t.times()
	t.rest()
	return t.whole()
}

// firstRow is the first row that has a time or coordinates, and that the next has too.
func (t *sample) firstRow() int {
	for i, row := range t.rows {
		if datalike(row) && (i+1 == len(t.rows) || datalike(t.rows[i+1]) ||
			i+2 == len(t.rows) || datalike(t.rows[i+2])) {
			return i
		}
	}
	return len(t.rows)
}

// datalike tells whether a row has two cells that are numbers, places or times.
func datalike(row [][]byte) bool {
	n := 0
	for _, c := range row {
		if len(c) == 0 {
			continue
		}
		if _, ok := readCoordinate(c); ok {
			n++
		} else if _, _, ok := readPair(c); ok {
			n += 2
		} else if _, err := readStamp(c, unit.DayFirst); err == nil {
			n++
		} else if _, err := readStamp(c, unit.MonthFirst); err == nil {
			n++
		}
	}
	return n >= 2
}

// headings are the cells above the first fix, joined by column: a row of units
// may stand under that of names.
func (t *sample) headings() {
	t.names = make([]string, t.width)
	for _, row := range t.rows[max(0, t.first-2):t.first] {
		for c, cell := range row {
			t.names[c] = strings.TrimSpace(t.names[c] + " " + string(bytes.ToValidUTF8(cell, []byte("?"))))
		}
	}
}

func (t *sample) columnLook(c int) look {
	l := look{heading: headingWords(t.names[c])}
	for _, row := range t.rows[t.first:] {
		cell := row[c]
		if len(cell) == 0 {
			continue
		}
		l.filled++
		l.see(cell)
	}
	n := float64(max(l.filled, 1))
	for _, share := range []*float64{&l.stamp, &l.day, &l.clock, &l.midnight, &l.degrees, &l.pair, &l.ns, &l.ew,
		&l.number, &l.decimals, &l.words, &l.unsure} {
		*share /= n
	}
	return l
}

// see adds a cell to the look.
func (l *look) see(cell []byte) {
	s, err := readStamp(cell, unit.OrderUnknown)
	if err == errDayOrder {
		l.unsure++
		s, err = readStamp(cell, unit.DayFirst)
	}
	switch {
	case err != nil:
	case s.unix, s.HasDate && s.HasTime:
		l.stamp++
		if !s.unix && s.Seconds == 0 && s.ms == 0 {
			l.midnight++
		}
	case s.HasDate:
		l.day++
	case bytes.IndexByte(cell, ':') > 0 || bytes.IndexByte(cell, '.') > 0 || len(cell) == 4 || len(cell) == 6:
		l.clock++
	}
	if c, ok := readCoordinate(cell); ok {
		l.degrees++
		if c.letter != 0 || bytes.ContainsAny(cell, ".,") {
			l.decimals++
		}
	}
	if _, _, ok := readPair(cell); ok {
		l.pair++
	}
	if _, ok := plainDecimal(bytes.Replace(cell, []byte(","), []byte("."), 1)); ok {
		l.number++
	} else if err != nil && bytes.IndexFunc(cell, unicode.IsLetter) >= 0 {
		l.words++
	}
	if len(cell) == 1 {
		switch cell[0] &^ 0x20 {
		case 'N', 'S':
			l.ns++
		case 'E', 'W':
			l.ew++
		}
	}
}

// headingWords are a heading's words in lower case without accents and marks.
func headingWords(h string) []string {
	return strings.FieldsFunc(words.Fold(h), func(r rune) bool {
		return !unicode.IsLetter(r) && !unicode.IsDigit(r) && r != '/'
	})
}

// has tells whether one of the heading's words is among those given.
func (l *look) has(any ...string) bool {
	return slices.ContainsFunc(l.heading, func(w string) bool { return slices.Contains(any, w) })
}

const most = 0.5 // of a column's cells, to be what it is for

// The words of headings, in the tongues that logs are read in.
var (
	latWords = []string{"lat", "latitude", "latitud", "latitudine", "breite", "breitengrad"}
	lonWords = []string{"lon", "lng", "long", "longitude", "longitud", "longitudine", "laenge",
		"lange", "laengengrad", "langengrad"}
	utcWords   = []string{"utc", "gmt", "zulu", "z"}
	speedWords = []string{"speed", "sog", "velocidad", "vitesse", "velocita", "velocidade",
		"geschwindigkeit", "fahrt", "sog/kn"}
	// speeds that are not the boat's own over ground
	otherSpeed = []string{"wind", "viento", "vent", "vento", "water", "stw", "avg", "average", "max",
		"engine", "true", "apparent", "log"}
	passedTime  = []string{"elapsed", "duration", "lap", "total", "leg", "interval"}
	partedWords = []string{"segment", "trkseg", "seg", "track", "trackid"}
)

// places finds the columns of latitude and longitude, by their headings, else by
// what stands in them.
func (t *sample) places() bool {
	for c := range t.looks {
		l := &t.looks[c]
		switch {
		case l.has(latWords...) && l.degrees >= most && t.at[isLat] < 0:
			t.at[isLat] = c
		case l.has(lonWords...) && l.degrees >= most && t.at[isLon] < 0:
			t.at[isLon] = c
		case l.pair >= most && t.at[isPlace] < 0:
			t.at[isPlace] = c
		case l.ns >= most && l.filled > 1:
			t.at[isNorth] = c
		case l.ew >= most && l.filled > 1:
			t.at[isEast] = c
		}
	}
	if t.at[isLat] >= 0 && t.at[isLon] >= 0 {
		t.at[isPlace] = -1
		t.swapped = t.changedOver()
		return true
	}
	t.at[isLat], t.at[isLon] = -1, -1
	if t.at[isPlace] >= 0 {
		return true
	}
	return t.nameless()
}

// changedOver tells whether the latitudes of most rows are no latitudes, and the
// longitudes might be.
func (t *sample) changedOver() bool {
	n, over := 0, 0
	for _, row := range t.rows[t.first:] {
		lat, ok1 := readCoordinate(row[t.at[isLat]])
		lon, ok2 := readCoordinate(row[t.at[isLon]])
		if !ok1 || !ok2 {
			continue
		}
		n++
		if (lat.deg > 90 || lat.deg < -90 || !lat.fits('N', 'S')) && lon.deg >= -90 &&
			lon.deg <= 90 && t.at[isNorth] < 0 {
			over++
		}
	}
	return over > n/2
}

// nameless finds two columns side by side that hold coordinates and no heading:
// latitude stands first, as everywhere, unless it cannot be one.
func (t *sample) nameless() bool {
	if slices.ContainsFunc(t.names, func(n string) bool { return n != "" }) && !t.lettered() {
		return false
	}
	for c := 0; c+1 < t.width; c++ {
		a, b := t.looks[c], t.looks[c+1]
		if a.degrees >= most && b.degrees >= most && a.decimals >= most && b.decimals >= most &&
			t.steady(c) && t.steady(c+1) {
			t.at[isLat], t.at[isLon] = c, c+1
			if t.changedOver() {
				t.at[isLat], t.at[isLon] = c+1, c
			} else {
				t.guessed = !t.lettered()
			}
			return true
		}
	}
	return false
}

// lettered tells whether the places have letters of their hemispheres.
func (t *sample) lettered() bool {
	row := t.rows[t.first]
	for c := 0; c+1 < t.width; c++ {
		a, ok1 := readCoordinate(row[c])
		b, ok2 := readCoordinate(row[c+1])
		if ok1 && ok2 && a.letter != 0 && b.letter != 0 {
			return true
		}
	}
	return false
}

// steady tells whether a column's numbers change little from row to row, as a
// boat's place does, with digits enough for that.
func (t *sample) steady(c int) bool {
	n, small := 0, 0
	var before float64
	for i, row := range t.rows[t.first:] {
		v, ok := readCoordinate(row[c])
		if !ok || !precise(row[c]) || v.deg > 180 || v.deg < -180 {
			continue
		}
		if d := v.deg - before; i > 0 && d > -0.2 && d < 0.2 {
			small++
		}
		before = v.deg
		n++
	}
	return n > 2 && small > n/2
}

// times finds the columns of time: of several the one whose heading says UTC.
func (t *sample) times() {
	best := func(r role, fits func(*look) bool) {
		for c := range t.looks {
			l := &t.looks[c]
			if !fits(l) || l.has(passedTime...) {
				continue
			}
			if t.at[r] < 0 || (l.has(utcWords...) && !t.looks[t.at[r]].has(utcWords...)) {
				t.at[r] = c
			}
		}
	}
	best(isStamp, func(l *look) bool { return l.stamp >= most && l.midnight < most })
	if t.at[isStamp] < 0 {
		best(isDate, func(l *look) bool { return l.day >= most || l.midnight >= most })
		best(isClock, func(l *look) bool { return l.clock >= most && l.day <= most && !l.taken(t) })
		if t.at[isDate] < 0 || t.at[isClock] < 0 {
			t.at[isDate], t.at[isClock] = -1, -1
			t.timeless = true
			return
		}
	}
	of := t.timeColumn()
	t.utc = t.looks[of].has(utcWords...)
	dates := of
	if t.at[isDate] >= 0 {
		dates = t.at[isDate]
	}
	t.order, t.unsure = orderOf(t.rows[t.first:], dates)
}

// taken tells whether a column holds a place already.
func (l *look) taken(t *sample) bool {
	for _, r := range []role{isLat, isLon, isPlace} {
		if c := t.at[r]; c >= 0 && &t.looks[c] == l {
			return true
		}
	}
	return false
}

// timeColumn is the column of the time of day; -1 where there is none.
func (s *shape) timeColumn() int {
	if s.at[isStamp] >= 0 {
		return s.at[isStamp]
	}
	return s.at[isClock]
}

// orderOf is the order of day and month that the rows' dates prove; unsure, where
// they would need to.
func orderOf(rows [][][]byte, column int) (order unit.Order, unsure bool) {
	for _, row := range rows {
		if proved := unit.OrderOf(string(row[column])); proved != unit.OrderUnknown {
			return proved, false
		}
		_, err := readStamp(row[column], unit.OrderUnknown)
		unsure = unsure || err == errDayOrder
	}
	return unit.OrderUnknown, unsure
}

// rest finds speed and what parts the track.
func (t *sample) rest() {
	for c := range t.looks {
		l := &t.looks[c]
		switch {
		case l.has(speedWords...) && !l.has(otherSpeed...) && l.number >= most && t.at[isSpeed] < 0:
			t.at[isSpeed], t.unit = c, speedUnit(t.names[c])
		case l.has(partedWords...) && l.degrees+l.words >= most && t.at[isParted] < 0 &&
			!t.looks[c].taken(t) && c != t.timeColumn():
			t.at[isParted] = c
		}
	}
	// a number that is new in each row is a count of points and no segment
	if c := t.at[isParted]; c >= 0 && t.changes(c) > (len(t.rows)-t.first)/2 {
		t.at[isParted] = -1
	}
}

// changes counts the rows whose cell is another than the one before.
func (t *sample) changes(c int) int {
	n := 0
	for i := t.first + 1; i < len(t.rows); i++ {
		if !bytes.Equal(t.rows[i][c], t.rows[i-1][c]) {
			n++
		}
	}
	return n
}

// speedUnit is the unit that a heading of speed names; knots where it names none.
func speedUnit(heading string) string {
	h := strings.ReplaceAll(words.Fold(heading), " ", "")
	for _, u := range []struct{ spelling, unit string }{{"km/h", "km/h"}, {"kmh", "km/h"}, {"kph", "km/h"},
		{"mph", "mph"}, {"m/s", "m/s"}, {"mps", "m/s"}, {"ms)", "m/s"}} {
		if strings.Contains(h, u.spelling) {
			return u.unit
		}
	}
	if w := headingWords(heading); len(w) > 2 && w[len(w)-2] == "m" && w[len(w)-1] == "s" {
		return "m/s"
	}
	return "kn"
}

// whole tells whether most rows have a place, and a time where there is a column
// for it.
func (t *sample) whole() bool {
	good := 0
	for _, row := range t.rows[t.first:] {
		if _, column, _ := t.fix(row, t.order); column == "" {
			good++
		}
	}
	return 2*good >= len(t.rows)-t.first
}
