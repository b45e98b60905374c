package main

import (
	"math"
	"sort"
	"time"
)

// addStrikes draws the leg's strikes, in order of time.
func addStrikes(d dice, t *trip, l *leg) {
	hours := float64(l.minutes()) / 60
	for _, ln := range l.lines {
		rate := baseRate * t.effect * speedFactor(l.speed) * math.Pow(float64(ln.weightOz)/16, weightPower)
		for range d.poisson(rate * hours) {
			l.strikes = append(l.strikes, newStrike(d, t, l, ln))
		}
	}
	sort.Slice(l.strikes, func(i, j int) bool { return l.strikes[i].at.Before(l.strikes[j].at) })
}

func speedFactor(tenths int) float64 {
	for _, k := range speedKinds {
		if tenths < k.hi {
			return k.factor
		}
	}
	return speedKinds[len(speedKinds)-1].factor
}

// newStrike draws what came of one strike.
func newStrike(d dice, t *trip, l *leg, ln *line) *strike {
	s := &strike{at: freeMinute(d, l), timeLogged: true, line: ln, outcome: missed, species: newSpecies(d)}
	f := newFish(d, s.species)
	if !d.chance(hookShare) {
		s.timeLogged = t.log == logLate || !d.chance(.1)
		if t.log == log2025 && d.chance(.06) {
			s.outcome = notLogged
		}
		return s
	}
	s.fight = max(2, int(math.Round((2+.9*math.Pow(f.weightKg, .75))*d.scatter(.3))))
	s.angler = pick(d, t.crew[1:])
	if !d.chance(boatShare) {
		s.outcome, s.cause, s.speciesLogged = lost, pickText(d, causes), d.chance(.6)
		s.fight = max(1, s.fight/2)
		return s
	}
	s.outcome, s.speciesLogged, s.fish = landed, true, f
	if d.chance(releaseChance(s.species, f)) {
		s.outcome = released
	}
	measure(d, t, s)
	return s
}

// releaseChance is greater for small fish.
func releaseChance(sp *species, f *fish) float64 {
	if f.weightKg < 15 && sp.code == "PBF" {
		return .55
	}
	return sp.release
}

// freeMinute is a minute well inside the leg that no other strike has.
func freeMinute(d dice, l *leg) time.Time {
	for {
		at := l.start.Add(time.Duration(d.between(1, l.minutes()-1)) * time.Minute)
		if !taken(l, at) {
			return at
		}
	}
}

func taken(l *leg, at time.Time) bool {
	for _, s := range l.strikes {
		if s.at.Equal(at) {
			return true
		}
	}
	return false
}

func newSpecies(d dice) *species {
	weights := make([]float64, len(allSpecies))
	for i, sp := range allSpecies {
		weights[i] = sp.share
	}
	return &allSpecies[d.weighted(weights)]
}

// newFish draws a fish of this species: length, then weight about the relation.
func newFish(d dice, sp *species) *fish {
	weights := make([]float64, len(sp.modes))
	for i, m := range sp.modes {
		weights[i] = m.share
	}
	m := sp.modes[d.weighted(weights)]
	length := d.normal(m.mean, m.sd)
	return &fish{trueCm: length, weightKg: sp.a * math.Pow(length, sp.b) * d.scatter(sizeScatter)}
}

// measure tapes the fish and, at the dock, weighs some.
func measure(d dice, t *trip, s *strike) {
	f := s.fish
	f.measured = s.outcome == landed || d.chance(.85)
	f.lengthCm = f.trueCm * d.scatter(.01)
	f.curved = t.log == logLate && f.trueCm > 120 && !s.species.jaw
	if f.curved {
		f.lengthCm *= curvedFactor
	}
	if s.outcome == released || d.chance(.85) {
		f.girthCm = girth(f) * d.scatter(.015)
	}
	if s.outcome == landed && f.weightKg > 8 && d.chance(.6) {
		f.scaleKg = f.weightKg * d.scatter(.005)
	}
}

// girth is what the tape should say round this fish, by this boat's W/(L G^2).
func girth(f *fish) float64 { return math.Sqrt(f.weightKg / (girthBias * commonLG2 * f.trueCm)) }

// finish sets what takes a look at all the fish: the heaviest landed bluefin
// of two logs are taped and weighed on a certified scale, and one yellowfin is weighed
// gilled and gutted. In the flat log two single misses lose their outcome.
func finish(trips []*trip) {
	for _, log := range []string{log2025, logLate} {
		if s := heaviest(trips, log, "PBF"); s != nil {
			s.fish.scaleKg, s.fish.certified, s.fish.girthCm = s.fish.weightKg, true, girth(s.fish)
		}
	}
	if s := heaviest(trips, log2025, "YFT"); s != nil {
		s.fish.scaleKg, s.fish.gutted = s.fish.weightKg/s.species.gutted, true
	}
	forgetOutcomes(trips, 2)
}

func heaviest(trips []*trip, log, code string) *strike {
	var best *strike
	eachStrike(trips, func(t *trip, _ *leg, s *strike) {
		if t.log == log && s.outcome == landed && s.species.code == code &&
			(best == nil || s.fish.weightKg > best.fish.weightKg) {
			best = s
		}
	})
	return best
}

// forgetOutcomes takes the outcome of n misses that were alone on their line.
func forgetOutcomes(trips []*trip, n int) {
	eachStrike(trips, func(t *trip, l *leg, s *strike) {
		if n > 0 && t.log == logEarly && s.outcome == missed && len(onLine(l, s.line)) == 1 {
			s.outcome = notLogged
			n--
		}
	})
}

// onLine lists the leg's strikes on one line.
func onLine(l *leg, ln *line) []*strike {
	var on []*strike
	for _, s := range l.strikes {
		if s.line == ln {
			on = append(on, s)
		}
	}
	return on
}

func eachStrike(trips []*trip, do func(*trip, *leg, *strike)) {
	for _, t := range trips {
		for _, l := range t.legs {
			for _, s := range l.strikes {
				do(t, l, s)
			}
		}
	}
}
