package meaning

import (
	"strings"
	"testing"

	"wakeledger/pipeline/plan"
)

// TestChanges holds that rows which say what was changed, with no lines out at the end of each day, hold
// until the next one of their day, and that other rows with a clock do not.
func TestChanges(t *testing.T) {
	const head = "Day|Clock|Rods|Knots|Remarks\n"
	day := func(date, last string) string {
		return date + "|06:10|5|7|\n" + date + "|07:00||8|\n" + date + "|09:30|4||\n" +
			date + "|11:15|" + last + "||home\n"
	}
	all := func(last string) string {
		return head + day("2026-05-02", last) + day("2026-05-09", last) +
			day("2026-05-16", last) + day("2026-05-23", last)
	}
	u := inferred(t, "log.csv", nil, "Log", strings.TrimSpace(all("0"))).Blocks[0]
	start, end := u.Plan.Find("start_s"), u.Plan.Find("end_s")
	if u.Plan.Kind != plan.Legs || start == nil || end == nil || !u.Plan.Find("speed_kn").Carried ||
		!u.Plan.Find("lines_out").Carried {
		t.Fatalf("%s: %s", u.Plan.Kind, summary(u.Plan))
	}
	for i, want := range []string{"07:00", "09:30", "11:15", "", "07:00"} {
		if got := cellText(u.Block.Rows[i], end.Index); got != want {
			t.Errorf("row %d holds until %q, expected %q", i, got, want)
		}
	}
	for what, text := range map[string]string{
		"lines never up": all("3"),
		"one row a day": head +
			"2026-05-02|06:10|0|7|\n2026-05-09|06:10|0|7|\n2026-05-16|06:10|0|8|\n2026-05-23|06:10|0|8|\n" +
			"2026-05-30|06:10|5|8|\n2026-06-06|06:10|5|8|",
		"times out of turn": strings.Replace(all("0"), "09:30", "06:30", 1),
		"a start and end":   strings.ReplaceAll(strings.Replace(all("0"), "Remarks", "End", 1), "||home", "||12:00"),
	} {
		if u := inferred(t, "log.csv", nil, "Log", strings.TrimSpace(text)).Blocks[0]; strings.Contains(
			strings.Join(u.Plan.Notes, ";"), "holds until") {
			t.Errorf("%s: each row is taken to hold until the next", what)
		}
	}
}
