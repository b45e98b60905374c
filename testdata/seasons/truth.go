package seasons

import (
	"fmt"
	"math/big"
	"strings"
	"time"
)

// NotLogged is the level of what a log leaves out.
const NotLogged = "not logged"

// Level is what happened at one level of a factor. Hours are in minutes, so
// that sums are exact; a leg counts its boat-hours once at each level out on it.
type Level struct {
	BoatMinutes, LineMinutes                     int
	Strikes, Hookups, Landed, Released, Unlogged int
	legs                                         map[*Leg]bool
	trips                                        map[*Trip]bool
}

// Legs is the number of legs that the level was out on.
func (l *Level) Legs() int { return len(l.legs) }

// Trips is the number of trips of those legs.
func (l *Level) Trips() int { return len(l.trips) }

// Boated is landed and released.
func (l *Level) Boated() int { return l.Landed + l.Released }

// levels collects by name.
type levels map[string]*Level

func (ls levels) at(name string) *Level {
	if ls[name] == nil {
		ls[name] = &Level{legs: map[*Leg]bool{}, trips: map[*Trip]bool{}}
	}
	return ls[name]
}

// effort adds minutes of a leg with some lines out at a level.
func (ls levels) effort(name string, t *Trip, l *Leg, lines, minutes int) {
	at := ls.at(name)
	if !at.legs[l] {
		at.BoatMinutes += minutes
	}
	at.legs[l], at.trips[t] = true, true
	at.LineMinutes += lines * minutes
}

func (ls levels) strike(name string, s *Strike) {
	at := ls.at(name)
	at.Strikes++
	for _, add := range []struct {
		is bool
		n  *int
	}{{s.hooked(), &at.Hookups}, {s.Outcome == Landed, &at.Landed}, {s.Outcome == Released, &at.Released},
		{s.Outcome == "", &at.Unlogged}} {
		if add.is {
			*add.n++
		}
	}
}

// Season is the sums over all levels, with every leg and trip counted once.
func (s *Season) Season() Level {
	all := levels{}
	for _, t := range s.Trips {
		for _, l := range t.Legs {
			n, _ := l.Out()
			all.effort("", t, l, n, l.Minutes())
		}
		for _, k := range t.Strikes {
			all.strike("", k)
		}
	}
	return *all.at("")
}

// By is what happened at each level of a factor of the queries, by the level's
// name there; false for light and moon, whose levels the model does not know.
func (s *Season) By(factor string) (map[string]*Level, bool) {
	ls := levels{}
	if factor == "light" || factor == "moon" {
		return ls, false
	}
	for _, t := range s.Trips {
		for _, l := range t.Legs {
			ls.leg(factor, t, l)
		}
		for _, k := range t.Strikes {
			ls.strike(strikeLevel(factor, t, k), k)
		}
	}
	return ls, true
}

func (ls levels) leg(factor string, t *Trip, l *Leg) {
	n, _ := l.Out()
	switch {
	case factor == "hour":
		ls.hours(t, l, n)
	case ofLine[factor] == nil:
		ls.effort(legLevel(factor, t, l), t, l, n, l.Minutes())
	default:
		for _, line := range l.Lines {
			ls.effort(ofLine[factor](line), t, l, 1, l.Minutes())
		}
		if rest := n - len(l.Lines); rest > 0 || n == 0 {
			ls.effort(NotLogged, t, l, rest, l.Minutes())
		}
	}
}

// hours divides a leg at the full hours of the clock.
func (ls levels) hours(t *Trip, l *Leg, lines int) {
	for from := l.Start; from.Before(l.End); {
		to := from.Truncate(time.Hour).Add(time.Hour)
		if to.After(l.End) {
			to = l.End
		}
		ls.effort(from.Format("15:00"), t, l, lines, int(to.Sub(from)/time.Minute))
		from = to
	}
}

var ofLine = map[string]func(*Line) string{
	"lure":        func(l *Line) string { return word(l.Lure) },
	"colour":      func(l *Line) string { return word(strings.ToLower(l.Colour)) },
	"hooks":       func(l *Line) string { return word(strings.ToLower(l.Hooks)) },
	"position":    func(l *Line) string { return word(strings.ToLower(l.Name)) },
	"lure-weight": func(l *Line) string { return band("lure-weight", l.Weight, "g") },
	"setback":     func(l *Line) string { return band("setback", l.setback(), "m") },
}

func legLevel(factor string, t *Trip, l *Leg) string {
	switch factor {
	case "speed-band":
		return band(factor, l.Speed, "kn")
	case "sea-temp":
		return band(factor, l.SeaTemp, "C")
	case "approach":
		return word(strings.ToLower(l.Approach))
	case "sea-state":
		return word(strings.ToLower(l.SeaState))
	case "month":
		return l.Start.Format("2006-01")
	case "boat":
		return t.Boat
	}
	return NotLogged // the angler: effort has none
}

// strikeLevel puts a strike where its effort is; a strike without a leg has its
// trip's day and boat, and its own speed where that was logged.
func strikeLevel(factor string, t *Trip, s *Strike) string {
	switch {
	case factor == "angler":
		return word(s.Angler)
	case factor == "hour" && s.Timed:
		return s.At.Format("15:00")
	case factor == "hour", ofLine[factor] != nil && s.Line == nil:
		return NotLogged
	case ofLine[factor] != nil:
		return ofLine[factor](s.Line)
	case s.Leg != nil:
		if level := legLevel(factor, t, s.Leg); factor != "speed-band" || level != NotLogged {
			return level
		}
		return band(factor, s.Speed, "kn")
	case factor == "speed-band":
		return band(factor, s.Speed, "kn")
	case factor == "month", factor == "boat":
		return legLevel(factor, t, t.Legs[0])
	}
	return NotLogged
}

func word(s string) string {
	if s == "" {
		return NotLogged
	}
	return s
}

// edges are the design's classes, half-open, the last open above.
var edges = map[string][]int64{
	"speed-band":  {0, 6, 8, 10, 12, 14, 16},
	"lure-weight": {0, 250, 500, 750, 1000, 1250, 1500},
	"setback":     {0, 50, 100, 150, 200, 250, 300, 350, 400, 450},
	"sea-temp":    {-3, 10, 12, 14, 16, 18, 20, 22, 24, 26, 28, 30},
}

func band(factor string, a Amount, unit string) string {
	if !a.Known {
		return NotLogged
	}
	e, v := edges[factor], a.in(unit)
	i := len(e) - 1
	for i > 0 && v.Cmp(big.NewRat(e[i], 1)) < 0 {
		i--
	}
	if i == len(e)-1 {
		return fmt.Sprintf("%d and up", e[i])
	}
	return fmt.Sprintf("[%d, %d)", e[i], e[i+1])
}
