package layout

import (
	"regexp"
	"slices"
	"strings"
)

var (
	// dayNumber is the number of an outing and what stands behind it: "#3 Sat 6/29", "Trip #10 again Sat 8/10".
	dayNumber = regexp.MustCompile(`^(\pL{3,})?\s*#\s*(\d{1,3})\s+(.*)$`)
	// unitFigure is a figure with its unit: "5.5 kts".
	unitFigure = regexp.MustCompile(`^(\d+(?:[.,]\d+)?)\s*(\pL{1,6})$`)
)

// opening is a line that opens an outing, taken apart: labels with their values, and what is said behind them.
type opening struct {
	pairs []pair
	said  Cell
}

// openedByDays is a grid with each line that opens an outing by its number and its day, behind which labels stand with
// clock times, "#3 Sat 6/29 | lines in | 6:15 am | lines out | 2:15 pm | 6 kts | hot", as labels with their values, and
// what such lines say at their end. said is nil for another sheet.
func (g *Grid) openedByDays() (out *Grid, places, said map[int]Cell) {
	found := map[int]opening{}
	var labels []string // in the order in which they come
	for r := range g.Rows {
		o, ok := g.openingAt(r)
		if !ok {
			continue
		}
		found[r] = o
		for _, p := range o.pairs {
			if !slices.Contains(labels, p.label) {
				labels = append(labels, p.label)
			}
		}
	}
	if len(found) < fewPapers {
		return g, nil, nil
	}
	said = map[int]Cell{}
	for r, o := range found {
		if o.said.Look != Blank {
			said[r] = o.said
		}
	}
	return g.withOpenings(found, labels), nil, said
}

// withOpenings is a grid in which each line that opens an outing is labels with their values, the same in each.
func (g *Grid) withOpenings(found map[int]opening, labels []string) *Grid {
	next := *g
	next.Rows, next.Width = slices.Clone(g.Rows), max(g.Width, 2*len(labels))
	for r, o := range found {
		cells := make([]Cell, 2*len(labels))
		for k, label := range labels {
			cells[2*k] = Cell{Text: label, Look: Text}
			if i := slices.IndexFunc(o.pairs, func(p pair) bool { return p.label == label }); i >= 0 {
				cells[2*k+1] = o.pairs[i].value
			}
		}
		next.Rows[r].Cells = cells
	}
	return &next
}

// openingAt takes a row for the line that opens an outing.
func (g *Grid) openingAt(r int) (o opening, ok bool) {
	row := &g.Rows[r]
	cells := row.filled(0, g.Width)
	if len(cells) < 3 {
		return o, false
	}
	m := dayNumber.FindStringSubmatch(row.at(cells[0]).Text)
	if m == nil {
		return o, false
	}
	day := m[3]
	if lookOf(day, 0) != Date {
		_, day, _ = strings.Cut(day, " ") // again Sat 8/10
	}
	if lookOf(day, 0) != Date {
		return o, false
	}
	word := strings.ToLower(m[1])
	if word == "" {
		word = "trip"
	}
	o.pairs = []pair{{label: word, value: Cell{Text: m[2], Look: Number}},
		{label: dayLabel, value: Cell{Text: day, Look: Date}}}
	k := 1
	for ; k+1 < len(cells) && row.at(cells[k]).Look == Text && row.at(cells[k+1]).Look == Clock; k += 2 {
		o.pairs = append(o.pairs, pair{label: strings.ToLower(labelText(row.at(cells[k]))), value: row.at(cells[k+1])})
	}
	if k == 1 {
		return o, false
	}
	if k < len(cells) {
		if u := unitFigure.FindStringSubmatch(row.at(cells[k]).Text); u != nil {
			o.pairs = append(o.pairs, pair{label: strings.ToLower(u[2]), value: Cell{Text: u[1], Look: Number}})
			k++
		}
	}
	if k < len(cells) {
		o.said = row.at(cells[k])
		k++
	}
	return o, k == len(cells)
}
