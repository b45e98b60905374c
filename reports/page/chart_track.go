package page

import (
	"math"
	"strconv"

	"github.com/go-echarts/go-echarts/v2/charts"
	"github.com/go-echarts/go-echarts/v2/opts"
)

// TrackClass is the points of a track in one class of speed, slowest class
// first: nautical miles east and north of the middle.
type TrackClass struct {
	Name   string
	Points [][2]float64
}

const trackHeight = 620

// trackShapes tell the classes apart without colour.
var trackShapes = []string{"circle", "rect", "triangle", "diamond", "pin", "roundRect"}

// Track draws a track by speed, with no chart of the sea under it: at most six
// classes, and where a fish struck as rings. It is nil without points.
func Track(f Frame, classes []TrackClass, struck [][2]float64) (*Chart, error) {
	reach := 0.0
	for _, c := range classes {
		for _, p := range c.Points {
			reach = max(reach, math.Abs(p[0]), math.Abs(p[1]))
		}
	}
	if reach == 0 || len(classes) > len(trackShapes) {
		return nil, nil
	}
	end, tick := axisEnd(reach)
	s := charts.NewScatter()
	s.SetGlobalOptions(append(common(f.Label), trackAxes(f, end, tick))...)
	var names []any
	for i, c := range classes {
		step := "@step" + strconv.Itoa(5-(len(classes)-1-i))
		s.AddSeries(c.Name, trackPoints(c.Points), charts.WithItemStyleOpts(opts.ItemStyle{Color: step, BorderColor: "@soft", BorderWidth: 0.4}),
			trackMark(trackShapes[i], 5))
		names = append(names, c.Name)
	}
	if len(struck) > 0 {
		s.AddSeries("strike", trackPoints(struck), charts.WithItemStyleOpts(opts.ItemStyle{Color: "transparent", BorderColor: "@tape", BorderWidth: 2}), trackMark("circle", 11))
		names = append(names, "strike")
	}
	option, err := finish(s)
	if err != nil {
		return nil, err
	}
	option["legend"] = map[string]any{"data": names, "top": 0, "itemWidth": 14, "textStyle": map[string]any{"color": "@ink", "fontSize": 12}}
	return &Chart{Label: f.Label, Keys: f.Keys, height: trackHeight, option: option, narrow: map[string]any{}}, nil
}

func trackMark(shape string, size int) charts.SeriesOpts {
	return func(s *charts.SingleSeries) {
		s.Symbol, s.SymbolSize = shape, size
	}
}

func trackPoints(points [][2]float64) []opts.ScatterData {
	out := make([]opts.ScatterData, len(points))
	for i, p := range points {
		out[i] = opts.ScatterData{Value: []any{p[0], p[1]}}
	}
	return out
}

func trackAxes(f Frame, end, tick float64) charts.GlobalOpts {
	return func(bc *charts.BaseConfiguration) {
		bc.XAxisList = []opts.XAxis{{Type: "value", Name: f.Axis, NameLocation: "middle", NameGap: 30, Min: -end, Max: end, MinInterval: tick, MaxInterval: tick,
			AxisLabel: axisLabel("@soft", 12), SplitLine: gridLine(), AxisLine: &opts.AxisLine{OnZero: opts.Bool(false)}}}
		bc.YAxisList = []opts.YAxis{{Type: "value", Min: -end, Max: end, MinInterval: tick, MaxInterval: tick,
			AxisLabel: axisLabel("@soft", 12), SplitLine: gridLine(), AxisLine: &opts.AxisLine{OnZero: opts.Bool(false)}}}
		bc.GridList = []opts.Grid{{Left: "4", Right: "16", Top: "64", Bottom: "34", ContainLabel: opts.Bool(true)}}
	}
}
