package normalise

import (
	"fmt"
	"slices"
	"strings"
	"unicode"

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
	case r.isComment(first) || filled == 1 && r.isNote():
		return Comment
	case r.isTotals():
		return Totals
	case r.isHeader():
		return Header
	}
	return NotASkip
}

// isComment tells a row that starts with a comment's mark; "#1" is a number,
// unless # begins comments in this log, and "#N/A" a spreadsheet's error.
func (r *Reader) isComment(first string) bool {
	if strings.TrimSpace(r.row.Cells[0]) == "" {
		return false
	}
	if strings.HasPrefix(first, "//") {
		return true
	}
	rest, ok := strings.CutPrefix(first, "#")
	return ok && !faulty(first) && (r.layout.Hashed || rest == "" || rest[0] < '0' || rest[0] > '9')
}

// isNote tells a row whose only cell holds words where they cannot be a value of
// a row's: a note between the rows.
func (r *Reader) isNote() bool {
	i := slices.IndexFunc(r.row.Cells, func(c string) bool { return strings.TrimSpace(c) != "" })
	text := strings.TrimSpace(r.row.Cells[i])
	if strings.IndexFunc(text, unicode.IsLetter) < 0 || faulty(text) {
		return false
	}
	j := slices.IndexFunc(r.targets, func(t target) bool { return t.Index == i })
	if j < 0 {
		return true
	}
	c := r.targets[j].Column
	words := len(strings.Fields(text)) > 1
	switch {
	case c.Name == "notes":
		return true
	case c.Name == "species", c.Name == "trip" && r.layout.Kind == recognise.Trips:
		return false
	case c.Parse == "text", c.Parse == "date", c.Parse == "moment":
		return words && text[0] > '9'
	}
	return false
}

// isTotals looks for the word among the row's first cells, before any number,
// date or time: alone in its cell, or at the start of the row's first.
func (r *Reader) isTotals() bool {
	first := true
	for i, c := range r.row.Cells {
		if c = strings.TrimSpace(c); c == "" {
			continue
		}
		if i > 3 || c[0] >= '0' && c[0] <= '9' {
			return false
		}
		was := first
		first = false
		if len(c) < 3 || len(c) > 20 || !strings.Contains("tsgamdyiTSGAMDYI", c[:1]) {
			continue // no word of the list begins so
		}
		name := plain(c)
		if _, ok := r.words["total"][name]; ok && !r.holds(i, "lengthkind") {
			return true
		}
		if head, _, more := strings.Cut(name, " "); was && more && (head == "total" || head == "totals") {
			return true
		}
	}
	return false
}

// holds tells whether the column at an index is read in the way that parse names.
func (r *Reader) holds(index int, parse string) bool {
	return slices.ContainsFunc(r.targets, func(t target) bool { return t.Index == index && t.Column.Parse == parse })
}

// isHeader tells a row that gives one of the header's rows again.
func (r *Reader) isHeader() bool {
	for _, header := range r.layout.Rows {
		same, filled := 0, 0
		for i, h := range header {
			if h = strings.TrimSpace(h); h == "" {
				continue
			}
			filled++
			if i < len(r.row.Cells) && strings.EqualFold(strings.TrimSpace(r.row.Cells[i]), h) {
				same++
			}
		}
		if same > 1 && 2*same > filled {
			return true
		}
	}
	return false
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
	r.impliedWords()
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
			r.fault(t, t.text, reason)
			return
		}
	}
	r.faultRow(reason)
}

// impliedWords take the length kind and the weight state from the headings
// ("Curved fork length", "LJFL", "Dressed weight") where no column states them.
func (r *Reader) impliedWords() {
	for _, w := range []struct{ field, of, list string }{
		{"length_kind", "length_cm", "lengthkind"}, {"weight_state", "scale_kg", "weightstate"},
	} {
		if i, ok := r.index[w.field]; ok && !r.values[i].Known && r.value(w.of).Known {
			r.values[i] = entry.OfText(r.headingMeans(w.list, w.of))
		}
	}
}

// headingMeans looks for a closed list's words in the heading of a column; the
// longest count.
func (r *Reader) headingMeans(list, column string) string {
	j := slices.IndexFunc(r.targets, func(t target) bool { return t.Column.Name == column })
	if j < 0 {
		return ""
	}
	parts := strings.Fields(plain(r.targets[j].Heading))
	for n := len(parts); n > 0; n-- {
		for from := 0; from+n <= len(parts); from++ {
			words := strings.Join(parts[from:from+n], " ")
			if k, ok := r.words[list][words]; ok && words != "tape" { // a tape may be laid straight
				return k
			}
		}
	}
	return ""
}
