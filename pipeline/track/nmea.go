package track

import (
	"bufio"
	"bytes"
	"errors"
	"fmt"
	"io"
	"math"
	"strconv"
	"time"

	"wakeledger/pipeline/record"
)

// nmea reads NMEA 0183: RMC for time, position and speed, VTG for the speed
// where RMC has none. Other sentences are passed over; a wrong checksum is a
// problem, and so is a RMC or VTG without one.
type nmea struct {
	lines *lineReader
	pos   record.Pos
	bad   Keeper
	held  Fix // the last RMC, until its VTG or the next one
	holds bool
	lost  bool // a sentence without a position since the last fix
	noFix int
	fixes int
	done  bool
	ended bool // the last line has no end and is no whole sentence
}

func newNMEA(r *bufio.Reader, pos record.Pos, bad Keeper) *nmea {
	return &nmea{lines: &lineReader{r: r}, pos: pos, bad: bad, lost: true}
}

func (n *nmea) Notes() []string {
	var notes []string
	if n.noFix > 0 {
		notes = append(notes, fmt.Sprintf("%d sentences of a receiver without a position are passed over", n.noFix))
	}
	if n.fixes == 0 {
		notes = append(notes, "no RMC sentence with a position in it, which tells time, date and place")
	}
	if n.ended || n.lines.torn {
		notes = append(notes, endsEarly)
	}
	return notes
}

func (n *nmea) Next() (Fix, bool, error) {
	for !n.done {
		line, err := n.lines.next()
		if err != nil && !errors.Is(err, io.EOF) {
			return Fix{}, false, err
		}
		if n.done = err != nil; n.done {
			break
		}
		n.pos.Row = n.lines.no
		f, ok, err := n.sentence(line)
		if ok || err != nil {
			return f, ok, err
		}
	}
	if n.holds {
		n.holds = false
		return n.held, true, nil
	}
	return Fix{}, false, nil
}

// sentence takes in a line; ok where it completes the fix before.
func (n *nmea) sentence(line []byte) (f Fix, ok bool, err error) {
	start := bytes.IndexByte(line, '$')
	if start < 0 || len(line) < start+7 {
		return Fix{}, false, nil
	}
	text := bytes.TrimRight(line[start:], " \r\n")
	kind := string(text[3:6])
	if kind != "RMC" && kind != "VTG" {
		return Fix{}, false, nil
	}
	fields, why := checked(text)
	if n.ended = why != "" && n.lines.open; n.ended {
		return Fix{}, false, nil
	}
	if why != "" {
		return Fix{}, false, n.aside(text, why)
	}
	if kind == "VTG" {
		if v, known := number(fields, 5); known && n.holds && math.IsNaN(n.held.SpeedKn) {
			n.held.SpeedKn = v
		}
		return Fix{}, false, nil
	}
	return n.rmc(fields, text)
}

func (n *nmea) rmc(fields [][]byte, text []byte) (Fix, bool, error) {
	if len(fields) < 10 {
		return Fix{}, false, n.aside(text, "too few fields for RMC")
	}
	if string(fields[2]) != "A" || (len(fields) > 12 && string(fields[12]) == "N") {
		n.noFix++
		n.lost = true
		return Fix{}, false, nil
	}
	now, ok := rmcFix(fields)
	if !ok {
		return Fix{}, false, n.aside(text, "not a time, date and position")
	}
	now.Break, n.lost = n.lost, false
	n.fixes++
	before, had := n.held, n.holds
	n.held, n.holds = now, true
	return before, had, nil
}

func (n *nmea) aside(text []byte, why string) error {
	pos := n.pos
	return n.bad(record.Problem{Pos: pos, Column: string(text[1:6]), Reason: why})
}

const wrongSum = "wrong checksum"

// checked splits a sentence whose checksum is right.
func checked(text []byte) (fields [][]byte, why string) {
	star := bytes.LastIndexByte(text, '*')
	if star < 0 || len(text) < star+3 {
		return nil, "no checksum"
	}
	sum := byte(0)
	for _, c := range text[1:star] {
		sum ^= c
	}
	if want, err := strconv.ParseUint(string(text[star+1:star+3]), 16, 8); err != nil || byte(want) != sum {
		return nil, fmt.Sprintf("%s: the sentence adds up to %02X", wrongSum, sum)
	}
	return bytes.Split(text[1:star], []byte{','}), ""
}

func rmcFix(fields [][]byte) (f Fix, ok bool) {
	day, clock := fields[9], fields[1]
	d, err1 := strconv.ParseUint(string(day), 10, 32)
	s, ok1 := decimal(clock)
	if err1 != nil || !ok1 || len(day) != 6 || len(clock) < 6 {
		return f, false
	}
	year, month := int(d%100), int(d/100%100)
	// two digits: the system began in 1980
	if year += 1900; year < 1980 {
		year += 100
	}
	ms := int64(math.Round(s * 1000))
	hour, minute, rest := ms/10000000, ms/100000%100, ms%100000
	if month < 1 || month > 12 || d/10000 < 1 || d/10000 > 31 || hour > 23 || minute > 59 || rest >= 61000 {
		return f, false
	}
	f.At = time.Date(year, time.Month(month), int(d/10000), 0, 0, 0, 0, time.UTC).UnixMilli() +
		hour*3600000 + minute*60000 + rest
	var ok2, ok3 bool
	f.Lat, ok2 = degrees(fields[3], fields[4], "N", "S")
	f.Lon, ok3 = degrees(fields[5], fields[6], "E", "W")
	f.SpeedKn = math.NaN()
	if v, known := number(fields, 7); known {
		f.SpeedKn = v
	}
	return f, ok2 && ok3 && place(f.Lat, f.Lon)
}

// degrees reads ddmm.mmmm and its hemisphere.
func degrees(value, side []byte, plus, minus string) (float64, bool) {
	v, ok := decimal(value)
	if !ok || v < 0 || (string(side) != plus && string(side) != minus) {
		return 0, false
	}
	whole := math.Floor(v / 100)
	minutes := v - 100*whole
	if string(side) == minus {
		return -(whole + minutes/60), minutes < 60
	}
	return whole + minutes/60, minutes < 60
}

func number(fields [][]byte, i int) (float64, bool) {
	if i >= len(fields) {
		return 0, false
	}
	v, ok := decimal(fields[i])
	return v, ok && v >= 0
}
