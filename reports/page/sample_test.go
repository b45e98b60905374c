package page

import (
	"testing"
	"time"
)

// hostile are names as a spreadsheet may hold them.
const (
	hostileScript = `</script><script>alert(1)</script>`
	hostileMark   = `__f__function(){alert(2)}__f__`
	hostileQuotes = `"O'Brien" & <b onmouseover=alert(3)>`
)

func f(v float64) *float64 { return &v }

// must unwraps a chart in a test.
func must(t *testing.T, c *Chart, err error) *Chart {
	t.Helper()
	if err != nil {
		t.Fatal(err)
	}
	return c
}

var sampleLevels = []Level{
	{Name: "0 to <6 kn", Thin: true, Counts: "0 in 2.1 h"},
	{Name: "8 to <10 kn", Counts: "9 in 96 h"},
	{Name: "12 to <14 kn", Counts: "31 in 148 h"},
	{Name: hostileScript, Counts: hostileMark},
	{Name: "not logged", Counts: "3 in 24 h"},
}

// samplePage holds every kind of chart, and text that tries to break out.
func samplePage(t *testing.T) Page {
	hours := []float64{2.1, 96, 148, 40, 24}
	var effort []EffortMark
	for i, l := range sampleLevels {
		effort = append(effort, EffortMark{Level: l, Hours: hours[i]})
	}
	rates := []RateMark{
		{sampleLevels[0], f(0), f(0), f(1.757), 2.1},
		{sampleLevels[1], f(0.094), f(0.043), f(0.178), 96},
		{sampleLevels[2], f(0.21), f(0.142), f(0.297), 148},
		{sampleLevels[3], nil, nil, nil, 0},
		{sampleLevels[4], f(0.125), f(0.026), f(0.365), 24},
	}
	shares := []SharesMark{
		{sampleLevels[1], ShareMark{f(0.67), f(0.35), f(0.88)}, ShareMark{f(0.33), f(0.12), f(0.65)}, 9},
		{sampleLevels[2], ShareMark{f(0.71), f(0.53), f(0.84)}, ShareMark{f(0.52), f(0.35), f(0.68)}, 31},
		{sampleLevels[3], ShareMark{}, ShareMark{}, 0},
	}
	classes := []Class{{"25 to <50", true}, {"50 to <75", true}, {"75 to <100", true}, {hostileQuotes, false}}
	cells := []HistogramCell{{0, 0, 2, 1}, {1, 0, 1, 0}, {1, 1, 5, 2}, {2, 2, 3, 0}, {2, 3, 2, 0}}
	trips := []OutingMark{{"3 Jun", 5, 2, 24}, {"9 Jun", 0, 0, 18.5}, {hostileScript, 11, 6, 31}}

	section := func(id string, c *Chart, err error) Section {
		return Section{ID: id, Heading: hostileQuotes, Sentences: []string{hostileScript}, Chart: must(t, c, err),
			Table: sampleTable(), Notes: []string{hostileMark}}
	}
	frame := Frame{Label: "a chart of " + hostileQuotes, Axis: "per line-hour", Counts: "strikes in hours"}
	effortChart, err1 := Effort(frame, effort)
	rateChart, err2 := Rates(frame, rates, f(0.16), "the season's rate")
	shareChart, err3 := Shares(frame, shares, "hooked", "boated")
	frame.Keys = []Key{{MarkSolid, "on a scale"}, {MarkHatched, "from the tape"}}
	histChart, err4 := Histograms(frame, sampleLevels[:3], classes, cells)
	tripChart, err5 := Outings("trips", trips)
	plotChart, err6 := Plot{
		Dots:    []Dot{{60, -2.5, true, 1}, {110, 3.25, false, 0}, {160, -4, false, 2}},
		Strokes: []Stroke{{0, -1, 200, -1, false, true}, {0, -5, 200, -5, true, true}},
		Bands:   []Band{{-6, -4}}, Vertical: hostileQuotes, Decimals: 1,
	}.Draw(frame)
	return Page{
		Title: "Season of " + hostileQuotes, Kicker: "Sample", Subtitle: hostileScript,
		Generated: time.Date(2026, 11, 2, 18, 30, 0, 0, time.UTC),
		Tiles:     []Tile{{"Trips", "12", "", hostileScript}, {"Line-hours", "310", "h", ""}},
		Sections: []Section{
			section("effort", effortChart, err1), section("rates", rateChart, err2),
			section("shares", shareChart, err3),
			section("sizes", histChart, err4), section("trips", tripChart, err5), section("plot", plotChart, err6),
		},
		Footer: []string{hostileQuotes},
	}
}

func sampleTable() *Table {
	return &Table{
		Caption: "sample " + hostileQuotes,
		Columns: []Column{{Head: "level"}, {Head: "rate", Unit: "per line-hour", Kind: Measure, Decimals: 2},
			{Head: "interval", Kind: Interval, Decimals: 2}},
		Rows: []Row{
			{Cells: []Cell{Words("b"), Value(0.21), Span(f(0.142), f(0.297))}},
			{Cells: []Cell{Words(hostileScript), Value(1200), Span(nil, nil)}, Thin: true},
			{Cells: []Cell{Words("a"), {}, Span(f(0), f(1.757))}},
		},
		Total: []Cell{Words("all"), Value(0.155), {}},
	}
}
