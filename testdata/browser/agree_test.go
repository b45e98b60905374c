package browser

import (
	"strings"
	"testing"
)

func mark(values ...any) Mark { return Mark{Value: values} }

func rowOf(cells ...string) (row []Cell) {
	for i := 0; i+1 < len(cells); i += 2 {
		row = append(row, Cell{cells[i], cells[i+1]})
	}
	return row
}

// rates is a chart of rates with the table that belongs to it: 9 strikes in 96.2
// line-hours, a level with nothing known, and the season's rate at the foot.
func rates() Figure {
	f := Figure{ID: "chart-rates"}
	f.Option.XAxis = []Axis{{Name: "strikes per line-hour"}}
	f.Option.YAxis = []Axis{{Data: []string{"8 to 10 kn", "16 kn and up\nlittle effort"}},
		{Data: []string{"9 strikes\n96 line-h", "0 strikes\n0.0 line-h"}}}
	f.Option.Series = []Series{{RenderItem: "rateBar", Data: []Mark{mark(0.0, 0.0936, 0.0428, 0.1776, 1.0, 0.0),
		mark(1.0, "-", "-", "-", 0.0, 1.0)}}}
	at := 0.16
	f.Option.Series[0].MarkLine.Data = []struct{ XAxis *float64 }{{&at}}
	f.Tables = []Table{{
		Heads: []Head{{"Speed", ""}, {"Line-hours", "h"}, {"Strikes", ""},
			{"Rate", "strikes per line-hour"}, {"95 % interval", ""}},
		Rows: [][]Cell{
			rowOf("8 to 10 kn", "", "96.2", "96.2", "9", "9", "0.09", "0.0936", "0.04 to 0.18", "0.0428"),
			rowOf("16 kn and up (little effort)", "", "0.0", "0", "0", "0", "–", "", "–", ""),
		},
		Foot: rowOf("season", "", "96.2", "96.2", "9", "9", "0.16", "0.16", "–", ""),
	}}
	return f
}

// histogram is two classes of one level, 1 of 3 fish on a scale.
func histogram() Figure {
	f := Figure{ID: "chart-sizes"}
	f.Option.XAxis = []Axis{{Data: []string{"0 to <50", "no weight"}}}
	f.Option.YAxis = []Axis{{Data: []string{"8 to 10 kn"}}, {Data: []string{"3 fish"}}}
	f.Option.Series = []Series{{RenderItem: "histBar", Data: []Mark{mark(0.0, 0.0, 2.0, 1.0, 2.0, 0.0, 0.0),
		mark(1.0, 0.0, 1.0, 0.0, 2.0, -1.0, 0.0)}}}
	f.Tables = []Table{{
		Heads: []Head{{"Speed", ""}, {"0 to <50", "kg"}, {"no weight", ""}, {"All", ""}},
		Rows: [][]Cell{
			rowOf("8 to 10 kn", "", "2", "2", "1", "1", "3", "3"),
			rowOf("8 to 10 kn, on a scale", "", "1", "1", "0", "0", "1", "1"),
		},
	}}
	return f
}

// shares is the two shares of one level.
func shares() Figure {
	f := Figure{ID: "chart-outcomes", Keys: []string{"hooked up", "boated (landed or released)", "95 % interval"}}
	f.Option.XAxis = []Axis{{Name: "share of the strikes"}}
	f.Option.YAxis = []Axis{{Data: []string{"8 to 10 kn"}}, {Data: []string{"6 of 9 hooked\n3 of 9 boated"}}}
	f.Option.Series = []Series{{RenderItem: "shareMark", Data: []Mark{mark(0.0, 66.7, 35.4, 87.9, 0.0, 2.0, 1.0, 0.0),
		mark(0.0, 33.3, 12.1, 64.6, 1.0, 2.0, 1.0, 0.0)}}}
	f.Tables = []Table{{
		Heads: []Head{{"Speed", ""}, {"Strikes", ""}, {"With an outcome", ""}, {"Hook-ups", ""},
			{"Share hooked up", ""}, {"95 % interval", ""}, {"Boated", ""},
			{"Share boated", ""}, {"95 % interval", ""}},
		Rows: [][]Cell{rowOf("8 to 10 kn", "", "10", "10", "9", "9", "6", "6", "67 %", "0.667", "35 to 88 %", "0.354",
			"3", "3", "33 %", "0.333", "12 to 65 %", "0.121")},
	}}
	return f
}

// plot is one point with a line of identity and a level line with its strip.
func plot() Figure {
	f := Figure{ID: "chart-differences"}
	f.Option.XAxis, f.Option.YAxis = []Axis{{Name: "mean of tape and scale, kg"}}, []Axis{{Name: "tape less scale, kg"}}
	f.Option.Series = []Series{
		{RenderItem: "plotBand", Data: []Mark{mark(0.0, -2.5, -1.5)}},
		{RenderItem: "plotLine", Data: []Mark{mark(0.0, -2.0, 100.0, -2.0, 1.0, 1.0, 1.0)}},
		{RenderItem: "plotDot", Data: []Mark{mark(50.0, -1.25, 1.0, 1.0)}},
	}
	f.Tables = []Table{
		{Heads: []Head{{"Date", ""}, {"Mean of tape and scale", "kg"},
			{"Tape less scale", "kg"}, {"Scale", ""}, {"No.", ""}},
			Rows: [][]Cell{rowOf("2026-07-01", "", "50.0", "50", "−1.3", "-1.25", "certified scale", "", "1", "1")}},
		{Heads: []Head{{"What", ""}, {"Tape less scale", "kg"}, {"95 % interval", "kg"}},
			Rows: [][]Cell{rowOf("lower limit", "", "−2.0", "-2", "−2.5 to −1.5", "-2.5")}},
	}
	return f
}

// outings is one month, with a row of the table that is none.
func outings() Figure {
	f := Figure{ID: "chart-months"}
	f.Option.XAxis = []Axis{{}, {Data: []string{"Jul 2026"}}}
	f.Option.Series = []Series{
		{Type: "bar", Data: []Mark{{Value: 3.0}}},
		{Type: "bar", Data: []Mark{{Value: 2.0, Label: struct{ Formatter string }{"5"}}}},
		{Type: "bar", Data: []Mark{{Value: 1024.5, Label: struct{ Formatter string }{"1\u202f025"}}}},
	}
	f.Tables = []Table{{
		Heads: []Head{{"Month", ""}, {"Line-hours", "h"}, {"Strikes", ""}, {"Landed", ""}, {"Released", ""}},
		Rows: [][]Cell{
			rowOf("2026-07", "", "1\u202f024.5", "1024.5", "5", "5", "1", "1", "2", "2"),
			rowOf("other months, and not logged", "", "3.0", "3", "0", "0", "0", "0", "0", "0"),
		},
	}}
	return f
}

// effort is one bar.
func effort() Figure {
	f := Figure{ID: "chart-effort"}
	f.Option.XAxis = []Axis{{Name: "line-hours"}}
	f.Option.YAxis = []Axis{{Data: []string{"8 to 10 kn"}}, {Data: []string{"3 trips\n18 boat-h"}}}
	f.Option.Series = []Series{{Type: "bar", Data: []Mark{{Value: 96.2, Label: struct{ Formatter string }{"96"}}}}}
	f.Tables = []Table{{
		Heads: []Head{{"Speed", ""}, {"Trips", ""}, {"Boat-hours", "h"}, {"Line-hours", "h"}},
		Rows:  [][]Cell{rowOf("8 to 10 kn", "", "3", "3", "18.5", "18.46", "96.2", "96.2")},
	}}
	return f
}

// Each kind of chart agrees with its table; with one value of the chart changed, one
// drawn row of the table taken out, one number of it changed, or no table at all, it
// does not.
func TestDisagree(t *testing.T) {
	for _, build := range []func() Figure{rates, histogram, shares, plot, outings, effort} {
		f := build()
		if got := Disagree(f); len(got) > 0 {
			t.Errorf("%s: %q", f.ID, got)
			continue
		}
		doctored := Doctored(f)
		if len(doctored) < 2 {
			t.Errorf("%s: %d faults to put in", f.ID, len(doctored))
		}
		for _, d := range doctored {
			if len(Disagree(d.Figure)) == 0 {
				t.Errorf("%s: %s, and nothing is said", f.ID, d.What)
			}
		}
		f.Tables = nil
		if got := Disagree(f); len(got) != 1 || !strings.Contains(got[0], "no table") {
			t.Errorf("%s without a table: %q", f.ID, got)
		}
		f = build()
		f.Undrawn = []string{"point 1,2"}
		if got := Disagree(f); len(got) != 1 || !strings.Contains(got[0], "not drawn: point 1,2") {
			t.Errorf("%s not drawn: %q", f.ID, got)
		}
	}
}

// A number of the table that is not the chart's, in print or unrounded, is seen.
func TestDisagreeOnTheTable(t *testing.T) {
	for name, c := range map[string]struct {
		figure Figure
		edit   func(Figure)
		want   string
	}{
		"rate": {rates(), func(f Figure) { f.Tables[0].Rows[0][3] = Cell{"0.10", "0.0936"} },
			"0.0936"},
		"unrounded rate": {rates(), func(f Figure) { f.Tables[0].Rows[0][3] = Cell{"0.09", "0.0926"} },
			"0.0936"},
		"end of the interval": {rates(), func(f Figure) { f.Tables[0].Rows[0][4] = Cell{"0.04 to 0.19", "0.0428"} },
			"0.1776"},
		"no interval": {rates(), func(f Figure) { f.Tables[0].Rows[0][4] = Cell{"–", ""} }, "0.1776"},
		"an interval too many": {rates(), func(f Figure) { f.Tables[0].Rows[1][4] = Cell{"0.04 to 0.18", "0.0428"} },
			"16 kn and up"},
		"count": {rates(), func(f Figure) { f.Tables[0].Rows[0][2] = Cell{"8", "8"} }, "9 strike"},
		"effort": {rates(), func(f Figure) { f.Tables[0].Rows[0][1] = Cell{"97.2", "97.2"} },
			"96 line-h"},
		"line at the rate": {rates(), func(f Figure) { f.Tables[0].Foot[3] = Cell{"0.17", "0.17"} },
			"the line at 0.16"},
		"level that stands in": {rates(), func(f Figure) { f.Tables[0].Rows[1] = f.Tables[0].Rows[0] }, "not one row"},
		"fish on a scale": {histogram(), func(f Figure) { f.Tables[0].Rows[1][1] = Cell{"0", "0"} },
			"on a scale 0"},
		"fish of a class": {histogram(), func(f Figure) { f.Tables[0].Rows[0][2] = Cell{"2", "2"} }, "no weight"},
		"share of known":  {shares(), func(f Figure) { f.Tables[0].Rows[0][2] = Cell{"10", "10"} }, "9 of"},
		"rank":            {plot(), func(f Figure) { f.Tables[0].Rows[0][4] = Cell{"–", ""} }, "the point"},
		"strip": {plot(), func(f Figure) { f.Tables[1].Rows[0][2] = Cell{"−2.5 to −1.4", "-2.5"} },
			"plotBand"},
		"released": {outings(), func(f Figure) { f.Tables[0].Rows[0][4] = Cell{"1", "1"} }, "3 boated"},
		"month":    {outings(), func(f Figure) { f.Tables[0].Rows[0][0].Text = "2026-08" }, "Jul 2026"},
		"month that is not one": {outings(), func(f Figure) { f.Tables[0].Rows[1][0].Text = "2026-08" },
			"leaves out 2026-08"},
		"hours": {effort(), func(f Figure) { f.Tables[0].Rows[0][3] = Cell{"96.3", "96.3"} }, "96.2"},
	} {
		c.edit(c.figure)
		if got := strings.Join(Disagree(c.figure), "\n"); !strings.Contains(got, c.want) {
			t.Errorf("%s: %q is not in %q", name, c.want, got)
		}
	}
	odd := rates()
	odd.Option.Series[0].RenderItem = "pie"
	if got := Disagree(odd); len(got) != 1 || !strings.Contains(got[0], "no rule") {
		t.Errorf("a chart that is not known: %q", got)
	}
}

// Numbers as a page prints them; a half is rounded either way.
func TestPrints(t *testing.T) {
	for text, v := range map[string]float64{"1\u202f024.5": 1024.45, "−0.3": -0.25,
		"67 %": 66.6667, "+4": 4.4, "0": -0.3} {
		if !prints(text, v) {
			t.Errorf("%q is not %v", text, v)
		}
	}
	for text, v := range map[string]float64{"1024.5": 1024.56, "67 %": 66.4, "–": 0, "": 0, "4": 4.6} {
		if prints(text, v) {
			t.Errorf("%q is %v", text, v)
		}
	}
}
