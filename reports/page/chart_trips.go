package page

import (
	"fmt"
	"unicode/utf8"

	"github.com/go-echarts/go-echarts/v2/charts"
	"github.com/go-echarts/go-echarts/v2/opts"
)

// OutingMark is one trip.
type OutingMark struct {
	Name    string // short: it stands under a narrow column
	Strikes int64
	Boated  int64   // of them landed or released
	Hours   float64 // line-hours
}

// Outings draws trips in the order given as two panels over one axis: strikes
// above, the effort that they took below. It is nil without trips.
func Outings(label string, trips []OutingMark) (*Chart, error) {
	if len(trips) == 0 {
		return nil, nil
	}
	names := make([]string, len(trips))
	var boated, other, hours []opts.BarData
	for i, t := range trips {
		names[i] = t.Name
		boated = append(boated, opts.BarData{Value: t.Boated, ItemStyle: edgeless(t.Boated == 0)})
		other = append(other, opts.BarData{Value: t.Strikes - t.Boated, Label: printed(Count(t.Strikes)),
			ItemStyle: edgeless(t.Strikes == t.Boated)})
		hours = append(hours, opts.BarData{Value: t.Hours, Label: printed(Number(t.Hours, 0))})
	}
	bars := charts.NewBar()
	most := 0.0
	for _, t := range trips {
		most = max(most, float64(t.Strikes), t.Hours)
	}
	bars.SetGlobalOptions(append(common(label), outingFrame(names, tickRoom(most)))...)
	bars.AddSeries("landed or released", boated, stacked("@boated"))
	bars.AddSeries("other strikes", other, stacked("@struck"))
	bars.AddSeries("line-hours", hours, charts.WithSeriesOpts(func(s *charts.SingleSeries) {
		s.XAxisIndex, s.YAxisIndex, s.BarCategoryGap = 1, 1, "25%"
		s.ItemStyle = &opts.ItemStyle{Color: "@effort"}
	}))
	o := optionOf(&bars.BaseConfiguration)
	o.Series[1].ItemStyle.Decal, o.Series[1].ItemStyle.BorderWidth = hatching("@boated"), 1
	for i := range o.Series {
		o.Series[i].LabelLayout = &opts.LabelLayout{HideOverlap: opts.Bool(true)}
	}
	for i := range o.YAxis {
		style := nameStyle()
		style.Align, style.Padding = "left", []int{0, 0, 0, 4 - tickRoom(most)}
		o.YAxis[i].NameTextStyle = style
	}
	return &Chart{
		Label: label, height: 400, option: o,
		Keys: []Key{{MarkBoated, "strikes: landed or released"}, {MarkStruck, "strikes: missed, lost or not logged"},
			{MarkEffort, "line-hours"}},
	}, nil
}

// tickRoom is the room in CSS pixels left of an axis whose numbers go up to most.
func tickRoom(most float64) int {
	end, _ := axisEnd(most * 1.2)
	return 18 + 8*utf8.RuneCountInString(Number(end, 0))
}

// edgeless hides the edge of a column that has no height.
func edgeless(empty bool) *opts.ItemStyle {
	if !empty {
		return nil
	}
	return &opts.ItemStyle{BorderColor: "transparent"}
}

func printed(text string) *opts.Label {
	return &opts.Label{Show: opts.Bool(true), Position: "top", Formatter: text, Color: "@ink", FontSize: 11}
}

func stacked(colour string) charts.SeriesOpts {
	return charts.WithSeriesOpts(func(s *charts.SingleSeries) {
		s.Stack, s.BarCategoryGap = "strikes", "25%"
		s.ItemStyle = &opts.ItemStyle{Color: colour, BorderColor: "@boated"}
	})
}

// outingFrame is two panels one above the other, with a column a trip.
func outingFrame(names []string, left int) charts.GlobalOpts {
	return func(bc *charts.BaseConfiguration) {
		bc.XAxisList, bc.YAxisList = nil, nil
		for panel, name := range []string{"strikes", "line-hours"} {
			bc.XAxisList = append(bc.XAxisList, opts.XAxis{
				Type: "category", GridIndex: panel, Data: names,
				AxisLabel: &opts.AxisLabel{Show: opts.Bool(panel == 1), Color: "@soft", FontSize: 12,
					HideOverlap: opts.Bool(true)},
				AxisTick: &opts.AxisTick{Show: opts.Bool(false)},
				AxisLine: &opts.AxisLine{LineStyle: &opts.LineStyle{Color: "@ink"}},
			})
			bc.YAxisList = append(bc.YAxisList, opts.YAxis{
				Type: "value", GridIndex: panel, Name: name, NameLocation: "end", NameGap: 16, Min: 0,
				SplitNumber: 3, MinInterval: 1,
				AxisLabel: axisLabel("@soft", 12), SplitLine: gridLine(),
			})
			bc.GridList = append(bc.GridList, opts.Grid{Left: fmt.Sprint(left), Right: "18",
				Top: fmt.Sprint(34 + 200*panel), Height: "128"})
		}
	}
}
