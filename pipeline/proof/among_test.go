package proof

import (
	"testing"

	"wakeledger/pipeline/entry"
	"wakeledger/pipeline/meaning"
	"wakeledger/pipeline/plan"
)

// counting is a table of counts: by day, how many were hooked and how many of them boated.
func counting(days map[int64]Fates) Subject {
	s := &Stats{}
	for day, f := range days {
		s.Add(Row{Kind: plan.Flat, Num: day, Values: map[string]entry.Value{"date": entry.OfInt(day), "strikes_n": entry.OfInt(int64(f.Held + 1)),
			"missed_n": entry.OfInt(1), "landed_n": entry.OfInt(int64(f.Boated)), "lost_n": entry.OfInt(int64(f.Held - f.Boated))}})
	}
	return Subject{Understood: &meaning.Understood{Plan: &plan.Block{Kind: plan.Flat}}, Stats: s}
}

// listing of strikes: a day and an outcome each.
func listedFish(fish ...any) Subject {
	s := &Stats{}
	for i := 0; i < len(fish); i += 2 {
		s.Add(Row{Kind: plan.Strikes, Num: int64(i), Values: map[string]entry.Value{"date": entry.OfInt(int64(fish[i].(int))), "outcome": entry.OfText(fish[i+1].(string))}})
	}
	return Subject{Understood: &meaning.Understood{Plan: &plan.Block{Kind: plan.Strikes}}, Stats: s}
}

// TestAmong takes a list of fish for some of those counted only where the counts of their days
// have room for them, and no row of it is a bite that was missed.
func TestAmong(t *testing.T) {
	counts := map[int64]Fates{1: {3, 2}, 2: {2, 2}, 3: {1, 0}}
	for _, c := range []struct {
		what string
		list Subject
		want bool
	}{
		{"within the counts", listedFish(1, "landed", 1, "released", 2, "landed", 3, "lost"), true},
		{"more than were counted", listedFish(1, "landed", 1, "landed", 1, "landed", 2, "landed"), false},
		{"boated, where the day's one was lost", listedFish(3, "landed", 1, "landed", 1, "landed", 2, "landed"), false},
		{"of other days", listedFish(7, "landed", 8, "landed", 9, "landed", 7, "lost"), false},
		{"every bite", listedFish(1, "landed", 1, "released", 2, "landed", 3, "missed"), false},
		{"too few to tell", listedFish(1, "landed", 2, "landed"), false},
	} {
		Among([]Subject{counting(counts), c.list})
		if c.list.Plan.Among != c.want {
			t.Errorf("%s: among the counts %v, expected %v", c.what, c.list.Plan.Among, c.want)
		}
	}
}
