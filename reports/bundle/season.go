package bundle

import (
	"cmp"
	"errors"
	"fmt"
	"math"
	"slices"

	"wakeledger/pipeline/factors"
)

// Levels with a meaning of their own.
const (
	NotLogged = factors.NotLogged
	Merged    = "merged"    // levels that may not stand alone, together
	NoWeight  = "no weight" // a class of size
	Other     = "other"     // a species that is on no closed list, or that the list of the heaviest does not name
	Untold    = "not told"  // a month that the list of the heaviest does not name
)

// sizeEdges are the lower edges of the club's classes of round weight in kg.
var sizeEdges = []float64{0, 10, 25, 50, 75, 100, 150, 200, 300}

// SizeClass is the level of a round weight in kg.
func SizeClass(kg float64) string {
	return factors.Level(sizeEdges, kg)
}

// The lists of heaviest fish, which are never mixed.
const (
	Certified = "certified scale"
	Dock      = "dock scale"
	Estimate  = "estimate"
)

// Lists are the lists of heaviest fish in their order.
func Lists() []string { return []string{Certified, Dock, Estimate} }

// ErrTooFew is returned by Make for a season that cannot be shared without
// showing a single trip.
var ErrTooFew = errors.New("fewer than 3 trips on 3 days with effort, or one of them is most of it: " +
	"a summary would show a single trip")

// Season is what one boat shares of one season file. Hours and, in Species and Sizes, fish
// add up to the season's over the levels of a table. A count that is nil is not shown.
type Season struct {
	ID       string // that the boat chose
	Open     int64  // questions about its logs on which effort or strikes rest
	Total    Total
	Months   []Cell     // levels YYYY-MM
	Speeds   []Cell     // levels [lo, hi) in knots over ground
	Lures    []Cell     // levels [lo, hi) of the lure's weight in g
	Species  []FishCell // levels are FAO ASFIS codes
	Sizes    []SizeCell // levels [lo, hi) of round weight in kg
	Heaviest []Heavy
	People   []Person // empty unless the boat shares names
}

// Total is the season's effort and strikes.
type Total struct {
	Trips     int64   `json:"trips"` // with effort
	BoatHours float64 `json:"boat_hours"`
	LineHours float64 `json:"line_hours"`
	Strikes   *int64  `json:"strikes"`
	Hookups   *int64  `json:"hookups"`
	Boated    *int64  `json:"boated"` // landed or released
	Landed    *int64  `json:"landed"`
	Released  *int64  `json:"released"`
}

// Cell is effort and strikes at one level. By speed and lure, strikes are those on line-hours
// of the level; those on legs whose lines are not logged are of the level NotLogged.
type Cell struct {
	Level     string   `json:"level"`
	Trips     int64    `json:"trips"`      // with effort in it
	BoatHours *float64 `json:"boat_hours"` // nil where a boat-hour has several levels at once
	LineHours float64  `json:"line_hours"`
	Strikes   *int64   `json:"strikes"`
	Hookups   *int64   `json:"hookups"`
	Boated    *int64   `json:"boated"` // landed or released
}

// FishCell is the fish at one level, landed or released. How many trips they are of is not
// said: three fish of three trips would be one each.
type FishCell struct {
	Level    string `json:"level"`
	Fish     int64  `json:"fish"`
	OnScale  *int64 `json:"on_scale"` // of them weighed; the others' weight is an estimate or not known
	Landed   *int64 `json:"landed"`
	Released *int64 `json:"released"`
}

// SizeCell is the fish of one class of size. It says no more of them: the list of the
// heaviest names fish with their weight, so that less can be hidden of a class.
type SizeCell struct {
	Level string `json:"level"`
	Fish  int64  `json:"fish"`
}

// Heavy is one fish of the lists of the heaviest.
type Heavy struct {
	List     string   `json:"list"`
	Species  string   `json:"species"`   // Other where the table of species does not show it whole
	When     string   `json:"when"`      // the month, or the year of a season of one year; else Untold or NotLogged
	WeightKG float64  `json:"weight_kg"` // to a tenth
	LoKG     *float64 `json:"lo_kg"`     // 90 % prediction interval of an estimate, where one is known
	HiKG     *float64 `json:"hi_kg"`
	Doubt    *string  `json:"doubt"` // one of Doubts, where the boat itself doubts its measures
}

// Doubts are what a boat may say against the measures of a fish. They are the names of its own checks.
func Doubts() []string {
	return []string{"long fish", "heavy fish", "girth and length", "scale and tape"}
}

// Person is a name that the boat shares on purpose.
type Person struct {
	Role string `json:"role"` // boat, captain or crew
	Name string `json:"name"`
}

// Piece is one day of one trip's part of one level. It never leaves the boat.
type Piece struct {
	Trip                 int64
	Start, Day           string // YYYY-MM-DD of the trip's first day, and of the piece; "" where not known
	Level                string
	BoatHours, LineHours float64
	Afloat               float64 // hours of the boat on that day, at whatever level
	Strikes, Hookups     int64
	Landed, Released     int64
	Fish, OnScale        int64
	Species, Month, List string // of a fish
	Doubt                string // one of Doubts; "" for none
	WeightKG             float64
	LoKG, HiKG           *float64
	named                bool // on a list of the heaviest that is shared
}

// Source is one boat's season, trip by trip. It never leaves the boat. Levels
// are in the order in which they are to be shown.
type Source struct {
	Months, Speeds, Lures []Piece
	Fish                  []Piece  // one a fish; Level is not used
	Sizes                 []string // the level of size of each fish
	People                []Person
	Open                  int64
	Top                   int // how many fish a list of the heaviest shows
}

const allTrips = "season" // the level of the season's row

func (src Source) total() []Piece {
	return relabel(src.Months, func(int) string { return allTrips })
}

func (src Source) species() []Piece {
	return relabel(src.Fish, func(i int) string { return src.Fish[i].Species })
}

func (src Source) sizes() []Piece {
	return relabel(src.Fish, func(i int) string { return src.Sizes[i] })
}

func relabel(pieces []Piece, level func(i int) string) []Piece {
	out := slices.Clone(pieces)
	for i := range out {
		out[i].Level = level(i)
	}
	return out
}

// Make is what is shared of a source under the id that the boat chose, after the summary
// that the boat shared last; nil where there is none. The error is ErrTooFew, a
// *Difference, or says what is wrong with the id.
func Make(id string, src Source, last *Shared) (Season, error) {
	s := Season{ID: id, Open: src.Open, People: src.People}
	if err := CheckID(id); err != nil {
		return s, err
	}
	was := last.orNone()
	total := table{by: effortBy, groups: seasonGroups, earlier: was.Source.total()}.whole(src.total())
	if !total.now.stands(effortBy...) {
		return s, ErrTooFew
	}
	if err := last.differs(total); err != nil {
		return s, err
	}
	if last != nil { // with the rows that were shown, a total that was not tells more than a row
		total.hidden |= was.Season.Total.hides()
	}
	effort := func(now, then []Piece, shown []Cell) []*bin {
		t := table{by: effortBy, groups: effortGroups, total: total.hidden, earlier: then, shown: hiddenCells(shown)}
		return t.merge(now)
	}
	all := total.cell(true)
	s.Total = Total{Trips: all.Trips, BoatHours: *all.BoatHours, LineHours: all.LineHours,
		Strikes: all.Strikes, Hookups: all.Hookups, Boated: all.Boated,
		Landed: total.count(landed, hideFates), Released: total.count(released, hideFates)}
	s.Months = cells(effort(src.Months, was.Source.Months, was.Season.Months), true)
	s.Speeds = cells(effort(src.Speeds, was.Source.Speeds, was.Season.Speeds), false)
	s.Lures = cells(effort(src.Lures, was.Source.Lures, was.Season.Lures), false)
	if total.hidden&hideBoated == 0 { // else the sum of the fish would show it
		s.fish(src, total, was)
	}
	return s, s.Check()
}

// fish makes the tables of fish and the lists of the heaviest.
func (s *Season) fish(src Source, total *bin, was Shared) {
	species := table{by: fishBy, groups: fishGroups, earlier: was.Source.species(),
		shown: hiddenFish(was.Season.Species)}
	species.total = hideScale | total.hidden&hideFates // no total says how many were weighed
	s.Species = fishCells(species.merge(src.species()))
	s.Heaviest = s.heaviest(src, total, was)
	sizes := func() []SizeCell {
		then := mark(was.Source, was.Season.Heaviest)
		now := mark(src, slices.Concat(s.Heaviest, was.Season.Heaviest))
		t := table{by: fishBy, earlier: then.sizes(), shown: shownSizes(was.Season.Sizes)}
		return sizeCells(t.merge(now.sizes()))
	}
	if s.Sizes = sizes(); len(s.Sizes) == 0 && len(s.Heaviest) > 0 {
		s.Heaviest = nil
		s.Sizes = sizes()
	}
}

// byLevel orders classes upwards and codes by letter, the levels that are words
// last.
func byLevel(a, b string) int {
	words := []string{Other, NoWeight, NotLogged, Merged}
	if d := slices.Index(words, a) - slices.Index(words, b); d != 0 {
		return d
	}
	return cmp.Or(cmp.Compare(factors.Lower(a), factors.Lower(b)), cmp.Compare(a, b))
}

// byWeight puts the heaviest first, and equals in an order that does not depend
// on the log's.
func byWeight(a, b Heavy) int {
	return cmp.Or(cmp.Compare(b.WeightKG, a.WeightKG), cmp.Compare(a.Species, b.Species), cmp.Compare(a.When, b.When))
}

// Span is the months, or where none is shown the years, that the season is of.
func (s Season) Span() []string {
	var out []string
	for _, m := range s.Months {
		if m.Level != Merged && m.Level != NotLogged {
			out = append(out, m.Level)
		}
	}
	return out
}

func (s Season) String() string {
	return fmt.Sprintf("%s, %d trips", s.ID, s.Total.Trips)
}

// cells are the bins as rows; boats: the hours of the boat add up over them.
func cells(bins []*bin, boats bool) []Cell {
	var out []Cell
	for _, b := range bins {
		out = append(out, b.cell(boats))
	}
	return out
}

func (b *bin) cell(boats bool) Cell {
	c := Cell{Level: b.level, Trips: int64(len(b.trips)), LineHours: tidy(b.now.sum[lineHours]),
		Strikes: b.count(strikes, hideStrikes), Hookups: b.count(hookups, hideHookups),
		Boated: b.count(boated, hideBoated)}
	if boats {
		h := tidy(b.now.sum[boatHours])
		c.BoatHours = &h
	}
	return c
}

// count is a count of the row; nil where it is hidden.
func (b *bin) count(q quantity, is hidden) *int64 {
	if b.hidden&is != 0 {
		return nil
	}
	n := int64(math.Round(b.now.sum[q]))
	return &n
}

// tidy rounds hours to a hundredth: what is shared is shared no finer than it is read.
func tidy(h float64) float64 { return math.Round(h*100) / 100 }

// fishCells are the bins as rows in an order of their own: that in which a log names them
// is the order of its days.
func fishCells(bins []*bin) []FishCell {
	var out []FishCell
	for _, b := range bins {
		out = append(out, FishCell{Level: b.level, Fish: *b.count(fish, 0), OnScale: b.count(onScale, hideScale),
			Landed: b.count(landed, hideFates), Released: b.count(released, hideFates)})
	}
	slices.SortFunc(out, func(a, b FishCell) int { return byLevel(a.Level, b.Level) })
	return out
}

func sizeCells(bins []*bin) []SizeCell {
	var out []SizeCell
	for _, c := range fishCells(bins) {
		out = append(out, SizeCell{c.Level, c.Fish})
	}
	return out
}
