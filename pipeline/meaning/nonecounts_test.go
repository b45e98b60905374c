package meaning

import "testing"

// TestNoneInWords holds that columns of counts under species are such where "none" stands for nought, even in each cell
// of one.
func TestNoneInWords(t *testing.T) {
	l := inferred(t, "log.xlsx", nil, "Trips", "Date|Hours|Lines|Missed|Wahoo|Mahi|Yellowfin tuna|Released\n"+
		"3/7/26|3|4|none|none|2|none|none\n4/7/26|5|4|1|none|none|none|none\n8/7/26|4|5|none|1|none|none|1")
	if n := len(blockOf(l, "Trips").Plan.Catch); n != 3 {
		t.Errorf("%d columns of species", n)
	}
}

// TestOfThoseReleased holds that a column of fish let go is one of those landed under a half of the day too, and that
// counts with "none" among them are no running numbers.
func TestOfThoseReleased(t *testing.T) {
	l := inferred(t, "log.xlsx", nil, "Trips", "Date|Rods|AM Minutes trolled|AM Missed|AM Boated|AM incl. released|"+
		"PM Minutes trolled|PM Missed|PM Boated|PM incl. released\n3/7/26|6|150|none|2|1|120|1|1|none\n"+
		"10/7/26|9|75|1|none|none|210|2|none|none\n13/7/26|9|150|none|2|none|150|none|2|none")
	p := blockOf(l, "Trips").Plan
	for _, name := range []string{"missed_n", "landed_n", "released_n"} {
		if p.OfSet(name, 0) == nil || p.OfSet(name, 1) == nil {
			t.Errorf("%s: %s", name, summary(p))
		}
	}
	if !p.Inclusive {
		t.Error("landed counts those let go too")
	}
}
