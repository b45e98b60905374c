package evidence

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"wakeledger/queries/stats"
)

// stratumKey is a trip, or a leg of one.
type stratumKey struct{ trip, leg int64 }

// strata adds up the cells by trip, or by leg, and level. Cells without a leg
// are in no stratum of legs.
func strata(cells []Cell, byLeg bool) map[stratumKey]map[string]stats.Count {
	out := map[stratumKey]map[string]stats.Count{}
	for _, x := range cells {
		key := stratumKey{trip: x.Trip}
		if byLeg {
			key.leg = x.Leg
			if x.Leg == 0 {
				continue
			}
		}
		if out[key] == nil {
			out[key] = map[string]stats.Count{}
		}
		s := out[key][x.Level]
		s.Events += x.Strikes
		s.Effort += x.LineHours
		out[key][x.Level] = s
	}
	return out
}

func sortedKeys(m map[stratumKey]map[string]stats.Count) []stratumKey {
	keys := make([]stratumKey, 0, len(m))
	for k := range m {
		keys = append(keys, k)
	}
	slices.SortFunc(keys, func(a, b stratumKey) int {
		return cmp.Or(cmp.Compare(a.trip, b.trip), cmp.Compare(a.leg, b.leg))
	})
	return keys
}

// tripCells are the cells as the dispersion takes them.
func tripCells(cells []Cell) []stats.Cell {
	var out []stats.Cell
	byTrip := strata(cells, false)
	for _, key := range sortedKeys(byTrip) {
		for _, level := range sortedLevels(byTrip[key]) {
			out = append(out, stats.Cell{Trip: fmt.Sprint(key.trip), Level: level, Count: byTrip[key][level]})
		}
	}
	return out
}

func sortedLevels(m map[string]stats.Count) []string {
	names := make([]string, 0, len(m))
	for name := range m {
		names = append(names, name)
	}
	slices.Sort(names)
	return names
}

// withinTrips is the dispersion left when both trips and levels have their own
// rates, at least 1. What differs between lines is compared within legs; there
// it is the larger of that within legs and that within trips, so that a lure
// that happened to suit one day does not pass for many independent legs.
func withinTrips(cells []Cell, byLeg bool) float64 {
	phi := math.Max(1, withinPhi(strata(cells, false)))
	if byLeg {
		phi = math.Max(phi, withinPhi(strata(cells, true)))
	}
	return phi
}

// withinPhi is Pearson's X2 over its degrees of freedom of the Poisson model
// with an effect of each stratum and of each level; NaN without degrees of
// freedom. Given the strata's totals each stratum is multinomial, for which X2
// has its expectation however thin the cells.
func withinPhi(byStratum map[stratumKey]map[string]stats.Count) float64 {
	t := tableOf(byStratum)
	df := -(len(t.levels) - 1)
	for _, row := range t.rows {
		df += len(row) - 1
	}
	if df <= 0 {
		return math.NaN()
	}
	t.fit()
	x2 := 0.0
	for i, row := range t.rows {
		for _, c := range row {
			e := t.stratum[i] * t.level[c.level] * c.effort
			if e > 0 {
				x2 += (c.events - e) * (c.events - e) / e
			}
		}
	}
	return x2 / float64(df)
}

// table is counts by stratum and level, with the fitted effects of both.
type table struct {
	levels  []string
	rows    [][]tableCell // one a stratum
	stratum []float64
	level   []float64
}

type tableCell struct {
	level          int
	events, effort float64
}

// tableOf keeps what can tell levels apart: strata with events and two levels
// or more, of the levels that have events in such strata.
func tableOf(byStratum map[stratumKey]map[string]stats.Count) table {
	keys := sortedKeys(byStratum)
	useful := map[string]bool{}
	for first := true; ; first = false {
		events := map[string]int64{}
		for _, k := range keys {
			if row := rowOf(byStratum[k], useful, first); len(row) > 1 {
				for level, c := range row {
					events[level] += c.Events
				}
			}
		}
		next := map[string]bool{}
		for level, n := range events {
			if n > 0 {
				next[level] = true
			}
		}
		if !first && len(next) == len(useful) {
			break
		}
		useful = next
	}
	var t table
	for level := range useful {
		t.levels = append(t.levels, level)
	}
	slices.Sort(t.levels)
	for _, k := range keys {
		row := rowOf(byStratum[k], useful, false)
		if len(row) < 2 {
			continue
		}
		var cells []tableCell
		for i, level := range t.levels {
			if c, ok := row[level]; ok {
				cells = append(cells, tableCell{i, float64(c.Events), c.Effort})
			}
		}
		t.rows = append(t.rows, cells)
	}
	return t
}

// rowOf is a stratum's cells with effort at the levels in use (at any level,
// where all); nothing where none has an event.
func rowOf(s map[string]stats.Count, useful map[string]bool, all bool) map[string]stats.Count {
	row, events := map[string]stats.Count{}, int64(0)
	for level, c := range s {
		if c.Effort > 0 && (all || useful[level]) {
			row[level] = c
			events += c.Events
		}
	}
	if events == 0 {
		return nil
	}
	return row
}

// The fit has settled where no level's effect changes by more than this share.
const (
	withinTol    = 1e-9
	withinRounds = 500
)

// fit sets the maximum-likelihood effects by turns: each stratum's so that its
// events come out, then each level's (iterative proportional fitting, Deming and
// Stephan 1940, Annals of Mathematical Statistics 11:427-444).
func (t *table) fit() {
	t.stratum, t.level = make([]float64, len(t.rows)), make([]float64, len(t.levels))
	for i := range t.level {
		t.level[i] = 1
	}
	for range withinRounds {
		events, expected := make([]float64, len(t.levels)), make([]float64, len(t.levels))
		for i, row := range t.rows {
			var x, e float64
			for _, c := range row {
				x += c.events
				e += t.level[c.level] * c.effort
			}
			t.stratum[i] = x / e
			for _, c := range row {
				events[c.level] += c.events
				expected[c.level] += t.stratum[i] * c.effort
			}
		}
		moved := 0.0
		for j := range t.level {
			next := events[j] / expected[j]
			moved = math.Max(moved, math.Abs(next/t.level[j]-1))
			t.level[j] = next
		}
		if moved < withinTol {
			return
		}
	}
}
