package evidence

import (
	"cmp"
	"fmt"
	"maps"
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
	df := -t.effects
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
	effects int           // of levels that the rows can tell, beside the strata's
	rows    [][]tableCell // one a stratum
	stratum []float64
	level   []float64
}

type tableCell struct {
	level          int
	events, effort float64
}

// tableOf keeps what can tell levels apart. A level that others took strikes
// beside, and that no chain of strata sets above them in turn, can be made as
// poor as one likes: the fit makes it infinitely so, and its empty cells there
// carry nothing. So each stratum keeps the cells of the levels that are tied to
// those that took its strikes, each having taken strikes beside the other or
// beside another so tied (the condition of Ford 1957, American Mathematical
// Monthly 64(8):28-33, that paired comparisons have a finite estimate; from
// memory). Levels that are not tied are not compared, and cost no degree of
// freedom.
func tableOf(byStratum map[stratumKey]map[string]stats.Count) table {
	t, rows := cellRows(byStratum)
	beats := reach(rows, len(t.levels))
	for _, row := range rows {
		took := slices.IndexFunc(row, func(c tableCell) bool { return c.events > 0 })
		if took < 0 {
			continue
		}
		from := row[took].level
		var kept []tableCell
		for _, c := range row {
			if c.level == from || beats[c.level][from] { // from beats c in this row
				kept = append(kept, c)
			}
		}
		if len(kept) > 1 {
			t.rows = append(t.rows, kept)
		}
	}
	for i := range t.levels {
		for j := range i {
			if beats[i][j] && beats[j][i] {
				t.effects++
				break
			}
		}
	}
	return t
}

// cellRows is the strata's cells with effort, in order, and a table with their
// levels.
func cellRows(byStratum map[stratumKey]map[string]stats.Count) (t table, rows [][]tableCell) {
	at := map[string]int{}
	for _, s := range byStratum {
		for level := range s {
			at[level] = 0
		}
	}
	for i, level := range slices.Sorted(maps.Keys(at)) {
		at[level] = i
		t.levels = append(t.levels, level)
	}
	for _, k := range sortedKeys(byStratum) {
		var row []tableCell
		for _, level := range sortedLevels(byStratum[k]) {
			if c := byStratum[k][level]; c.Effort > 0 {
				row = append(row, tableCell{at[level], float64(c.Events), c.Effort})
			}
		}
		rows = append(rows, row)
	}
	return t, rows
}

// reach tells whether level i took strikes in a row that level j is in, or is
// joined to j by a chain of such rows (Warshall 1962, Journal of the ACM 9:11-12,
// from memory).
func reach(rows [][]tableCell, levels int) [][]bool {
	r := make([][]bool, levels)
	for i := range r {
		r[i] = make([]bool, levels)
	}
	for _, row := range rows {
		for _, a := range row {
			for _, b := range row {
				r[a.level][b.level] = r[a.level][b.level] || a.events > 0
			}
		}
	}
	for via := range r {
		for i := range r {
			for j := range r {
				r[i][j] = r[i][j] || r[i][via] && r[via][j]
			}
		}
	}
	return r
}

// The fit has settled where no level's effect changes by more than this share.
const (
	withinTol    = 1e-9
	withinRounds = 10000
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
			if expected[j] == 0 { // in no row
				continue
			}
			next := events[j] / expected[j]
			moved = math.Max(moved, math.Abs(next/t.level[j]-1))
			t.level[j] = next
		}
		if moved < withinTol {
			return
		}
	}
}
