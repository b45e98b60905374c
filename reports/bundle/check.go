package bundle

import (
	"errors"
	"fmt"
	"math"
	"regexp"
	"slices"
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
		return fmt.Errorf("the boat's id %q: expected up to 40 letters, digits, points, hyphens and underscores, "+
			"such as blue-7", id)
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
	if err := s.Total.check(); err != nil {
		return err
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
	var sizes []FishCell
	for _, c := range s.Sizes {
		sizes = append(sizes, FishCell{Level: c.Level, Fish: c.Fish})
	}
	if err := checkFish(sizes, classForm, NoWeight); err != nil {
		return fmt.Errorf("table sizes: %w", err)
	}
	if err := s.checkSingle(); err != nil {
		return err
	}
	return s.checkBounds()
}

// checkCells: the levels are of the closed form, each of enough trips, and they
// add up to the total, as far as they are shown.
func (s Season) checkCells(rows []Cell, form *regexp.Regexp) error {
	seen := map[string]bool{}
	hours := 0.0
	for _, c := range rows {
		if !possible(c.LineHours) || c.BoatHours != nil && !possible(*c.BoatHours) {
			return fmt.Errorf("level %q: hours that cannot be", c.Level)
		}
		if !nest(c.Strikes, c.Hookups, c.Boated) {
			return fmt.Errorf("level %q: counts that do not nest", c.Level)
		}
		if err := checkLevel(c.Level, c.Trips, seen, form, NotLogged); err != nil {
			return err
		}
		hours += c.LineHours
	}
	if len(rows) > 0 && math.Abs(hours-s.Total.LineHours) > 0.01*float64(len(rows)+1) {
		return fmt.Errorf("the levels do not add up to the season: %v line-hours of %v", hours, s.Total.LineHours)
	}
	for _, of := range []struct {
		name  string
		total *int64
		of    func(Cell) *int64
	}{
		{"strikes", s.Total.Strikes, func(c Cell) *int64 { return c.Strikes }},
		{"hook-ups", s.Total.Hookups, func(c Cell) *int64 { return c.Hookups }},
		{"fish", s.Total.Boated, func(c Cell) *int64 { return c.Boated }},
	} {
		sum, all := int64(0), true
		for _, c := range rows {
			if n := of.of(c); n != nil {
				sum += *n
			} else {
				all = false
			}
		}
		if len(rows) > 0 && of.total != nil && (sum > *of.total || all && sum < *of.total) {
			return fmt.Errorf("the levels do not add up to the season: %d %s of %d", sum, of.name, *of.total)
		}
	}
	return nil
}

func (t Total) check() error {
	if t.Trips < MinTrips {
		return ErrTooFew
	}
	if !possible(t.LineHours) || !possible(t.BoatHours) {
		return errors.New("the season: hours that cannot be")
	}
	if !nest(t.Strikes, t.Hookups, t.Boated) || !parts(t.Boated, t.Landed, t.Released) {
		return errors.New("the season: counts that do not nest")
	}
	return nil
}

func possible(hours float64) bool { return hours >= 0 && hours <= 1e7 }

// nest tells whether each count, as far as they are shown, is a part of all before it.
func nest(counts ...*int64) bool {
	most := int64(mostCount)
	for _, n := range counts {
		if n != nil && (*n < 0 || *n > most) {
			return false
		}
		if n != nil {
			most = *n
		}
	}
	return true
}

// parts tells whether two counts are shown together and are all of a third.
func parts(all, a, b *int64) bool {
	if a == nil || b == nil {
		return a == nil && b == nil
	}
	return all != nil && *a >= 0 && *b >= 0 && *a <= mostCount && *b <= mostCount && *a+*b == *all
}

// mostCount is more than a boat ever counts.
const mostCount = 1e7

func checkLevel(level string, trips int64, seen map[string]bool, form *regexp.Regexp, word string) error {
	if level != Merged && level != NotLogged && level != word && !form.MatchString(level) {
		return fmt.Errorf("%q is no level of it", level)
	}
	if seen[level] {
		return fmt.Errorf("level %q stands twice", level)
	}
	seen[level] = true
	if trips < MinTrips {
		return fmt.Errorf("level %q is of %d trips or fewer; fewer than %d are never shared", level, trips, MinTrips)
	}
	return nil
}

func checkFish(rows []FishCell, form *regexp.Regexp, word string) error {
	seen := map[string]bool{}
	for _, c := range rows {
		// a fish of each of three trips is the least
		if err := checkLevel(c.Level, c.Fish, seen, form, word); err != nil {
			return err
		}
		if !nest(&c.Fish, c.OnScale) || !parts(&c.Fish, c.Landed, c.Released) {
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
		if f.Species != Other && f.Species != NotLogged && !speciesForm.MatchString(f.Species) || f.When != NotLogged &&
			f.When != Untold && !whenForm.MatchString(f.When) {
			return fmt.Errorf("table heaviest: species %q, month %q", f.Species, f.When)
		}
		if !(f.WeightKG > 0) || f.WeightKG > 5000 || f.LoKG != nil && !(*f.LoKG >= 0) ||
			f.HiKG != nil && !(*f.HiKG <= 50000) {
			return fmt.Errorf("table heaviest: a fish of %v kg", f.WeightKG)
		}
		if f.Doubt != nil && !slices.Contains(Doubts(), *f.Doubt) {
			return fmt.Errorf("table heaviest: no doubt %q", *f.Doubt)
		}
	}
	for _, p := range s.People {
		if len(p.Name) > 400 || !slices.Contains([]string{"boat", "captain", "crew"}, p.Role) {
			return fmt.Errorf("table people: a name of %d letters as %q", len(p.Name), p.Role)
		}
	}
	return nil
}
