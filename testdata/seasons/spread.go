package seasons

import "slices"

var rods = []string{"P long", "P short", "S long", "S short", "Shotgun"}

// spread describes n lines.
func (m *maker) spread(n int) []*Line {
	var lines []*Line
	for _, name := range rods[:n] {
		lines = append(lines, m.line(name))
	}
	return lines
}

func (m *maker) line(name string) *Line {
	l := &Line{Name: name, Lure: maybe(m, "Bullet", "Big Chugger", "Señuelo", "Jet", "Diver"),
		Colour: maybe(m, "Black", "purple", "Blue Pink"),
		Hooks:  maybe(m, "double stiff", "single"), Leader: maybe(m, "300", "cable"),
		Weight: m.amount(25, 4, 60, 1, "oz"), Class: m.amount(30, 30, 130, 1, "lb"),
		Drag: m.amount(40, 10, 50, 1, "lb")}
	switch {
	case m.odds(20):
	case m.odds(50):
		l.Setback = m.amount(0, 30, 500, 1, "yd")
	default:
		l.Count, l.LetOut = m.amount(0, 5, 90, 1, "s"), m.amount(0, 40, 95, 10, "kn")
	}
	return l
}

// lines puts lines on a leg: those of the whole trip, some changed; or
// described, counted, described in part, or not logged at all.
func (m *maker) lines(t *Trip, l *Leg) {
	switch {
	case t.Wide != nil:
		l.Lines = slices.Clone(t.Wide)
		if m.odds(30) {
			l.Lines[0] = m.line(rods[0])
		}
	case m.odds(12): // not logged
		return
	case m.odds(12):
		l.Counted, l.LinesOut = true, m.IntN(6)
		return
	default:
		l.Lines = m.spread(1 + m.IntN(5))
	}
	if m.odds(50) {
		l.Counted, l.LinesOut = true, len(l.Lines)
		if m.odds(20) {
			l.LinesOut += 1 + m.IntN(2)
		}
	}
}
