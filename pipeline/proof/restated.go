package proof

import (
	"math"

	"wakeledger/pipeline/layout"
)

// leastRestated is of how many bites or hours a single figure must be to show that a table sums others up.
const leastRestated = 10

// nearlyAll is which part of what other tables tell a table that sums them up has at least: stretches
// without a speed are in no row of a table of speeds.
const nearlyAll = 0.9

// Restated finds tables and forms without a day of their own whose hours, bites and fish are those of the
// tables that have days: the season by speed, or a first page of its totals, typed or pasted as values. It
// holds them to be no data, and reports whether it found any.
func Restated(subjects []Subject) bool {
	var days []Subject
	for _, s := range subjects {
		if !s.dayless() {
			days = append(days, s)
		}
	}
	of, found := TotalsOf(days), false
	for _, s := range subjects {
		if s.Beside || !s.dayless() || s.Stats.Listed > 0 || !s.sumsUp(of) {
			continue
		}
		found, s.Understood.Proof = true, true
		s.Plan.Notes = append(s.Plan.Notes, "it has no day, and its figures are those of the tables that have: taken "+
			"for the season's sums, and not counted again")
	}
	return found
}

// dayless tells a block of which no row says a day or a clock, and no more than one its trip.
func (s *Subject) dayless() bool {
	p := s.Plan
	one := s.Understood.Block == nil || s.Understood.Block.Shape == layout.Form && len(s.Understood.Block.Rows) == 1
	return len(s.Stats.First) == 0 && !p.Gives("date") && !p.Binds("date", "start_s", "end_s", "time_s", "depart_s") &&
		(one || !p.Binds("trip"))
}

// sumsUp tells a block of which two figures or more are nearly those of the others, or the only
// one is the same, and none is more.
func (s *Subject) sumsUp(of Totals) bool {
	own := TotalsOf([]Subject{*s})
	near, same, figures := 0, 0, 0
	hold := func(is, want float64, names ...string) {
		if is == 0 || !s.Plan.Binds(names...) {
			return
		}
		figures++
		switch slack := 0.06 + 0.005*want; {
		case math.Abs(is-want) <= slack && want >= leastRestated:
			same, near = same+1, near+1
		case is >= nearlyAll*want && is <= want+slack:
			near++
		}
	}
	landed := float64(of.Landed)
	if own.Released == 0 && own.Landed < of.Landed { // "landed" may be those kept
		landed -= float64(of.Released)
	}
	hold(own.Hours, of.Hours, "duration_s")
	hold(own.LineHours, of.LineHours, "line_hours", "lines_out")
	hold(float64(own.Bites), float64(of.Bites), "strikes_n")
	hold(float64(own.Hooked), float64(of.Hooked), "hooked_n")
	hold(float64(own.Landed), landed, "landed_n", "kept_n")
	hold(float64(own.Released), float64(of.Released), "released_n")
	return near == figures && (figures > 1 || same == 1)
}
