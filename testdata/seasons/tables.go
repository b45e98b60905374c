package seasons

import (
	"fmt"
	"time"
)

// Table is a table of the season file, cell for cell: nil, a string, a bool, a
// float64, or a time.Time. Its rows stand in no order that means anything.
type Table struct {
	Name    string
	Columns []string
	Rows    [][]any
}

// Tables are the season file's tables as they must be when the log was kept in
// a format. Left out are the log, file, sheet, row and origin, which are of the
// log and not of the season, and the ids, in whose place stand natural keys: a
// trip is its boat and the start of its first leg, a leg its boat and start, a
// line its leg and name. Left out beside, by layout:
//
//   - the trip's label without labels (it is then the date); the trip's notes in
//     a flat log, whose notes are the leg's or nobody's
//   - the leg's number without labels (it is then the day's); the leg's notes
//     in a flat log, which has no such column here
//   - the speed at the strike in a flat log, which has none
//   - with counts alone: all of a strike but its leg, line and outcome, and the fish
func (s *Season) Tables(f Format) []Table {
	e := expecting{s: s, f: f, loc: location(s.Zone)}
	tables := []Table{e.trips(), e.legs(), e.lines(), e.strikes()}
	if f.Layout != "counts" {
		tables = append(tables, e.fish())
	}
	return tables
}

type expecting struct {
	s   *Season
	f   Format
	loc *time.Location
}

// location reads a zone of New's list.
func location(zone string) *time.Location {
	var hours int
	if _, err := fmt.Sscanf(zone, "UTC%d", &hours); err == nil {
		return time.FixedZone(zone, hours*3600)
	}
	loc, err := time.LoadLocation(zone)
	if err != nil {
		return time.UTC // the tables then differ, and the test says so
	}
	return loc
}

// utc is the instant at which the boat's clock showed t.
func (e expecting) utc(t time.Time) time.Time {
	return time.Date(t.Year(), t.Month(), t.Day(), t.Hour(), t.Minute(), 0, 0, e.loc).UTC()
}

// columns of a row under way.
type columns struct {
	names []string
	cells []any
}

func (c *columns) add(name string, v any) {
	c.names, c.cells = append(c.names, name), append(c.cells, v)
}

func (t *Table) add(c columns) { t.Columns, t.Rows = c.names, append(t.Rows, c.cells) }

// text is NULL where it is not logged.
func text(s string) any {
	if s == "" {
		return nil
	}
	return s
}

func (t *Trip) start() time.Time { return t.Legs[0].Start }

func (e expecting) trips() Table {
	table := Table{Name: "trip"}
	for _, t := range e.s.Trips {
		var c columns
		c.add("boat", t.Boat)
		c.add("first_start", t.start())
		if e.f.labelled() {
			c.add("trip", t.Label)
		}
		c.add("date", midnight(t.start()))
		c.add("depart_at", t.Depart)
		c.add("return_at", t.Back)
		c.add("captain", text(t.Captain))
		c.add("port", text(t.Port))
		c.add("anglers", text(t.Anglers))
		c.add("zone", e.s.Zone)
		if !e.f.flat() {
			c.add("notes", text(t.Notes))
		}
		table.add(c)
	}
	return table
}

func (e expecting) legs() Table {
	table := Table{Name: "leg"}
	for _, t := range e.s.Trips {
		for _, l := range t.Legs {
			table.add(e.leg(t, l))
		}
	}
	return table
}

func (e expecting) leg(t *Trip, l *Leg) columns {
	var c columns
	c.add("boat", t.Boat)
	c.add("first_start", t.start())
	c.add("start_at", l.Start)
	if e.f.labelled() {
		c.add("leg", text(l.Label))
	}
	c.add("end_at", l.End)
	c.add("start_utc", e.utc(l.Start))
	c.add("end_utc", e.utc(l.End))
	c.add("hours", float64(l.Minutes())/60)
	c.add("speed_kn", l.Speed.float("kn"))
	if n, ok := l.Out(); ok {
		c.add("lines_out", float64(n))
	} else {
		c.add("lines_out", nil)
	}
	c.add("heading_deg", l.Heading.float("deg"))
	c.add("lat", l.Lat.float("deg"))
	c.add("lon", l.Lon.float("deg"))
	c.add("area", text(l.Area))
	c.add("sea_temp_c", l.SeaTemp.float("C"))
	c.add("wind", text(l.Wind))
	c.add("sea_state", text(l.SeaState))
	c.add("approach", text(l.Approach))
	c.add("school_m", l.School.float("m"))
	c.add("nearest_boat_m", l.Nearest.float("m"))
	c.addTangle(l.Tangle)
	if !e.f.flat() {
		c.add("notes", text(l.Notes))
	}
	return c
}

func (c *columns) addTangle(logged string) {
	var is, which any
	switch logged {
	case "":
	case "yes", "no":
		is = logged == "yes"
	default:
		is, which = true, logged
	}
	c.add("tangle", is)
	c.add("tangled_lines", which)
}

func (e expecting) lines() Table {
	table := Table{Name: "line"}
	for _, t := range e.s.Trips {
		for _, l := range t.Legs {
			for _, line := range l.Lines {
				table.add(e.line(t, l, line))
			}
		}
	}
	return table
}

func (e expecting) line(t *Trip, l *Leg, line *Line) columns {
	var c columns
	c.add("boat", t.Boat)
	c.add("start_at", l.Start)
	c.add("line", line.Name)
	c.add("hours", float64(l.Minutes())/60)
	c.add("lure", text(line.Lure))
	c.add("lure_weight_g", line.Weight.float("g"))
	c.add("colour", text(line.Colour))
	c.add("hooks", text(line.Hooks))
	c.add("leader", text(line.Leader))
	c.add("line_class_kg", line.Class.float("kg"))
	c.add("drag_kg", line.Drag.float("kg"))
	c.add("setback_m", line.setback().float("m"))
	c.add("count_s", line.Count.float("s"))
	c.add("letout_kn", line.LetOut.float("kn"))
	return c
}
