package evidence

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"

	"gonum.org/v1/gonum/stat/distuv"

	"wakeledger/pipeline/factors"
	"wakeledger/queries/stats"
)

// Power is the chance to settle a difference that plans aim at.
const Power = 0.8

// DefaultRatio is the ratio of rates that plans aim to tell where the user
// names none.
const DefaultRatio = 1.5

const (
	// MostPlanTrips is the number beyond which a plan is none.
	MostPlanTrips = 120
	planRuns      = 500 // simulated seasons behind a chance
)

// Question is an open question and what would settle it.
type Question struct {
	Factor    string
	ByLeg     bool
	A, B      string // the two settings; A has the most effort so far
	Ratio     float64
	Rate      float64    // strikes per line-hour at the lower setting: the season's
	Luck, Phi float64    // how trips differ, and the dispersion left within them
	Had       [2]float64 // line-hours at A and B so far
	Leaning   bool       // the season leans to one of the two
	Trips     int        // that settle it with Power; 0 where MostPlanTrips do not
	Hours     float64    // line-hours at each setting that they are
	Strikes   [2]float64 // expected in those
	tripHours []float64  // line-hours of the season's trips
	allowed   float64    // times that its p-value counts, for what is compared beside it
}

// Next is what it would take to settle a finding that is not: the trips, half of
// each at either of its two settings, after which this very model calls a given
// ratio of rates settled with Power, simulated at the season's rate, luck,
// dispersion and hours. ok is false where the finding is settled, has fewer than
// two levels or comes with the day, and where the season has no strikes.
func Next(c Comparison, f Finding, ratio float64) (Question, bool) {
	q := Question{Factor: c.Factor, ByLeg: c.ByLeg, Ratio: ratio, Luck: c.Luck, Phi: 1,
		allowed: math.Max(1, f.allowed), tripHours: c.TripHours}
	if f.Verdict == Settled || c.Season.Events == 0 || c.Trips == 0 || !factors.Of(c.Factor).Chosen || !q.settings(c) {
		return q, false
	}
	if q.Leaning = f.Verdict == Leaning && !f.Trend; q.Leaning {
		q.pair(c, f)
	}
	if c.Phi > 1 {
		q.Phi = c.Phi
	}
	q.Rate = float64(c.Season.Events) / c.Season.Effort
	q.plan()
	return q, true
}

// plan finds the trips: the first after which the chance is Power. Seasons are judged each
// few trips, and between only where the first is among them.
func (q *Question) plan() {
	const few = 4
	var since [][]tally
	q.seasons(MostPlanTrips, func(trips int, s []tally) bool {
		since = append(since, slices.Clone(s))
		if trips%few != 0 && trips != MostPlanTrips {
			return true
		}
		if q.settled(s) >= Power {
			q.Trips = trips - len(since) + 1 + slices.IndexFunc(since,
				func(s []tally) bool { return q.settled(s) >= Power })
		}
		since = since[:0]
		return q.Trips == 0
	})
	if q.Trips == 0 {
		return
	}
	mean := 0.0
	for _, h := range q.tripHours {
		mean += h / float64(len(q.tripHours))
	}
	q.Hours = float64(q.Trips) * mean / 2
	q.Strikes = [2]float64{q.Rate * q.Hours, q.Rate * q.Hours * q.Ratio}
}

// Chances are the chances that the ratio is called settled after each number of trips up
// to the given one, on which each setting has half the line-hours; beyond MostPlanTrips the
// chance is that of the last.
func (q Question) Chances(trips int) []float64 {
	chances := make([]float64, trips)
	q.seasons(min(trips, MostPlanTrips), func(trips int, s []tally) bool {
		chances[trips-1] = q.settled(s)
		return true
	})
	for t := MostPlanTrips; t < trips; t++ {
		chances[t] = chances[MostPlanTrips-1]
	}
	return chances
}

// seasons simulates seasons trip by trip and shows them after each number of trips that a
// verdict takes at least, until most or while it is told to.
func (q Question) seasons(most int, show func(trips int, s []tally) (more bool)) {
	s := make([]tally, planRuns)
	r := rand.New(rand.NewPCG(planRuns, 7))
	for t := range most {
		for i := range s {
			s[i].add(q.draw(r, t), q.ByLeg)
		}
		if t+1 >= stats.MinTrips && !show(t+1, s) {
			return
		}
	}
}

// settled is the share of seasons that settle it.
func (q Question) settled(s []tally) float64 {
	n := 0
	for _, one := range s {
		if one.settles(q) {
			n++
		}
	}
	return float64(n) / float64(len(s))
}

// draw simulates a trip of two halves, changed over at half time: the strikes of
// each half at either setting. A setting of the whole boat has a half to itself,
// one of the lines half the lines of each.
func (q Question) draw(r *rand.Rand, trip int) (strikes [2][2]float64) {
	luck, hours := gammaLaw(r, 1, q.Luck), q.tripHours[r.IntN(len(q.tripHours))]
	for half := range 2 {
		for setting := range 2 {
			effort := hours / 2
			if q.ByLeg {
				effort = hours / 4
			} else if (half+setting+trip)%2 == 1 {
				continue
			}
			mean := q.Rate * luck * effort
			if setting == 1 {
				mean *= q.Ratio
			}
			if mean = gammaLaw(r, mean, (q.Phi-1)/math.Max(mean, 1e-9)); mean > 0 {
				strikes[half][setting] = distuv.Poisson{Lambda: mean, Src: r}.Rand()
			}
		}
	}
	return strikes
}

// tally is a simulated season so far. The pairs of the whole boat's settings are
// the halves of a trip, kept apart by which half the second setting had; those of
// the lines are the two settings of a half, and of a trip.
type tally struct{ pairs, trips [2]stats.Pairs }

func (s *tally) add(n [2][2]float64, byLeg bool) {
	if byLeg {
		s.pairs[0].Add(n[0][0], n[0][1])
		s.pairs[0].Add(n[1][0], n[1][1])
		s.trips[0].Add(n[0][0]+n[1][0], n[0][1]+n[1][1])
		return
	}
	first := 0
	if n[0][1]+n[1][0] > 0 {
		first = 1
	}
	s.pairs[first].Add(n[0][0]+n[1][0], n[0][1]+n[1][1])
}

// settles applies the model, which has a closed form here, and the rules of Find.
func (s tally) settles(q Question) bool {
	x, y := s.pairs[0], s.pairs[1]
	off, beta := x.Off(), x.Logit()
	phi, df := drawn(priorLegs)(stats.PairsDispersion(x, y))
	if q.ByLeg {
		trip, _ := drawn(priorTrips)(stats.PairsDispersion(s.trips[0]))
		phi = math.Max(phi, trip)
	} else {
		off, beta = x.OffTurned(y), (x.Logit()+y.Logit())/2
	}
	return x.Events()+y.Events() >= MinStrikes && beta > 0 && pValue(off, phi, df)*q.allowed < Alpha
}

// gammaLaw draws from the gamma law with a mean and squared coefficient of
// variation.
func gammaLaw(r *rand.Rand, mean, cv2 float64) float64 {
	if cv2 <= 0 || mean <= 0 {
		return mean
	}
	return distuv.Gamma{Alpha: 1 / cv2, Beta: 1 / cv2 / mean, Src: r}.Rand()
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
		if best < 0 || l.Shrunk > c.Levels[best].Shrunk || l.Shrunk == c.Levels[best].Shrunk &&
			l.Count.Effort > c.Levels[best].Count.Effort {
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
	ref := c.Levels[c.Reference].Level
	for _, side := range []*string{&q.A, &q.B} {
		if *side == Others && q.A != ref && q.B != ref {
			*side = ref
		}
	}
	if q.A == Others || q.B == Others { // the level is the one with the most effort: keep the two of settings
		q.settings(c)
		return
	}
	for _, l := range c.Levels {
		switch l.Level {
		case q.A:
			q.Had[0] = l.Count.Effort
		case q.B:
			q.Had[1] = l.Count.Effort
		}
	}
}

// PairedDay says how a day is fished that compares the two settings.
func (q Question) PairedDay(text func(level string) string) string {
	a, b := text(q.A), text(q.B)
	switch {
	case q.ByLeg && q.Factor == "position":
		return fmt.Sprintf("The same lure at %s and at %s on the same legs; change the two lures over at half time. "+
			"Log which line each strike came on.", a, b)
	case q.ByLeg:
		return fmt.Sprintf("Both out on the same legs: %s on one side, %s on the other, all else alike. At half "+
			"time change sides, so that no side of the boat favours one. Log which line each strike came on.", a, b)
	}
	return fmt.Sprintf("Split the day: first half %s, second half %s, and the other way round on the next trip, "+
		"over the same water with the same spread. Start a new leg in the log at each change.", a, b)
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
// fewest trips. Which setting
// comes first goes by turns A B B A, so that neither has the mornings or the
// early season to itself; the two questions' turns differ, so that neither
// stands in the other's way.
func Plan(questions []Question, trips int, text func(factor, level string) string) []Day {
	boat, line := pick(questions, false), pick(questions, true)
	if boat == nil && line == nil {
		return nil
	}
	var days []Day
	var boatChances, lineChances []float64
	if boat != nil {
		boatChances = boat.Chances(trips)
	}
	if line != nil {
		lineChances = line.Chances(trips)
	}
	for i := range trips {
		d := Day{Trip: i + 1, BoatChance: math.NaN(), LineChance: math.NaN()}
		if boat != nil {
			d.First, d.Second = turn(text(boat.Factor, boat.A), text(boat.Factor, boat.B), (i+1)/2%2 == 1)
			d.BoatChance = boatChances[i]
		}
		if line != nil {
			d.Port, d.Starb = turn(text(line.Factor, line.A), text(line.Factor, line.B), i/2%2 == 1)
			d.LineChance = lineChances[i]
		}
		days = append(days, d)
	}
	return days
}

func pick(questions []Question, byLeg bool) *Question {
	var best *Question
	for i := range questions {
		q := &questions[i]
		if q.ByLeg != byLeg || q.Factor == "position" {
			continue
		}
		if best == nil || q.Leaning && !best.Leaning || q.Leaning == best.Leaning && q.Needs() < best.Needs() {
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

// Needs is Trips, or more than any plan where they do not settle it.
func (q Question) Needs() int {
	if q.Trips == 0 {
		return MostPlanTrips + 1
	}
	return q.Trips
}
