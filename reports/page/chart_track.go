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

// Pixels of a track's drawing at most, and what surrounds it: a mile is as long
// one way as the other, on a screen and on a phone.
const (
	trackWide, trackHigh = 500, 560
	trackPhone           = 240
	trackTop, trackFoot  = 64, 52
	trackLeft            = 40
)

// trackShapes tell the classes apart without colour.
var trackShapes = [TrackMarks]string{"circle", "rect", "triangle", "diamond", "pin", "roundRect"}

// TrackMarks is how many classes a drawing of tracks can tell apart.
const TrackMarks = 6

// Track draws a track by speed, with no chart of the sea under it: at most six
// classes, and where a fish struck as rings. It is nil without points.
func Track(f Frame, classes []TrackClass, struck [][2]float64) (*Chart, error) {
	g := gridOf(classes, struck)
	if g.tick == 0 || len(classes) > len(trackShapes) {
		return nil, nil
	}
	s := charts.NewScatter()
	s.SetGlobalOptions(append(common(f.Label), g.axes(f))...)
	var names []string
	for i, c := range classes {
		step := "@step" + strconv.Itoa(5-(len(classes)-1-i))
		s.AddSeries(c.Name, trackPoints(c.Points), charts.WithItemStyleOpts(opts.ItemStyle{Color: step,
			BorderColor: "@soft", BorderWidth: 0.4}),
			trackMark(trackShapes[i], 5))
		names = append(names, c.Name)
	}
	if len(struck) > 0 {
		s.AddSeries("strike", trackPoints(struck), charts.WithItemStyleOpts(opts.ItemStyle{Color: "transparent",
			BorderColor: "@tape", BorderWidth: 2}), trackMark("circle", 11))
		names = append(names, "strike")
	}
	o := optionOf(&s.BaseConfiguration)
	o.Legend = &opts.Legend{Data: names, Top: "0", ItemWidth: 14,
		TextStyle: &opts.TextStyle{Color: "@ink", FontSize: 12}}
	w, h := g.size(trackWide, trackHigh)
	o.Grid = []opts.Grid{room("center", trackTop, w, h)}
	// a phone has the legend under the drawing, in a column
	wp, hp := g.size(trackPhone, trackHigh)
	left := strconv.Itoa(trackLeft)
	return &Chart{Label: f.Label, Keys: f.Keys, height: trackTop + h + trackFoot, option: o, narrow: option{
		Grid:   []opts.Grid{room(left, trackPad, wp, hp)},
		Legend: &opts.Legend{Orient: "vertical", Left: left, Top: strconv.Itoa(trackPad + hp + trackFoot)}}}, nil
}

// room is the place of a drawing, in CSS pixels.
func room(left string, top, width, height int) opts.Grid {
	return opts.Grid{Left: left, Top: strconv.Itoa(top), Width: strconv.Itoa(width), Height: strconv.Itoa(height)}
}

// trackGrid is the drawing's room in squares of tick nautical miles a side.
type trackGrid struct {
	tick        float64
	east, north int // squares from the middle to each side
}

// trackPad is the room above a drawing with no legend over it.
const trackPad = 12

func gridOf(classes []TrackClass, struck [][2]float64) trackGrid {
	var x, y float64
	reach := func(points [][2]float64) {
		for _, p := range points {
			x, y = max(x, math.Abs(p[0])), max(y, math.Abs(p[1]))
		}
	}
	for _, c := range classes {
		reach(c.Points)
	}
	reach(struck)
	if x == 0 && y == 0 {
		return trackGrid{}
	}
	_, tick := axisEnd(max(x, y))
	squares := func(v float64) int { return max(1, int(math.Ceil(v/tick-1e-9))) }
	return trackGrid{tick: tick, east: squares(x), north: squares(y)}
}

// size is the drawing's, in pixels.
func (g trackGrid) size(wide, high float64) (w, h int) {
	side := min(wide/float64(2*g.east), high/float64(2*g.north))
	return int(side * float64(2*g.east)), int(side * float64(2*g.north))
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

func (g trackGrid) axes(f Frame) charts.GlobalOpts {
	end := func(squares int) float64 { return tidy(g.tick * float64(squares)) }
	line := func() *opts.AxisLine { return &opts.AxisLine{OnZero: opts.Bool(false)} }
	return func(bc *charts.BaseConfiguration) {
		bc.XAxisList = []opts.XAxis{{Type: "value", Name: f.Axis, NameLocation: "middle", NameGap: 30,
			Min: -end(g.east), Max: end(g.east), MinInterval: g.tick, MaxInterval: g.tick,
			AxisLabel: axisLabel("@soft", 12), SplitLine: gridLine(), AxisLine: line()}}
		bc.YAxisList = []opts.YAxis{{Type: "value", Min: -end(g.north), Max: end(g.north),
			MinInterval: g.tick, MaxInterval: g.tick,
			AxisLabel: axisLabel("@soft", 12), SplitLine: gridLine(), AxisLine: line()}}
	}
}
