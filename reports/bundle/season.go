package bundle

import (
	"cmp"
	"errors"
	"fmt"
	"math"
	"slices"
)

// MinTrips is the fewest trips that a cell may be of.
const MinTrips = 3

// Levels with a meaning of their own.
const (
	NotLogged = "not logged"
	Merged    = "merged"    // levels of fewer than MinTrips trips, together
	NoWeight  = "no weight" // a class of size
	Other     = "other"     // a species that is on no closed list, or that Merged holds
)

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
var ErrTooFew = errors.New("fewer than 3 trips: a summary would show a single trip")

// Season is what one boat shares of one season file. Every table but Heaviest
// and People adds up to Total.
type Season struct {
	ID       string // that the boat chose
	Open     int64  // questions about its logs on which effort or strikes rest
	Total    Cell
	Months   []Cell     // levels YYYY-MM
	Speeds   []Cell     // levels [lo, hi) in knots over ground
	Lures    []Cell     // levels [lo, hi) of the lure's weight in g
	Species  []FishCell // levels are FAO ASFIS codes
	Sizes    []FishCell // levels [lo, hi) of round weight in kg
	Heaviest []Heavy
	People   []Person // empty unless the boat shares names
}

// Cell is effort and strikes at one level.
type Cell struct {
	Level     string   `json:"level"`
	Trips     int64    `json:"trips"`
	BoatHours *float64 `json:"boat_hours"` // nil where a boat-hour has several levels at once
	LineHours float64  `json:"line_hours"`
	Strikes   int64    `json:"strikes"`
	OnHours   int64    `json:"strikes_on_line_hours"` // of them on legs whose lines are logged: what a rate is made of
	Hookups   int64    `json:"hookups"`
	Landed    int64    `json:"landed"`
	Released  int64    `json:"released"`
}

// FishCell is the fish at one level.
type FishCell struct {
	Level    string `json:"level"`
	Trips    int64  `json:"trips"`
	Fish     int64  `json:"fish"`
	OnScale  int64  `json:"on_scale"` // of them weighed; the others' weight is an estimate or not known
	Landed   int64  `json:"landed"`
	Released int64  `json:"released"`
}

// Heavy is one fish of the lists of the heaviest.
type Heavy struct {
	List     string   `json:"list"`
	Species  string   `json:"species"`   // Other where the table of species does not show it
	When     string   `json:"when"`      // the month; the year where the table of months shows others of it; else NotLogged
	WeightKG float64  `json:"weight_kg"` // to a tenth
	LoKG     *float64 `json:"lo_kg"`     // 90 % prediction interval of an estimate, where one is known
	HiKG     *float64 `json:"hi_kg"`
}

// Person is a name that the boat shares on purpose.
type Person struct {
	Role string `json:"role"` // boat, captain or crew
	Name string `json:"name"`
}

// Piece is one trip's part of one level. It never leaves the boat.
type Piece struct {
	Trip                      int64
	Level                     string
	BoatHours, LineHours      float64
	Strikes, OnHours, Hookups int64
	Landed, Released          int64
	Fish, OnScale             int64
	Species, Month, List      string // of a fish
	WeightKG                  float64
	LoKG, HiKG                *float64
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

// Make is what is shared of a source under the id that the boat chose. The error
// is ErrTooFew, or says what is wrong with the id.
func Make(id string, src Source) (Season, error) {
	s := Season{ID: id, Open: src.Open, People: src.People}
	if err := CheckID(id); err != nil {
		return s, err
	}
	total := merge(relabel(src.Months, func(int) string { return "season" }))
	if len(total) != 1 {
		return s, ErrTooFew
	}
	s.Total = total[0].cell(true)
	s.Months = cells(merge(src.Months), true)
	s.Speeds = cells(merge(src.Speeds), false)
	s.Lures = cells(merge(src.Lures), false)
	s.Species = fishCells(merge(relabel(src.Fish, func(i int) string { return src.Fish[i].Species })))
	s.Sizes = fishCells(merge(relabel(src.Fish, func(i int) string { return src.Sizes[i] })))
	// The order in which a log names them is the order of its days.
	slices.SortFunc(s.Species, func(a, b FishCell) int { return byLevel(a.Level, b.Level) })
	slices.SortFunc(s.Sizes, func(a, b FishCell) int { return byLevel(a.Level, b.Level) })
	s.Heaviest = s.heaviest(src)
	return s, s.Check()
}

func relabel(pieces []Piece, level func(i int) string) []Piece {
	out := slices.Clone(pieces)
	for i := range out {
		out[i].Level = level(i)
	}
	return out
}

// heaviest is the top of each list. Species and month are said only where a cell
// of three trips or more says them anyway.
func (s *Season) heaviest(src Source) []Heavy {
	var out []Heavy
	for _, list := range Lists() {
		var of []Heavy
		for _, f := range src.Fish {
			if f.List == list {
				of = append(of, Heavy{List: list, Species: s.shownSpecies(f.Species), When: s.shownMonth(f.Month),
					WeightKG: tenth(f.WeightKG), LoKG: tenths(f.LoKG), HiKG: tenths(f.HiKG)})
			}
		}
		slices.SortStableFunc(of, byWeight)
		out = append(out, of[:min(src.Top, len(of))]...)
	}
	return out
}

func tenth(kg float64) float64 { return math.Round(kg*10) / 10 }

func tenths(kg *float64) *float64 {
	if kg == nil {
		return nil
	}
	v := tenth(*kg)
	return &v
}

// byLevel orders classes upwards and codes by letter, the levels that are words
// last.
func byLevel(a, b string) int {
	words := []string{Other, NoWeight, NotLogged, Merged}
	if d := slices.Index(words, a) - slices.Index(words, b); d != 0 {
		return d
	}
	return cmp.Or(cmp.Compare(Lower(a), Lower(b)), cmp.Compare(a, b))
}

// byWeight puts the heaviest first, and equals in an order that does not depend
// on the log's.
func byWeight(a, b Heavy) int {
	return cmp.Or(cmp.Compare(b.WeightKG, a.WeightKG), cmp.Compare(a.Species, b.Species), cmp.Compare(a.When, b.When))
}

func (s *Season) shownSpecies(code string) string {
	if slices.ContainsFunc(s.Species, func(c FishCell) bool { return c.Level == code }) {
		return code
	}
	return Other
}

func (s *Season) shownMonth(month string) string {
	if slices.ContainsFunc(s.Months, func(c Cell) bool { return c.Level == month }) {
		return month
	}
	for _, shown := range s.Span() {
		if len(month) > 4 && shown[:4] == month[:4] {
			return month[:4]
		}
	}
	return NotLogged
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
