package proof

import (
	"testing"

	"wakeledger/pipeline/meaning"
	"wakeledger/pipeline/plan"
)

// TestHookedOfTotals holds that bites of which nothing says what became of them are not counted as hooked.
func TestHookedOfTotals(t *testing.T) {
	s := Subject{Understood: &meaning.Understood{Plan: &plan.Block{Kind: plan.Strikes}},
		Stats: &Stats{Listed: 3, Held: 2, Boated: 1, Fateless: []int64{4}}}
	if got := TotalsOf([]Subject{s}); got.Hooked != 1 || got.Bites != 3 {
		t.Errorf("%d of %d bites hooked, expected 1 of 3", got.Hooked, got.Bites)
	}
}
