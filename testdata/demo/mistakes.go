package main

import (
	"fmt"
	"strings"
	"time"
)

// mistake adds one row to a trip with one cell that cannot be read. In the
// cell, DATE stands for the trip's date as an American writes it.
type mistake struct {
	trip int
	row  string // leg, line, strike, fish, or catch: a line with a landed fish
	key  string // of the column
	cell string
	how  loss
}

var mistakes = []mistake{
	{2504, "leg", "speed", "120", spare},
	{2509, "leg", "date", "DATE5", wholeRow}, // a five-figure year
	{2517, "leg", "lat", "33.1?", spare},
	{2511, "strike", "time", "25:80", spare},
	{2519, "fish", "length", "?? 60ish", guess},
	{2606, "catch", "girth", "thick as a bucket", spare},
	{2610, "line", "strikes", "a few", spare},
	{2618, "leg", "end", "1x:30", wholeRow},
	{2621, "line", "drag", "tight", spare},
	{2624, "strike", "date", "31/06/2026", wholeRow},
	{2627, "fish", "scale", "heavy", spare},
}

// addMistakes adds the rows of all mistakes. It fails where a trip has no
// room for one, which only a change of seed or plan can bring about.
func addMistakes(d dice, trips []*trip) error {
	byID := map[int]*trip{}
	for _, t := range trips {
		byID[t.id] = t
	}
	for _, m := range mistakes {
		t := byID[m.trip]
		if t == nil || t.wholeDay {
			return fmt.Errorf("mistake in trip %d: no such trip with a spread for each leg", m.trip)
		}
		cell := strings.ReplaceAll(m.cell, "DATE", t.depart.Format("1/2/2006"))
		if err := m.add(d, t, &bad{m.key, cell, m.how}); err != nil {
			return fmt.Errorf("mistake in trip %d: %w", m.trip, err)
		}
	}
	return nil
}

func (m mistake) add(d dice, t *trip, b *bad) error {
	if m.row == "leg" {
		addLeg(t, b)
		return nil
	}
	for _, l := range t.legs {
		if !l.linesLogged || l.linesOut() == len(places) {
			continue
		}
		switch m.row {
		case "line", "catch":
			addLine(d, t, l, b)
			if m.row == "catch" {
				addCatch(d, l, l.lines[len(l.lines)-1])
			}
		case "strike":
			l.strikes = append(l.strikes, &strike{at: freeMinute(d, l), timeLogged: true,
				line: l.lines[0], outcome: missed, bad: b})
		case "fish":
			addCatch(d, l, l.lines[0])
			s := l.strikes[len(l.strikes)-1]
			s.fishOnly, s.fish.bad = true, b
		}
		return nil
	}
	return fmt.Errorf("no leg has room for a %s", m.row)
}

// addLeg adds a leg after the trip's last, without lines or strikes.
func addLeg(t *trip, b *bad) {
	last := t.legs[len(t.legs)-1]
	l := *last
	l.no, l.start, l.end = last.no+1, last.end.Add(10*time.Minute), last.end.Add(55*time.Minute)
	l.speedLogged, l.linesLogged, l.bad = true, false, b
	l.lines, l.strikes, l.tangle = nil, nil, ""
	t.legs = append(t.legs, &l)
}

// addLine adds a line at the first place that the leg does not use.
func addLine(d dice, t *trip, l *leg, b *bad) {
	ln := *l.lines[0]
	ln.name, ln.bad = places[len(l.lines)].name, b
	newLure(d, &ln)
	l.lines = append(l.lines, &ln)
}

// addCatch adds a landed yellowfin, taped and not weighed.
func addCatch(d dice, l *leg, ln *line) {
	sp := &allSpecies[1]
	f := newFish(d, sp)
	f.measured, f.lengthCm, f.girthCm = true, f.trueCm, f.trueCm*.73
	l.strikes = append(l.strikes, &strike{at: freeMinute(d, l), timeLogged: true, line: ln,
		outcome: landed, species: sp, speciesLogged: true, fight: 14, angler: captain, fish: f})
}
