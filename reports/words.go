package reports

import (
	"regexp"
	"slices"
	"time"

	"wakeledger/pipeline/factors"
	"wakeledger/pipeline/sentence"
)

// lastNotLogged gives rows in the order they came, the level not logged last.
func lastNotLogged[T any](rows []T, level func(T) string) []T {
	out := slices.Clone(rows)
	slices.SortStableFunc(out, func(a, b T) int {
		return rank(level(a)) - rank(level(b))
	})
	return out
}

func rank(level string) int {
	if level == factors.NotLogged {
		return 1
	}
	return 0
}

var longHours = regexp.MustCompile(`\b(\d+)(\d{3}) line-hours`)

// grouped writes the line-hours of a finding's sentence as a page writes numbers.
func grouped(sentence string) string {
	return longHours.ReplaceAllString(sentence, "$1\u202f$2 line-hours")
}

// day prints an ISO date in words; what is not one comes back as it is.
func day(iso, layout string) string {
	t, err := time.Parse(time.DateOnly, iso)
	if err != nil {
		return iso
	}
	return t.Format(layout)
}

func text(s *string) string {
	if s == nil {
		return ""
	}
	return *s
}

// estimateOf is one level's figure with its interval, for comparing in words.
type estimateOf struct {
	level     string
	v, lo, hi float64
}

// verdict says in words whether the leading level stands apart from the others,
// and no more than their intervals do. Intervals that touch count as overlapping.
func verdict(lead estimateOf, others []estimateOf) string {
	var overlap, below []string
	for _, o := range others {
		if o.hi >= lead.lo {
			overlap = append(overlap, o.level)
		} else {
			below = append(below, o.level)
		}
	}
	switch {
	case len(others) == 0:
		return "No other speed band has enough behind it to compare with."
	case len(overlap) == 0:
		return "Its interval lies above that of every other speed band with enough behind it. " +
			"It is one season's result, picked after looking: worth trying again, not settled."
	case len(below) == 0:
		return "Its interval overlaps that of " + sentence.List(overlap) +
			": the season does not settle which is better."
	}
	return "Its interval lies above that of " + sentence.List(below) +
		" but overlaps that of " + sentence.List(overlap) +
		": between those the season does not settle which is better."
}

// leader splits the highest figure from the rest; false where there is none.
func leader(all []estimateOf) (estimateOf, []estimateOf, bool) {
	if len(all) == 0 {
		return estimateOf{}, nil, false
	}
	best := 0
	for i, e := range all {
		if e.v > all[best].v {
			best = i
		}
	}
	others := slices.Delete(slices.Clone(all), best, best+1)
	return all[best], others, true
}
