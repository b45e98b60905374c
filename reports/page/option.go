package page

import (
	"math"

	"github.com/go-echarts/go-echarts/v2/charts"
	"github.com/go-echarts/go-echarts/v2/opts"
	"github.com/go-echarts/go-echarts/v2/types"
)

// option is a chart as ECharts takes it: what a chart of go-echarts holds, and beside it
// what go-echarts has no words for. What is empty is left out, so that an option also
// says what changes on a phone. Colours are "@role", functions are named.
type option struct {
	Animation types.Bool   `json:"animation,omitempty"`
	Aria      *opts.Aria   `json:"aria,omitempty"`
	Title     *title       `json:"title,omitempty"`
	Legend    *opts.Legend `json:"legend,omitempty"`
	Grid      []opts.Grid  `json:"grid,omitempty"`
	XAxis     []xAxis      `json:"xAxis,omitempty"`
	YAxis     []yAxis      `json:"yAxis,omitempty"`
	Series    []series     `json:"series,omitempty"`
}

// In the types below a field of our own takes the place of the one of go-echarts that
// has the same name in JSON.

type xAxis struct {
	opts.XAxis
	AxisLabel     *label          `json:"axisLabel,omitempty"`
	NameTextStyle *opts.TextStyle `json:"nameTextStyle,omitempty"`
	LogBase       int             `json:"logBase,omitempty"`
}

type yAxis struct {
	opts.YAxis
	AxisLabel     *label          `json:"axisLabel,omitempty"`
	AxisTick      *opts.AxisTick  `json:"axisTick,omitempty"`
	NameTextStyle *opts.TextStyle `json:"nameTextStyle,omitempty"`
}

// label is how an axis prints its values.
type label struct {
	opts.AxisLabel
	Interval   *int `json:"interval,omitempty"`   // names passed over from one printed to the next
	LineHeight int  `json:"lineHeight,omitempty"` // CSS pixels
}

type series struct {
	charts.SingleSeries
	ItemStyle *itemStyle `json:"itemStyle,omitempty"`
}

type bar struct {
	opts.BarData
	ItemStyle *itemStyle `json:"itemStyle,omitempty"`
}

type itemStyle struct {
	opts.ItemStyle
	BorderType string `json:"borderType,omitempty"`
	Decal      *decal `json:"decal,omitempty"`
}

// decal is a pattern over a mark; sizes in CSS pixels, the rotation in radians.
type decal struct {
	Symbol     string    `json:"symbol"`
	SymbolSize float64   `json:"symbolSize"`
	Color      string    `json:"color"`
	DashArrayX []float64 `json:"dashArrayX"` // drawn and left out, in turn
	DashArrayY []float64 `json:"dashArrayY"`
	Rotation   float64   `json:"rotation"`
}

// hatching is the pattern of what is not solid, in the colour of the role.
func hatching(role string) *decal {
	return &decal{Symbol: "rect", SymbolSize: 1, Color: role,
		DashArrayX: []float64{1, 0}, DashArrayY: []float64{1.2, 4}, Rotation: -math.Pi / 4}
}

type title struct {
	opts.Title
	Padding int `json:"padding"`
}

// optionOf is what a chart of go-echarts holds. The parts that a page says in its own
// way (title, legend, tool box, tool tip) are left behind.
func optionOf(c *charts.BaseConfiguration) option {
	o := option{Animation: c.Animation, Aria: c.Aria, Grid: c.GridList}
	for _, x := range c.XAxisList {
		o.XAxis = append(o.XAxis, xAxis{XAxis: x, AxisLabel: labelOf(x.AxisLabel)})
	}
	for _, y := range c.YAxisList {
		o.YAxis = append(o.YAxis, yAxis{YAxis: y, AxisLabel: labelOf(y.AxisLabel)})
	}
	for _, s := range c.MultiSeries {
		own := series{SingleSeries: s}
		if s.ItemStyle != nil {
			own.ItemStyle = &itemStyle{ItemStyle: *s.ItemStyle}
		}
		o.Series = append(o.Series, own)
	}
	return o
}

func labelOf(l *opts.AxisLabel) *label {
	if l == nil {
		return nil
	}
	return &label{AxisLabel: *l}
}

// nameStyle is that of an axis' name.
func nameStyle() *opts.TextStyle { return &opts.TextStyle{Color: "@soft", FontSize: 12} }

// every prints all names of an axis.
func every() *int { return new(int) }

// smaller are the labels of an axis on a phone, in CSS pixels.
func smaller(width, font, line int) *label {
	return &label{AxisLabel: opts.AxisLabel{Width: width, FontSize: font}, LineHeight: line}
}
