package page

import (
	"github.com/go-echarts/go-echarts/v2/opts"
)

// RateMark is the rate at one level, with its interval.
type RateMark struct {
	Level
	Rate, Lo, Hi *float64 // nil where there is no effort to divide by
	Effort       float64  // what the count is divided by; drawn as the bar's thickness
}

// Rates draws a rate by level: bars from zero whose thickness is the effort, so
// that their area is the count, with the interval over them, and a dashed line
// at the reference rate where there is one. The axis ends where the intervals of
// the levels with enough effort do; a wider one ends in an arrow. It is nil
// without marks.
func Rates(f Frame, marks []RateMark, reference *float64, referenceName string) (*Chart, error) {
	if len(marks) == 0 {
		return nil, nil
	}
	most := 0.0
	for _, m := range marks {
		most = max(most, m.Effort)
	}
	levels, items := make([]Level, len(marks)), make([][]any, len(marks))
	for i, m := range marks {
		share := 0.0
		if most > 0 {
			share = m.Effort / most
		}
		levels[i] = m.Level
		items[i] = []any{i, orGap(m.Rate), orGap(m.Lo), orGap(m.Hi), share, flag(m.Thin)}
	}
	c := custom(rowOptions(f, levels, rateLimit(marks)), "rateBar", items, opts.Encode{X: []int{1, 2, 3}, Y: 0})
	keys := []Key{{MarkBar, "bar: length is the rate, thickness the effort"}, {MarkInterval, "95 % interval"}}
	if reference != nil {
		c.MultiSeries[0].MarkLines = referenceLine(*reference)
		keys = append(keys, Key{MarkDash, referenceName})
	}
	for _, l := range levels {
		if l.Thin {
			keys = append(keys, Key{MarkThin, LittleEffort})
			break
		}
	}
	chart := rows(&c.BaseConfiguration, f, append(keys, f.Keys...), len(marks))
	chart.inks = inksOf(levels)
	return chart, nil
}

// rateLimit is where the axis ends: above every rate, and above the intervals
// of the levels that have enough effort (of all, where none has).
func rateLimit(marks []RateMark) float64 {
	rates, solid, all := 0.0, 0.0, 0.0
	for _, m := range marks {
		if m.Rate != nil && !m.Thin {
			rates = max(rates, *m.Rate)
		}
		if m.Hi == nil {
			continue
		}
		all = max(all, *m.Hi)
		if !m.Thin {
			solid = max(solid, *m.Hi)
		}
	}
	if solid == 0 {
		solid = all
	}
	return max(rates, solid) * 1.04
}

func referenceLine(at float64) *opts.MarkLines {
	return &opts.MarkLines{
		Data: []any{opts.MarkLineNameXAxisItem{XAxis: at}},
		MarkLineStyle: opts.MarkLineStyle{
			Symbol: []string{"none", "none"}, Label: &opts.Label{Show: opts.Bool(false)},
			LineStyle: &opts.LineStyle{Color: "@ink", Type: "dashed", Width: 1.5},
		},
	}
}

// ShareMark is one share of one level, with its interval; all of 0 to 1.
type ShareMark struct {
	Share, Lo, Hi *float64 // nil where nothing is known of the level
}

// SharesMark is the two shares of one level.
type SharesMark struct {
	Level
	First, Second ShareMark
	Of            float64 // what the shares are of; drawn as the size of the marks
}

// Shares draws two shares by level as points with their intervals, on an axis
// of 0 to 100 per cent. It is nil without marks.
func Shares(f Frame, marks []SharesMark, first, second string) (*Chart, error) {
	if len(marks) == 0 {
		return nil, nil
	}
	most := 0.0
	for _, m := range marks {
		most = max(most, m.Of)
	}
	var items [][]any
	levels := make([]Level, len(marks))
	for i, m := range marks {
		levels[i] = m.Level
		size := 0.0
		if most > 0 {
			size = m.Of / most
		}
		for slot, s := range []ShareMark{m.First, m.Second} {
			items = append(items, []any{i, hundred(s.Share), hundred(s.Lo), hundred(s.Hi), slot, 2, size, flag(m.Thin)})
		}
	}
	c := custom(rowOptions(f, levels, 100), "shareMark", items, opts.Encode{X: []int{1, 2, 3}, Y: 0})
	x := &c.XAxisList[0]
	x.AxisLabel.Formatter, x.MinInterval, x.MaxInterval = "{value} %", 25, 25
	chart := rows(&c.BaseConfiguration, f,
		[]Key{{MarkCircle, first}, {MarkDiamond, second}, {MarkInterval, "95 % interval"}}, len(marks))
	return chart, nil
}

func hundred(v *float64) any {
	if v == nil {
		return "-"
	}
	return *v * 100
}
