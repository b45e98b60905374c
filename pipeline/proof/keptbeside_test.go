package proof

import (
	"slices"
	"testing"
)

// TestKeptBeside holds that a remark of more fish kept than its row counts is asked about, and one of those that it
// counts, or of another way of fishing, is not.
func TestKeptBeside(t *testing.T) {
	for remark, want := range map[string]bool{"1 bonito too, kept for bait": true, "2 tuna kept": false, "calm": false,
		"kept 3 tuna, one of them small": true, "at anchor after, kept 4 snapper": false, "lost a wahoo": false} {
		l := inferred(t, "Runs", "Date|In|Up|Lines|Knots|Bites|Tuna kept|Tuna let go|Remarks\n"+
			"2026-06-03|06:00|09:00|4|7|4|1|1|"+remark+"\n2026-06-04|06:00|09:30|4|7|1|0|0|fog\n"+
			"2026-06-05|06:00|09:30|5|7|2|1|0|calm\n2026-06-06|06:30|09:30|5|7|2|2|0|")
		if remark == "1 bonito too, kept for bait" {
			l = inferred(t, "Runs", "Date|In|Up|Lines|Knots|Bites|Tuna kept|Tuna let go|Remarks\n"+
				"2026-06-03|06:00|09:00|4|7|2|||"+remark+"\n2026-06-04|06:00|09:30|4|7|1|0|0|fog\n"+
				"2026-06-05|06:00|09:30|5|7|2|1|0|calm\n2026-06-06|06:30|09:30|5|7|2|2|0|")
		}
		got := asked(t, l, Stats{Stretches: 4, Hours: 13, ByCount: 9, Worked: []Worked{{2, "1"}, {3, "2"}, {4, "3"},
			{5, "4"}}})
		if slices.ContainsFunc(got, func(q Question) bool { return q.Kind == "kept beside" }) != want {
			t.Errorf("%q: asked %v, expected %t", remark, kinds(got), want)
		}
	}
}

// TestMoreTold holds that a remark of more bites than its row counts is asked about, and one of those that it counts,
// or of other fishing, is not.
func TestMoreTold(t *testing.T) {
	for remark, want := range map[string]bool{"had one hit, never saw it": true, "2 bites on the long rigger": true,
		"calm": false, "at anchor after, lost 4 snapper": false} {
		l := inferred(t, "Runs", "Date|In|Up|Lines|Knots|Bites|Boated|Remarks\n"+
			"2026-06-03|06:00|09:00|4|7|0|0|"+remark+"\n2026-06-04|06:00|09:30|4|7|3|1|missed one, lost one\n"+
			"2026-06-05|06:00|09:30|5|7|2|1|fog\n2026-06-06|06:30|09:30|5|7|2|2|windy")
		got := kinds(asked(t, l, Stats{Stretches: 4, Hours: 13, ByCount: 7, Strikes: 7,
			Worked: []Worked{{2, "1"}, {3, "2"}, {4, "3"}, {5, "4"}}}))
		if slices.Contains(got, "told beside") != want {
			t.Errorf("%q: asked %v, expected %t", remark, got, want)
		}
	}
}
