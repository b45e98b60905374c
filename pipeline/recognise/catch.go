package recognise

import (
	"slices"
	"strconv"
	"strings"
)

// catchWords say of the fish under a sheet's, table's or group's name that they
// were brought aboard.
var catchWords = []string{"catch", "catches", "caught", "landed", "landings", "kept", "boated", "gaffed"}

// catch finds columns that are headed by a species and hold how many of it there
// were, where the sheet has no other counts of strikes: landed where its words say
// so, or where those that got away are counted beside them; else hooked.
func (t *Table) catch(l *Layout, hs []heading, rows [][]string) {
	counted := slices.ContainsFunc(hs, func(h heading) bool {
		return h.means("strikes_n") || h.means("hooked_n") || h.means("landed_n") || h.means("released_n")
	})
	if t.Names == nil || counted {
		return
	}
	var names []string
	said := append([]string{l.name}, l.above...)
	for i, h := range hs {
		if h.text != "" && len(h.candidates) == 0 && (t.Names(h.text) || t.Names(h.name)) && fewEach(column(rows, i)) {
			said = append(said, h.text)
			l.Catch = append(l.Catch, Unknown{Index: i, Heading: h.text})
			names = append(names, h.text)
		}
	}
	if len(names) == 0 {
		return
	}
	l.Caught = slices.ContainsFunc(said, func(s string) bool { return speaksOf(normalise(s), catchWords...) }) ||
		slices.ContainsFunc(hs, func(h heading) bool { return h.means("missed_n") || h.means("lost_n") })
	note := strings.Join(names, ", ") + ": how many of each species, added up as hooked; what became of them is not logged"
	if l.Caught {
		note = strings.Join(names, ", ") + ": how many of each species, added up as landed: those that got away are counted beside them, or the sheet says caught"
	}
	if l.CatchBlank = l.blankIsNone(rows); l.CatchBlank {
		note += "; a blank is none"
	}
	if i := slices.IndexFunc(hs, func(h heading) bool { return len(h.candidates) == 0 && speaksOf(h.name, "other", "others", "misc") }); i >= 0 {
		note += "; what stands under " + hs[i].text + " is kept by name and not counted"
	}
	l.Notes = append(l.Notes, note)
}

// blankIsNone tells a table that never writes a nought: of several species only those
// that were caught have a number.
func (l *Layout) blankIsNone(rows [][]string) bool {
	beside := false
	for _, row := range rows {
		filled := 0
		for _, c := range l.Catch {
			switch cell := cellOf(row, c.Index); {
			case strings.Trim(cell, "0") == "" && cell != "":
				return false
			case cell != "":
				filled++
			}
		}
		beside = beside || filled > 0 && filled < len(l.Catch)
	}
	return beside
}

// fewEach tells counts of fish from their weights: whole numbers, most of them few.
func fewEach(cells []string) bool {
	few := 0
	for _, c := range cells {
		v, err := strconv.ParseFloat(c, 64)
		if err != nil || v < 0 || v > 60 || v != float64(int(v)) {
			return false
		}
		if v <= 6 {
			few++
		}
	}
	return len(cells) > 0 && 2*few >= len(cells)
}
