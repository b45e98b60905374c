package meaning

import (
	"strings"
	"testing"
)

// TestAllowed holds that a table which lists what the cells of another are chosen from tells no bites, and that one
// whose words stand in no other table is not left out.
func TestAllowed(t *testing.T) {
	bites := strings.Join([]string{"Day|Time|Result|Fish|Rod", "2026-03-01|07:10|Boated|Wahoo|Flat",
		"2026-03-01|08:20|Dropped|Tuna|Rigger", "2026-03-08|07:40|Boated|Mahi|Flat", "2026-03-08|09:15|Boated|Tuna|Flat",
		"2026-03-15|06:50|Dropped|Wahoo|Rigger"}, "\n")
	for rods, want := range map[string]bool{"Flat,Rigger": true, "Stern,Bow": false} {
		rod := strings.Split(rods, ",")
		list := "Result|Fish|Rod\nBoated|Wahoo|" + rod[0] + "\nDropped|Tuna|" + rod[1] + "\n|Mahi|\n|Marlin|"
		if !want {
			list = strings.ReplaceAll(list, "Dropped", "Jumped off")
		}
		l := inferred(t, "log", nil, "Bites", bites, "Choices", list)
		for _, u := range l.Blocks {
			if got := l.allowed(u); got != (want && u.Plan.Sheet == 1) {
				t.Errorf("%s, sheet %d: %t", rods, u.Plan.Sheet, got)
			}
		}
	}
}
