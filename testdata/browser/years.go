package browser

import (
	"slices"
	"strconv"
	"strings"
)

// ofYears ends the name of a chart that has the rows of two seasons.
const ofYears = "-years"

// rowPlace is where a mark says its row, by the function that draws it.
var rowPlace = map[string]int{"ratioBar": 0, "dayBar": 1, "sizeDot": 1, "sizeMedian": 1,
	"fateBar": 0, "pairCell": 1, "fishBar": 3}

// seasonsOf parts a picture of two seasons into one of each, as the page of one season has it:
// its rows, without the season's name, its marks and its sentence. The first two keys name
// the seasons. A season that says why it is not drawn is none.
func seasonsOf(f Figure) []Figure {
	var out []Figure
	for i, name := range f.Keys[:min(2, len(f.Keys))] {
		_, lead, said := strings.Cut(f.Lead, name+": ")
		lead, _, _ = strings.Cut(lead, " "+f.Keys[1-i]+": ")
		if strings.HasPrefix(lead, "not drawn: ") {
			continue
		}
		one := f
		one.ID, one.Lead = strings.TrimSuffix(f.ID, ofYears), lead
		if !said {
			one.Lead = "nothing of " + name
		}
		rows := map[int]int{}
		one.Option.YAxis = slices.Clone(f.Option.YAxis)
		one.Option.YAxis[0].Data, one.Option.YAxis[1].Data = nil, nil
		for row, label := range f.Option.YAxis[0].Data {
			head, under, more := strings.Cut(label, "\n")
			if !strings.HasSuffix(strings.ToLower(head), " "+strings.ToLower(name)) {
				continue
			}
			rows[row] = len(rows)
			if cut := len(head) - len(name) - 2; cut > 0 && head[cut] == ',' {
				head = head[:cut]
			}
			if more {
				head += "\n" + under
			}
			one.Option.YAxis[0].Data = append(one.Option.YAxis[0].Data, head)
			one.Option.YAxis[1].Data = append(one.Option.YAxis[1].Data, f.Option.YAxis[1].Data[row])
		}
		one.Option.Series = slices.Clone(f.Option.Series)
		for s, series := range one.Option.Series {
			one.Option.Series[s].Data = marksOn(series, rows, perStrike(f, one))
		}
		out = append(out, one)
	}
	return out
}

// perStrike is how many strikes a unit of the axis is.
func perStrike(f, one Figure) float64 {
	if !strings.HasPrefix(f.Option.XAxis[0].Name, "per cent") || len(one.Option.YAxis[1].Data) == 0 {
		return 1
	}
	all, err := strconv.ParseFloat(strings.ReplaceAll(one.Option.YAxis[1].Data[0], "\u202f", ""), 64)
	if err != nil {
		return 1
	}
	return all / 100
}

// marksOn are the marks on rows, moved to where rows says.
func marksOn(s Series, rows map[int]int, scale float64) []Mark {
	place := rowPlace[s.RenderItem]
	var out []Mark
	for _, m := range s.Data {
		row, ok := rows[m.whole(place)]
		list, isList := m.Value.([]any)
		if !ok || !isList {
			continue
		}
		list = slices.Clone(list)
		list[place] = float64(row)
		if s.RenderItem == "fateBar" {
			for _, end := range []int{1, 2} {
				if v, ok := m.at(end); ok {
					list[end] = v * scale
				}
			}
		}
		m.Value = list
		out = append(out, m)
	}
	return out
}
