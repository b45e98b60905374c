package page

import (
	"github.com/go-echarts/go-echarts/v2/charts"
	"github.com/go-echarts/go-echarts/v2/opts"
)

// EffortMark is the effort at one level.
type EffortMark struct {
	Level
	Hours float64 // line-hours
}

// Effort draws effort by level as bars from zero, the hours printed at their
// ends. It is nil without marks.
func Effort(f Frame, marks []EffortMark) (*Chart, error) {
	if len(marks) == 0 {
		return nil, nil
	}
	levels, bars, most := make([]Level, len(marks)), make([]bar, len(marks)), 0.0
	for i, m := range marks {
		levels[i] = m.Level
		bars[i] = bar{ItemStyle: &itemStyle{ItemStyle: opts.ItemStyle{Color: "@effort"}},
			BarData: opts.BarData{Value: m.Hours, Label: &opts.Label{Show: opts.Bool(true), Position: "right",
				Formatter: Number(m.Hours, hoursDecimals(m.Hours)), Color: "@ink", FontSize: 13}}}
		if m.Thin {
			bars[i].ItemStyle = &itemStyle{BorderType: "dashed", Decal: hatching("@hatch"),
				ItemStyle: opts.ItemStyle{Color: "@thin", BorderColor: "@hatch", BorderWidth: 1}}
		}
		most = max(most, m.Hours)
	}
	c := charts.NewBar()
	// Room at the right for the printed hours.
	c.SetGlobalOptions(rowOptions(f, levels, most*1.12)...)
	c.AddSeries("", nil, charts.WithSeriesOpts(func(s *charts.SingleSeries) { s.Data, s.BarWidth = bars, "62%" }))
	return rows(&c.BaseConfiguration, f, effortKeys(marks), len(marks)), nil
}

// hoursDecimals: hours are logged to the minute, so a tenth is known; from ten
// hours on it is not worth the ink.
func hoursDecimals(h float64) int {
	if h < 10 {
		return 1
	}
	return 0
}

func effortKeys(marks []EffortMark) []Key {
	keys := []Key{{MarkEffort, "line-hours"}}
	for _, m := range marks {
		if m.Thin {
			return append(keys, Key{MarkThin, LittleEffort})
		}
	}
	return keys
}
