package recognise

import (
	"slices"
	"strconv"
	"strings"
)

// catch finds columns that are headed by a species and hold how many of it were
// hooked, where the sheet has no other counts of strikes.
func (t *Table) catch(l *Layout, hs []heading, rows [][]string) {
	counted := slices.ContainsFunc(hs, func(h heading) bool {
		return h.means("strikes_n") || h.means("hooked_n") || h.means("landed_n") || h.means("released_n")
	})
	if t.Names == nil || counted {
		return
	}
	var names []string
	for i, h := range hs {
		if h.text != "" && len(h.candidates) == 0 && t.Names(h.text) && fewEach(column(rows, i)) {
			l.Catch = append(l.Catch, Unknown{Index: i, Heading: h.text})
			names = append(names, h.text)
		}
	}
	if len(names) > 0 {
		l.Notes = append(l.Notes, strings.Join(names, ", ")+": how many of each species, added up as hooked; what became of them is not logged")
	}
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
