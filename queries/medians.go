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
	MedianLo *float64 `json:"median_lo_kg"` // 95 % interval by whole trips; nil with too few
	MedianHi *float64 `json:"median_hi_kg"`
	Trips    int64    `json:"trips"`    // that the fish were caught on
	Shift    *float64 `json:"shift_kg"` // Hodges and Lehmann's, to the species' level with the most weights
	ShiftLo  *float64 `json:"shift_lo_kg"`
	ShiftHi  *float64 `json:"shift_hi_kg"`
	PValue   *float64 `json:"p_value"`        // adjusted by Holm over the species' levels
	PSeason  *float64 `json:"p_value_season"` // and over all species
	Verdict  string   `json:"verdict"`        // settled, leaning or not settled; empty where not compared
	Note     string   `json:"note"`
}

// AskSizeMedians answers size-medians by a factor: weights compared between
// levels, species by species, the one with the most weights first.
func AskSizeMedians(ctx context.Context, db *store.DB, factor string) ([]SizeMedian, error) {
	weights, err := ask[struct {
		Species string  `json:"species"`
		Level   string  `json:"level"`
		Trip    int64   `json:"trip_id"`
		KG      float64 `json:"weight_kg"`
		OnScale bool    `json:"on_scale"`
	}](ctx, db, "weights", factor)
	if err != nil {
		return nil, err
	}
	byLevel := map[string]map[string][]evidence.Fish{}
	levels, count := map[string][]string{}, map[string]int{}
	scaled := map[[2]string]int64{} // by species and level
	var names []string
	for _, w := range weights {
		if byLevel[w.Species] == nil {
			byLevel[w.Species] = map[string][]evidence.Fish{}
			names = append(names, w.Species)
		}
		if byLevel[w.Species][w.Level] == nil {
			levels[w.Species] = append(levels[w.Species], w.Level)
		}
		byLevel[w.Species][w.Level] = append(byLevel[w.Species][w.Level], evidence.Fish{Trip: w.Trip, KG: w.KG})
		count[w.Species]++
		if w.OnScale {
			scaled[[2]string{w.Species, w.Level}]++
		}
	}
	slices.SortStableFunc(names, func(a, b string) int { return count[b] - count[a] })
	var order [][]string
	var fish [][][]evidence.Fish
	for _, name := range names {
		var kg [][]evidence.Fish
		for _, level := range levels[name] {
			kg = append(kg, byLevel[name][level])
		}
		order, fish = append(order, levels[name]), append(fish, kg)
	}
	rows := []SizeMedian{}
	for i, species := range evidence.CompareSizes(order, fish) {
		for _, l := range species {
			row := sizeMedian(names[i], l)
			row.OnScale = scaled[[2]string{names[i], l.Level}]
			rows = append(rows, row)
		}
	}
	return rows, nil
}

func sizeMedian(species string, l evidence.SizeLevel) SizeMedian {
	return SizeMedian{Species: species, Level: l.Level, Fish: int64(l.N), Trips: int64(l.Trips),
		Note: l.Why, Verdict: string(l.Verdict),
		Median: finite(l.Median), MedianLo: finite(l.MedianInterval.Lo), MedianHi: finite(l.MedianInterval.Hi),
		Shift: finite(l.Shift), ShiftLo: finite(l.ShiftInterval.Lo), ShiftHi: finite(l.ShiftInterval.Hi),
		PValue: finite(l.P), PSeason: finite(l.PSeason)}
}
