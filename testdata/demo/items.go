package main

import "strings"

// What a row of each sheet stands for.
type (
	legItem struct {
		*trip
		*leg
	}
	lineItem struct {
		t  *trip
		l  *leg // nil: every leg of the trip
		ln *line
	}
	strikeItem struct {
		t *trip
		l *leg
		s *strike
	}
)

// ofLog picks the trips of one log.
func ofLog(trips []*trip, log string) []*trip {
	var of []*trip
	for _, t := range trips {
		if t.log == log {
			of = append(of, t)
		}
	}
	return of
}

func legItems(trips []*trip) []legItem {
	var items []legItem
	for _, t := range trips {
		for _, l := range t.legs {
			items = append(items, legItem{t, l})
		}
	}
	return items
}

// lineItems lists the logged lines, once a trip where they hold for the whole day.
func lineItems(trips []*trip) []lineItem {
	var items []lineItem
	for _, li := range legItems(trips) {
		l := li.leg
		if !l.linesLogged || li.wholeDay && l.no > 1 {
			continue
		}
		if li.wholeDay {
			l = nil
		}
		for _, ln := range li.lines {
			items = append(items, lineItem{li.trip, l, ln})
		}
	}
	return items
}

func strikeItems(trips []*trip) []strikeItem {
	var items []strikeItem
	eachStrike(trips, func(t *trip, l *leg, s *strike) {
		if !s.fishOnly {
			items = append(items, strikeItem{t, l, s})
		}
	})
	return items
}

func fishItems(trips []*trip) []strikeItem {
	var items []strikeItem
	eachStrike(trips, func(t *trip, l *leg, s *strike) {
		if s.fish != nil {
			items = append(items, strikeItem{t, l, s})
		}
	})
	return items
}

func noMistake(*trip) *bad            { return nil }
func legMistake(i legItem) *bad       { return i.bad }
func lineMistake(i lineItem) *bad     { return i.ln.bad }
func strikeMistake(i strikeItem) *bad { return i.s.bad }
func fishMistake(i strikeItem) *bad   { return i.s.fish.bad }

// lineName is the strike's line, where the leg's lines are logged.
func (i strikeItem) lineName() any { return when(i.l.linesLogged, i.s.line.name) }

// speciesName is the species as the log writes it, where anyone saw the fish.
func (i strikeItem) speciesName() any {
	if !i.s.speciesLogged {
		return nil
	}
	return i.s.species.names[i.t.log]
}

func (i strikeItem) outcome() any { return when(i.s.outcome != notLogged, i.s.outcome) }

func (i strikeItem) kept() any {
	if i.s.outcome == landed {
		return "kept"
	}
	return "released"
}

// state is how the fish was when weighed.
func (i strikeItem) state() any {
	switch f := i.s.fish; {
	case f.scaleKg == 0:
		return nil
	case f.gutted:
		return "gilled and gutted"
	}
	return "round"
}

// lengthKind names the measure taken.
func (i strikeItem) lengthKind() any {
	switch {
	case !i.s.fish.measured:
		return nil
	case i.s.species.jaw:
		return "lower jaw fork"
	case i.s.fish.curved:
		return "curved fork"
	}
	return "straight fork"
}

// inCrew joins the crew's names.
func (t *trip) inCrew() string { return strings.Join(t.crew[1:], ", ") }
