package sky

import (
	"slices"
	"time"
)

// Light is the light of an instant at a place.
type Light string

// The lights, in the order of a day.
const (
	Dawn  Light = "dawn"
	Day   Light = "day"
	Dusk  Light = "dusk"
	Night Light = "night"
)

// Lights are all lights in the order of a day.
func Lights() []Light { return []Light{Dawn, Day, Dusk, Night} }

// Margin is how long before and after sunrise is dawn, and sunset dusk, where
// the user sets nothing else: an hour, common practice, no source.
const Margin = time.Hour

// LightAt returns the light at an instant: dawn within margin of sunrise, dusk
// within margin of sunset (the nearer of the two where both are), else day or
// night as the sun is up or down.
func LightAt(t time.Time, lat, lon float64, margin time.Duration) Light {
	return newSky(t, t, lat, lon, margin).at(t)
}

// Stretch is a part of a stretch of time with one light.
type Stretch struct {
	Light Light
	Share float64 // of the whole; shares add up to 1
}

// Split divides the time from an instant to a later one by light, each light at
// most once, in the order of Lights. Where to is not after from it is the light
// of that one instant.
func Split(from, to time.Time, lat, lon float64, margin time.Duration) []Stretch {
	s := newSky(from, to, lat, lon, margin)
	if !to.After(from) {
		return []Stretch{{s.at(from), 1}}
	}
	cuts := []time.Time{from, to}
	for _, e := range s.edges() {
		if e.After(from) && e.Before(to) {
			cuts = append(cuts, e)
		}
	}
	slices.SortFunc(cuts, time.Time.Compare)
	share := map[Light]float64{}
	for i, c := range cuts[1:] {
		part := c.Sub(cuts[i])
		share[s.at(cuts[i].Add(part/2))] += float64(part) / float64(to.Sub(from))
	}
	var out []Stretch
	for _, l := range Lights() {
		if share[l] > 0 {
			out = append(out, Stretch{l, share[l]})
		}
	}
	return out
}

// skyOver is the sunrises and sunsets about a stretch of time at a place.
type skyOver struct {
	lat, lon    float64
	margin      time.Duration
	rises, sets []time.Time
}

func newSky(from, to time.Time, lat, lon float64, margin time.Duration) skyOver {
	s := skyOver{lat: lat, lon: lon, margin: margin}
	for d := from.UTC().AddDate(0, 0, -2); !d.After(to.UTC().AddDate(0, 0, 2)); d = d.AddDate(0, 0, 1) {
		if rise, set, ok := RiseAndSet(d.Year(), d.Month(), d.Day(), lat, lon); ok {
			s.rises, s.sets = append(s.rises, rise), append(s.sets, set)
		}
	}
	return s
}

// edges are the instants at which the light may change.
func (s skyOver) edges() []time.Time {
	var out []time.Time
	for i, rise := range s.rises {
		set := s.sets[i]
		// Where a day or a night is shorter than both margins, they meet halfway.
		out = append(out, rise.Add(-s.margin), rise, rise.Add(s.margin), rise.Add(set.Sub(rise)/2),
			set.Add(-s.margin), set, set.Add(s.margin))
		if i > 0 {
			out = append(out, s.sets[i-1].Add(rise.Sub(s.sets[i-1])/2))
		}
	}
	return out
}

func (s skyOver) at(t time.Time) Light {
	toRise, toSet := nearest(s.rises, t), nearest(s.sets, t)
	switch {
	case toRise <= s.margin && toRise <= toSet:
		return Dawn
	case toSet <= s.margin:
		return Dusk
	case Altitude(t, s.lat, s.lon) > horizon:
		return Day
	}
	return Night
}

// nearest is the time from t to the nearest of the events.
func nearest(events []time.Time, t time.Time) time.Duration {
	best := time.Duration(1<<63 - 1)
	for _, e := range events {
		best = min(best, e.Sub(t).Abs())
	}
	return best
}
