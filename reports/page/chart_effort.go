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
	levels, data, most := make([]Level, len(marks)), make([]opts.BarData, len(marks)), 0.0
	for i, m := range marks {
		levels[i] = m.Level
		data[i] = opts.BarData{Value: m.Hours, ItemStyle: &opts.ItemStyle{Color: "@effort"},
			Label: &opts.Label{Show: opts.Bool(true), Position: "right",
				Formatter: Number(m.Hours, hoursDecimals(m.Hours)), Color: "@ink", FontSize: 13}}
		if m.Thin {
			data[i].ItemStyle = &opts.ItemStyle{Color: "@thin", BorderColor: "@hatch"}
		}
		most = max(most, m.Hours)
	}
	bar := charts.NewBar()
	// Room at the right for the printed hours.
	bar.SetGlobalOptions(rowOptions(f, levels, most*1.12)...)
	bar.AddSeries("", data, charts.WithSeriesOpts(func(s *charts.SingleSeries) { s.BarWidth = "62%" }))
	c, err := rows(bar, f, effortKeys(marks), len(marks))
	if err != nil {
		return nil, err
	}
	for i, m := range marks {
		if m.Thin {
			style := node(c.option, "series", 0, "data", i, "itemStyle")
			style["decal"], style["borderWidth"], style["borderType"] = hatching("@hatch"), 1, "dashed"
		}
	}
	return c, nil
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

// hatching is the pattern of what is not solid, in the colour of the role.
func hatching(role string) map[string]any {
	return map[string]any{"symbol": "rect", "symbolSize": 1, "color": role,
		"dashArrayX": []any{1, 0}, "dashArrayY": []any{1.2, 4}, "rotation": -0.7853981633974483}
}
