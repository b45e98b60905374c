package bundle

import "fmt"

// What a boat can do. A day has 24 hours; the rest is wide enough for any boat: common
// practice, no source.
const (
	mostTrips       = 2000  // of one summary
	mostDaysAtSea   = 40    // of one trip
	mostLines       = 40    // out at once
	mostStrikesTrip = 2000  // of one trip
	hoursOfMonth    = 744.0 // 31 days
	mostSingle      = 100   // fish of the lists of the heaviest, or names
)

// checkBounds holds the counts of a season against each other and against what a boat can
// do.
func (s Season) checkBounds() error {
	t := s.Total
	if t.Trips > mostTrips {
		return fmt.Errorf("%d trips of one boat", t.Trips)
	}
	whole := Cell{Level: "season", Trips: t.Trips, BoatHours: &t.BoatHours, LineHours: t.LineHours, Strikes: t.Strikes}
	for _, rows := range [][]Cell{{whole}, s.Months, s.Speeds, s.Lures} {
		for _, c := range rows {
			if err := s.checkCell(c); err != nil {
				return err
			}
		}
	}
	for _, c := range s.Months {
		if c.BoatHours != nil && monthForm.MatchString(c.Level) && *c.BoatHours > hoursOfMonth {
			return fmt.Errorf("month %s: %.0f boat-hours, more than it has", c.Level, *c.BoatHours)
		}
	}
	return s.checkCaught()
}

func (s Season) checkCell(c Cell) error {
	t := s.Total
	trips := float64(c.Trips)
	switch {
	case c.Trips > t.Trips:
		return fmt.Errorf("level %q: %d of %d trips", c.Level, c.Trips, t.Trips)
	case c.LineHours > trips*mostDaysAtSea*24*mostLines:
		return fmt.Errorf("level %q: %.0f line-hours in %d trips", c.Level, c.LineHours, c.Trips)
	case c.Strikes != nil && *c.Strikes > t.Trips*mostStrikesTrip:
		return fmt.Errorf("level %q: %d strikes in %d trips", c.Level, *c.Strikes, t.Trips)
	case c.BoatHours == nil:
		return nil
	case *c.BoatHours > trips*mostDaysAtSea*24:
		return fmt.Errorf("level %q: %.0f boat-hours in %d trips", c.Level, *c.BoatHours, c.Trips)
	case c.LineHours > *c.BoatHours*mostLines+1:
		return fmt.Errorf("level %q: %.0f line-hours in %.0f boat-hours", c.Level, c.LineHours, *c.BoatHours)
	}
	return nil
}

// checkCaught: no more fish than strikes, where these are told, and no more single fish or
// names than there can be.
func (s Season) checkCaught() error {
	most := s.Total.Trips * mostStrikesTrip
	if s.Total.Strikes != nil {
		most = *s.Total.Strikes
	}
	species, sizes := int64(0), int64(0)
	for _, c := range s.Species {
		species += c.Fish
	}
	for _, c := range s.Sizes {
		sizes += c.Fish
	}
	if n := max(species, sizes); n > most {
		return fmt.Errorf("%d fish of %d strikes", n, most)
	}
	if n := len(s.Heaviest); n > mostSingle || int64(n) > most {
		return fmt.Errorf("%d heaviest fish of %d strikes", n, most)
	}
	for _, f := range s.Heaviest {
		if f.LoKG != nil && f.HiKG != nil && *f.LoKG > *f.HiKG {
			return fmt.Errorf("a fish of %v to %v kg", *f.LoKG, *f.HiKG)
		}
	}
	if len(s.People) > mostSingle {
		return fmt.Errorf("%d names", len(s.People))
	}
	return nil
}
