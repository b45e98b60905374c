package meaning

import (
	"slices"

	"wakeledger/pipeline/plan"
	"wakeledger/pipeline/words"
)

// fated tells a sheet of counts whose column of fish says behind a name what became of that fish, where no other column
// does: "marlin tagged", "tuna lost at the boat".
func (x *builder) fated() {
	fish := x.plan.Find("species")
	if fish == nil || x.plan.Kind != plan.Flat || x.plan.Binds("outcome", "kept") {
		return
	}
	x.plan.Fated = slices.ContainsFunc(x.rows, func(row []string) bool {
		fate, _, at, ok := words.FateOf(cellOf(row, fish.Index))
		return ok && fate >= words.Missed && at[0] > 0
	})
}
