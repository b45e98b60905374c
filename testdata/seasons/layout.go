package seasons

import (
	"fmt"
	"math/rand/v2"
	"strings"
	"time"
)

// cellKind is what a cell holds before it is written.
type cellKind int

const (
	blankCell cellKind = iota
	textCell
	wholeCell
	amountCell
	degreesCell
	dateCell
	clockCell
)

// cell is a value on a sheet. A clock counts its seconds from midnight of the
// row's day, up to 86400 for the midnight that ends it.
type cell struct {
	kind   cellKind
	text   string
	n      int // a whole number, or seconds
	amount Amount
	day    time.Time
}

type row map[string]cell

type sheet struct {
	name   string
	fields []string
	rows   []row
}

func words(s string) cell {
	if s == "" {
		return cell{}
	}
	return cell{kind: textCell, text: s}
}

func whole(n int) cell { return cell{kind: wholeCell, n: n} }

func quantity(a Amount) cell {
	if !a.Known {
		return cell{}
	}
	return cell{kind: amountCell, amount: a}
}

func degrees(a Amount) cell {
	c := quantity(a)
	if a.Known {
		c.kind = degreesCell
	}
	return c
}

func onDate(t time.Time) cell { return cell{kind: dateCell, day: midnight(t)} }

// clock is an instant's time of day as written on a row of some day.
func clock(at, day time.Time) cell {
	seconds := int(at.Sub(midnight(at)) / time.Second)
	if at.Equal(midnight(day).AddDate(0, 0, 1)) {
		seconds = 86400
	}
	return cell{kind: clockCell, n: seconds}
}

// writer lays a season out in a format.
type writer struct {
	*rand.Rand
	s *Season
	f Format

	boats    bool            // every sheet names the boat
	dated    bool            // strikes and fish have a date beside the trip's label
	legNames map[*Leg]string // as logged
	system   string          // of headings without a unit: us, metric or ""
}

func newWriter(s *Season, f Format) *writer {
	w := &writer{Rand: rand.New(rand.NewPCG(s.Seed, 0xf02a7)), s: s, f: f, legNames: map[*Leg]string{}}
	w.boats = s.SharedLabels || len(s.Boats) > 1 && !f.labelled() || w.IntN(2) == 0
	w.dated = !f.labelled() || f.Layout == "roles" && w.IntN(2) == 0
	if f.Units == "us" || f.Units == "metric" {
		w.system = f.Units
	}
	perDay := map[string]int{}
	for _, t := range s.Trips {
		for _, l := range t.Legs {
			day := t.Boat + l.Start.Format("|2006-01-02")
			perDay[day]++
			if w.legNames[l] = l.Label; !f.labelled() {
				w.legNames[l] = fmt.Sprint(perDay[day]) // two trips of a day share no number
			}
		}
	}
	return w
}

// sheets are the season's, in the format's layout.
func (w *writer) sheets() []sheet {
	if w.f.flat() {
		return []sheet{w.flat()}
	}
	sheets := []sheet{w.trips(), w.legs(), w.lines(), w.strikes(), w.fish()}
	for i := range sheets {
		w.trim(&sheets[i])
	}
	return sheets
}

// trim leaves out the columns that the format does without.
func (w *writer) trim(s *sheet) {
	without := map[string]bool{"trip": !w.f.labelled(), "boat": !w.boats && s.name != "Trips"}
	switch s.name {
	case "Legs":
		without["date"] = w.f.Layout == "undated"
	case "Lines":
		without["date"] = w.f.labelled()
	case "Strikes", "Fish":
		without["date"] = !w.dated
		without["strike"] = !w.s.Numbered
	}
	var kept []string
	for _, f := range s.fields {
		if !without[f] {
			kept = append(kept, f)
		}
	}
	s.fields = kept
}

func (w *writer) trips() sheet {
	s := sheet{name: "Trips", fields: strings.Fields("trip boat date captain port depart return anglers notes")}
	for _, t := range w.s.Trips {
		r := w.ofTrip(t)
		r["date"], r["notes"] = onDate(t.Legs[0].Start), words(t.Notes)
		s.rows = append(s.rows, r)
	}
	return s
}

func (w *writer) ofTrip(t *Trip) row {
	day := t.Legs[0].Start
	return row{"trip": words(t.Label), "boat": words(t.Boat), "captain": words(t.Captain), "port": words(t.Port),
		"anglers": words(t.Anglers), "depart": clock(t.Depart, day), "return": clock(t.Back, day)}
}

const legFields = "leg start end speed lines heading lat lon area seatemp wind seastate approach school nearest tangle"

func (w *writer) legs() sheet {
	s := sheet{name: "Legs", fields: strings.Fields("trip boat date " + legFields + " notes")}
	for _, t := range w.s.Trips {
		for _, l := range t.Legs {
			r := w.ofTrip(t)
			w.addLeg(r, l)
			s.rows = append(s.rows, r)
		}
	}
	return s
}

func (w *writer) addLeg(r row, l *Leg) {
	for name, c := range map[string]cell{
		"leg": words(w.legNames[l]), "date": onDate(l.Start),
		"start": clock(l.Start, l.Start), "end": clock(l.End, l.Start),
		"speed": quantity(l.Speed), "heading": quantity(l.Heading), "lat": degrees(l.Lat), "lon": degrees(l.Lon),
		"area": words(l.Area), "seatemp": quantity(l.SeaTemp), "wind": words(l.Wind), "seastate": words(l.SeaState),
		"approach": words(l.Approach), "school": quantity(l.School), "nearest": quantity(l.Nearest),
		"tangle": words(l.Tangle), "notes": words(l.Notes),
	} {
		r[name] = c
	}
	if l.Counted {
		r["lines"] = whole(l.LinesOut)
	}
}

const lineFields = "line lure weight colour hooks leader class drag setback count letout"

// lines writes the spread of a trip once where it can: the changed lines of a
// leg stand below it, with the leg's name.
func (w *writer) lines() sheet {
	s := sheet{name: "Lines", fields: strings.Fields("trip boat date leg " + lineFields)}
	for _, t := range w.s.Trips {
		once := t.Wide != nil && w.f.labelled()
		for _, line := range t.Wide {
			if once {
				r := w.ofTrip(t)
				addLine(r, line)
				s.rows = append(s.rows, r)
			}
		}
		for _, l := range t.Legs {
			for i, line := range l.Lines {
				if once && line == t.Wide[i] {
					continue
				}
				r := w.ofTrip(t)
				r["date"], r["leg"] = onDate(l.Start), words(w.legNames[l])
				addLine(r, line)
				s.rows = append(s.rows, r)
			}
		}
	}
	return s
}

func addLine(r row, l *Line) {
	for name, c := range map[string]cell{
		"line": words(l.Name), "lure": words(l.Lure), "weight": quantity(l.Weight), "colour": words(l.Colour),
		"hooks": words(l.Hooks), "leader": words(l.Leader), "class": quantity(l.Class), "drag": quantity(l.Drag),
		"setback": quantity(l.Setback), "count": quantity(l.Count), "letout": quantity(l.LetOut),
	} {
		r[name] = c
	}
}
