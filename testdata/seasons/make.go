package seasons

import (
	"fmt"
	"math/rand/v2"
	"time"
)

// tripGap parts trips where no label does (the loader's default).
const tripGap = 6 * time.Hour

// maker makes one season.
type maker struct {
	*rand.Rand
	s *Season
}

// New makes the season of a seed: the same seed, the same season.
func New(seed uint64) *Season {
	m := &maker{rand.New(rand.NewPCG(seed, 0x5ea50)), &Season{Seed: seed}}
	m.s.Zone = pick(m, "America/Los_Angeles", "Pacific/Auckland", "UTC-9", "Atlantic/Azores")
	m.s.Boats = []string{"Båra", "Sea Señora"}[:1+m.IntN(2)]
	m.s.SharedLabels = len(m.s.Boats) > 1 && m.odds(40)
	m.s.Numbered = m.odds(50)
	m.s.LegNamed = m.odds(50)
	for _, boat := range m.s.Boats {
		m.boat(boat)
	}
	m.settle()
	return m.s
}

// odds is true p times in a hundred.
func (m *maker) odds(p int) bool { return m.IntN(100) < p }

func pick(m *maker, words ...string) string { return words[m.IntN(len(words))] }

// maybe is a word, or not logged one time in five.
func maybe(m *maker, words ...string) string {
	if m.odds(20) {
		return ""
	}
	return pick(m, words...)
}

// amount is lo to hi steps of 1/d of a unit, or not logged p times in a hundred.
func (m *maker) amount(p int, lo, hi, d int64, unit string) Amount {
	if m.odds(p) {
		return Amount{}
	}
	return of(lo+m.Int64N(hi-lo+1), d, unit)
}

func (m *maker) minutes(lo, hi int) time.Duration {
	return time.Duration(lo+m.IntN((hi-lo)/5+1)*5) * time.Minute
}

// boat makes the trips of one boat, one after the other. May to August has no
// change of the clocks in any of the zones.
func (m *maker) boat(name string) {
	first := time.Date(2026, 5, 2+m.IntN(20), 4, 0, 0, 0, time.UTC).Add(m.minutes(0, 180))
	for n := range 3 + m.IntN(4) {
		label := fmt.Sprint(n + 1)
		if !m.s.SharedLabels {
			label = fmt.Sprintf("%s%d", name[:1], n+1)
		}
		t := m.trip(name, label, first)
		m.s.Trips = append(m.s.Trips, t)
		first = m.next(t.Legs[len(t.Legs)-1].End)
	}
}

// next is when the trip after one that ended then starts: just the gap later,
// a little more than it, or another day, by morning or by night.
func (m *maker) next(end time.Time) time.Time {
	switch {
	case m.odds(10):
		return end.Add(tripGap)
	case m.odds(15):
		return end.Add(tripGap + m.minutes(5, 120))
	}
	day := midnight(end).AddDate(0, 0, 1+m.IntN(9))
	if start := day.Add(m.minutes(240, 480)); m.odds(55) && start.Sub(end) >= tripGap {
		return start
	}
	return day.Add(m.minutes(1080, 1380))
}

func (m *maker) trip(boat, label string, first time.Time) *Trip {
	t := &Trip{Label: label, Boat: boat, Captain: pick(m, "Zoë Quill", "Håkon"),
		Port:    pick(m, "São Vento", "Low Harbour"),
		Anglers: maybe(m, "Zoë, Håkon", "Zoë; Ana", "Ana"),
		Notes:   maybe(m, "calm, then \"lumpy\"; home late", "skipper’s choice – slow")}
	if m.odds(30) {
		t.Wide = m.spread(2 + m.IntN(3))
	}
	start := first
	for n := range 1 + m.IntN(4) {
		l := m.leg(t, start)
		l.Label = fmt.Sprint(n + 1)
		t.Legs = append(t.Legs, l)
		start = l.End
		if m.odds(65) {
			start = start.Add(m.minutes(5, 90))
		}
	}
	t.Depart = first.Add(-m.minutes(15, 60))
	if t.Depart.Before(midnight(first)) {
		t.Depart = midnight(first)
	}
	t.Back = t.Legs[len(t.Legs)-1].End.Add(m.minutes(15, 90))
	return t
}

// leg makes a leg: speeds and temperatures stand on the edges of classes more
// often than not, ends at midnight sharp are not rare.
func (m *maker) leg(t *Trip, start time.Time) *Leg {
	l := &Leg{Start: start, End: start.Add(m.minutes(20, 180)), Heading: m.amount(30, 0, 359, 1, "deg"),
		Lat: m.amount(20, -4000, 4000, 100, "deg"), Lon: m.amount(0, -17000, 17000, 100, "deg"),
		School: m.amount(70, 1, 9, 1, "yd"), Nearest: m.amount(60, 1, 40, 10, "nmi"),
		Area: maybe(m, "Corner", "Bóveda"), Wind: maybe(m, "NW 12", "SE 5"), SeaState: maybe(m, "2", "3"),
		Approach: maybe(m, "straight", "Circling", "temperature break"),
		Notes:    maybe(m, "birds; bait", "flat, clear", "5\" chop")}
	if night := midnight(start).AddDate(0, 0, 1); m.odds(30) && night.Sub(start) <= 3*time.Hour &&
		night.Sub(start) >= 20*time.Minute {
		l.End = night
	}
	if !l.Lat.Known {
		l.Lon = Amount{}
	}
	m.conditions(l)
	m.lines(t, l)
	l.Tangle = maybe(m, "no", "no", "yes", "P long and P short")
	return l
}

func (m *maker) conditions(l *Leg) {
	switch {
	case m.odds(12): // speed not logged
	case m.odds(45):
		l.Speed = of([]int64{6, 8, 10, 12, 14, 16}[m.IntN(6)], 1, "kn")
	default:
		l.Speed = m.amount(0, 40, 180, 10, "kn")
	}
	switch {
	case m.odds(25):
	case m.odds(60):
		l.SeaTemp = of(10+2*m.Int64N(11), 1, "C")
	default:
		l.SeaTemp = m.amount(0, 95, 305, 10, "C")
	}
}
