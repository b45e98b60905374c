package stats

import "math"

// MinTrips is the number of trips below which an estimated dispersion is not
// worth widening an interval by: a choice, not a published bound. With 8 trips
// at one level the dispersion itself has a standard error of about
// sqrt(2/7), a half.
const MinTrips = 8

// Count is a number of events and the effort that it took, in any one unit.
type Count struct {
	Events int64
	Effort float64
}

// usable reports whether the count can enter a rate.
func (c Count) usable() bool { return c.Events >= 0 && validEffort(c.Effort) }

// Cell is what one trip caught at one level of a factor. Cells that share trip
// and level are one cell and are added up.
type Cell struct {
	Trip, Level string
	Count
}

// DispersionResult is how much more counts vary between trips than a Poisson
// law lets them.
type DispersionResult struct {
	Phi     float64 // X2/DF: 1 under a Poisson law; NaN where DF is 0
	X2      float64 // Pearson's statistic over the cells
	DF      int     // cells less levels
	P       float64 // chi-square tail of X2; NaN where DF is 0
	Cells   int     // cells used
	Trips   int     // trips among them
	Levels  int     // levels among them
	Skipped int     // cells left out: no usable effort, or a level without events
}

// Dispersion returns Pearson's X2 over its degrees of freedom for counts in
// trip x level cells, each expected to hold its level's rate times its own
// effort (the moment estimator of the quasi-Poisson model, McCullagh and Nelder
// 1989, Generalized Linear Models, 2nd ed., section 6.2, from memory; it equals
// that of a Poisson regression on level with log effort as offset).
//
// A level without any event fits itself perfectly whatever the dispersion, so
// its cells are left out: they would only pull Phi down.
func Dispersion(cells []Cell) DispersionResult {
	merged, noEffort := mergeCells(cells)
	used := cellsWithEvents(merged)
	r := DispersionResult{Cells: len(used), Skipped: noEffort + len(merged) - len(used)}
	rates := levelRates(used)
	trips := map[string]bool{}
	for _, c := range used {
		trips[c.Trip] = true
		e := rates[c.Level] * c.Effort
		r.X2 += square(float64(c.Events)-e) / e
	}
	r.Trips, r.Levels = len(trips), len(rates)
	r.DF = r.Cells - r.Levels
	r.Phi, r.P = math.NaN(), math.NaN()
	if r.DF > 0 {
		r.Phi = r.X2 / float64(r.DF)
		r.P = chiSquareTail(r.X2, float64(r.DF))
	}
	return r
}

// mergeCells adds up the cells of one trip and level, in order of appearance,
// and counts those without usable effort.
func mergeCells(cells []Cell) (merged []Cell, noEffort int) {
	type key struct{ trip, level string }
	at := map[key]int{}
	for _, c := range cells {
		if !c.usable() {
			noEffort++
			continue
		}
		k := key{c.Trip, c.Level}
		i, ok := at[k]
		if !ok {
			at[k] = len(merged)
			merged = append(merged, c)
			continue
		}
		merged[i].Events += c.Events
		merged[i].Effort += c.Effort
	}
	return merged, noEffort
}

// cellsWithEvents keeps the cells of levels that have at least one event.
func cellsWithEvents(cells []Cell) []Cell {
	events := map[string]int64{}
	for _, c := range cells {
		events[c.Level] += c.Events
	}
	var used []Cell
	for _, c := range cells {
		if events[c.Level] > 0 {
			used = append(used, c)
		}
	}
	return used
}

// levelRates is events over effort by level.
func levelRates(cells []Cell) map[string]float64 {
	events, effort := map[string]float64{}, map[string]float64{}
	for _, c := range cells {
		events[c.Level] += float64(c.Events)
		effort[c.Level] += c.Effort
	}
	rates := map[string]float64{}
	for level, x := range events {
		rates[level] = x / effort[level]
	}
	return rates
}
