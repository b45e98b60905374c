package bundle

import (
	"fmt"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"
)

var (
	idForm      = regexp.MustCompile(`^[A-Za-z0-9][A-Za-z0-9._-]{0,39}$`)
	monthForm   = regexp.MustCompile(`^[0-9]{4}-(0[1-9]|1[0-2])$`)
	whenForm    = regexp.MustCompile(`^[0-9]{4}(-(0[1-9]|1[0-2]))?$`)
	classForm   = regexp.MustCompile(`^(\[[0-9.]{1,8}, [0-9.]{1,8}\)|[0-9.]{1,8} and up)$`)
	speciesForm = regexp.MustCompile(`^[A-Z]{3}$`)
)

// CheckID says what is wrong with the id of a boat: it stands in a page and in
// file names.
func CheckID(id string) error {
	if !idForm.MatchString(id) {
		return fmt.Errorf("the boat's id %q: expected up to 40 letters, digits, points, hyphens and underscores, such as blue-7", id)
	}
	return nil
}

// Check says what is wrong with a season: what Make would never have made.
func (s Season) Check() error {
	if err := CheckID(s.ID); err != nil {
		return err
	}
	if s.Open < 0 || s.Open > 10000 {
		return fmt.Errorf("%d open questions", s.Open)
	}
	if s.Total.Trips < MinTrips {
		return ErrTooFew
	}
	for _, t := range []struct {
		name string
		rows []Cell
		form *regexp.Regexp
	}{{"months", s.Months, monthForm}, {"speeds", s.Speeds, classForm}, {"lures", s.Lures, classForm}} {
		if err := s.checkCells(t.rows, t.form); err != nil {
			return fmt.Errorf("table %s: %w", t.name, err)
		}
	}
	if err := checkFish(s.Species, speciesForm, Other); err != nil {
		return fmt.Errorf("table species: %w", err)
	}
	if err := checkFish(s.Sizes, classForm, NoWeight); err != nil {
		return fmt.Errorf("table sizes: %w", err)
	}
	if err := s.checkSingle(); err != nil {
		return err
	}
	return s.checkBounds()
}

// checkCells: the levels are of the closed form, each of enough trips, and they
// add up to the total.
func (s Season) checkCells(rows []Cell, form *regexp.Regexp) error {
	seen := map[string]bool{}
	var sum Cell
	for _, c := range append(slices.Clone(rows), s.Total) {
		if !(c.LineHours >= 0) || c.LineHours > 1e7 || c.BoatHours != nil && (!(*c.BoatHours >= 0) || *c.BoatHours > 1e7) {
			return fmt.Errorf("level %q: hours that cannot be", c.Level)
		}
		if c.Landed < 0 || c.Released < 0 || c.OnHours < 0 || c.Landed+c.Released > c.Hookups || c.Hookups > c.Strikes || c.OnHours > c.Strikes {
			return fmt.Errorf("level %q: counts that do not nest", c.Level)
		}
	}
	for _, c := range rows {
		if err := checkLevel(c.Level, c.Trips, seen, form, NotLogged); err != nil {
			return err
		}
		sum.LineHours, sum.Strikes, sum.OnHours = sum.LineHours+c.LineHours, sum.Strikes+c.Strikes, sum.OnHours+c.OnHours
		sum.Hookups, sum.Landed, sum.Released = sum.Hookups+c.Hookups, sum.Landed+c.Landed, sum.Released+c.Released
	}
	t := s.Total
	if len(rows) > 0 && (sum.Strikes != t.Strikes || sum.Hookups != t.Hookups || sum.Landed != t.Landed || sum.Released != t.Released ||
		sum.OnHours != t.OnHours || math.Abs(sum.LineHours-t.LineHours) > 0.01*float64(len(rows)+1)) {
		return fmt.Errorf("the levels do not add up to the season: %v strikes and %v line-hours of %v and %v", sum.Strikes, sum.LineHours, t.Strikes, t.LineHours)
	}
	return nil
}

func checkLevel(level string, trips int64, seen map[string]bool, form *regexp.Regexp, word string) error {
	if level != Merged && level != NotLogged && level != word && !form.MatchString(level) {
		return fmt.Errorf("%q is no level of it", level)
	}
	if seen[level] {
		return fmt.Errorf("level %q stands twice", level)
	}
	seen[level] = true
	if trips < MinTrips {
		return fmt.Errorf("level %q is of %d trips; fewer than %d are never shared", level, trips, MinTrips)
	}
	return nil
}

func checkFish(rows []FishCell, form *regexp.Regexp, word string) error {
	seen := map[string]bool{}
	for _, c := range rows {
		if err := checkLevel(c.Level, c.Trips, seen, form, word); err != nil {
			return err
		}
		if c.Fish < 0 || c.OnScale < 0 || c.Landed < 0 || c.Released < 0 || c.OnScale > c.Fish || c.Landed+c.Released > c.Fish {
			return fmt.Errorf("level %q: counts that do not nest", c.Level)
		}
	}
	return nil
}

// checkSingle checks the fish and the names.
func (s Season) checkSingle() error {
	for _, f := range s.Heaviest {
		if !slices.Contains(Lists(), f.List) {
			return fmt.Errorf("table heaviest: no list %q", f.List)
		}
		if f.Species != Other && f.Species != NotLogged && !speciesForm.MatchString(f.Species) || f.When != NotLogged && !whenForm.MatchString(f.When) {
			return fmt.Errorf("table heaviest: species %q, month %q", f.Species, f.When)
		}
		if !(f.WeightKG > 0) || f.WeightKG > 5000 || f.LoKG != nil && !(*f.LoKG >= 0) || f.HiKG != nil && !(*f.HiKG <= 50000) {
			return fmt.Errorf("table heaviest: a fish of %v kg", f.WeightKG)
		}
	}
	for _, p := range s.People {
		if len(p.Name) > 400 || !slices.Contains([]string{"boat", "captain", "crew"}, p.Role) {
			return fmt.Errorf("table people: a name of %d letters as %q", len(p.Name), p.Role)
		}
	}
	return nil
}

// Class is the level of a class with fixed lower edges that holds v: "[8, 10)"
// or "16 and up". What lies below the first edge is in the first class.
func Class(edges []float64, v float64) string {
	number := func(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }
	for i := len(edges) - 1; i >= 0; i-- {
		if v < edges[i] && i > 0 {
			continue
		}
		if i == len(edges)-1 {
			return number(edges[i]) + " and up"
		}
		return "[" + number(edges[i]) + ", " + number(edges[i+1]) + ")"
	}
	return NotLogged
}

// Lower is the lower end of a class, or -1 for a level that is none.
func Lower(level string) float64 {
	word, _, _ := strings.Cut(strings.TrimPrefix(level, "["), ",")
	v, err := strconv.ParseFloat(strings.TrimSuffix(word, " and up"), 64)
	if err != nil {
		return -1
	}
	return v
}
