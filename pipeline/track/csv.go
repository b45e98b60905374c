package track

import (
	"bufio"
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"math"
	"strings"
	"time"

	"wakeledger/pipeline/record"
)

// columns are the headings of a track's CSV, in lower case without marks. A
// table with any other heading is no track but a sheet of a log.
var columns = map[string]string{
	"time": "time", "timestamp": "time", "datetime": "time", "date time": "time", "utc": "utc", "time utc": "utc", "utc time": "utc", "gps time": "time",
	"date": "date", "lat": "lat", "latitude": "lat", "lon": "lon", "lng": "lon", "long": "lon", "longitude": "lon",
	"speed": "kn", "speed kn": "kn", "speed kts": "kn", "speed kt": "kn", "speed knots": "kn", "sog": "kn", "sog kn": "kn", "sog kts": "kn", "speed over ground": "kn",
	"speed m s": "m/s", "speed mps": "m/s", "speed km h": "km/h", "speed kmh": "km/h", "speed mph": "mph", "sog m s": "m/s",
	"course": "-", "cog": "-", "heading": "-", "ele": "-", "elevation": "-", "alt": "-", "altitude": "-", "depth": "-", "hdop": "-", "sat": "-",
	"satellites": "-", "name": "-", "accuracy": "-", "fix": "-", "id": "-", "no": "-", "segment": "segment", "trkseg": "segment", "temp": "-",
}

var toKnots = map[string]float64{"kn": 1, "m/s": 3600.0 / 1852, "km/h": 1000.0 / 1852, "mph": 1609.344 / 1852}

// table reads a CSV with a heading.
type table struct {
	r       *csv.Reader
	pos     record.Pos
	bad     Keeper
	at      map[string]int
	unit    string
	zone    *time.Location
	utc     bool // the heading says so
	comma   bool // decimal commas
	segment string
	local   int // times that named no zone
}

// heading tells the columns of a track's CSV by its first line.
func heading(line string) (at map[string]int, unit string, sep rune, ok bool) {
	line = strings.TrimRight(strings.TrimPrefix(line, "\ufeff"), "\r\n")
	for _, sep = range []rune{'\t', ';', ','} {
		at, unit = map[string]int{}, ""
		ok = true
		for i, h := range strings.Split(line, string(sep)) {
			role := columns[plain(h)]
			if toKnots[role] != 0 {
				role, unit = "speed", role
			}
			if role == "utc" {
				at[role], role = i, "time"
			}
			_, twice := at[role]
			ok = ok && role != "" && (role == "-" || !twice)
			at[role] = i
		}
		_, hasTime := at["time"]
		_, hasLat := at["lat"]
		_, hasLon := at["lon"]
		if ok && hasTime && hasLat && hasLon {
			return at, unit, sep, true
		}
	}
	return nil, "", 0, false
}

// plain is a heading in lower case, its marks as single spaces.
func plain(h string) string {
	return strings.Join(strings.FieldsFunc(strings.ToLower(h), func(r rune) bool {
		return (r < 'a' || r > 'z') && (r < '0' || r > '9')
	}), " ")
}

func newTable(r *bufio.Reader, pos record.Pos, zone *time.Location, bad Keeper) (*table, error) {
	first, err := r.ReadString('\n')
	if err != nil && !errors.Is(err, io.EOF) {
		return nil, err
	}
	at, unit, sep, ok := heading(first)
	if !ok {
		return nil, errors.New("no heading with time, lat and lon")
	}
	_, utc := at["utc"]
	if zone == nil || utc {
		zone = time.UTC
	}
	t := &table{r: csv.NewReader(r), pos: pos, bad: bad, at: at, unit: unit, zone: zone, utc: utc, comma: sep != ','}
	t.r.Comma, t.r.FieldsPerRecord, t.r.ReuseRecord, t.r.LazyQuotes = sep, -1, true, true
	return t, nil
}

func (t *table) Notes() []string {
	if t.local > 0 {
		return []string{fmt.Sprintf("%d times name no zone and are read as %s", t.local, t.zone)}
	}
	return nil
}

func (t *table) Next() (Fix, bool, error) {
	for {
		row, err := t.r.Read()
		if errors.Is(err, io.EOF) {
			return Fix{}, false, nil
		}
		if err != nil {
			return Fix{}, false, err
		}
		line, _ := t.r.FieldPos(0)
		t.pos.Row = line + 1
		f, column, why := t.fix(row)
		if why == "" {
			return f, true, nil
		}
		if err := t.bad(record.Problem{Pos: t.pos, Column: column, Cell: shorten(t.cell(row, column)), Reason: why}); err != nil {
			return Fix{}, false, err
		}
	}
}

func (t *table) cell(row []string, column string) string {
	if i, ok := t.at[column]; ok && i < len(row) {
		return strings.TrimSpace(row[i])
	}
	return ""
}

func (t *table) fix(row []string) (f Fix, column, why string) {
	var ok1, ok2, zoned, ok bool
	f.Lat, ok1 = t.value(row, "lat")
	f.Lon, ok2 = t.value(row, "lon")
	if !ok1 || !ok2 || !place(f.Lat, f.Lon) {
		return f, "lat", "no position: lat must be -90 to 90 and lon -180 to 180, in decimal degrees"
	}
	clock := t.cell(row, "time")
	if d := t.cell(row, "date"); d != "" {
		clock = d + " " + clock
	}
	if f.At, zoned, ok = clockTime(clock, t.zone); !ok {
		return f, "time", "not a time such as 2026-07-01 13:00:00"
	}
	if !zoned && !t.utc {
		t.local++
	}
	f.SpeedKn = math.NaN()
	if v, ok := t.value(row, "speed"); ok && v >= 0 {
		f.SpeedKn = v * toKnots[t.unit]
	}
	if s := t.cell(row, "segment"); s != t.segment {
		f.Break, t.segment = true, s
	}
	return f, "", ""
}

func (t *table) value(row []string, column string) (float64, bool) {
	s := t.cell(row, column)
	if t.comma {
		s = strings.Replace(s, ",", ".", 1)
	}
	return decimal([]byte(s))
}
