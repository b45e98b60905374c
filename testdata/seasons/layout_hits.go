package seasons

import (
	"strings"
	"time"
)

func (w *writer) strikes() sheet {
	s := sheet{name: "Strikes", fields: strings.Fields("trip boat date strike leg time line lure outcome species " +
		"cause fight angler speed")}
	for _, t := range w.s.Trips {
		for _, k := range t.Strikes {
			if k.FishOnly {
				continue
			}
			r := w.placed(t, k)
			w.addStrike(r, k)
			if k.ByLure {
				r["lure"] = words(k.Line.Lure)
			}
			r["speed"], r["strike"] = quantity(k.Speed), words(k.Number)
			s.rows = append(s.rows, r)
		}
	}
	return s
}

func (w *writer) fish() sheet {
	s := sheet{name: "Fish", fields: strings.Fields("trip boat date strike leg time line species length kind girth " +
		"scale state cert kept angler fight speed")}
	for _, t := range w.s.Trips {
		for _, k := range t.Strikes {
			if k.Fish == nil {
				continue
			}
			r := w.placed(t, k)
			addFish(r, k)
			r["strike"], r["angler"] = words(k.Number), words(k.Angler)
			if k.FishOnly {
				r["fight"], r["speed"] = quantity(k.Fight), quantity(k.Speed)
			}
			s.rows = append(s.rows, r)
		}
	}
	return s
}

// placed says where and when a strike was, as the sheets of strikes and fish do.
func (w *writer) placed(t *Trip, k *Strike) row {
	r := w.ofTrip(t)
	day := w.loggedDay(t, k)
	r["date"] = onDate(day)
	switch {
	case k.Stray:
	case k.Timed && !w.dated:
		r["time"] = clock(k.At, k.Leg.Start)
	case k.Timed:
		r["time"] = clock(k.At, day)
	}
	if k.ByLeg {
		r["leg"] = words(w.legNames[k.Leg])
	}
	if k.ByLine {
		r["line"] = words(k.Line.Name)
	}
	return r
}

// loggedDay is the day that a sheet of strikes gives a strike. Without labels a
// leg's number is of its day.
func (w *writer) loggedDay(t *Trip, k *Strike) time.Time {
	switch {
	case k.Stray:
		return midnight(t.Legs[0].Start)
	case !k.Timed, k.ByLeg && !w.f.labelled():
		return midnight(k.Leg.Start)
	case k.DayEarly:
		return midnight(k.At).AddDate(0, 0, -1)
	}
	return midnight(k.At)
}

func (w *writer) addStrike(r row, k *Strike) {
	r["outcome"], r["species"], r["cause"] = words(k.Outcome), words(k.Species), words(k.Cause)
	r["fight"], r["angler"] = quantity(k.Fight), words(k.Angler)
}

func addFish(r row, k *Strike) {
	f := k.Fish
	r["species"], r["length"], r["kind"], r["girth"] = words(k.Species), quantity(f.Length),
		words(f.Kind), quantity(f.Girth)
	r["scale"], r["state"], r["cert"] = quantity(f.Weight), words(f.State), words(f.Certified)
	r["kept"] = words("released")
	if k.Outcome == Landed {
		r["kept"] = words("kept")
	}
}

const (
	flatTrip   = "trip boat date captain port anglers depart return "
	flatHits   = " time outcome species cause fight angler length kind girth scale state cert"
	flatCounts = " strikes hooked landed released lost missed"
)

func (w *writer) flat() sheet {
	hits := flatHits
	if w.f.Layout == "counts" {
		hits = flatCounts
	}
	s := sheet{name: "Log", fields: strings.Fields(flatTrip + legFields + " " + lineFields + hits)}
	for _, t := range w.s.Trips {
		s.rows = append(s.rows, w.flatStrays(t)...)
		for _, l := range t.Legs {
			s.rows = append(s.rows, w.flatLeg(t, l)...)
		}
	}
	w.trim(&s)
	return s
}

// flatLeg is a row for each line and strike of a leg, at least one.
func (w *writer) flatLeg(t *Trip, l *Leg) []row {
	var rows []row
	onLine := map[*Line][]*Strike{}
	for _, k := range t.Strikes {
		if k.Leg == l && !k.Stray {
			line := k.Line
			if !k.ByLine && !k.ByLure {
				line = nil
			}
			onLine[line] = append(onLine[line], k)
		}
	}
	for _, line := range append([]*Line{nil}, l.Lines...) {
		hits := w.hitRows(onLine[line], l.Start)
		if len(hits) == 0 && (line != nil || len(l.Lines) == 0) {
			hits = []row{{}}
		}
		for _, r := range hits {
			w.join(r, t)
			w.addLeg(r, l)
			if line != nil {
				addLine(r, line)
			}
			rows = append(rows, r)
		}
	}
	return rows
}

func (w *writer) flatStrays(t *Trip) []row {
	var stray []*Strike
	for _, k := range t.Strikes {
		if k.Stray {
			stray = append(stray, k)
		}
	}
	rows := w.hitRows(stray, t.Legs[0].Start)
	for _, r := range rows {
		w.join(r, t)
		r["date"] = onDate(t.Legs[0].Start)
	}
	return rows
}

func (w *writer) join(r row, t *Trip) {
	for name, c := range w.ofTrip(t) {
		r[name] = c
	}
}

// hitRows is a row for each strike, or one with their counts.
func (w *writer) hitRows(hits []*Strike, day time.Time) []row {
	if w.f.Layout == "counts" {
		return countRow(hits)
	}
	var rows []row
	for _, k := range hits {
		r := row{}
		w.addStrike(r, k)
		if k.Fish != nil {
			addFish(r, k)
		}
		if k.Timed && !k.Stray {
			r["time"] = clock(k.At, day)
		}
		rows = append(rows, r)
	}
	return rows
}

func countRow(hits []*Strike) []row {
	if len(hits) == 0 {
		return nil
	}
	ls := levels{}
	missed := 0
	for _, k := range hits {
		ls.strike("", k)
		if k.Outcome == Missed {
			missed++
		}
	}
	n := ls.at("")
	return []row{{"strikes": whole(n.Strikes), "hooked": whole(n.Hookups), "landed": whole(n.Landed),
		"released": whole(n.Released),
		"lost":     whole(n.Hookups - n.Boated()), "missed": whole(missed)}}
}
