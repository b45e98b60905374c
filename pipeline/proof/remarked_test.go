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

// TestBitesRemarked holds that a remark that says how many bites there were is asked about, where no row tells a bite
// of its day.
func TestBitesRemarked(t *testing.T) {
	for remark, want := range map[string]bool{"he told me: 4 bites, 3 on": true, "no bites": false, "windy": false} {
		l := inferred(t, "Runs", "Date|Start|End|Lines|Knots|Remarks\n2026-06-03|06:00|09:00|4|8|2 bites, 1 landed\n"+
			"2026-06-04|06:00|09:00|4|8|"+remark+"\n2026-06-05|06:00|09:00|4|8|calm",
			"Bites", "Date|Time|Outcome|Species|Length cm\n2026-06-03|06:40|landed|Wahoo|110\n"+
				"2026-06-03|07:10|missed||\n2026-06-05|08:05|landed|Wahoo|98")
		got := kinds(asked(t, l, Stats{Stretches: 3, Hours: 9, Worked: []Worked{{2, "1"}, {3, "2"}, {4, "3"}}},
			Stats{Listed: 3, Strikes: 3, Placed: true, Told: map[string]*Told{"1": {}, "3": {}}}))
		if slices.Contains(got, "remarks") != want {
			t.Errorf("%q: asked %v, expected %t", remark, got, want)
		}
	}
}

// TestLetGoRemarks holds that a remark of fish let go beside a count of those in the boat is asked about, unless it
// says that these are counted, or a list has as many let go on that day.
func TestLetGoRemarks(t *testing.T) {
	for _, c := range []struct {
		remark string
		freed  int
		want   bool
	}{{"let go 2 small albacore", 0, true}, {"let go 2 small albacore", 2, false},
		{"let go 2 small albacore", 1, true}, {"let go 2 small albacore, in the count", 0, false}, {"calm", 0, false},
		{"let go 2 on bait", 0, false}} {
		l := inferred(t, "Runs", "Date|In|Up|Lines|Knots|Bites|Boated|Remarks\n2026-06-03|06:00|09:00|4|7|4|3|"+
			c.remark+"\n2026-06-04|06:00|09:30|4|7|1|0|fog\n"+
			"2026-06-05|06:00|09:30|5|7|2|1|calm\n2026-06-06|06:30|09:30|5|7|2|2|")
		told := map[string]*Told{"day 1": {Freed: c.freed}}
		got := asked(t, l, Stats{Stretches: 4, Hours: 13, ByCount: 9, Told: told, Worked: []Worked{{2, "1"}, {3, "2"},
			{4, "3"}, {5, "4"}}})
		if slices.ContainsFunc(got, func(q Question) bool { return q.About == "let go" }) != c.want {
			t.Errorf("%q, %d let go in a list: asked are %v", c.remark, c.freed, kinds(got))
		}
	}
}
