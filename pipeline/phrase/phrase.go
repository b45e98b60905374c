package phrase

import "wakeledger/pipeline/words"

// Clock is a time of day. Where it is not Sure, it may be twelve hours later.
type Clock struct {
	Seconds int // since midnight
	Sure    bool
}

// Stretch is lines in the water from a clock to a clock, with what is told of it.
type Stretch struct {
	Start, End       Clock
	HasStart, HasEnd bool
	SpeedLo, SpeedHi float64  // knots; equal for one speed, 0 not told
	Lines            int      // -1 not told
	StopMinutes      float64  // to be taken off
	Hours            float64  // told as a duration, before the stop is taken off; 0 not told
	More             []string // further speeds and numbers of lines told of it, as written
	Open             bool     // its end was left to be written: 6:10-
	Apart            bool     // it is told in a sentence behind bites of the one before
	Place            int      // the byte of the text where it begins to be told
}

// Setting is what a text tells of speed and lines without clocks, in the order told: one
// value for all, or one a session.
type Setting struct {
	Speeds []float64    // knots; the middle of a range
	Ranges [][2]float64 // the ends of each of Speeds
	Lines  []int
	By     bool // it tells by how many lines a spread differs from the usual
	Usual  bool // it holds for the whole log: usual, unless I write different, every trip
}

// Defaults are what the heading over a cell says of bare numbers in it.
type Defaults struct {
	LengthUnit string // "in", "cm", ...; empty where the heading names no length
	TapeUnit   string // of a length times a girth, and of a girth, where neither they nor the heading name one
	WeightUnit string // "lb", "kg"
	Scaled     bool   // weights are from a scale
	ScaleUnit  string // of a number right before a word for the scale: "wahoo 21 on the scale"
}

// Fish is N fish of one kind and fate. Measures of 0 are not told.
type Fish struct {
	Name              string // as written, empty where no kind is told
	N                 int
	LengthCm, GirthCm float64
	Kg                float64
	LengthKind        string     // FL, CFL, TL, LJFL, EFL where told
	Guess             bool       // the weight is a guess
	Scaled            bool       // the weight is from a scale; never together with Guess
	Exact             bool       // the weight is written to a fraction: nobody guesses 30.9 kg
	Fate              words.Fate // unknown where not told
	Place             string     // in the spread, as written
	At                *Clock
	Kn                float64 // the boat's speed at its bite, where words behind it say it: (6.8 kts when he ate)
}

// Bite is N bites of one kind told in prose.
type Bite struct {
	Fish
	Session int    // 0 not told
	Told    int    // the byte of the text where its clause begins
	Cause   string // of a loss
	Method  string // jig, chunk, kite ... where the clause names one other than trolling
}

// Story is what prose tells of bites.
type Story struct {
	Bites           []Bite
	Landed, Strikes int // totals told in so many words ("2 for 5", "5 bites"); -1 not told
	Nothing         bool
	Left            []string // clauses of fish or fates that were not understood, as written
}
