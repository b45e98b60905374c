package recognise

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"wakeledger/pipeline/unit"
)

// datedMoments takes a heading such as "When" for the date where its cells are days
// without a clock time, and one of times alone for none where its cells are words.
func datedMoments(hs []heading, rows [][]string, t *Table) {
	for i := range hs {
		h := &hs[i]
		if !slices.ContainsFunc(h.candidates, func(c *Column) bool { return c.Parse == "moment" }) {
			continue
		}
		days, digits, filled := 0, 0, column(rows, i)
		for _, c := range filled {
			if isDay(c) {
				days++
			}
			if strings.ContainsAny(c, "0123456789") {
				digits++
			}
		}
		switch {
		case len(filled) == 0:
		case (h.means("time_s") || h.means("date")) && 2*days > len(filled):
			h.candidates = t.byAlias["date"]
		case h.means("date"):
			h.candidates = slices.DeleteFunc(slices.Clone(h.candidates), func(c *Column) bool { return c.Parse == "date" })
		case digits == 0 && !slices.ContainsFunc(filled, isNamedTime) && len(filled) > 1:
			h.candidates = textsOf(h.candidates)
		}
	}
}

// isDay tells a date without a clock time, of text or of a workbook's serial.
func isDay(s string) bool {
	if v, err := strconv.ParseFloat(s, 64); err == nil && v >= 20000 && v < 80000 {
		return v == math.Trunc(v)
	}
	for _, order := range []unit.Order{unit.DayFirst, unit.MonthFirst} {
		if m, err := unit.ParseMoment(s, order); err == nil {
			return m.HasDate && !m.HasTime
		}
	}
	return yearless(s)
}

func isNamedTime(s string) bool { return likeMoment(s) == likely }

func textsOf(all []*Column) []*Column {
	return slices.DeleteFunc(slices.Clone(all), func(c *Column) bool { return c.Parse != "text" })
}

// inAndOut settles "Time in" and "Time out": of the lines where in comes before out,
// of the port where out comes before in. One alone is what the sheet lacks.
func inAndOut(hs []heading, rows [][]string) {
	in := slices.IndexFunc(hs, func(h heading) bool { return h.may("return_s", "start_s") })
	out := slices.IndexFunc(hs, func(h heading) bool { return h.may("depart_s", "end_s") })
	means := func(name string) bool { return slices.ContainsFunc(hs, func(h heading) bool { return h.means(name) }) }
	switch {
	case in < 0 && out < 0:
		return
	case out < 0:
		if means("end_s") && !means("start_s") {
			hs[in].only("start_s")
		}
		return
	case in < 0:
		if means("start_s") && !means("end_s") {
			hs[out].only("end_s")
		}
		return
	}
	lines, port := 0, 0
	for _, row := range rows {
		a, aok := clockOf(cellOf(row, in))
		b, bok := clockOf(cellOf(row, out))
		switch {
		case !aok || !bok:
		case a < b:
			lines++
		case a > b:
			port++
		}
	}
	if lines > port {
		hs[in].only("start_s")
		hs[out].only("end_s")
	} else {
		hs[in].only("return_s")
		hs[out].only("depart_s")
	}
}

// may tells whether a heading may mean each of the columns.
func (h heading) may(names ...string) bool {
	return !slices.ContainsFunc(names, func(n string) bool {
		return !slices.ContainsFunc(h.candidates, func(c *Column) bool { return c.Name == n })
	})
}

// only leaves a heading one meaning.
func (h *heading) only(name string) {
	h.candidates = slices.DeleteFunc(slices.Clone(h.candidates), func(c *Column) bool { return c.Name != name })
}

// clockOf is a cell's time of day in seconds, of text or of a workbook's serial.
func clockOf(s string) (int, bool) {
	if v, err := strconv.ParseFloat(s, 64); err == nil && v > 0 && v < 1 {
		return int(v * 86400), true
	}
	m, err := unit.ParseMoment(s, unit.DayFirst)
	return m.Seconds, err == nil && m.HasTime
}

// fightMinutes takes bare minutes beside a fish or a strike for its fight, not for
// how long a leg was.
func fightMinutes(hs []heading) {
	struck := slices.ContainsFunc(hs, func(h heading) bool {
		return h.means("species") || h.means("outcome") || h.means("time_s") || h.means("scale_kg")
	})
	for i := range hs {
		if struck && hs[i].may("duration_s", "fight_s") {
			hs[i].only("fight_s")
		}
	}
}

// skirts takes a skirt for the lure where the sheet names none: it is what the line
// is called by.
func (t *Table) skirts(hs []heading) {
	if slices.ContainsFunc(hs, func(h heading) bool { return h.means("lure") || h.means("outcome") }) {
		return
	}
	for i := range hs {
		if hs[i].name == "skirt" || hs[i].name == "skirts" {
			hs[i].candidates = t.byAlias["lure"]
			return
		}
	}
}

// dayNumbers takes whole numbers under a heading such as "Day" for days of the month
// that the sheet's name states. Without a month they are a trip's number.
func (t *Table) dayNumbers(l *Layout, hs []heading, rows [][]string) {
	month, years, ok := unit.MonthIn(l.name)
	if !ok {
		return
	}
	for i := range hs {
		h := &hs[i]
		date := slices.IndexFunc(t.byAlias[h.name], func(c *Column) bool { return c.Parse == "date" })
		if date < 0 {
			continue
		}
		numbers := 0
		for _, c := range column(rows, i) {
			if v, err := strconv.Atoi(c); err == nil && v >= 1 && v <= 31 {
				numbers++
			}
		}
		if filled := len(column(rows, i)); filled == 0 || 4*numbers < 3*filled {
			continue
		}
		h.candidates = t.byAlias[h.name][date : date+1]
		l.Month, l.Years, l.yearless = month, years, true
		l.Notes = append(l.Notes, h.text+": days of "+month.String()+", as the sheet's name says")
		return
	}
}

// numberOf are the words that may stand before a trip's number.
var numberOf = map[string]bool{"day": true, "d": true, "trip": true, "t": true, "outing": true, "no": true}

// isNumbered tells a trip's number: 3, #3, Day 3.
func isNumbered(cell string) bool {
	words := strings.Fields(normalise(cell))
	if len(words) > 1 && numberOf[words[0]] {
		words = words[1:]
	}
	if len(words) != 1 {
		return false
	}
	_, err := strconv.Atoi(strings.TrimLeft(words[0], "dt"))
	return err == nil
}

// dayNames keeps a heading such as "Day" from being a trip's name where its cells are
// no numbers: days that cannot be read are set aside as dates, where no other column
// has them; beside a date they are its weekday, or a remark, kept by name.
func (t *Table) dayNames(hs []heading, rows [][]string) {
	for i := range hs {
		h := &hs[i]
		dates := slices.DeleteFunc(slices.Clone(t.byAlias[h.name]), func(c *Column) bool { return c.Parse != "date" })
		cells := column(rows, i)
		if !h.means("trip") || len(dates) == 0 || len(cells) == 0 {
			continue
		}
		numbered := 0
		for _, c := range cells {
			if isNumbered(c) {
				numbered++
			}
		}
		switch {
		case 2*numbered > len(cells):
		case slices.ContainsFunc(hs, func(o heading) bool { return o.means("date") }):
			h.candidates = nil
		default:
			h.candidates = dates
		}
	}
}

// dayless says that a heading such as "Day", whose cells are no dates, was taken for a
// trip's name, so that the clock times beside it are of no day that is known.
func (t *Table) dayless(l *Layout) {
	if !l.binds("start_s", "time_s") || l.binds("date") || l.gives("date") {
		return
	}
	for _, b := range l.Bindings {
		if b.Column.Name == "trip" && slices.ContainsFunc(t.byAlias[normalise(b.Heading)], func(c *Column) bool { return c.Parse == "date" }) {
			l.Notes = append(l.Notes, b.Heading+": no dates, so taken for the trip's name; times of day count only where another sheet gives that trip its day")
		}
	}
}
