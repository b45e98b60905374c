package reports

import (
	"fmt"
	"slices"

	"wakeledger/queries"
	"wakeledger/reports/page"
)

// weightClass is one class of weight in kg; without edges, the fish without a
// weight. An edge that is nil is open.
type weightClass struct{ lo, hi *float64 }

func (c weightClass) none() bool { return c.lo == nil && c.hi == nil }

func (c weightClass) holds(kg float64) bool {
	return !c.none() && (c.lo == nil || kg >= *c.lo) && (c.hi == nil || kg < *c.hi)
}

// name is the class in the unit shown.
func (s *season) className(c weightClass) string {
	edge := func(kg float64) string {
		v := kg * s.perKG
		return page.Number(v, weightDecimals([]float64{v}))
	}
	switch {
	case c.none():
		return "no weight"
	case c.hi == nil:
		return edge(*c.lo) + " and up"
	case c.lo == nil:
		return "under " + edge(*c.hi)
	}
	return edge(*c.lo) + " to " + edge(*c.hi)
}

// sizeGrid is the size rows as a grid of levels by classes.
type sizeGrid struct {
	levels  []string
	classes []weightClass
	fish    [][]int64
	scale   [][]int64 // of them on a scale; nil where the rows of fish do not add up to the grid
}

func (s *season) sizeGrid() sizeGrid {
	var g sizeGrid
	for _, r := range s.Sizes {
		if !slices.Contains(g.levels, r.Level) {
			g.levels = append(g.levels, r.Level)
		}
		c := weightClass{r.ClassLoKG, r.ClassHiKG}
		if !slices.ContainsFunc(g.classes, c.same) {
			g.classes = append(g.classes, c)
		}
	}
	slices.SortStableFunc(g.classes, byWeight)
	g.fish = grid(len(g.levels), len(g.classes))
	for _, r := range s.Sizes {
		class := slices.IndexFunc(g.classes, weightClass{r.ClassLoKG, r.ClassHiKG}.same)
		g.fish[slices.Index(g.levels, r.Level)][class] += r.Fish
	}
	g.scale = g.onScale(s.Fish)
	return g
}

// onScale counts the fish of each cell that saw a scale; nil where the fish do
// not add up to the cells, as when the levels are not speed bands.
func (g sizeGrid) onScale(fish []queries.Fish) [][]int64 {
	all, scale := grid(len(g.levels), len(g.classes)), grid(len(g.levels), len(g.classes))
	for _, f := range fish {
		level := slices.Index(g.levels, f.SpeedBand)
		class := slices.IndexFunc(g.classes, func(c weightClass) bool {
			return f.WeightKG == nil && c.none() || f.WeightKG != nil && c.holds(*f.WeightKG)
		})
		if level < 0 || class < 0 {
			return nil
		}
		all[level][class]++
		if IsScale(f.Method) {
			scale[level][class]++
		}
	}
	for i := range all {
		if !slices.Equal(all[i], g.fish[i]) {
			return nil
		}
	}
	return scale
}

func grid(rows, columns int) [][]int64 {
	g := make([][]int64, rows)
	for i := range g {
		g[i] = make([]int64, columns)
	}
	return g
}

func (c weightClass) same(o weightClass) bool {
	return sameEdge(c.lo, o.lo) && sameEdge(c.hi, o.hi)
}

func sameEdge(a, b *float64) bool {
	return a == nil && b == nil || a != nil && b != nil && *a == *b
}

// byWeight orders classes upwards, the fish without a weight last.
func byWeight(a, b weightClass) int {
	key := func(c weightClass) float64 {
		switch {
		case c.none():
			return 1e12
		case c.lo == nil:
			return -1
		}
		return *c.lo
	}
	switch ka, kb := key(a), key(b); {
	case ka < kb:
		return -1
	case ka > kb:
		return 1
	}
	return 0
}

func (s *season) classesSection() (page.Section, error) {
	section := page.Section{ID: "classes", Heading: "Fish by weight class and speed"}
	g := s.sizeGrid()
	total := int64(0)
	for _, row := range g.fish {
		total += sum(row)
	}
	if total == 0 {
		section.Sentences = []string{"No fish is logged."}
		return section, nil
	}
	section.Sentences = s.sizeSentences(g, total)
	levels, classes, cells := s.sizeMarks(g)
	chart, err := page.Histograms(page.Frame{
		Label: "Number of fish by weight class, one row a speed band. " + section.Sentences[0] +
			" The table below holds the figures.",
		Axis: "round weight, " + s.weight, Counts: "fish", Keys: g.keys(),
	}, levels, classes, cells)
	section.Chart, section.Table = chart, s.sizesTable(g, total)
	section.Notes = []string{"With a handful of fish in a band, its largest class is luck."}
	if g.scale == nil {
		section.Notes = append(section.Notes, "Weights from a scale and estimates from the tape are counted "+
			"together here.")
	}
	return section, err
}

func (g sizeGrid) keys() []page.Key {
	if g.scale == nil {
		return []page.Key{{Mark: page.MarkSolid, Words: "fish, on a scale or estimated"}}
	}
	return []page.Key{
		{Mark: page.MarkSolid, Words: "weighed on a scale"}, {Mark: page.MarkHatched, Words: "estimated from the tape"},
		{Mark: page.MarkThin, Words: "no weight"},
	}
}

// sizeSentences: what has a weight and how, then the fullest class.
func (s *season) sizeSentences(g sizeGrid, total int64) []string {
	perClass, scale := make([]int64, len(g.classes)), int64(0)
	for i, row := range g.fish {
		for j, n := range row {
			perClass[j] += n
		}
		if g.scale != nil {
			scale += sum(g.scale[i])
		}
	}
	none, full := int64(0), -1
	for j, n := range perClass {
		if g.classes[j].none() {
			none += n
		} else if full < 0 || n > perClass[full] {
			full = j
		}
	}
	known := total - none
	out := []string{fmt.Sprintf("Of %s, %s have a weight.", page.Plural(total, "fish", "fish"), page.Count(known))}
	if g.scale != nil {
		out[0] = fmt.Sprintf("Of %s, %s on a scale, %s estimated from the tape and %s without a weight.",
			page.Plural(total, "fish", "fish"),
			page.Count(scale), page.Count(known-scale), page.Count(none))
	}
	if full >= 0 && known > 0 {
		out = append(out, fmt.Sprintf("The fullest class is %s %s, with %s of the %s that have a weight.",
			s.className(g.classes[full]), s.weight, page.Count(perClass[full]), page.Count(known)))
	}
	return out
}

func sum(row []int64) int64 {
	total := int64(0)
	for _, n := range row {
		total += n
	}
	return total
}

func (s *season) sizeMarks(g sizeGrid) ([]page.Level, []page.Class, []page.HistogramCell) {
	var levels []page.Level
	var classes []page.Class
	var cells []page.HistogramCell
	for _, c := range g.classes {
		classes = append(classes, page.Class{Name: s.className(c), Ordered: !c.none()})
	}
	for i, name := range g.levels {
		levels = append(levels, page.Level{Name: name, Thin: s.thin[name],
			Counts: page.Plural(sum(g.fish[i]), "fish", "fish")})
		for j, n := range g.fish[i] {
			solid := n
			if g.scale != nil {
				solid = g.scale[i][j]
			}
			if n > 0 {
				cells = append(cells, page.HistogramCell{Level: i, Class: j, Count: n, Solid: solid})
			}
		}
	}
	return levels, classes, cells
}

func (s *season) sizesTable(g sizeGrid, total int64) *page.Table {
	t := &page.Table{Caption: "fish by speed band and weight class",
		Columns: []page.Column{{Head: "Speed over ground"}}}
	foot := []page.Cell{page.Words("season")}
	for j, c := range g.classes {
		unit := s.weight
		if c.none() {
			unit = ""
		}
		t.Columns = append(t.Columns, page.Column{Head: s.className(c), Unit: unit, Kind: page.Measure})
		n := int64(0)
		for i := range g.levels {
			n += g.fish[i][j]
		}
		foot = append(foot, page.Whole(n))
	}
	t.Columns = append(t.Columns, page.Column{Head: "All", Kind: page.Measure})
	for i, name := range g.levels {
		t.Rows = append(t.Rows, page.Row{Thin: s.thin[name], Cells: counted(s.levelCell(name), g.fish[i])})
		if g.scale != nil {
			t.Rows = append(t.Rows, page.Row{Thin: true, Cells: counted(page.Words(name+", on a scale"), g.scale[i])})
		}
	}
	t.Total = append(foot, page.Whole(total))
	return t
}

// counted is a row of counts with their sum.
func counted(name page.Cell, counts []int64) []page.Cell {
	cells := []page.Cell{name}
	for _, n := range counts {
		cells = append(cells, page.Whole(n))
	}
	return append(cells, page.Whole(sum(counts)))
}
