package seasons

import (
	"fmt"
	"strings"
	"time"
)

// species as logged, with the FAO code that the name means; a bluefin without
// an ocean has none.
var species = []struct{ name, code string }{
	{"Yellowfin", "YFT"}, {"Wahoo", "WAH"}, {"Skipjack", "SKJ"}, {"Albacore", "ALB"}, {"Bluefin", ""}, {"YFT", "YFT"},
}

// settle adds what depends on the boat's other trips: strikes.
func (m *maker) settle() {
	for _, t := range m.s.Trips {
		t.alone = m.alone(t)
		used := map[time.Time]bool{}
		for _, l := range t.Legs {
			for range m.IntN(5) {
				if s := m.strike(t, l, used); s != nil {
					t.Strikes = append(t.Strikes, s)
				}
			}
		}
		if t.alone && m.odds(40) {
			// before the others: under a row with a leg, its blank leg may mean the same
			t.Strikes = append([]*Strike{m.stray(t)}, t.Strikes...)
		}
		m.fishOnly(t)
		n := 0
		for _, s := range t.Strikes {
			if !s.FishOnly {
				n++
				s.Number = fmt.Sprint(n)
			}
		}
	}
}

func (m *maker) alone(t *Trip) bool {
	first, last := midnight(t.Legs[0].Start), midnight(t.Legs[len(t.Legs)-1].End)
	for _, o := range m.s.Trips {
		if o != t && o.Boat == t.Boat && !midnight(o.Legs[0].Start).After(last) &&
			!midnight(o.Legs[len(o.Legs)-1].End).Before(first) {
			return false
		}
	}
	return true
}

// strike makes a strike on a leg, nil where its minute is taken.
func (m *maker) strike(t *Trip, l *Leg, used map[time.Time]bool) *Strike {
	s := m.outcome()
	s.Leg, s.ByLeg = l, m.s.LegNamed
	s.At, s.Timed = m.at(t, l), true
	if used[s.At] {
		return nil
	}
	used[s.At] = true
	if m.odds(15) && s.ByLeg && s.Outcome != "" && (m.s.Numbered || !s.boated()) {
		s.Timed = false
	}
	if s.Timed && midnight(s.At).After(midnight(l.Start)) && !m.covered(t.Boat, s.At.AddDate(0, 0, -1)) {
		s.DayEarly = m.odds(50)
	}
	m.onLine(s, l)
	return s
}

// at is an instant of the leg: often the first minute, and the very end where
// no other leg begins there.
func (m *maker) at(t *Trip, l *Leg) time.Time {
	switch {
	case m.odds(12):
		return l.Start
	case m.odds(12) && !m.begins(t.Boat, l.End):
		return l.End
	}
	return l.Start.Add(time.Duration(m.IntN(l.Minutes())) * time.Minute)
}

func (m *maker) begins(boat string, at time.Time) bool {
	for _, t := range m.s.Trips {
		for _, l := range t.Legs {
			if t.Boat == boat && l.Start.Equal(at) {
				return true
			}
		}
	}
	return false
}

// covered tells whether some leg of the boat holds the instant.
func (m *maker) covered(boat string, at time.Time) bool {
	for _, t := range m.s.Trips {
		for _, l := range t.Legs {
			if t.Boat == boat && !at.Before(l.Start) && !at.After(l.End) {
				return true
			}
		}
	}
	return false
}

func (m *maker) outcome() *Strike {
	s := &Strike{Outcome: pick(m, Missed, Missed, Lost, Landed, Landed, Released),
		Angler: maybe(m, "Zoë", "Håkon", "Ana"), Speed: m.amount(60, 60, 150, 10, "kn")}
	if m.odds(8) {
		s.Outcome = ""
	}
	if s.hooked() {
		s.Fight = m.amount(30, 2, 90, 1, "min")
	}
	if s.Outcome == Lost {
		s.Cause = maybe(m, "pulled hook", "leader cut")
	}
	if s.boated() {
		s.Species = species[m.IntN(len(species))].name
		if m.odds(85) {
			s.Fish = m.fish()
		}
	}
	return s
}

func (m *maker) fish() *Fish {
	f := &Fish{Length: m.amount(15, 60, 180, 2, "in"), Certified: maybe(m, "yes", "no")}
	if f.Length.Known {
		f.Girth = m.amount(40, 40, 90, 2, "in")
		f.Kind = maybe(m, "fork length", "curved")
	}
	if m.odds(40) {
		f.Weight = m.amount(0, 20, 480, 2, "lb")
		f.State = maybe(m, "round", "gilled and gutted")
	}
	return f
}

// onLine says which line it was, where that was logged: by its name, or by a
// lure that one line alone ran. The only line out needs no word.
func (m *maker) onLine(s *Strike, l *Leg) {
	n := len(l.Lines)
	if n == 0 {
		return
	}
	line := l.Lines[m.IntN(n)]
	switch {
	case m.odds(75):
		s.Line, s.ByLine = line, true
		if line.Lure != "" && m.odds(25) && s.Fish == nil && ran(l, line.Lure) == 1 {
			s.ByLine, s.ByLure = false, true
		}
	case n == 1 && (!l.Counted || l.LinesOut <= 1):
		s.Line = line
	}
}

func ran(l *Leg, lure string) int {
	n := 0
	for _, o := range l.Lines {
		if strings.EqualFold(o.Lure, lure) {
			n++
		}
	}
	return n
}

// stray is a strike of which only the trip's day was logged. A trip of one leg
// settles the leg, and a leg of one line the line.
func (m *maker) stray(t *Trip) *Strike {
	s := m.outcome()
	s.Stray, s.At = true, midnight(t.Legs[0].Start)
	if s.Outcome == "" { // a flat row must say something
		s.Outcome = Missed
	}
	if !m.s.Numbered {
		s.Fish = nil
	}
	if len(t.Legs) > 1 {
		return s
	}
	s.Leg = t.Legs[0]
	if l := s.Leg; len(l.Lines) == 1 && (!l.Counted || l.LinesOut <= 1) {
		s.Line = l.Lines[0]
	}
	return s
}

// fishOnly leaves a strike off the strikes sheet, in a trip where every other
// strike that may have brought a fish has one.
func (m *maker) fishOnly(t *Trip) {
	var could []*Strike
	for _, s := range t.Strikes {
		switch {
		case s.Outcome == "" || s.boated() && s.Fish == nil:
			return
		case s.boated() && s.Timed && !s.Stray && s.ByLine == (s.Line != nil):
			could = append(could, s)
		}
	}
	if len(could) > 0 && m.odds(40) {
		s := could[m.IntN(len(could))]
		s.FishOnly, s.Cause = true, ""
	}
}
