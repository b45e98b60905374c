package main

import (
	"fmt"
	"math"
	"time"
)

// plan is one log: its trips' first number and day, their number, and the days
// from one to the next (gap to gap + spare).
type plan struct {
	log        string
	firstID    int
	first      time.Time
	trips      int
	gap, spare int
}

var plans = []plan{
	{log2025, 2501, time.Date(2025, 6, 7, 0, 0, 0, 0, time.UTC), 26, 5, 3},
	{logEarly, 2601, time.Date(2026, 5, 9, 0, 0, 0, 0, time.UTC), 14, 4, 3},
	{logLate, 2615, time.Date(2026, 8, 1, 0, 0, 0, 0, time.UTC), 16, 5, 3},
}

// Trips that the model treats in a way of their own.
const (
	overnightTrip = 2513 // a leg from 22:30 to 01:15
	twelveTrip    = 2620 // its first leg at exactly 12.0 kn
)

var wholeDayTrips = map[int]bool{2507: true, 2515: true, 2522: true}

// simulate makes both seasons.
func simulate(d dice) []*trip {
	var trips []*trip
	for _, p := range plans {
		day := p.first
		for i := range p.trips {
			trips = append(trips, newTrip(d, p.log, p.firstID+i, day))
			day = day.AddDate(0, 0, p.gap+d.IntN(p.spare+1))
		}
	}
	return trips
}

// newTrip makes one trip with all that happened on it.
func newTrip(d dice, log string, id int, day time.Time) *trip {
	t := &trip{id: id, log: log, effect: d.gamma(effectShape), wholeDay: wholeDayTrips[id], crew: newCrew(d)}
	if d.chance(.3) {
		t.notes = pick(d, remarks)
	}
	windows := dayWindows(d, day)
	if id == overnightTrip {
		windows = nightWindows(day)
	}
	t.depart = windows[0].start.Add(-time.Duration(d.between(9, 16)*5) * time.Minute)
	spread := newSpread(d)
	conditions := newConditions(d, day)
	for i, w := range windows {
		l := newLeg(d, t, conditions)
		l.no, l.start, l.end = i+1, w.start, w.end
		l.lines = legSpread(d, t, spread)
		t.legs = append(t.legs, l)
	}
	if id == twelveTrip {
		t.legs[0].speed, t.legs[0].speedLogged = 120, true
	}
	for _, l := range t.legs {
		tangle(d, l)
		addStrikes(d, t, l)
	}
	t.back = windows[len(windows)-1].end.Add(time.Duration(d.between(20, 30)*5) * time.Minute)
	return t
}

func newCrew(d dice) []string {
	crew := []string{captain}
	for _, i := range d.Perm(len(anglers))[:d.between(1, 3)] {
		crew = append(crew, anglers[i])
	}
	return crew
}

// window is the time that lines are in.
type window struct{ start, end time.Time }

// dayWindows cuts a day into legs of half an hour to four hours.
func dayWindows(d dice, day time.Time) []window {
	var windows []window
	clock := day.Add(time.Duration(d.between(66, 84)*5) * time.Minute) // 05:30 to 07:00
	stop := day.Add(time.Duration(d.between(28, 32)) * 30 * time.Minute)
	for len(windows) < 7 {
		minutes := 30 + 5*int(math.Min(42, d.ExpFloat64()*18))
		end := clock.Add(time.Duration(minutes) * time.Minute)
		if end.After(stop) && len(windows) > 1 {
			break
		}
		windows = append(windows, window{clock, end})
		clock = end.Add(time.Duration(d.between(2, 7)*5) * time.Minute)
	}
	return windows
}

func nightWindows(day time.Time) []window {
	at := func(hour, minute int) time.Time {
		return day.Add(time.Duration(hour*60+minute) * time.Minute)
	}
	return []window{{at(20, 5), at(22, 0)}, {at(22, 30), at(25, 15)}, {at(25, 45), at(28, 0)}}
}

// conditions are those of a day: where, how warm, how much wind.
type conditions struct {
	ground   ground
	seaC     float64
	windKn   int
	windFrom string
}

func newConditions(d dice, day time.Time) conditions {
	season := math.Cos(2 * math.Pi * float64(day.YearDay()-245) / 365) // warmest at the start of September
	return conditions{
		ground:   pick(d, grounds),
		seaC:     d.normal(17.6+3.1*season, .6),
		windKn:   d.between(2, 17),
		windFrom: pick(d, winds),
	}
}

// newLeg makes a leg without times and lines.
func newLeg(d dice, t *trip, c conditions) *leg {
	l := &leg{
		speed:       newSpeed(d, t.effect),
		speedLogged: !d.chance(.05),
		linesLogged: t.log == logEarly || t.wholeDay || !d.chance(.06),
		heading:     d.IntN(36) * 10,
		lat:         round(c.ground.lat+d.normal(0, .03), 4),
		lon:         round(c.ground.lon+d.normal(0, .03), 4),
		area:        c.ground.name,
		seaC:        round(d.normal(c.seaC, .35), 1),
		windKn:      max(0, c.windKn+d.between(-3, 3)),
		windFrom:    c.windFrom,
		approach:    "straight",
		nearestNmi:  round(.3+d.ExpFloat64()*1.2, 1),
	}
	l.sea = 1 + l.windKn/6
	if d.chance(.12) {
		l.notes = pick(d, remarks)
	}
	setApproach(d, l)
	return l
}

// newSpeed draws a speed. Where there are many fish the boat works them
// slowly, so that the naive comparison of speeds is not the same-trip one.
func newSpeed(d dice, effect float64) int {
	weights := make([]float64, len(speedKinds))
	for i, k := range speedKinds {
		weights[i] = k.share
		if k.lo >= 120 {
			weights[i] *= math.Min(2, math.Pow(effect+.1, -.35))
		}
	}
	k := speedKinds[d.weighted(weights)]
	middle := float64(k.lo+k.hi) / 2
	return max(k.lo, min(k.hi-1, int(math.Round(d.normal(middle, 5)))))
}

// setApproach says how the leg met the fish; only slow legs circle.
func setApproach(d dice, l *leg) {
	switch {
	case l.speed < 100 && d.chance(.3):
		l.approach = "circling a school"
		l.schoolM = 10 * d.between(3, 20)
	case d.chance(.2):
		l.approach = "working a temperature break"
	}
}

// newSpread lays out the trip's lines.
func newSpread(d dice) []line {
	n := 2 + d.weighted([]float64{1, 2, 4, 3, 2})
	letOut := float64(d.between(8, 12)) / 2
	var spread []line
	for _, p := range places[:n] {
		ln := line{name: p.name, letOut: letOut, hooks: pick(d, hooks)}
		ln.classLb = []int{50, 80, 130}[d.weighted([]float64{2, 5, 3})]
		ln.dragLb = int(math.Round(float64(ln.classLb) * (.22 + .08*d.Float64())))
		ln.leaderLb = []int{200, 300, 400}[d.IntN(3)]
		ln.count = int(math.Round(p.back * d.scatter(.08) / (letOut * 1852 / 3600)))
		newLure(d, &ln)
		spread = append(spread, ln)
	}
	return spread
}

func newLure(d dice, ln *line) {
	k := pick(d, lures)
	ln.lure, ln.weightOz, ln.colour = k.name, pick(d, k.oz), pick(d, colours)
}

// legSpread is the trip's spread as it was on one leg: now and then a line
// less or another lure.
func legSpread(d dice, t *trip, spread []line) []*line {
	n := len(spread)
	if !t.wholeDay && n > 2 && d.chance(.25) {
		n--
	}
	var lines []*line
	for _, ln := range spread[:n] {
		if !t.wholeDay && d.chance(.2) {
			newLure(d, &ln)
		}
		lines = append(lines, &ln)
	}
	return lines
}

// tangle marks two lines of a leg as tangled, more often where they run less
// than 5 m apart.
func tangle(d dice, l *leg) {
	gap, a, b := math.Inf(1), "", ""
	for i, p := range l.lines {
		for _, q := range l.lines[i+1:] {
			if g := math.Abs(p.setbackM() - q.setbackM()); g < gap {
				gap, a, b = g, p.name, q.name
			}
		}
	}
	p := .02
	if gap < 5 {
		p = .2
	}
	if l.linesLogged && d.chance(p) {
		l.tangle = fmt.Sprintf("%s / %s", a, b)
	}
}

// round rounds to this many decimals.
func round(x float64, decimals int) float64 {
	p := math.Pow(10, float64(decimals))
	return math.Round(x*p) / p
}
