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
