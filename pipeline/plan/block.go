package plan

import (
	"slices"
	"strings"
	"time"

	"wakeledger/pipeline/unit"
)

// Binding ties a column of a block to what it means.
type Binding struct {
	Index    int    // of the cell in the row, from 0
	Heading  string // as logged; a group's name before its own where it has one
	Column   *Column
	Unit     unit.Unit // stated in the heading; "" where it states none
	Only     unit.Unit // the only unit in which the numbers seen are possible, "" where nothing tells
	Scaled   bool      // weights in its phrases are from a scale, as the heading or the log says
	Carried  bool      // written once for the rows under it
	Set      int       // 0, or 1 and up for the second and further stretches of one row
	Sized    unit.Unit // of the lengths that stand behind the fish in its cells, "Wahoo 121"; "" where none does
	PM       bool      // its clock times are of twelve hours, and of the afternoon or evening
	Adds     bool      // its count is added to that of another column: fish lost in another way
	Measured bool      // remarks that tell how long or heavy one of the row's fish was
	Gone     bool      // remarks that tell of bites that were missed or lost, of rows that count none
	Away     bool      // its words tell of the bites that were missed or lost, of those that the row counts
	Said     string    // what the log says of its heading: "name, fork length in cm, [girth in cm], (scale kg)"
	Alone    string    // of events: what became of a fish that is named and nothing more
	Kept     bool      // of lists of fish: of those that were kept alone, as the heading says
	Guess    bool      // its weights or lengths are guesses, by the heading's words
	Rest     *Rest     // the column that has the rest of its quantity in a smaller unit: lb, then oz; nil: none
	Paired   unit.Unit // of the first of two numbers in a cell, whose rest is the second: 12-8 is 12 lb 8 oz
	Lot      Lot       // what a weight beside several fish of one row is of

	// By gives the value that another block has for a row's key, where this block names
	// only that: the day of a stretch that a strike names. Index is then the key's.
	By    map[string]string
	Codes map[string]string // what the log's legend says of its cells, by cell in lower case
	Score float64           // how much better than the next meaning the evidence holds it for
}

// Lot says what one weight of a row with several fish is of.
type Lot string

// Weights of rows with several fish.
const (
	OfOne    Lot = ""       // one of them
	OfAll    Lot = "all"    // all of them together
	OfEither Lot = "either" // nothing tells
)

// Rest is a column that has the ounces of the pounds, or the inches of the feet, in another.
type Rest struct {
	Index int
	Unit  unit.Unit
}

// Unknown is a column without a meaning here. Its cells are kept by this name.
type Unknown struct {
	Index   int
	Heading string
	Fate    string // of a count of a species: what became of them, by the group that it stands in
	Named   bool   // of such a count: its cells name the fish, "2 skipjack"
	Among   bool   // of such a count: cells say how many of them were let go, "3 (rel 1)"
	Aside   string // what it holds that counts do not rest on (money, people ...); "" where nobody knows

	// Of a place in the spread, with what struck there.
	Codes  map[string]string // the short words that the log's legend writes out, in lower case
	Scaled bool              // its weights are from a scale, as the log says
}

// SeveralLures is what a column is kept by name for whose cells name several lures each.
const SeveralLures = "several lures"

// Given is a value that stands once for all rows of a block: "Boat: Sea Wren" above
// the table, a date as the sheet's name, the usual number of lines.
type Given struct {
	Heading string
	Column  *Column
	Text    string
	Default bool // only for rows that say nothing themselves
	But     []But
	Since   []Since // what holds from a row on, in place of Text; of a default alone
}

// Since is what lines of words between the rows say to hold from a row on: no text where it is not known any more.
type Since struct {
	Row  int64
	Text string
}

// But is what holds of one trip or day in place of what is usual: its name or its day, as the log writes them.
type But struct {
	Trip, Day, Text string
}

// Cell is a place in a block: a row's number and a column's index from 0.
type Cell struct {
	Row   int64
	Index int
}

// Block is one block of a sheet, understood.
type Block struct {
	Sheet int // index in its book
	Name  string
	Row   int // number of the heading's last row, 0 where the labels stand elsewhere
	Kind  Kind
	Why   string
	Heads [][]string // the heading's rows, as logged
	Shape string     // table, records, form

	Bindings []Binding
	Unknown  []Unknown
	Given    []Given

	Catch       []Unknown // of Unknown: how many of a species, by its name
	Caught      bool      // those of Catch were landed
	Figures     []string  // what each of several figures in a cell of Catch counts: strikes_n, hooked_n, landed_n
	Alone       bool      // one figure alone counts all of these
	ListsAll    bool      // its list of fish tells each bite that a row counts, also those lost or missed
	KeptUnless  bool      // those of Catch were kept but for what remarks say
	MissedBlank bool      // a row that counts its bites, and leaves those missed blank, had none of these
	CatchBlank  bool      // a row in which all of Catch are blank had none
	Rods        []Unknown // of Unknown: places in the spread with what struck there
	RodsBlank   bool      // under a place that is blank there was no line
	Spread      []Unknown // of Unknown: places in the spread with the lure that ran there
	Lures       *Unknown  // of Unknown: cells that name several lures, each of which ran on a line of its own

	Years      unit.Years // of dates without a year; zero where nothing tells
	Month      time.Month // of dates that are a day's number alone, 0 where there are none
	Tagged     bool       // T among kept fish is tagged, so released
	Fated      bool       // names of fish have behind them what became of it
	Hashed     bool       // rows that start with # are comments
	Order      unit.Order // of day and month, where the log's owner said it
	Twelve     bool       // clock times are of twelve hours without am or pm
	Afternoon  bool       // an end before its start is of the afternoon, as most are: 6:10 to 1:40
	Early      int        // strikes before this second of the day are of the afternoon, by a clock of twelve hours
	Inclusive  bool       // landed counts the released too
	EffortOnce bool       // rows repeat the stretch that they are of
	HoursOnce  bool       // rows of one day are of men on one boat: its hours are counted once, what each had is his
	LureLines  bool       // rows of one day are lines that were out together, each named by its lure
	NoEffort   bool       // what it says of hours another block says better, but for the rows of OnlyHere
	NoStrikes  bool       // what it tells of strikes another block tells better
	Among      bool       // its strikes are fish that counts of another block tell already
	Outings    bool       // a row is known by when the boat left: two of one day are two trips
	Numbered   bool       // each trip has its number: a row with neither one nor a departure was not gone
	Departs    bool       // each departure begins a trip, numbered or not
	Parts      bool       // numbers with letters name stretches of one trip: 9a and 9b
	Again      bool       // some day has several rows with hours: a stop may lie between them
	Half       int        // index after that of a column of halves of the day, each a trip; 0 where there is none
	OwnHours   bool       // its hours stand where its clock times come to others
	// each time that lines go in an event says their speed, or how many, anew, also where they are as before
	SpeedAfresh, LinesAfresh bool
	BiteSpeeds               bool // a speed in the row of a bite is that of the bite: changes have rows of their own
	Guesses                  bool // weights in words without one for the scale are guesses, as the log says
	NoneUp                   bool // events count no line out as lines come up, so that a count says they are in

	// rows of trips whose remarks tell of bites that no other table has, each with the stretch that it names
	Tells map[int64]string
	Later map[string]int // stretches, as Stretch names them, of how many days after their trip's first
	// rows of stretches that are of so many days after the first of those that their day's cell gives: 14-15 June
	NextDays map[int64]int
	Drop     map[int64]bool  // rows that are left out, as the log's owner said
	OnlyHere map[int64]bool  // rows of a trip of whose hours no other block tells
	Mends    map[int64]bool  // rows whose remark mends another row, and not in words that were understood
	Cells    map[Cell]string // cells that are read as the log's owner said, in place of what they hold
	Days     map[Cell]string // days of rows whose cell tells them by the row above: "next day"
	Rest     map[Cell]string // counts of a day less those of the rows under it, in place of what the cells hold
	Elsewise map[string]bool // stretches, as Stretch names them, that were not trolled
	// seconds of rows that were fished in another way meanwhile, as the log's owner said
	Off    map[int64]float64
	Ashore map[int64]bool // rows of trips without hours, of which no other table tells: they were not gone
	// rows that were not trolled: of strikes under a title that says so, of trips with no other stretches
	Apart map[int64]bool
	Trips map[int64]string // the trips of rows, where the log's owner told two of one day apart
	Freed bool             // the fish that its words say were let go are beside those that it counts
	// columns of lists of fish that no count of their row has in it: of other fish than each of the counts
	Others []int
	Foot   map[int64]bool // rows under the table that are of no day: averages, another year

	Notes []string // what was concluded, for the user to see
}

// Binds tells whether a column of the block means one of the names.
func (b *Block) Binds(names ...string) bool { return b.Find(names...) != nil }

// Find is the first binding of one of the names; nil where there is none.
func (b *Block) Find(names ...string) *Binding {
	i := slices.IndexFunc(b.Bindings, func(x Binding) bool { return slices.Contains(names, x.Column.Name) })
	if i < 0 {
		return nil
	}
	return &b.Bindings[i]
}

// OfSet is the column of a name of the first (0), second ... stretch of a row; nil where there is none.
func (b *Block) OfSet(name string, set int) *Binding {
	i := slices.IndexFunc(b.Bindings, func(x Binding) bool { return x.Column.Name == name && x.Set == set })
	if i < 0 {
		return nil
	}
	return &b.Bindings[i]
}

// Reads tells whether a column of the block is read in one of the ways.
func (b *Block) Reads(parses ...string) bool {
	return slices.ContainsFunc(b.Bindings, func(x Binding) bool { return slices.Contains(parses, x.Column.Parse) })
}

// Gives tells whether a value of the name stands once for all rows.
func (b *Block) Gives(name string) bool {
	return slices.ContainsFunc(b.Given, func(g Given) bool { return g.Column.Name == name })
}

// Stories is how many of the block's columns tell of bites in words.
func (b *Block) Stories() int {
	n := 0
	for _, x := range b.Bindings {
		if x.Column.Parse == "story" {
			n++
		}
	}
	return n
}

// Paragraphs tells a block whose words tell bites and the times of trolling too.
func (b *Block) Paragraphs() bool {
	return slices.ContainsFunc(b.Bindings, func(x Binding) bool {
		return x.Column.Parse == "story" && b.Timed(x.Index)
	})
}

// Timed tells whether the cells at an index are read for times of trolling.
func (b *Block) Timed(index int) bool {
	return slices.ContainsFunc(b.Bindings, func(x Binding) bool {
		return x.Column.Parse == "stretches" && x.Index == index
	})
}

// strikeNames are the columns of one strike or fish.
var strikeNames = []string{"time_s", "outcome", "species", "length_cm", "girth_cm", "scale_kg", "line", "lure",
	"colour", "loss_cause", "fight_s", "angler", "weighed"}

// OfStrike tells a column of one strike or fish.
func (b *Binding) OfStrike() bool { return slices.Contains(strikeNames, b.Column.Name) }

// StrikeSets is for how many strikes a row has columns of their own; 0 where it has them
// for one at most.
func (b *Block) StrikeSets() int {
	n := 0
	for i := range b.Bindings {
		if x := &b.Bindings[i]; x.OfStrike() && x.Set > 0 {
			n = max(n, x.Set+1)
		}
	}
	return n
}

// Lists tells a block whose fish stand in lists, with their measures in lists beside them.
func (b *Block) Lists() bool {
	return b.Reads("fishlist") && !b.Binds("species") && b.Binds("length_cm", "girth_cm", "scale_kg")
}

// Stretch names a stretch by its trip, or else its day, and its own name.
func Stretch(trip, leg string) string { return strings.ToLower(trip + "\x00" + leg) }

// StoredAs is the kind of entries that the season file has of a kind of the block's: strikes that
// are among those counted elsewhere are fish, each of one of them.
func (b *Block) StoredAs(kind Kind) Kind {
	if b.Among && kind == Strikes {
		return Fish
	}
	return kind
}
