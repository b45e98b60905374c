package queries

import (
	"slices"
	"strings"
	"testing"
)

// A reason that goes on a page is in our own words: what it took from the log is gone.
func TestOwnWords(t *testing.T) {
	for _, c := range []struct {
		reason string
		theirs []string
		want   string
	}{
		{"not a count: expected a whole number from 0 to 200", []string{"Ottoline 3"},
			"not a count: expected a whole number from 0 to 200"},
		{`"Karl's" is no species`, []string{"Karl's"}, "… is no species"},
		{"Karl is no species", []string{"Karl"}, "… is no species"},
		{"starts before the leg of hush.csv Bank row 7", []string{"", "", "Bank", "hush.csv"},
			"starts before the leg of … … row 7"},
		{"a range: its middle, 7.25 kn, was taken", []string{"7-7.5"}, "a range: its middle, 7.25 kn, was taken"},
		{"33.4127 is no longitude", []string{"33.4127"}, "… is no longitude"},
	} {
		if got := ownWords(c.reason, c.theirs...); got != c.want {
			t.Errorf("%q of %q gives %q, want %q", c.reason, c.theirs, got, c.want)
		}
	}
}

func TestGrouping(t *testing.T) {
	g := grouping{logs: []LogRead{{File: "a.csv"}, {File: "b.csv"}}}
	for i := range 5 {
		g.add("no date", "b.csv", Example{Row: int64(i + 2)}, []string{"trips"})
	}
	g.add("no date", "a.csv", Example{Row: 9}, nil)
	all := g.sorted()
	if len(all) != 2 || all[0].Rows != 5 || all[0].Log != 2 || len(all[0].Examples) != MostExamples ||
		all[1].Log != 1 || Count(all) != 6 {
		t.Errorf("got %+v", all)
	}
	reason, effect := doubtWords(Doubt{Check: "Hortensia's speed" + readDoubt, Found: "7-8",
		Reason: "a range: its middle was taken"})
	if strings.Contains(reason, "Hortensia") || !slices.Equal(effect, []string{"what it says"}) {
		t.Errorf("a doubt of a cell is %q, %q", reason, effect)
	}
	for check := range doubtEffects {
		if reason, effect := doubtWords(Doubt{Check: check, Reason: "of hush.csv"}); reason != check ||
			len(effect) == 0 {
			t.Errorf("%s: %q, %q", check, reason, effect)
		}
	}
}
