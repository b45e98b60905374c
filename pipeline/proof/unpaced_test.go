package proof

import (
	"slices"
	"strings"
	"testing"
)

// TestUnpaced holds that a stretch without a speed, where the others have one, is asked about where its remarks speak
// of another way of fishing.
func TestUnpaced(t *testing.T) {
	const head = "Date|In|Up|Lines|Knots|Bites|Remarks"
	for _, c := range []struct {
		speed, remark string
		want          bool
	}{{"", "drifting with live bait, 2 kingfish", true}, {"", "the plotter was off", false},
		{"7", "drifting boats all around", false}, {"", "", false}} {
		text := head
		for _, day := range []string{"03", "04", "05", "06", "07"} {
			text += "\n2026-06-" + day + "|06:00|09:00|4|7|2|calm"
		}
		l := inferred(t, "Runs", text+"\n2026-06-08|06:00|09:00|4|"+c.speed+"|3|"+c.remark)
		s := Stats{Stretches: 6, Hours: 18, ByCount: 13, Strikes: 13}
		for row := range int64(6) {
			s.Worked = append(s.Worked, Worked{Row: row + 2})
		}
		got := slices.ContainsFunc(asked(t, l, s), func(q Question) bool {
			return q.Kind == "untrolled" && strings.Contains(q.Text, "no speed")
		})
		if got != c.want {
			t.Errorf("speed %q, %q: asked %t, expected %t", c.speed, c.remark, got, c.want)
		}
	}
}
