package normalise

import (
	"fmt"
	"strings"

	"wakeledger/pipeline/entry"
	"wakeledger/pipeline/recognise"
)

const day = 86400

// skip tells rows that are no data: blank ones, comments, a header given again,
// and the totals under a table.
func (r *Reader) skip() Skip {
	filled, first := 0, ""
	for _, c := range r.row.Cells {
		if c = strings.TrimSpace(c); c != "" {
			if filled++; filled == 1 {
				first = c
			}
		}
	}
	switch {
	case filled == 0:
		return Blank
	case filled == 1 && (strings.HasPrefix(first, "#") || strings.HasPrefix(first, "//")):
		return Comment
	case r.isTotals():
		return Totals
	case r.isHeader():
		return Header
	}
	return NotASkip
}

// isTotals looks for the word in the cells before the first date or time.
func (r *Reader) isTotals() bool {
	for i, c := range r.row.Cells {
		if i > 3 {
			return false
		}
		if c = strings.TrimSpace(c); len(c) < 3 || len(c) > 20 || !strings.Contains("tsgamTSGAM", c[:1]) {
			continue // no word of the list begins so
		}
		if _, ok := r.words["total"][plain(c)]; ok {
			return true
		}
	}
	return false
}

func (r *Reader) isHeader() bool {
	same := 0
	for i := range r.targets {
		t := &r.targets[i]
		if t.Index < len(r.row.Cells) && strings.EqualFold(strings.TrimSpace(r.row.Cells[t.Index]), t.Heading) {
			same++
		}
	}
	return same > 1 && 2*same > len(r.targets)
}

// place gives the row its date and turns its clock times into seconds since
// that date's midnight. A time with a date of its own counts from the row's.
func (r *Reader) place() {
	if r.date < 0 {
		return
	}
	d := &r.values[r.date]
	for _, p := range r.moments {
		if !d.Known && p.m.HasDate {
			*d = entry.OfInt(int64(p.m.Date))
		}
	}
	for _, p := range r.moments {
		s := int64(p.m.Seconds)
		if p.m.HasDate {
			s += (int64(p.m.Date) - d.Int) * day
		}
		r.values[p.field] = entry.OfInt(s)
	}
	r.pastMidnight("start_s", "end_s")
	r.pastMidnight("depart_s", "return_s")
}

// pastMidnight moves an end that is earlier than its start to the next day,
// unless the end was logged with a date of its own.
func (r *Reader) pastMidnight(from, to string) {
	i, ok := r.index[from]
	j, also := r.index[to]
	if !ok || !also || !r.values[i].Known || !r.values[j].Known || r.values[j].Int >= r.values[i].Int {
		return
	}
	for _, p := range r.moments {
		if p.field == j && p.m.HasDate {
			return
		}
	}
	r.values[j].Int += day
}

// value is the row's value of a column, the zero Value where the sheet has none.
func (r *Reader) value(name string) entry.Value {
	if i, ok := r.index[name]; ok {
		return r.values[i]
	}
	return entry.Value{}
}

// check holds the rules over several cells of one row.
func (r *Reader) check() {
	r.impliedLengthKind()
	if r.layout.Kind == recognise.Legs || r.layout.Kind == recognise.Flat {
		r.checkTimes()
		r.checkCounts()
	}
	if need := r.missing(); need != "" {
		r.faultRow(need)
	}
}

// missing says what a row of this kind cannot do without.
func (r *Reader) missing() string {
	known := func(names ...string) bool {
		for _, n := range names {
			if r.value(n).Known {
				return true
			}
		}
		return false
	}
	effort := known("duration_s") || (known("start_s") && known("end_s"))
	switch r.layout.Kind {
	case recognise.Legs:
		if !effort {
			return "a leg needs a start and an end, or a duration"
		}
	case recognise.Flat:
		if !effort && !known("outcome", "species", "strikes_n", "hooked_n", "landed_n", "released_n", "lost_n", "missed_n", "length_cm", "scale_kg") {
			return "a row needs a start and an end, or what struck"
		}
	case recognise.Lines:
		if !known("line", "lure", "leg", "setback_m", "count_s", "drag_kg") {
			return "a line needs its position or lure"
		}
	case recognise.Trips:
		if !known("trip", "date", "depart_s") {
			return "a trip needs a name or a date"
		}
	case recognise.Strikes:
		if !known("trip", "date", "time_s", "leg", "outcome") {
			return "a strike needs a trip or a date"
		}
	case recognise.FishRow:
		if !known("species", "species_logged", "length_cm", "girth_cm", "scale_kg") {
			return "a fish needs a species, a length or a weight"
		}
	}
	return ""
}

func (r *Reader) checkTimes() {
	s, e := r.value("start_s"), r.value("end_s")
	if !s.Known || !e.Known {
		return
	}
	switch {
	case e.Int == s.Int:
		r.faultAt("end_s", "the end is the start: the leg has no length")
	case e.Int < s.Int:
		r.faultAt("end_s", "the end is before the start")
	case e.Int-s.Int > day:
		r.faultAt("end_s", fmt.Sprintf("a leg of %.1f hours: expected no more than a day", float64(e.Int-s.Int)/3600))
	}
}

// checkCounts holds that counts nest: strikes, of them hooked, of them landed
// and released. What does not nest is not clamped.
func (r *Reader) checkCounts() {
	n := func(name string) int64 { return r.value(name).Int }
	boated := n("landed_n") + n("released_n")
	if r.value("hooked_n").Known && boated+n("lost_n") > n("hooked_n") {
		r.faultAt("hooked_n", fmt.Sprintf("%d hooked, but %d landed, released or lost", n("hooked_n"), boated+n("lost_n")))
	}
	hooked := max(n("hooked_n"), boated+n("lost_n"))
	if r.value("strikes_n").Known && hooked+n("missed_n") > n("strikes_n") {
		r.faultAt("strikes_n", fmt.Sprintf("%d strikes, but %d hooked or missed", n("strikes_n"), hooked+n("missed_n")))
	}
}

// faultAt is a problem of the column called name.
func (r *Reader) faultAt(name, reason string) {
	for i := range r.targets {
		if t := &r.targets[i]; t.Column.Name == name {
			r.fault(t, r.text(t), reason)
			return
		}
	}
	r.faultRow(reason)
}

// impliedLengthKind takes the length kind from the heading ("Curved fork
// length", "LJFL") where no column states it.
func (r *Reader) impliedLengthKind() {
	i, ok := r.index["length_kind"]
	if !ok || r.values[i].Known || !r.value("length_cm").Known {
		return
	}
	for j := range r.targets {
		if t := &r.targets[j]; t.Column.Name == "length_cm" {
			r.values[i] = entry.OfText(headingKind(r.words, t.Heading))
		}
	}
}

func headingKind(w words, heading string) string {
	parts := strings.Fields(plain(heading))
	for n := len(parts); n > 0; n-- {
		for from := 0; from+n <= len(parts); from++ {
			words := strings.Join(parts[from:from+n], " ")
			if k, ok := w["lengthkind"][words]; ok && words != "tape" { // a tape may be laid straight
				return k
			}
		}
	}
	return ""
}
