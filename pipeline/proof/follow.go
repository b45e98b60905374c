package proof

import (
	"fmt"
	"maps"

	"wakeledger/pipeline/layout"
	"wakeledger/pipeline/plan"
)

// OfUntrolled finds fish that name the strike that they are of, where that strike was passed over: it was not trolled.
// It has their plans set these rows apart, and reports whether it found any.
func OfUntrolled(subjects []Subject) bool {
	found := false
	for _, s := range subjects {
		key := s.Plan.Find("strike")
		if s.Plan.Kind != plan.Fish || key == nil || s.Plan.Binds("method") || s.Understood.Block == nil {
			continue
		}
		trip := s.Plan.Find("trip")
		byTrip := trip != nil && trip.By == nil // its own, and not that of the strike
		gone := passedStrikes(subjects, byTrip)
		apart := maps.Clone(s.Plan.Apart)
		if apart == nil {
			apart = map[int64]bool{}
		}
		before := len(apart)
		for _, r := range s.Block.Rows {
			if name := strikeOf(s.Plan, r, byTrip); gone[name] {
				apart[int64(r.Num)] = true
			}
		}
		if n := len(apart) - before; n > 0 {
			found, s.Plan.Apart = true, apart
			said := "One fish is of a strike that was not trolled: left out"
			if n > 1 {
				said = fmt.Sprintf("%d fish are of strikes that were not trolled: left out", n)
			}
			s.Plan.Notes = append(s.Plan.Notes, said)
		}
	}
	return found
}

// passedStrikes are the names of strikes that were passed over, and that no other row of strikes has.
func passedStrikes(subjects []Subject, byTrip bool) map[string]bool {
	gone, kept := map[string]bool{}, map[string]bool{}
	for _, s := range subjects {
		if s.Plan.Kind != plan.Strikes || !s.Plan.Binds("strike") || s.Understood.Block == nil {
			continue
		}
		passed := map[int64]bool{}
		for _, num := range s.Stats.Untrolled {
			passed[num] = true
		}
		for _, r := range s.Block.Rows {
			if name := strikeOf(s.Plan, r, byTrip); passed[int64(r.Num)] {
				gone[name] = true
			} else {
				kept[name] = true
			}
		}
	}
	maps.DeleteFunc(gone, func(name string, _ bool) bool { return kept[name] })
	delete(gone, "")
	return gone
}

// strikeOf is the name of a row's strike, with its trip where both tables name that; "" where there is none.
func strikeOf(p *plan.Block, r layout.Row, byTrip bool) string {
	name := cellOf(r, p.Find("strike"))
	if trip := p.Find("trip"); byTrip && trip != nil && name != "" {
		name = cellOf(r, trip) + " " + name
	}
	return name
}
