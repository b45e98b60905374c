package reports

import (
	"fmt"
	"slices"
	"strings"

	"wakeledger/pipeline/sentence"
	"wakeledger/queries"
	"wakeledger/reports/page"
)

// What is counted but may be wrong says so where it is shown: a fish in its row, what else is
// doubtful in the row of its trip, strikes and legs beside their figures.

// place is the row of a log that tells of a fish.
type place struct {
	file, sheet string
	row         int64
}

func placeOf(f queries.Fish) place { return place{f.File, f.Sheet, f.Row} }

// doubtsOf are the rows whose fish's measures are doubtful, with the first reason of each.
func doubtsOf(all []queries.Doubt) map[place]string {
	out := map[place]string{}
	for _, d := range all {
		at := place{d.File, d.Sheet, d.Row}
		if _, ok := out[at]; !ok && doubtText[d.Check] != "" {
			out[at] = d.Check
		}
	}
	return out
}

// doubtText says in a few words why a fish's measures are doubtful, by the check.
var doubtText = map[string]string{"long fish": "longer than its kind grows",
	"heavy fish":       "heavier than its kind grows",
	"girth and length": "girth does not fit length", "scale and tape": "scale and tape far apart"}

// doubtWords says in a few words what else is doubtful, by the check.
var doubtWords = map[string]string{
	strikeOtherSpeed: "a strike at another speed than its leg",
	strikeNoLeg:      "no leg at the time of a strike", fishNoStrike: "no strike row for a fish",
	oddSpeed: "unusual speed", legsOverlap: "legs overlap",
	longLeg: "a leg over 12 hours", "odd date": "year far from the other trips", "future date": "a day to come",
}

// The checks that doubt a strike or a leg.
const (
	strikeNoLeg      = "strike without a leg"
	strikeOtherSpeed = "strike at another speed"
	fishNoStrike     = "fish without a strike"
	oddSpeed         = "odd speed"
	legsOverlap      = "legs overlap"
	longLeg          = "long leg"
)

// wordsOfDoubt is a doubt in a few words, none of them from a log.
func wordsOfDoubt(d queries.Doubt) string {
	if words := doubtText[d.Check] + doubtWords[d.Check]; words != "" {
		return words
	}
	return "a cell read with a doubt"
}

// doubtsAt are the doubts on a fish's row; "" where there is none.
func (s *season) doubtsAt(at place) string {
	return doubtList(s.Doubts, func(d queries.Doubt) bool { return place{d.File, d.Sheet, d.Row} == at })
}

// tripDoubts are the doubts on the rows of a trip; "" where there is none.
func (s *season) tripDoubts(t queries.Trip) string {
	return doubtList(s.Doubts, func(d queries.Doubt) bool {
		return d.Trip != nil && *d.Trip == t.Trip && text(d.Boat) == t.Boat
	})
}

// doubtList names each kind of the doubts that are of something once.
func doubtList(all []queries.Doubt, of func(queries.Doubt) bool) string {
	var out []string
	for _, d := range all {
		if words := wordsOfDoubt(d); of(d) && !slices.Contains(out, words) {
			out = append(out, words)
		}
	}
	return strings.Join(out, "; ")
}

// countDoubts is how many doubts come of the checks.
func (s *season) countDoubts(checks ...string) (n int64) {
	for _, d := range s.Doubts {
		if slices.Contains(checks, d.Check) {
			n++
		}
	}
	return n
}

// doubtfulStrikes says how many of the strikes are doubtful; "" where none is.
func (s *season) doubtfulStrikes() string {
	if n := s.countDoubts(strikeNoLeg, fishNoStrike); n > 0 {
		return page.Count(n) + " doubtful"
	}
	return ""
}

// doubtfulLegs says which legs behind the speeds and hours are doubtful; none where no leg is.
func (s *season) doubtfulLegs() []string {
	var parts []string
	for _, c := range []struct{ check, one, more string }{
		{oddSpeed, "leg at an unusual speed", "legs at an unusual speed"},
		{longLeg, "leg over 12 hours", "legs over 12 hours"},
		{legsOverlap, "leg that overlaps another", "legs that overlap others"},
		{strikeNoLeg, "strike when no leg was fished", "strikes when no leg was fished"},
	} {
		if n := s.countDoubts(c.check); n > 0 {
			parts = append(parts, page.Plural(n, c.one, c.more))
		}
	}
	if len(parts) == 0 {
		return nil
	}
	return []string{fmt.Sprintf("Doubtful, but counted: %s. 'Trip by trip' marks the trips.", sentence.List(parts))}
}
