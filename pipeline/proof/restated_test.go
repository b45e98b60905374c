package proof

import (
	"testing"

	"wakeledger/pipeline/entry"
	"wakeledger/pipeline/meaning"
	"wakeledger/pipeline/plan"
)

// sumsOf is a table without a day: hours and bites a row.
func sumsOf(rows ...[2]float64) Subject {
	s := &Stats{}
	p := &plan.Block{Kind: plan.Flat}
	for _, name := range []string{"duration_s", "strikes_n"} {
		p.Bindings = append(p.Bindings, plan.Binding{Column: &plan.Column{Name: name}})
	}
	for i, r := range rows {
		v := map[string]entry.Value{"strikes_n": entry.OfInt(int64(r[1]))}
		if r[0] > 0 {
			v["duration_s"] = entry.OfReal(r[0] * 3600)
		}
		s.Add(Row{Kind: plan.Flat, Num: int64(i), Values: v})
	}
	return Subject{Understood: &meaning.Understood{Plan: p}, Stats: s}
}

// TestRestated holds a table without a day to be the season's sums only where all that it has is nearly
// what the tables with days come to, and none of it is more.
func TestRestated(t *testing.T) {
	days := Subject{Understood: &meaning.Understood{Plan: &plan.Block{Kind: plan.Flat}}, Stats: &Stats{}}
	for day := int64(1); day <= 4; day++ {
		days.Stats.Add(Row{Kind: plan.Flat, Num: day, Values: map[string]entry.Value{"date": entry.OfInt(day),
			"duration_s": entry.OfReal(5 * 3600), "strikes_n": entry.OfInt(6)}})
	}
	for _, c := range []struct {
		what string
		sums Subject
		want bool
	}{
		{"by speed, the same", sumsOf([2]float64{12, 15}, [2]float64{8, 9}), true},
		{"by speed, but for a stretch without one", sumsOf([2]float64{12, 14}, [2]float64{7, 9}), true},
		{"bites alone, the same", sumsOf([2]float64{0, 15}, [2]float64{0, 9}), true},
		{"bites alone, not the same", sumsOf([2]float64{0, 15}, [2]float64{0, 8}), false},
		{"more bites", sumsOf([2]float64{12, 17}, [2]float64{8, 9}), false},
		{"far fewer hours", sumsOf([2]float64{6, 15}, [2]float64{8, 9}), false},
	} {
		if Restated([]Subject{days, c.sums}) != c.want || c.sums.Proof != c.want {
			t.Errorf("%s: taken for the season's sums %v, expected %v", c.what, c.sums.Proof, c.want)
		}
	}
	dated := sumsOf([2]float64{12, 15}, [2]float64{8, 9})
	dated.Plan.Bindings = append(dated.Plan.Bindings, plan.Binding{Column: &plan.Column{Name: "date"}})
	if Restated([]Subject{days, dated}) {
		t.Error("a table with a column of days is taken for the season's sums")
	}
}
