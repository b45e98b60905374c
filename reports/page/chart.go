package page

import (
	"cmp"
	"encoding/json"

	"github.com/go-echarts/go-echarts/v2/charts"
	"github.com/go-echarts/go-echarts/v2/opts"
	"github.com/go-echarts/go-echarts/v2/types"
)

// Chart is a drawn figure, made by one of the constructors of this package.
type Chart struct {
	Label string // read out in place of the drawing: say what the chart shows
	Keys  []Key  // what the marks mean, printed above

	height int // CSS pixels, on a screen
	paper  int // on paper, where rows stand closer; 0 as on a screen
	option option
	narrow option // what changes on a phone
	inks   []Ink  // of the rows; nil where the chart is of one season
}

// MarshalJSON writes the chart as our script reads it.
func (c *Chart) MarshalJSON() ([]byte, error) {
	return json.Marshal(struct {
		Option option `json:"option"`
		Narrow option `json:"narrow"`
		Paper  int    `json:"paper"`
		Inks   []Ink  `json:"inks"`
	}{c.option, c.narrow, cmp.Or(c.paper, c.height), c.inks})
}

// Height is the room that the page keeps for the chart on a screen, in CSS pixels.
func (c *Chart) Height() int { return c.height }

// Level is one row of a chart: a level of a factor.
type Level struct {
	Name   string
	Thin   bool   // little effort: drawn pale and dashed, and said under the name
	Counts string // printed at the right end of the row; lines apart by "\n"
	Ink    Ink    // which of two seasons the row is of
}

// Ink is the colour of a season where two stand on one chart, a role of the palette.
type Ink string

// The inks.
const (
	OneSeason Ink = ""
	Earlier   Ink = "earlier"
	Later     Ink = "later"
)

// inksOf are the inks of rows; nil where all are of one season.
func inksOf(levels []Level) []Ink {
	var inks []Ink
	for _, l := range levels {
		if l.Ink != OneSeason {
			inks = append(inks, l.Ink)
		}
	}
	if len(inks) < len(levels) {
		return nil
	}
	return inks
}

// LittleEffort is how a level with little effort is called, in charts and tables.
const LittleEffort = "little effort"

// Frame is the words around a chart.
type Frame struct {
	Label  string // read out in place of the drawing
	Axis   string // what the horizontal axis measures, with its unit
	Counts string // head of the printed counts at the right
	Keys   []Key  // what the marks mean, where the constructor does not say it
}

func (l Level) label() string {
	if l.Thin {
		return l.Name + "\n" + LittleEffort
	}
	return l.Name
}

// Heights in CSS pixels of a row of marks and of what surrounds the rows.
const (
	rowHeight   = 50
	paperHeight = 35  // of a row on paper
	leastPaper  = 30  // of a row on paper: two lines of words
	mostPaper   = 660 // of a chart that is to leave room for the words above it
	frameHeight = 92
)

// common are the options that every chart starts with.
func common(label string) []charts.GlobalOpts {
	return []charts.GlobalOpts{
		charts.WithAnimation(false),
		charts.WithAriaOpts(&opts.Aria{
			Enabled: opts.Bool(true),
			Label:   &opts.AriaLabel{Enabled: opts.Bool(true), Description: label},
			// Automatic patterns mean nothing here. Marks that are not solid
			// bring the pattern that says so.
			Decal: &opts.AriaDecal{Show: opts.Bool(false)},
		}),
	}
}

// rowOptions are the options of a chart with one level a row: levels at the
// left in the order given, printed counts at the right, a value axis from zero
// to a round number at or above the largest value below.
func rowOptions(f Frame, levels []Level, largest float64) []charts.GlobalOpts {
	end, tick := axisEnd(largest)
	x := opts.XAxis{
		Type: "value", Name: f.Axis, NameLocation: "middle", NameGap: 30, Min: 0, Max: end,
		MinInterval: tick, MaxInterval: tick,
		AxisLabel: axisLabel("@soft", 12),
		AxisLine:  &opts.AxisLine{Show: opts.Bool(false)},
		AxisTick:  &opts.AxisTick{Show: opts.Bool(false)},
		SplitLine: gridLine(),
	}
	x.AxisLabel.HideOverlap = opts.Bool(true)
	return append(common(f.Label), charts.WithXAxisOpts(x), func(bc *charts.BaseConfiguration) {
		bc.YAxisList = rowAxes(levels)
		bc.GridList = []opts.Grid{{Left: "0", Right: "4", Top: "34", Bottom: "34", ContainLabel: opts.Bool(true)}}
	})
}

// rowAxes are the two vertical axes of a chart of rows: names, then counts.
func rowAxes(levels []Level) []opts.YAxis {
	names, counts := make([]string, len(levels)), make([]string, len(levels))
	for i, l := range levels {
		names[i], counts[i] = l.label(), l.Counts
	}
	left := opts.YAxis{
		Type: "category", Inverse: opts.Bool(true), Data: names,
		AxisLabel: axisLabel("@ink", 13),
		AxisLine:  &opts.AxisLine{LineStyle: &opts.LineStyle{Color: "@ink"}},
	}
	left.AxisLabel.Width, left.AxisLabel.Overflow = 150, "break"
	right := opts.YAxis{
		Type: "category", Position: "right", Inverse: opts.Bool(true), Data: counts,
		AxisLabel: axisLabel("@ink", 12),
		AxisLine:  &opts.AxisLine{Show: opts.Bool(false)},
	}
	right.AxisLabel.Margin = 12 // clear of a mark at the end of the axis
	return []opts.YAxis{left, right}
}

func axisLabel(colour string, size int) *opts.AxisLabel {
	return &opts.AxisLabel{Show: opts.Bool(true), Color: colour, FontSize: size}
}

func gridLine() *opts.SplitLine {
	return &opts.SplitLine{Show: opts.Bool(true), LineStyle: &opts.LineStyle{Color: "@rule"}}
}

// lineHeight is that of a label that may break, in pixels. Left out, it would be the width of
// a letter that many fonts do not have.
const lineHeight = 15

// rows completes a chart of rows: what go-echarts has no words for.
func rows(c *charts.BaseConfiguration, f Frame, keys []Key, levels int) *Chart {
	o := optionOf(c)
	o.XAxis[0].NameTextStyle = nameStyle()
	for i := range o.YAxis {
		// Every level is named, however many there are.
		o.YAxis[i].AxisLabel.Interval, o.YAxis[i].AxisLabel.LineHeight = every(), lineHeight
		o.YAxis[i].AxisTick = &opts.AxisTick{Show: opts.Bool(false)}
	}
	// The head of the counts is a title: an axis name is not kept on the canvas.
	if f.Counts != "" {
		o.Title = &title{Padding: 4, Title: opts.Title{Title: f.Counts, Right: "0", Top: "0",
			TitleStyle: &opts.TextStyle{Color: "@soft", FontSize: 12, FontWeight: "normal", Align: "right"}}}
	}
	return &Chart{
		Label: f.Label, Keys: keys, height: levels*rowHeight + frameHeight,
		paper:  max(min(levels*paperHeight+frameHeight, mostPaper), levels*leastPaper+frameHeight),
		option: o, narrow: option{YAxis: names(smaller(86, 12, 0))},
	}
}

// names are the axes of a chart of rows on a phone, where the levels' names are smaller.
func names(l *label) []yAxis { return []yAxis{{AxisLabel: l}, {}} }

// custom is a chart of rows whose marks are drawn by the named function of our
// script; x lists the dimensions that are values, y the one that is the row.
func custom(frame []charts.GlobalOpts, mark string, items [][]any, encode opts.Encode) *charts.Custom {
	data := make([]opts.CustomData, len(items))
	for i, v := range items {
		data[i] = opts.CustomData{Value: v}
	}
	c := charts.NewCustom()
	c.SetGlobalOptions(frame...)
	c.AddSeries("", data, charts.WithSeriesOpts(func(s *charts.SingleSeries) {
		s.RenderItem = types.FuncStr(mark)
		s.Encode = &encode
	}))
	return c
}

// orGap is ECharts' sign for a value that is not known.
func orGap(v *float64) any {
	if v == nil {
		return "-"
	}
	return *v
}

func flag(b bool) int {
	if b {
		return 1
	}
	return 0
}
