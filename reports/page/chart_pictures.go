package page

import (
	"fmt"
	"slices"

	"github.com/go-echarts/go-echarts/v2/charts"
	"github.com/go-echarts/go-echarts/v2/opts"
)

// Strength is how loudly a mark is drawn.
type Strength int

// The strengths.
const (
	Pale  Strength = iota // little effort
	Plain                 // a figure that luck could have made
	Loud                  // leaning or settled
)

// RatioMark is how many times the strikes of others a setting brought.
type RatioMark struct {
	Level
	Ratio, Lo, Hi *float64 // nil where it is not known
	Effort        float64  // drawn as the bar's thickness; 0 of all draws them alike
	Strength      Strength
}

// The ends of the axis of ratios: a quarter of, and four times, the strikes.
const (
	ratioLow  = 0.25
	ratioHigh = 4
	ratioRow  = 44 // CSS pixels
)

// Ratios draws a ratio a row on a scale on which half and twice lie as far from one: a
// bar from one, as thick as the effort, with its interval. It is nil without marks.
func Ratios(f Frame, marks []RatioMark) (*Chart, error) {
	if len(marks) == 0 {
		return nil, nil
	}
	most := 0.0
	for _, m := range marks {
		most = max(most, m.Effort)
	}
	levels, items := make([]Level, len(marks)), make([][]any, len(marks))
	for i, m := range marks {
		thick := 0.3
		if most > 0 {
			thick = m.Effort / most
		}
		levels[i] = m.Level
		items[i] = []any{i, orGap(m.Ratio), orGap(m.Lo), orGap(m.Hi), thick, int(m.Strength)}
	}
	one := 1.0
	c := custom(rowOptions(f, levels, ratioHigh), "ratioBar", items, opts.Encode{X: []int{1, 2, 3}, Y: 0})
	c.MultiSeries[0].MarkLines = referenceLine(one)
	x := &c.XAxisList[0]
	x.Type, x.Min, x.Max, x.MinInterval, x.MaxInterval = "log", ratioLow, ratioHigh, 0, 0
	chart := rows(&c.BaseConfiguration, f, f.Keys, len(marks))
	chart.option.XAxis[0].LogBase, chart.option.XAxis[0].AxisLabel.Formatter = 2, "{value} ×"
	chart.height, chart.inks = len(marks)*ratioRow+frameHeight, inksOf(levels)
	if chart.inks != nil { // the names are longer by the season's
		chart.option.YAxis[0].AxisLabel.Width = 180
	}
	chart.narrow.YAxis = names(smaller(122, 11, 13))
	return chart, nil
}

// DayMark is one day out.
type DayMark struct {
	Month   int // place in the list of months
	Day     int // of the month, from 1
	Strikes int64
	Boated  int64   // of them landed or released
	Hours   float64 // line-hours
}

const monthRow = 52 // CSS pixels

// Calendar draws each day out on a row a month: strikes up, of them those to the boat
// dark, and line-hours down. All rows share their scales. It is nil without days.
func Calendar(f Frame, months []Level, days []DayMark) (*Chart, error) {
	if len(months) == 0 || len(days) == 0 {
		return nil, nil
	}
	strikes, hours := int64(1), 1.0
	for _, d := range days {
		strikes, hours = max(strikes, d.Strikes), max(hours, d.Hours)
	}
	items := make([][]any, len(days))
	for i, d := range days {
		items[i] = []any{d.Day - 1, d.Month, d.Strikes, d.Boated, d.Hours, strikes, hours}
	}
	numbers := make([]string, 31)
	for i := range numbers {
		numbers[i] = fmt.Sprint(i + 1)
	}
	c := custom(rowOptions(f, months, 1), "dayBar", items, opts.Encode{X: 0, Y: 1})
	chart := categories(c, f, numbers, len(months))
	week := 6
	l := chart.option.XAxis[0].AxisLabel
	l.Interval, l.HideOverlap = &week, opts.Bool(true)
	chart.height, chart.paper = len(months)*monthRow+frameHeight, len(months)*paperHeight+frameHeight
	chart.inks = inksOf(months)
	return chart, nil
}

// categories completes a chart of rows whose horizontal axis has names, not numbers.
func categories(c *charts.Custom, f Frame, names []string, levels int) *Chart {
	c.SetXAxis(names)
	x := &c.XAxisList[0]
	x.Type, x.Min, x.Max, x.MinInterval, x.MaxInterval = "category", nil, nil, 0, 0
	x.SplitLine, c.YAxisList[0].SplitLine = &opts.SplitLine{Show: opts.Bool(false)}, gridLine()
	c.Validate() // puts the names on their axis
	return rows(&c.BaseConfiguration, f, f.Keys, levels)
}

// underTwoLines makes room for names of columns that break into two lines of the width.
func underTwoLines(c *Chart, width int) {
	x := &c.option.XAxis[0]
	x.AxisLabel.Interval, x.AxisLabel.HideOverlap = every(), opts.Bool(false)
	x.AxisLabel.Width, x.AxisLabel.Overflow, x.AxisLabel.LineHeight = width, "break", lineHeight
	x.NameGap = 46
	c.option.Grid[0].Bottom = "50"
}

// SizeDot is one fish.
type SizeDot struct {
	Row    int // place in the list of levels
	Weight float64
	Main   bool // of the species that the medians are of
}

// SizeMedian is the median of a row, with its interval.
type SizeMedian struct {
	Row            int
	Median, Lo, Hi float64
}

// Sizes draws every fish as a dot on its row, and a bar at the medians. It is nil
// without fish.
func Sizes(f Frame, levels []Level, fish []SizeDot, medians []SizeMedian) (*Chart, error) {
	if len(levels) == 0 || len(fish) == 0 {
		return nil, nil
	}
	heaviest, on := 0.0, make([]int, len(levels))
	items := make([][]any, len(fish))
	for i, d := range fish {
		// The golden section spreads any number of dots evenly over a row's height.
		at := float64(on[d.Row]) * 0.6180339887
		on[d.Row]++
		items[i] = []any{d.Weight, d.Row, at - float64(int(at)) - 0.5, flag(d.Main)}
		heaviest = max(heaviest, d.Weight)
	}
	c := custom(rowOptions(f, levels, heaviest*1.02), "sizeDot", items, opts.Encode{X: 0, Y: 1})
	middles := make([]opts.CustomData, len(medians))
	for i, m := range medians {
		middles[i] = opts.CustomData{Value: []any{m.Median, m.Row, m.Lo, m.Hi}}
	}
	c.AddSeries("", middles, marks("sizeMedian"))
	chart := rows(&c.BaseConfiguration, f, f.Keys, len(levels))
	chart.inks = inksOf(levels)
	return chart, nil
}

// Fate is what became of a number of strikes.
type Fate struct {
	Level
	Season  int // place in the list of seasons
	Strikes int64
	Kind    FateKind
}

// FateKind is a group of fates that are drawn alike.
type FateKind int

// The kinds of fates.
const (
	ToTheBoat  FateKind = iota
	LostOff             // hooked and lost, the cause logged
	LostUnsaid          // hooked and lost, the cause not logged
	Missed
	Unsaid // what became of it is not logged
)

const fateRow = 34 // CSS pixels

// Fates draws all strikes of each season as one bar, and each of its parts again on a
// row of its own below, in its place: in strikes, or of two seasons in per cent of each.
// It is nil without strikes.
func Fates(f Frame, seasons []Level, fates []Fate) (*Chart, error) {
	total, from := make([]float64, len(seasons)), make([]float64, len(seasons))
	for _, p := range fates {
		total[p.Season] += float64(p.Strikes)
	}
	most := total[0]
	if len(seasons) > 1 {
		most = 100
	}
	levels := slices.Clone(seasons)
	var items [][]any
	for _, p := range fates {
		if total[p.Season] == 0 {
			return nil, nil
		}
		to := from[p.Season] + float64(p.Strikes)
		ends := [2]float64{from[p.Season] / total[p.Season] * most, to / total[p.Season] * most}
		items = append(items, []any{p.Season, ends[0], ends[1], int(p.Kind), 1},
			[]any{len(levels), ends[0], ends[1], int(p.Kind), 0})
		levels, from[p.Season] = append(levels, p.Level), to
	}
	if len(items) == 0 {
		return nil, nil
	}
	c := custom(rowOptions(f, levels, most), "fateBar", items, opts.Encode{X: []int{1, 2}, Y: 0})
	chart := rows(&c.BaseConfiguration, f, f.Keys, len(levels))
	chart.height, chart.paper = len(levels)*fateRow+frameHeight, len(levels)*leastPaper+frameHeight
	chart.inks = inksOf(levels)
	return chart, nil
}

// PairMark is the effort and the strikes where two settings meet.
type PairMark struct {
	Row, Column int
	Hours       float64 // line-hours
	Strikes     int64
	Thin        bool
}

const (
	pairRow  = 84 // CSS pixels
	mostStep = 5  // of the ordered scale
)

// Pairs draws two factors across each other: the square's area is the effort, its shade
// the rate, and its counts stand under it. It is nil without marks.
func Pairs(f Frame, levels []Level, columns []string, marks []PairMark) (*Chart, error) {
	if len(marks) == 0 {
		return nil, nil
	}
	hours, rate := 0.0, 0.0
	for _, m := range marks {
		hours = max(hours, m.Hours)
		if !m.Thin && m.Hours > 0 {
			rate = max(rate, float64(m.Strikes)/m.Hours)
		}
	}
	items := make([][]any, len(marks))
	for i, m := range marks {
		shade := -1
		if !m.Thin && m.Hours > 0 && rate > 0 {
			shade = min(mostStep, int(float64(m.Strikes)/m.Hours/rate*(mostStep+1)))
		}
		share := 0.0
		if hours > 0 {
			share = m.Hours / hours
		}
		items[i] = []any{m.Column, m.Row, m.Hours, m.Strikes, share, shade,
			Plural(m.Strikes, "strike", "strikes"), Number(m.Hours, hoursDecimals(m.Hours)) + " h"}
	}
	c := custom(rowOptions(f, levels, 1), "pairCell", items, opts.Encode{X: 0, Y: 1})
	chart := categories(c, f, columns, len(levels))
	underTwoLines(chart, 96)
	chart.narrow.XAxis = []xAxis{{AxisLabel: smaller(48, 11, 0)}}
	chart.height, chart.paper = len(levels)*pairRow+frameHeight, len(levels)*62+frameHeight
	chart.inks = inksOf(levels)
	return chart, nil
}

// FishRow is one fish of a list.
type FishRow struct {
	Level
	Weight float64
	Lo, Hi *float64
	Scale  bool
	Doubt  bool // drawn open; the axis does not reach out to it
}

const fishRowHeight = 38 // CSS pixels

// Heaviest draws a fish a row, its weight as a bar from zero. It is nil without fish.
func Heaviest(f Frame, fish []FishRow) (*Chart, error) {
	if len(fish) == 0 {
		return nil, nil
	}
	heaviest, sure := 0.0, 0.0
	levels, items := make([]Level, len(fish)), make([][]any, len(fish))
	for i, m := range fish {
		levels[i] = m.Level
		items[i] = []any{m.Weight, orGap(m.Lo), orGap(m.Hi), i, flag(m.Scale), flag(m.Doubt)}
		heaviest = max(heaviest, m.Weight)
		if !m.Doubt {
			sure = max(sure, m.Weight)
			if m.Hi != nil {
				sure = max(sure, *m.Hi)
			}
		}
	}
	if sure == 0 {
		sure = heaviest
	}
	c := custom(rowOptions(f, levels, sure*1.02), "fishBar", items, opts.Encode{X: []int{0, 1, 2}, Y: 3})
	chart := rows(&c.BaseConfiguration, f, f.Keys, len(fish))
	chart.height, chart.paper = len(fish)*fishRowHeight+frameHeight, len(fish)*leastPaper+frameHeight
	if chart.inks = inksOf(levels); chart.inks != nil { // the names are longer by the season's
		chart.option.YAxis[0].AxisLabel.Width = 200
	}
	// a name and its day keep to two lines
	chart.narrow.YAxis = names(smaller(142, 11, 13))
	return chart, nil
}
