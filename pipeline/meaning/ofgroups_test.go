package meaning

import (
	"strings"
	"testing"
)

// TestCountsOfOneFishEach holds that counts under groups that name one fish each are parts of one count, that fish of
// other names stand beside them, and that the best fish and its weight are a fish's.
func TestCountsOfOneFishEach(t *testing.T) {
	const rows = "||Mahi||Skipjack|||\nDate|hrs|boated|lost|boated|lost|other fish|biggest\n" +
		"2025-05-03|3|2|1||1|1 wahoo let go|mahi 22 lb on the scale\n2025-05-10|4|1||3|||skipjack maybe 9 lb\n" +
		"2025-05-17|2.5||1|2|||skipjack 11 lb on the scale\n2025-05-24|3|1||||1 wahoo lost|mahi 14 lb on the scale"
	p := planOf(t, "", rows)
	got := summary(p)
	if strings.Count(got, "landed_n") != 2 || strings.Count(got, "lost_n") != 2 || len(p.Others) != 1 {
		t.Errorf("%s, others beside %v", got, p.Others)
	}
	among := planOf(t, "", strings.ReplaceAll(rows, "1 wahoo", "1 skipjack"))
	if len(among.Others) != 0 {
		t.Errorf("a fish that has a column is beside it: %s", summary(among))
	}
}

// TestSumsBetweenLimits holds that a sheet of sums of another between two limits is no data, and that one whose
// figures were typed is.
func TestSumsBetweenLimits(t *testing.T) {
	sums := "from|below|Bites|Boated\n5|7|6|5\n7|9|19|11\n9|12|13|10"
	l := inferred(t, "log.xlsx", nil, "Log", "Date|Start|End|Lines|Speed|Bites|Boated\n"+
		"2025-05-03|06:00|08:00|4|8|2|1\n"+
		"2025-05-10|06:10|09:00|5|7|1|1\n2025-05-17|06:00|09:30|5|6.5|3|2", "By speed", sums)
	u := blockOf(l, "By speed")
	if u == nil {
		t.Fatal("no block of sums")
	}
	if isProof(u.Block) {
		t.Error("typed figures are taken for sums")
	}
	for r := range u.Block.Rows {
		for c := 2; c < 4; c++ {
			u.Block.Rows[r].Cells[c].Formula = `=SUMIFS(Log!F2:F4,Log!E2:E4,">="&A2,Log!E2:E4,"<"&B2)`
		}
	}
	if !isProof(u.Block) {
		t.Error("sums between two limits are taken for data")
	}
}
