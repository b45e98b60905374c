package evidence

import (
	"fmt"
	"math"
	"slices"

	"gonum.org/v1/gonum/stat/distuv"

	"wakeledger/queries/stats"
)

// Power is the chance to tell a difference that plans aim at.
const Power = 0.8

// DefaultRatio is the ratio of rates that plans aim to tell where the user
// names none.
const DefaultRatio = 1.5

// Question is an open question and what would settle it.
type Question struct {
	Factor string
	ByLeg  bool
	A, B   string // the two settings; A has the most effort so far
	Ratio  float64
	Rate   float64 // strikes per line-hour at the lower setting: the season's
	// Phi is the dispersion between trips, PairedPhi that left when both settings
	// are fished on the same trips.
	Phi, PairedPhi float64
	// Apart is the line-hours at each setting where the settings are fished on
	// different trips, Paired where on the same.
	Apart, Paired stats.EffortPlan
	TripHours     float64 // line-hours of a usual trip
	ApartTrips    int     // trips in all, at that
	PairedTrips   int
	Had           [2]float64 // line-hours at A and B so far
	Settable      bool       // the crew can choose the setting
	Leaning       bool       // the season leans to one of the two
}

// settable are the factors that a crew chooses; the others come with the day.
var settable = []string{"speed-band", "lure", "lure-weight", "colour", "hooks", "setback", "position", "approach"}

// Next is what it would take to settle a finding that is not: the line-hours at
// each of its two settings to tell the given ratio of rates with Power, at the
// season's rate and dispersion (stats.EffortToTell). ok is false where the
// finding is settled, has fewer than two levels, or is of what comes with the day
// and never changed within a trip, and where the season has no strikes.
func Next(c Comparison, f Finding, ratio float64) (Question, bool) {
	q := Question{Factor: c.Factor, ByLeg: c.ByLeg, Ratio: ratio, Phi: c.Phi, PairedPhi: c.Within,
		Settable: slices.Contains(settable, c.Factor)}
	if f.Verdict == Settled || c.Season.Events == 0 || c.Trips == 0 || !q.settings(c) {
		return q, false
	}
	if !q.Settable && f.Better == "" {
		return q, false // it came with the day, and no day had both
	}
	if q.Leaning = f.Verdict == Leaning; q.Leaning {
		q.pair(c, f)
	}
	q.Rate = float64(c.Season.Events) / c.Season.Effort
	q.TripHours = c.Season.Effort / float64(c.Trips)
	return q, q.plan()
}

// plan sets the effort and the trips that the question takes.
func (q *Question) plan() bool {
	var ok, paired bool
	q.Apart, ok = stats.EffortToTell(q.contrast(q.Phi))
	q.Paired, paired = stats.EffortToTell(q.contrast(q.PairedPhi))
	if !ok || !paired {
		return false
	}
	// More trips need less of an allowance: a few rounds settle it.
	effort, f := q.Paired.Effort, 1.0
	for range 20 {
		f = allowance(2 * effort * f / q.TripHours)
	}
	q.Paired = stats.EffortPlan{Effort: effort * f, Events: [2]float64{q.Paired.Events[0] * f, q.Paired.Events[1] * f}}
	q.ApartTrips = int(math.Ceil(2 * q.Apart.Effort / q.TripHours))
	q.PairedTrips = int(math.Ceil(2 * q.Paired.Effort / q.TripHours))
	return true
}

// allowance is how much more effort the same-trip comparison takes over a number
// of trips than the formula has: its interval is by Student's t on trips less
// one, and the dispersion that it allows for is estimated and never taken below
// 1, so that where there is none it still comes to about 1 + 0.56/sqrt(trips-1),
// the mean of what exceeds it. Simulation checks that the plans then reach their
// power.
func allowance(trips float64) float64 {
	df := math.Max(2, trips-1)
	t := distuv.StudentsT{Sigma: 1, Nu: df}.Quantile(1 - Alpha/2)
	z := distuv.UnitNormal.Quantile(1 - Alpha/2)
	power := distuv.UnitNormal.Quantile(Power)
	return (t + power) * (t + power) / ((z + power) * (z + power)) * (1 + 1/math.Sqrt(math.Pi*df))
}

func (q Question) contrast(phi float64) stats.Contrast {
	return stats.Contrast{Rate: q.Rate, Ratio: q.Ratio, Phi: phi, Conf: Confidence, Power: Power}
}

// settings picks the level with the most effort and the one that ranks best
// among the others with enough effort.
func (q *Question) settings(c Comparison) bool {
	if c.Reference < 0 {
		return false
	}
	best := -1
	for i, l := range c.Levels {
		if i == c.Reference || l.Level == NotLogged || l.Thin || math.IsNaN(l.Shrunk) {
			continue
		}
		if best < 0 || l.Shrunk > c.Levels[best].Shrunk || l.Shrunk == c.Levels[best].Shrunk && l.Count.Effort > c.Levels[best].Count.Effort {
			best = i
		}
	}
	if best < 0 {
		return false
	}
	a, b := c.Levels[c.Reference], c.Levels[best]
	q.A, q.B, q.Had = a.Level, b.Level, [2]float64{a.Count.Effort, b.Count.Effort}
	return true
}

// pair takes the two levels between which the season leans.
func (q *Question) pair(c Comparison, f Finding) {
	q.A, q.B = f.Better, f.Other
	for _, l := range c.Levels {
		switch l.Level {
		case q.A:
			q.Had[0] = l.Count.Effort
		case q.B:
			q.Had[1] = l.Count.Effort
		}
	}
}

// Chance is the chance to tell the ratio after a number of trips on which both
// settings are fished for half the line-hours each.
func (q Question) Chance(trips int) float64 {
	power, ok := stats.PowerOf(q.contrast(q.PairedPhi), float64(trips)*q.TripHours/2/allowance(float64(trips)))
	if !ok {
		return math.NaN()
	}
	return power
}

// PairedDay says how a day is fished that compares the two settings.
func (q Question) PairedDay(text func(level string) string) string {
	a, b := text(q.A), text(q.B)
	switch {
	case q.ByLeg && q.Factor == "position":
		return fmt.Sprintf("The same lure at %s and at %s on the same legs; change the two lures over at half time. Log which line each strike came on.", a, b)
	case q.ByLeg:
		return fmt.Sprintf("Both out on the same legs: %s on one side, %s on the other, all else alike. At half time change sides, so that no side of the boat favours one. Log which line each strike came on.", a, b)
	case q.Settable:
		return fmt.Sprintf("Legs of half an hour to an hour, in turn %s and %s over the same water with the same spread; begin with the other one on the next trip. Start a new leg in the log at each change.", a, b)
	}
	return fmt.Sprintf("It cannot be set, only met: fish through both %s and %s on the same trip with the same spread where that is safe and lawful, and log when each leg began.", a, b)
}

// Day is one trip of a plan. An empty text has nothing planned.
type Day struct {
	Trip          int
	First, Second string  // setting of the whole boat in the first and in the second half
	Port, Starb   string  // lines to port and to starboard in the first half; they change over at half time
	BoatChance    float64 // to tell the ratio after this trip; NaN where nothing is planned
	LineChance    float64
}

// Plan lays out trips that work on two open questions at once, one of the whole
// boat (as speed) and one of the lines (as lure): of each kind, among those that
// the crew can set, one that the season leans on, else the one that takes the
// fewest line-hours. Which setting
// comes first goes by turns A B B A, so that neither has the mornings or the
// early season to itself; the two questions' turns differ, so that neither
// stands in the other's way.
func Plan(questions []Question, trips int, text func(factor, level string) string) []Day {
	boat, line := pick(questions, false), pick(questions, true)
	if boat == nil && line == nil {
		return nil
	}
	var days []Day
	for i := range trips {
		d := Day{Trip: i + 1, BoatChance: math.NaN(), LineChance: math.NaN()}
		if boat != nil {
			d.First, d.Second = turn(text(boat.Factor, boat.A), text(boat.Factor, boat.B), (i+1)/2%2 == 1)
			d.BoatChance = boat.Chance(i + 1)
		}
		if line != nil {
			d.Port, d.Starb = turn(text(line.Factor, line.A), text(line.Factor, line.B), i/2%2 == 1)
			d.LineChance = line.Chance(i + 1)
		}
		days = append(days, d)
	}
	return days
}

func pick(questions []Question, byLeg bool) *Question {
	var best *Question
	for i := range questions {
		q := &questions[i]
		if !q.Settable || q.ByLeg != byLeg || q.Factor == "position" {
			continue
		}
		if best == nil || q.Leaning && !best.Leaning || q.Leaning == best.Leaning && q.Paired.Effort < best.Paired.Effort {
			best = q
		}
	}
	return best
}

func turn(a, b string, swapped bool) (string, string) {
	if swapped {
		return b, a
	}
	return a, b
}
