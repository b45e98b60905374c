package proof

import (
	"fmt"
	"slices"
	"testing"
)

// TestRemarked asks about remarks that tell of bites on days that the rows of strikes leave out,
// and not about remarks that tell again what those rows have.
func TestRemarked(t *testing.T) {
	legs := "Date|Start|End|Lines|Knots|Remarks"
	strikes := "Date|Time|Outcome|Species|Length cm"
	for i := range 9 {
		remark := "calm"
		if i > 5 {
			remark = "mahi boated, 77 cm; missed one"
		}
		legs += fmt.Sprintf("\n2026-06-%02d|06:00|09:00|4|8|%s", 3+2*i, remark)
	}
	for _, last := range []int{6, 9} {
		of := strikes
		for i := range last {
			of += fmt.Sprintf("\n2026-06-%02d|06:4%d|landed|Wahoo|1%d0", 3+2*i, i, i)
		}
		l := inferred(t, "Runs", legs, "Bites", of)
		got := kinds(asked(t, l, Stats{Stretches: 9, Hours: 27}, Stats{Listed: last, Strikes: last, Placed: true}))
		if want := last < 9; slices.Contains(got, "remarks") != want {
			t.Errorf("%d days of 9 with rows of strikes: asked are %v", last, got)
		}
	}
}
