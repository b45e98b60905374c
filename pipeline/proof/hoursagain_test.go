package proof

import (
	"slices"
	"testing"
)

// TestHoursAgainAsked holds that rows of one day with the same hours are asked about where neither reading is sure,
// and what an answer does.
func TestHoursAgainAsked(t *testing.T) {
	l := inferred(t, "Log", "Date|Hours|Lines|Speed kn|Species|Result|Length in\n3/6/26|2|4|8|Wahoo|landed|40\n"+
		"3/6/26|2|4|8|Wahoo|lost|\n4/6/26|3|4|8|Wahoo|landed|44\n4/6/26|1.5|4|8|Wahoo|lost|\n9/6/26|6|4|8|||\n"+
		"10/6/26|4|4|8|Dorado|lost|\n11/6/26|5.5|4|8|Dorado|lost|\n12/6/26|7|5|8|Wahoo|landed|51")
	qs := asked(t, l, Stats{Stretches: 8, Strikes: 7})
	i := slices.IndexFunc(qs, func(q Question) bool { return q.Kind == "hours again" })
	if i < 0 {
		t.Fatalf("not asked: %v", kinds(qs))
	}
	for _, choice := range []string{each, once} {
		if Settle(l, &qs[i], choice); l.Data()[0].Plan.EffortOnce != (choice == once) {
			t.Errorf("%s: counted once %t", choice, l.Data()[0].Plan.EffortOnce)
		}
	}
}

// TestTapedMiss holds that a word of a miss on the rows of fish that were taped is asked about.
func TestTapedMiss(t *testing.T) {
	l := inferred(t, "Log", "Date|Time|Species|Result|Length in\n3/6/26|07:10|Wahoo|grabbed|40\n"+
		"3/6/26|08:10|Wahoo|missed|\n4/6/26|09:10|Wahoo|grabbed|44\n5/6/26|10:10|Wahoo|lost|")
	for _, taped := range [][]int64{nil, {2, 4}} {
		qs := asked(t, l, Stats{Strikes: 4, Listed: 4, Missed: true, Taped: taped})
		if got := slices.ContainsFunc(qs, func(q Question) bool { return q.Kind == "word" }); got != (taped != nil) {
			t.Errorf("rows %v: asked %t: %v", taped, got, kinds(qs))
		}
	}
}
