package recognise

import (
	"fmt"
	"strings"

	"wakeledger/pipeline/unit"
)

// Binding ties a column of a sheet to the column that it was understood as.
type Binding struct {
	Index   int    // of the cell in the row, from 0
	Heading string // as logged
	Column  *Column
	Unit    unit.Unit // stated in the heading; "" where it states none
}

// Unknown is a column whose heading was not understood. Its cells are kept by
// this name.
type Unknown struct {
	Index   int
	Heading string
}

// Layout is how a sheet was understood.
type Layout struct {
	Kind     Kind
	Why      string // in plain words
	Header   int    // index of the header row among the rows looked at
	Bindings []Binding
	Unknown  []Unknown
}

// Lookahead is how many rows of a sheet are needed to recognise it.
const Lookahead = 40

const headerWithin = 20

// Sheet finds the header among the first rows of a sheet and binds its columns.
// It reports false where no row of the first 20 holds at least two known headings.
func (t *Table) Sheet(name string, rows [][]string) (Layout, bool) {
	best, at := []heading(nil), -1
	known := 1
	for i, row := range rows {
		if i >= headerWithin {
			break
		}
		hs, n, filled := t.headings(row)
		if n > known && 3*n >= filled {
			best, at, known = hs, i, n
		}
	}
	if at < 0 {
		return Layout{}, false
	}
	settle(best, rows[at+1:])
	l := Layout{Header: at}
	l.Kind, l.Why = kindOf(name, best, rows[at+1:])
	l.bind(best)
	return l, len(l.Bindings) > 1
}

func (t *Table) headings(row []string) (hs []heading, known, filled int) {
	hs = make([]heading, len(row))
	for i, cell := range row {
		if strings.TrimSpace(cell) == "" {
			continue
		}
		filled++
		hs[i] = t.heading(cell)
		if len(hs[i].candidates) > 0 {
			known++
		}
	}
	return hs, known, filled
}

// bind gives each heading the first of its candidates that the kind allows and
// that no heading to its left has taken.
func (l *Layout) bind(hs []heading) {
	taken := map[string]bool{}
	for i, h := range hs {
		if strings.TrimSpace(h.text) == "" {
			continue
		}
		c := pick(h.candidates, l.Kind, taken)
		if c == nil {
			l.Unknown = append(l.Unknown, Unknown{Index: i, Heading: strings.TrimSpace(h.text)})
			continue
		}
		taken[c.Name] = true
		l.Bindings = append(l.Bindings, Binding{Index: i, Heading: strings.TrimSpace(h.text), Column: c, Unit: h.unit})
	}
}

func pick(candidates []*Column, k Kind, taken map[string]bool) *Column {
	for _, c := range candidates {
		if c.In(k) && !taken[c.Name] {
			return c
		}
	}
	return nil
}

// kindOf decides what a row of the sheet is. A sheet of effort has a start and
// an end or a duration; the rest is told by what it alone can hold.
func kindOf(name string, hs []heading, rows [][]string) (Kind, string) {
	has := map[string]bool{}
	for _, h := range hs {
		for _, c := range h.candidates {
			has[c.Name] = true
		}
	}
	any := func(names ...string) string {
		for _, n := range names {
			if has[n] {
				return n
			}
		}
		return ""
	}
	measured := any("length_cm", "girth_cm", "scale_kg")
	effort := (has["start_s"] && has["end_s"]) || has["duration_s"]
	gear := any("setback_m", "count_s", "drag_kg", "leader", "line_class_kg", "hooks", "lure_weight_g")
	counts := any("strikes_n", "hooked_n", "landed_n", "released_n", "missed_n", "lost_n")
	switch hint := nameHint(name); {
	case effort && any("line", "lure", "outcome", "species", "strikes_n", "hooked_n", "landed_n") != "":
		return Flat, "it has times of effort and what was on a line or struck"
	case effort:
		return Legs, "it has a start and an end, or a duration"
	case has["outcome"] && measured != "" && hint == FishRow:
		return FishRow, "its name says fish and it has " + measured
	case has["outcome"] && (measured == "" || hint == Strikes || mentionsLoss(hs, rows)):
		return Strikes, "it has the outcome of strikes"
	case has["species"] && measured != "":
		return FishRow, fmt.Sprintf("it has species and %s", measured)
	case measured == "length_cm" || measured == "girth_cm":
		return FishRow, "it has " + measured
	case any("line", "lure") != "" && gear != "":
		return Lines, "it has lines or lures with " + gear
	case any("depart_s", "return_s", "captain", "port") != "":
		return Trips, "it has " + any("depart_s", "return_s", "captain", "port")
	case any("loss_cause", "strike", "fight_s") != "" && has["species"]:
		return Strikes, "it has species and " + any("loss_cause", "strike", "fight_s")
	case counts != "":
		return Flat, "it has counts of strikes"
	case has["species"]:
		return FishRow, "it has species"
	case hint != "":
		return hint, "by its name"
	}
	return Trips, "it has trips and dates alone"
}

var nameWords = []struct {
	word string
	kind Kind
}{
	{"strike", Strikes}, {"bite", Strikes}, {"fish", FishRow}, {"catch", FishRow},
	{"leg", Legs}, {"line", Lines}, {"gear", Lines}, {"trip", Trips},
}

func nameHint(name string) Kind {
	name = normalise(name)
	for _, w := range nameWords {
		if strings.Contains(name, w.word) {
			return w.kind
		}
	}
	return ""
}

// mentionsLoss tells a sheet of strikes, in which some got away, from one of
// fish with an outcome.
func mentionsLoss(hs []heading, rows [][]string) bool {
	for i, h := range hs {
		if len(h.candidates) == 0 || h.candidates[0].Name != "outcome" {
			continue
		}
		for _, row := range rows {
			if i < len(row) {
				switch w := normalise(row[i]); {
				case strings.Contains(w, "lost"), strings.Contains(w, "miss"), strings.Contains(w, "pulled"), strings.Contains(w, "broke"):
					return true
				}
			}
		}
	}
	return false
}
