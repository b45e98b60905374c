package page

import (
	"github.com/go-echarts/go-echarts/v2/charts"
	"github.com/go-echarts/go-echarts/v2/opts"
	"github.com/go-echarts/go-echarts/v2/types"
)

// Dot is one point of a Plot.
type Dot struct {
	X, Y float64
	Full bool // drawn filled
	Rank int  // printed beside the point; 0 for none
}

// Stroke is a straight line of a Plot.
type Stroke struct {
	X1, Y1, X2, Y2 float64
	Dashed         bool
	Labelled       bool // its Y2 is printed at its end, with the plot's decimals
}

// Band is a strip of a Plot across its whole width, behind everything.
type Band struct{ Lo, Hi float64 }

// Plot is points on two axes of values, with reference lines. The horizontal axis
// begins at zero; the vertical one too where no value is negative, else it
// reaches as far down as up.
type Plot struct {
	Dots     []Dot
	Strokes  []Stroke
	Bands    []Band
	Vertical string // what the vertical axis measures, with its unit
	Decimals int    // of labels
}

// Heights of a plot, on a screen and on paper.
const (
	plotHeight = 440
	plotPaper  = 380
)

// Draw draws the plot; the frame's Axis is the horizontal one. It is nil without
// points.
func (p Plot) Draw(f Frame) (*Chart, error) {
	if len(p.Dots) == 0 {
		return nil, nil
	}
	c := charts.NewCustom()
	c.SetGlobalOptions(append(common(f.Label), p.axes(f))...)
	c.AddSeries("", p.bands(), marks("plotBand"))
	c.AddSeries("", p.strokes(), marks("plotLine"))
	c.AddSeries("", p.dots(), marks("plotDot"))
	o := optionOf(&c.BaseConfiguration)
	o.XAxis[0].NameTextStyle, o.YAxis[0].NameTextStyle = nameStyle(), nameStyle()
	o.YAxis[0].NameTextStyle.Align = "left"
	return &Chart{Label: f.Label, Keys: f.Keys, height: plotHeight, paper: plotPaper, option: o}, nil
}

// marks sets the function of our script that draws a series; its first two
// dimensions are the axes'.
func marks(name string) charts.SeriesOpts {
	return charts.WithSeriesOpts(func(s *charts.SingleSeries) {
		s.RenderItem = types.FuncStr(name)
		s.Encode = &opts.Encode{X: 0, Y: 1}
	})
}

func (p Plot) dots() []opts.CustomData {
	out := make([]opts.CustomData, len(p.Dots))
	for i, d := range p.Dots {
		out[i] = opts.CustomData{Value: []any{d.X, d.Y, flag(d.Full), d.Rank}}
	}
	return out
}

func (p Plot) strokes() []opts.CustomData {
	out := make([]opts.CustomData, len(p.Strokes))
	for i, s := range p.Strokes {
		out[i] = opts.CustomData{Value: []any{s.X1, s.Y1, s.X2, s.Y2, flag(s.Dashed), flag(s.Labelled), p.Decimals}}
	}
	return out
}

func (p Plot) bands() []opts.CustomData {
	out := make([]opts.CustomData, len(p.Bands))
	for i, b := range p.Bands {
		out[i] = opts.CustomData{Value: []any{0, b.Lo, b.Hi}}
	}
	return out
}

// reach is the largest X, Y and -Y of what is drawn.
func (p Plot) reach() (right, up, down float64) {
	see := func(x, y float64) { right, up, down = max(right, x), max(up, y), max(down, -y) }
	for _, d := range p.Dots {
		see(d.X, d.Y)
	}
	for _, b := range p.Bands {
		see(0, b.Lo)
		see(0, b.Hi)
	}
	return right, up, down
}

// Ends are the ends of the axes, for the caller's lines to reach.
func (p Plot) Ends() (right, top float64) {
	x, up, down := p.reach()
	right, _ = axisEnd(x * 1.01)
	top, _ = axisEnd(max(up, down) * 1.01)
	return right, top
}

func (p Plot) axes(f Frame) charts.GlobalOpts {
	x, up, down := p.reach()
	right, xTick := axisEnd(x * 1.01)
	top, yTick := axisEnd(max(up, down) * 1.01)
	bottom := 0.0
	if down > 0 {
		bottom = -top
	}
	return func(bc *charts.BaseConfiguration) {
		bc.XAxisList = []opts.XAxis{{
			Type: "value", Name: f.Axis, NameLocation: "middle", NameGap: 30, Min: 0, Max: right,
			MinInterval: xTick, MaxInterval: xTick,
			AxisLabel: axisLabel("@soft", 12), SplitLine: gridLine(),
			AxisLine: &opts.AxisLine{OnZero: opts.Bool(false), LineStyle: &opts.LineStyle{Color: "@ink"}},
		}}
		bc.YAxisList = []opts.YAxis{{
			Type: "value", Name: p.Vertical, NameLocation: "end", NameGap: 14, Min: bottom, Max: top,
			MinInterval: yTick, MaxInterval: yTick,
			AxisLabel: axisLabel("@soft", 12), SplitLine: gridLine(),
		}}
		bc.GridList = []opts.Grid{{Left: "4", Right: "44", Top: "38", Bottom: "34", ContainLabel: opts.Bool(true)}}
	}
}
