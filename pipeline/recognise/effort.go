package recognise

import (
	"slices"
	"sort"
)

// shortStretch and longStretch are the shortest and the longest that a stretch of trolling is taken to
// last where only its clock times tell of it, in seconds: a fight is shorter, and
// what is longer ran backwards (common practice, no source).
const (
	shortStretch = 20 * 60
	longStretch  = 20 * 3600
)

// effort takes two columns of clock times, the second later in nearly all rows, for
// start and end whatever they are called, where lines out stand beside them, or a
// speed in a sheet without strikes or fish of its own; and says so.
func (t *Table) effort(l *Layout, hs []heading, rows [][]string) {
	means := func(names ...string) bool {
		return slices.ContainsFunc(hs, func(h heading) bool {
			return slices.ContainsFunc(names, func(n string) bool { return h.means(n) })
		})
	}
	alone := means("speed_kn", "strike_speed_kn") && !means("outcome", "species", "length_cm", "time_s")
	timed := means("duration_s") || means("start_s") && means("end_s") || slices.ContainsFunc(hs, func(h heading) bool {
		return len(h.candidates) > 0 && h.candidates[0].Parse == "span"
	})
	if timed || !alone && !means("lines_out") {
		return
	}
	var clocks []int
	for i := range hs {
		if hs[i].mayBeEffort() && areClocks(column(rows, i)) {
			clocks = append(clocks, i)
		}
	}
	if len(clocks) == 2 {
		from, to := &hs[clocks[0]], &hs[clocks[1]]
		if !from.means("end_s") && !to.means("start_s") && inTurn(rows, clocks[0], clocks[1]) {
			from.candidates, to.candidates = t.named("start_s"), t.named("end_s")
			l.Notes = append(l.Notes, from.text+", "+to.text+": taken for start and end, as the second is the later in nearly all rows")
			return
		}
	}
	if means("lines_out") {
		l.Notes = append(l.Notes, "lines out are told, but no start and end and no hours were found: no effort is counted")
	}
}

// mayBeEffort tells a heading that is not known for another thing than a leg's
// start or end: not for the clock time of a strike or of the dock.
func (h heading) mayBeEffort() bool {
	if h.text == "" || h.means("time_s") && !h.loose || h.means("depart_s") || h.means("return_s") {
		return false
	}
	if len(h.candidates) == 0 {
		return true
	}
	p := h.candidates[0].Parse
	return p == "text" || p == "moment"
}

func areClocks(cells []string) bool {
	n := 0
	for _, c := range cells {
		if _, ok := clockOf(c); ok {
			n++
		}
	}
	return n > 1 && 10*n >= 9*len(cells)
}

// inTurn tells columns of clock times of which the second is the later in at least
// nine of ten rows, past midnight allowed.
func inTurn(rows [][]string, from, to int) bool {
	var spans []int
	for _, row := range rows {
		a, aok := clockOf(cellOf(row, from))
		b, bok := clockOf(cellOf(row, to))
		if aok && bok {
			spans = append(spans, (b-a+86400)%86400)
		}
	}
	later := 0
	for _, s := range spans {
		if s > 0 && s <= longStretch {
			later++
		}
	}
	sort.Ints(spans)
	return len(spans) > 1 && 10*later >= 9*len(spans) && spans[len(spans)/2] >= shortStretch
}

// named are the columns of a name that hold a clock time.
func (t *Table) named(name string) []*Column {
	var found []*Column
	for _, c := range t.Columns {
		if c.Name == name && c.Parse == "moment" {
			found = append(found, c)
		}
	}
	return found
}
