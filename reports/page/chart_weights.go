package page

import (
	"strings"
	"unicode/utf8"

	"github.com/go-echarts/go-echarts/v2/opts"
)

// HistogramCell is the count of one level in one class.
type HistogramCell struct {
	Level, Class int   // places in the lists given with it
	Count        int64 // all of them
	Solid        int64 // of them drawn solid; the rest is hatched
}

// mostUpright are the classes whose names fit beside each other on a sheet of paper.
const mostUpright = 10

// Class is one class of a histogram.
type Class struct {
	Name    string
	Ordered bool // false for what is outside the scale ("no weight"): drawn grey
}

// Histograms draws one small histogram a level over shared classes, counts
// printed at the marks. All levels share one scale of height; the frame says what
// solid and hatched mean. It is nil without levels or classes.
func Histograms(f Frame, levels []Level, classes []Class, cells []HistogramCell) (*Chart, error) {
	if len(levels) == 0 || len(classes) == 0 {
		return nil, nil
	}
	most := int64(1)
	for _, c := range cells {
		most = max(most, c.Count)
	}
	var items [][]any
	for _, c := range cells {
		items = append(items, []any{c.Class, c.Level, c.Count, c.Solid, most, step(classes, c.Class), flag(levels[c.Level].Thin)})
	}
	names, longest := make([]string, len(classes)), 0
	for i, c := range classes {
		names[i] = c.Name
		longest = max(longest, len(c.Name))
	}
	c := custom(rowOptions(f, levels, 1), "histBar", items, opts.Encode{X: 0, Y: 1})
	c.SetXAxis(names)
	x := &c.XAxisList[0]
	x.Type, x.Min, x.Max, x.MinInterval, x.MaxInterval = "category", nil, nil, 0, 0
	chart, err := rows(c, f, f.Keys, len(levels))
	if err != nil {
		return nil, err
	}
	more := len(levels) * 16
	if len(levels) == 1 {
		more = 120 // one histogram has the whole height
	}
	chart.height, chart.paper = chart.height+more, chart.paper+more
	label := node(chart.option, "xAxis", 0, "axisLabel")
	label["interval"], label["hideOverlap"], label["width"], label["overflow"], label["lineHeight"] = 0, false, 52, "break", lineHeight
	node(chart.option, "xAxis", 0)["nameGap"] = 46 // under two lines
	node(chart.option, "xAxis", 0)["splitLine"] = map[string]any{"show": false}
	node(chart.option, "yAxis", 0)["splitLine"] = map[string]any{"show": true, "lineStyle": map[string]any{"color": "@rule"}}
	slanted := map[string]any{"nameGap": 24 + 4*longest, "axisLabel": map[string]any{"rotate": 50, "fontSize": 11, "width": 120}}
	chart.narrow["xAxis"] = []any{slanted}
	node(chart.option, "grid", 0)["bottom"] = 50
	chart.narrow["grid"] = []any{map[string]any{"bottom": 40}}
	if len(classes) > mostUpright {
		node(chart.option, "xAxis", 0)["nameGap"] = slanted["nameGap"]
		label["rotate"], label["fontSize"], label["width"], label["overflow"] = 50, 11, 120, "none"
		node(chart.option, "grid", 0)["bottom"] = 40
	}
	return chart, nil
}

// step is the place of a class on the ordered scale of six, or -1 outside it.
func step(classes []Class, at int) int {
	if !classes[at].Ordered {
		return -1
	}
	before, all := 0, 0
	for i, c := range classes {
		if c.Ordered {
			all++
			if i < at {
				before++
			}
		}
	}
	if all < 2 {
		return 3
	}
	return before * 5 / (all - 1)
}

// WeightMark is one fish.
type WeightMark struct {
	Row    int // place in the list of levels
	Weight float64
	Lo, Hi *float64 // interval of an estimate; nil where none is known
	Scale  bool     // weighed, not estimated
}

// A fish takes a slot of the vertical axis; a level takes at least leastSlots,
// so that its name fits, and a free slot after it.
const (
	slotHeight  = 13
	leastSlots  = 3
	mostHeight  = 1400
	leastHeight = 4
)

// Weights draws every fish as a point on an axis of weight from zero, one group
// of rows a level: weighed fish filled, estimates open with their interval.
// Within a level the fish lie in the order given, from the top. It is nil
// without fish.
func Weights(f Frame, levels []Level, fish []WeightMark) (*Chart, error) {
	if len(levels) == 0 || len(fish) == 0 {
		return nil, nil
	}
	slots, first := weightSlots(levels, fish)
	heaviest := 0.0
	items := make([][]any, len(fish))
	for i, m := range fish {
		items[i] = []any{m.Weight, orGap(m.Lo), orGap(m.Hi), first[m.Row], flag(m.Scale)}
		first[m.Row]++
		heaviest = max(heaviest, m.Weight)
		if m.Hi != nil {
			heaviest = max(heaviest, *m.Hi)
		}
	}
	c := custom(rowOptions(f, slots, heaviest*1.02), "weightDot", items, opts.Encode{X: []int{0, 1, 2}, Y: 3})
	chart, err := rows(c, f, []Key{{MarkDisc, "weighed on a scale"}, {MarkRing, "estimated from the tape, with its interval where one is known"}}, 0)
	if err != nil {
		return nil, err
	}
	chart.height = frameHeight + len(slots)*max(leastHeight, min(slotHeight, mostHeight/len(slots)))
	chart.paper = min(chart.height, mostPaper)
	chart.besideRows(levels)
	return chart, nil
}

// besideRows gives the words on both sides of the rows their room. ECharts measures
// only some of the labels where there are more than 40 rows, and cuts the others.
func (c *Chart) besideRows(levels []Level) {
	name, counts := 0, 0
	for _, l := range levels {
		name = max(name, utf8.RuneCountInString(l.Name))
		for _, line := range strings.Split(l.Counts, "\n") {
			counts = max(counts, utf8.RuneCountInString(line))
		}
	}
	const letter = 8 // wide, in CSS pixels
	grid := node(c.option, "grid", 0)
	grid["containLabel"], grid["bottom"] = false, 54
	grid["left"], grid["right"] = min(name*letter, 150)+14, counts*letter+12
	c.narrow["grid"] = []any{map[string]any{"left": min(name*letter, 86) + 12, "right": counts*letter + 4}}
}

// weightSlots are the rows of the axis, the level's words on the middle one of
// each, and the slot of each level's first fish.
func weightSlots(levels []Level, fish []WeightMark) (slots []Level, first []int) {
	in := make([]int, len(levels))
	for _, m := range fish {
		in[m.Row]++
	}
	for i, l := range levels {
		n := max(in[i], leastSlots)
		first = append(first, len(slots)+(n-in[i])/2)
		group := make([]Level, n+1)
		group[(n-1)/2] = l
		slots = append(slots, group...)
	}
	return slots, first
}
