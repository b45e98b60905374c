package seasons

import "time"

// Season is a season as it was, with what of it was logged. Times are the
// boat's wall clock, carried as UTC.
type Season struct {
	Seed  uint64
	Zone  string // IANA name or UTC-9
	Boats []string
	// SharedLabels: the boats number their trips alike, so a label needs its boat.
	SharedLabels bool
	// Numbered: fish name their strike by its number in the trip.
	Numbered bool
	// LegNamed: strikes and fish name their leg; else their clock time alone tells it.
	LegNamed bool
	Trips    []*Trip
}

// Trip is an outing; its first leg starts on the day it left.
type Trip struct {
	Label, Boat                   string
	Depart, Back                  time.Time
	Captain, Port, Anglers, Notes string
	Legs                          []*Leg
	Strikes                       []*Strike
	Wide                          []*Line // the spread of every leg, logged once; nil: by leg
	alone                         bool    // no other trip of the boat touches its days
}

// Leg is a stretch of effort.
type Leg struct {
	Label                    string
	Start, End               time.Time
	Speed                    Amount
	Counted                  bool // the number of lines out was logged
	LinesOut                 int  // that number, where Counted; Lines may be fewer
	Lines                    []*Line
	Heading, Lat, Lon        Amount
	SeaTemp, School, Nearest Amount
	Area, Wind, SeaState     string
	Approach, Tangle, Notes  string // Tangle: yes, no, or the lines
}

// Line is a rod's line on a leg, as described.
type Line struct {
	Name, Lure, Colour, Hooks, Leader string
	Weight, Class, Drag               Amount
	Setback, Count, LetOut            Amount // a distance, or a count and a speed
}

// Strike is a fish that hit a lure. Leg and Line are what the log settles in
// the end; the flags say how.
type Strike struct {
	At       time.Time
	Timed    bool // the clock time was logged
	Stray    bool // neither leg nor time was logged
	ByLeg    bool // the leg was named
	DayEarly bool // after midnight, dated by the day the leg began
	Leg      *Leg // nil: not known
	Line     *Line
	ByLine   bool // the line was named
	ByLure   bool // the lure was named instead
	Outcome  string
	Species  string
	Cause    string
	Angler   string
	Number   string // in its trip
	Fight    Amount
	Speed    Amount // on the strikes sheet alone
	Fish     *Fish  // nil: not boated, or no row on the fish sheet
	FishOnly bool   // not on the strikes sheet, only its fish is
}

// Fish is what was measured of a fish.
type Fish struct {
	Length, Girth, Weight Amount
	Kind, State           string // as logged
	Certified             string // yes, no or ""
}

// The outcomes; "" is one that nobody wrote down.
const (
	Missed   = "missed"
	Lost     = "lost"
	Landed   = "landed"
	Released = "released"
)

func (s *Strike) boated() bool { return s.Outcome == Landed || s.Outcome == Released }
func (s *Strike) hooked() bool { return s.boated() || s.Outcome == Lost }

// Minutes is the leg's length.
func (l *Leg) Minutes() int { return int(l.End.Sub(l.Start) / time.Minute) }

// Out is the number of lines out, false where nothing was logged of them.
func (l *Leg) Out() (int, bool) {
	if !l.Counted {
		return len(l.Lines), len(l.Lines) > 0
	}
	return max(l.LinesOut, len(l.Lines)), true
}

// setback is the distance behind the boat, from the count where only that was logged.
func (l *Line) setback() Amount {
	if l.Setback.Known || !l.Count.Known || !l.LetOut.Known {
		return l.Setback
	}
	metres := l.Count.in("s")
	metres.Mul(metres, l.LetOut.in("m/s"))
	return Amount{Known: true, value: metres, unit: "m"}
}

func midnight(t time.Time) time.Time { return t.Truncate(24 * time.Hour) }
