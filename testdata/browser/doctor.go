package browser

import (
	"fmt"
	"slices"
)

// Doctor is a figure with one fault put into it.
type Doctor struct {
	Figure Figure
	What   string // the fault
	Value  bool   // a value of the chart was changed; else a row of a table taken out
}

// Doctored are all figures that come of f by one fault each: a value of the chart
// that is drawn to scale made a tenth larger and one more, or a row of the first
// table taken out that has a number in it.
func Doctored(f Figure) []Doctor {
	var out []Doctor
	for s, series := range f.Option.Series {
		for m, mark := range series.Data {
			for _, v := range drawnValues(series, mark) {
				out = append(out, Doctor{f.changed(s, m, v), fmt.Sprintf("series %d, mark %d, value %d changed", s, m,
					v), true})
			}
		}
	}
	for r, row := range f.Tables[0].Rows {
		if !drawnRow(f, row) {
			continue
		}
		d := f
		d.Tables = slices.Clone(f.Tables)
		d.Tables[0].Rows = slices.Delete(slices.Clone(f.Tables[0].Rows), r, r+1)
		out = append(out, Doctor{d, fmt.Sprintf("row %q taken out", row[0].Text), false})
	}
	return out
}

// drawnPlaces are the values of a mark that say a number of the log, by the function
// that draws it.
var drawnPlaces = map[string][]int{"rateBar": {1, 2, 3}, "shareMark": {1, 2, 3}, "histBar": {2, 3},
	"plotDot": {0, 1, 2, 3}, "plotBand": {1, 2}, "plotLine": {3}, "": {0},
	"ratioBar": {1, 2, 3}, "dayBar": {2, 3, 4}, "sizeDot": {0}, "sizeMedian": {0, 2, 3}, "fateBar": {1, 2},
	"pairCell": {2, 3}, "fishBar": {0, 1, 2, 4, 5}}

func drawnValues(s Series, m Mark) []int {
	var out []int
	for _, v := range drawnPlaces[s.RenderItem] {
		if _, ok := m.at(v); ok {
			out = append(out, v)
		}
	}
	return out
}

// changed is the figure with a value made a tenth larger and one more; a flag turned.
func (f Figure) changed(s, m, v int) Figure {
	f.Option.Series = slices.Clone(f.Option.Series)
	series := &f.Option.Series[s]
	series.Data = slices.Clone(series.Data)
	mark := &series.Data[m]
	was, _ := mark.at(v)
	now := was*1.1 + 1
	if flag := series.RenderItem + fmt.Sprint(v); slices.Contains([]string{"plotDot2", "fishBar4", "fishBar5"}, flag) {
		now = 1 - was
	}
	if list, ok := mark.Value.([]any); ok {
		list = slices.Clone(list)
		list[v] = now
		mark.Value = list
	} else {
		mark.Value = now
	}
	return f
}

// drawnRow tells whether the chart shows the row: not where none of its numbers is
// known, nor what is no trip, no month and no fish with a weight.
func drawnRow(f Figure, row []Cell) bool {
	switch last := f.Option.Series[len(f.Option.Series)-1]; {
	case last.Type == "bar" && len(f.Option.Series) == 3:
		return when(row[0].Text) != "" && row[f.Tables[0].exact("Strikes")].Text != unknown
	case last.RenderItem == "ratioBar":
		return row[f.Tables[0].column(true, "times")].Text != unknown
	case last.RenderItem == "rateBar":
		return row[f.Tables[0].column(true, f.Option.XAxis[0].Name)].Text != unknown
	}
	return true
}
