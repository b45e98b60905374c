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
	chart := categories(c, f, names, len(levels))
	more := len(levels) * 16
	if len(levels) == 1 {
		more = 120 // one histogram has the whole height
	}
	chart.height, chart.paper = chart.height+more, chart.paper+more
	underTwoLines(chart, 52)
	slanted := slantedNames(longest)
	chart.narrow.XAxis, chart.narrow.Grid = []xAxis{slanted}, []opts.Grid{{Bottom: "40"}}
	if len(classes) > mostUpright {
		x := &chart.option.XAxis[0]
		x.NameGap, x.AxisLabel.Rotate, x.AxisLabel.Overflow = slanted.NameGap, slanted.AxisLabel.Rotate, "none"
		x.AxisLabel.FontSize, x.AxisLabel.Width = slanted.AxisLabel.FontSize, slanted.AxisLabel.Width
		chart.option.Grid[0].Bottom = "40"
	}
	return chart, nil
}

// slantedNames are names of classes that do not fit beside each other, of so many letters.
func slantedNames(longest int) xAxis {
	l := smaller(120, 11, 0)
	l.Rotate = 50
	return xAxis{XAxis: opts.XAxis{NameGap: 24 + 4*longest}, AxisLabel: l}
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
