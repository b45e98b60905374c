package proof

import (
	"slices"
	"testing"
)

// TestUnsure holds that a bite with nothing under its outcome, whose remark says that its writer cannot tell if it was
// hooked, is asked about; another remark says nothing of it.
func TestUnsure(t *testing.T) {
	for remark, want := range map[string]bool{"Lure gone. Can't say if it was ever on": true, "no se si mordio": true,
		"Lure gone": false} {
		l := inferred(t, "Bites", "Date|Time|Rod|Lure|Fish|Result|Remarks\n"+
			"2026-06-03|06:40|long|pink|Wahoo|Landed|\n2026-06-04|07:10|short|blue|||"+remark+"\n"+
			"2026-06-05|08:05|long|pink|Wahoo|Lost|calm\n2026-06-06|06:50|short|blue||Missed|")
		got := asked(t, l, Stats{Strikes: 4, Listed: 4, Held: 3, Boated: 1, Unsaid: []int64{3}, Fateless: []int64{3}})
		if slices.ContainsFunc(got, func(q Question) bool { return q.Kind == "blank" }) != want {
			t.Errorf("%q: asked %v, expected %t", remark, kinds(got), want)
		}
	}
}
