package main

import "time"

// Times in the model are the boat's wall clock, carried as UTC instants.

// Names of the three logs.
const (
	log2025  = "2025"
	logEarly = "2026-early"
	logLate  = "2026-late"
)

// Outcomes of a strike.
const (
	missed    = "missed"
	lost      = "lost"
	landed    = "landed"
	released  = "released"
	notLogged = "not logged"
)

// bad is a mistake: the cell text that stands in the column with this key.
// What carries one is written to the log and left out of the truth, unless it is
// spare, of a leg, line or flat row that counts without that cell, or a guess: a
// measure that says itself that it is none, which is not set aside at all.
type bad struct {
	key, cell string
	how       loss
}

// loss is what a mistake costs.
type loss int

const (
	wholeRow loss = iota
	spare
	guess
)

// costs tells a mistake for which its whole row is set aside.
func (b *bad) costs() bool { return b != nil && b.how == wholeRow }

type trip struct {
	id           int
	log          string
	depart, back time.Time
	crew         []string // the captain first
	effect       float64  // how many fish were there that day, mean 1
	wholeDay     bool     // lines are logged once for all legs
	notes        string
	legs         []*leg
}

type leg struct {
	no          int
	start, end  time.Time
	speed       int // tenths of a knot over ground
	speedLogged bool
	linesLogged bool
	lines       []*line
	heading     int
	lat, lon    float64
	area        string
	seaC        float64
	windKn      int
	windFrom    string
	sea         int
	approach    string
	schoolM     int // distance to the school, 0 where there was none
	nearestNmi  float64
	tangle      string
	notes       string
	strikes     []*strike
	bad         *bad
}

type line struct {
	name     string
	lure     string
	weightOz int
	colour   string
	hooks    string
	leaderLb int
	classLb  int
	dragLb   int
	count    int     // seconds let out
	letOut   float64 // boat speed while letting out, kn
	bad      *bad
}

type strike struct {
	at            time.Time
	timeLogged    bool
	line          *line
	outcome       string
	species       *species
	speciesLogged bool
	cause         string // of loss
	fight         int    // minutes
	angler        string
	fish          *fish
	fishOnly      bool // not on the strikes sheet, only its fish is
	bad           *bad
}

type fish struct {
	trueCm    float64 // straight length
	weightKg  float64 // true round weight
	measured  bool
	lengthCm  float64 // as taped
	curved    bool
	girthCm   float64 // as taped, 0 where not taken
	scaleKg   float64 // 0 where it saw no scale
	gutted    bool    // gilled and gutted when weighed
	certified bool
	bad       *bad
}

// minutes is the length of the leg.
func (l *leg) minutes() int { return int(l.end.Sub(l.start) / time.Minute) }

// linesOut counts the lines that were really out.
func (l *leg) linesOut() int {
	n := 0
	for _, ln := range l.lines {
		if !ln.bad.costs() {
			n++
		}
	}
	return n
}

// setbackM is count x let-out speed, in metres.
func (l *line) setbackM() float64 { return float64(l.count) * l.letOut * 1852 / 3600 }
