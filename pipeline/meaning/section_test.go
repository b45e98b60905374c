package meaning

import (
	"slices"
	"testing"

	"wakeledger/pipeline/plan"
)

// TestSection holds that a title which says that its fish were let go says so of each, and none that says it of some.
func TestSection(t *testing.T) {
	const fish = "Date|Fish|cm\n2026-06-03|wahoo|120\n2026-06-04|mahi|88\n2026-06-05|wahoo|130"
	for title, want := range map[string]bool{"Tag and release": true, "kept unless the remark says let go": false,
		"none let go": false} {
		p := inferred(t, "log", nil, "Fish", title+"\n"+fish).Data()[0].Plan
		got := slices.ContainsFunc(p.Given, func(g plan.Given) bool { return g.Column.Name == "kept" })
		if got != want {
			t.Errorf("%q: let go all: %t", title, got)
		}
	}
}
