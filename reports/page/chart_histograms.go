package page

import (
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
		items = append(items, []any{c.Class, c.Level, c.Count, c.Solid, most,
			step(classes, c.Class), flag(levels[c.Level].Thin)})
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
	label["interval"], label["hideOverlap"], label["width"], label["overflow"], label["lineHeight"] = 0,
		false, 52, "break", lineHeight
	node(chart.option, "xAxis", 0)["nameGap"] = 46 // under two lines
	node(chart.option, "xAxis", 0)["splitLine"] = map[string]any{"show": false}
	node(chart.option, "yAxis", 0)["splitLine"] = map[string]any{"show": true,
		"lineStyle": map[string]any{"color": "@rule"}}
	slanted := map[string]any{"nameGap": 24 + 4*longest,
		"axisLabel": map[string]any{"rotate": 50, "fontSize": 11, "width": 120}}
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
