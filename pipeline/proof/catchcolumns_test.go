package proof

import (
	"slices"
	"strings"
	"testing"

	"wakeledger/pipeline/record"
)

const spotted = "Date|In|Up|Lines|Knots|Bites|Deck|Remarks\n2026-07-04|07:00|08:00|4|7|2|2|calm\n" +
	"|09:00|10:00|4|7|1||\n2026-07-05|07:00|08:00|4|7|2|1|fog\n|09:00|10:00|4|8|2||\n" +
	"2026-07-06|07:00|08:00|4|7|2|1|calm\n|09:00|10:00|4|7|1||\n2026-07-07|07:00|08:00|4|7|2|1|calm\n" +
	"|09:00|10:00|4|7|2|2|\n" +
	"2026-07-08|07:00|08:00|4|7|2|1|calm\n|09:00|10:00|4|7|1||"

// TestCountsAreNoClient holds that a column without a meaning that is filled twice on one day is asked about, and that
// counts of a species, which are blank where none was caught, are not.
func TestCountsAreNoClient(t *testing.T) {
	for head, want := range map[string]bool{"Deck": true, "Wahoo": false} {
		stats := Stats{Stretches: 10, Hours: 10, ByCount: 17}
		for row := range int64(10) {
			stats.Worked = append(stats.Worked, Worked{row + 2, string(rune('a' + row/2))})
		}
		got := asked(t, inferred(t, "Runs", strings.Replace(spotted, "Deck", head, 1)), stats)
		if slices.Contains(kinds(got), "two trips") != want {
			t.Errorf("%s: asked %v", head, kinds(got))
		}
	}
}

// TestRemarkSetAside holds that a remark which tells of fish and could not be used is asked about, with what rests on
// it.
func TestRemarkSetAside(t *testing.T) {
	l := inferred(t, "Runs", strings.Replace(spotted, "Deck", "Wahoo", 1))
	stats := Stats{Stretches: 10, Hours: 10, ByCount: 17, Rows: 10, Aside: []record.Problem{{Column: "Remarks",
		Pos: record.Pos{File: "log", Row: 4, Col: 8}, Cell: "let one go", Reason: "tells of a fish"}}}
	for _, q := range asked(t, l, stats) {
		if q.Kind == "aside" && slices.Contains(q.Effect, "released") && !slices.Contains(q.Effect, "boat_hours") {
			return
		}
	}
	t.Error("a remark that was set aside is not asked about")
}
