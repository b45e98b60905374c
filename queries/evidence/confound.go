package evidence

import (
	"fmt"
	"sort"
)

// The rule by which two factors are said to be mixed up.
const (
	nested     = 0.999 // share of a level's hours that lie within a level of another factor
	most       = 0.6   // a level with more of the season's hours than this holds others by itself
	mostMixups = 8     // sentences; the largest stretches of hours first
)

// kin are factors of which one follows from the other by nature, so that it is
// no fault of the log: dawn falls in the morning hours, a lure has its weight, a
// place in the spread its setback. The other way round it may be one: a weight
// that only one lure had.
var kin = map[[2]string]bool{{"hour", "light"}: true, {"light", "hour"}: true, {"moon", "month"}: true,
	{"lure", "lure-weight"}: true, {"position", "setback"}: true}

// Confounded says which levels the log cannot tell from one of another factor
// because all their hours lie in it, as plain sentences, the most hours first.
// Levels with little effort are left out. text words a level of a factor.
func Confounded(s Season, text func(factor, level string) string) []string {
	type level struct {
		factor int
		name   string
	}
	hoursOf, shared, total := map[level]float64{}, map[[2]level]float64{}, 0.0
	var strikes int64
	for _, r := range s.Rows {
		total += r.LineHours
		strikes += r.Strikes
		for i, a := range r.Levels {
			hoursOf[level{i, a}] += r.LineHours
			for j, b := range r.Levels {
				if i != j {
					shared[[2]level{{i, a}, {j, b}}] += r.LineHours
				}
			}
		}
	}
	enough := 0.0
	if strikes > 0 {
		enough = 3 * total / float64(strikes)
	}
	type mixup struct {
		hours    float64
		sentence string
	}
	var found []mixup
	for pair, h := range shared {
		a, b := pair[0], pair[1]
		fa, fb := s.Factors[a.factor], s.Factors[b.factor]
		if a.name == NotLogged || b.name == NotLogged ||
			hoursOf[a] < enough || h < nested*hoursOf[a] || hoursOf[b] > most*total {
			continue
		}
		both := h >= nested*hoursOf[b]
		if both && a.factor > b.factor || !both && kin[[2]string{fa, fb}] {
			continue // told from the other side, or not worth telling
		}
		head := fmt.Sprintf("Every hour with %s was with %s", phrase(fa, text(fa, a.name)), phrase(fb, text(fb, b.name)))
		tail := fmt.Sprintf(": the log cannot tell %s from %s there.", Noun(fa), Noun(fb))
		if both {
			tail = ", and the other way round" + tail
		}
		found = append(found, mixup{h, head + tail})
	}
	sort.Slice(found, func(i, j int) bool {
		if found[i].hours != found[j].hours {
			return found[i].hours > found[j].hours
		}
		return found[i].sentence < found[j].sentence
	})
	var out []string
	for i, m := range found {
		if i == mostMixups {
			out = append(out, fmt.Sprintf("So with %d more pairs of levels.", len(found)-i))
			break
		}
		out = append(out, m.sentence)
	}
	return out
}
