package proof

import (
	"slices"
	"strings"
	"testing"
)

// TestCodesBehindFish holds that letters behind several fish that nothing explains are asked about, once, and that an
// answer is taken for all columns of fish.
func TestCodesBehindFish(t *testing.T) {
	const rows = "Date|AM in|AM up|AM bites|AM fish|PM in|PM up|PM bites|PM fish\n" +
		"3/6/26|6:00|9:30|2|mahi 30 in QX, wahoo 40 in|13:15|14:45|2|mahi 24 in, mahi 22 in\n" +
		"14/6/26|6:10|10:00|1|mahi 33 in|13:20|15:10|2|wahoo 51 in QX, mahi 30 in\n" +
		"15/6/26|6:00|9:00|2|wahoo 44 in, mahi 27 in|13:30|15:00|1|mahi 31 in\n"
	for text, want := range map[string]int{rows: 1, strings.Replace(rows, "QX", "", 1): 0,
		strings.ReplaceAll(rows, "QX", "released"): 0} {
		l := inferred(t, "log", text)
		qs := slices.DeleteFunc(asked(t, l), func(q Question) bool { return q.Kind != "behind" })
		if len(qs) != want {
			t.Fatalf("%d asked, expected %d", len(qs), want)
		}
		if want == 0 {
			continue
		}
		Settle(l, &qs[0], "=released")
		codes := 0
		for _, b := range l.Data()[0].Plan.Bindings {
			if b.Codes["qx"] == "released" {
				codes++
			}
		}
		if codes != 2 {
			t.Errorf("told for %d columns, expected 2", codes)
		}
	}
}
