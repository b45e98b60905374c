package bundle

import (
	"fmt"
	"reflect"
	"slices"
)

// Given is a season with the name of the file that it came in.
type Given struct {
	File string
	Season
}

// Boat is one boat with its seasons.
type Boat struct {
	ID      string
	Seasons []Season
}

// Match puts seasons together by boat. A season that comes twice is counted
// once, and repeats says which files that were. Two that differ and are of the
// same months are refused, because one of them would be counted twice.
func Match(given []Given) (boats []Boat, repeats []string, err error) {
	at := map[string]int{}
	held := map[string][]Given{}
next:
	for _, g := range given {
		i, known := at[g.ID]
		if !known {
			i = len(boats)
			at[g.ID], boats = i, append(boats, Boat{ID: g.ID})
		}
		for j, h := range held[g.ID] {
			if g.sameAs(h.Season) {
				repeats = append(repeats, fmt.Sprintf("%s holds the same as %s: counted once", g.File, h.File))
				boats[i].Seasons[j].fillFrom(g.Season)
				continue next
			}
			if g.overlaps(h.Season) {
				return nil, nil, fmt.Errorf("%s and %s are two different summaries of boat %s for the same months: "+
					"give the later one only; if they are of two boats, one of them must choose another id", h.File,
					g.File, g.ID)
			}
		}
		held[g.ID] = append(held[g.ID], g)
		boats[i].Seasons = append(boats[i].Seasons, g.Season)
	}
	slices.SortStableFunc(boats, func(a, b Boat) int {
		if a.ID < b.ID {
			return -1
		}
		return 1
	})
	return boats, repeats, nil
}

// sameAs compares all that adds up; names and single fish may be left out of one.
func (s Season) sameAs(o Season) bool {
	s.Heaviest, s.People, o.Heaviest, o.People = nil, nil, nil, nil
	return reflect.DeepEqual(s, o)
}

func (s *Season) fillFrom(o Season) {
	if len(s.Heaviest) == 0 {
		s.Heaviest = o.Heaviest
	}
	if len(s.People) == 0 {
		s.People = o.People
	}
}

// overlaps tells whether two seasons may hold the same trip: they show a month in
// common, or one of them shows none.
func (s Season) overlaps(o Season) bool {
	a, b := s.Span(), o.Span()
	if len(a) == 0 || len(b) == 0 {
		return true
	}
	return slices.ContainsFunc(a, func(m string) bool { return slices.Contains(b, m) })
}
