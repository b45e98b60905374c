package queries

import (
	"context"
	"slices"

	"wakeledger/pipeline/store"
	"wakeledger/queries/evidence"
)

// SizeMedian is the weights of one species at one level of a factor.
type SizeMedian struct {
	Species  string   `json:"species"`
	Level    string   `json:"level"`
	Fish     int64    `json:"fish"`     // with a weight
	OnScale  int64    `json:"on_scale"` // of these, weighed on a scale; the others are estimated from the tape
	Median   *float64 `json:"median_kg"`
	MedianLo *float64 `json:"median_lo_kg"` // 95 % interval of order statistics; nil with fewer than 6 fish
	MedianHi *float64 `json:"median_hi_kg"`
	Shift    *float64 `json:"shift_kg"` // Hodges and Lehmann's, to the species' level with the most weights
	ShiftLo  *float64 `json:"shift_lo_kg"`
	ShiftHi  *float64 `json:"shift_hi_kg"`
	PValue   *float64 `json:"p_value"` // Mann and Whitney's, adjusted by Holm over the levels
	Method   string   `json:"method"`
	Note     string   `json:"note"`
}

// AskSizeMedians answers size-medians by a factor: weights compared between
// levels, species by species, the one with the most weights first.
func AskSizeMedians(ctx context.Context, db *store.DB, factor string) ([]SizeMedian, error) {
	weights, err := ask[struct {
		Species string  `json:"species"`
		Level   string  `json:"level"`
		KG      float64 `json:"weight_kg"`
		OnScale bool    `json:"on_scale"`
	}](ctx, db, "weights", factor)
	if err != nil {
		return nil, err
	}
	byLevel := map[string]map[string][]float64{}
	levels, count := map[string][]string{}, map[string]int{}
	scaled := map[[2]string]int64{} // by species and level
	var names []string
	for _, w := range weights {
		if byLevel[w.Species] == nil {
			byLevel[w.Species] = map[string][]float64{}
			names = append(names, w.Species)
		}
		if byLevel[w.Species][w.Level] == nil {
			levels[w.Species] = append(levels[w.Species], w.Level)
		}
		byLevel[w.Species][w.Level] = append(byLevel[w.Species][w.Level], w.KG)
		count[w.Species]++
		if w.OnScale {
			scaled[[2]string{w.Species, w.Level}]++
		}
	}
	slices.SortStableFunc(names, func(a, b string) int { return count[b] - count[a] })
	rows := []SizeMedian{}
	for _, name := range names {
		var kg [][]float64
		for _, level := range levels[name] {
			kg = append(kg, byLevel[name][level])
		}
		for _, l := range evidence.CompareSizes(levels[name], kg) {
			row := sizeMedian(name, l)
			row.OnScale = scaled[[2]string{name, l.Level}]
			rows = append(rows, row)
		}
	}
	return rows, nil
}

func sizeMedian(species string, l evidence.SizeLevel) SizeMedian {
	r := SizeMedian{Species: species, Level: l.Level, Fish: int64(l.N), Note: l.Why}
	if l.Known {
		r.Median, r.MedianLo, r.MedianHi = finite(l.Median.Median), finite(l.Median.Interval.Lo), finite(l.Median.Interval.Hi)
	}
	if l.Tested {
		r.Shift, r.ShiftLo, r.ShiftHi = finite(l.Test.Shift), finite(l.Test.ShiftInterval.Lo), finite(l.Test.ShiftInterval.Hi)
		r.PValue, r.Method = finite(l.P), l.Test.Method
	}
	return r
}
