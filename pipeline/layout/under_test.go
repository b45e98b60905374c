package layout

import (
	"strings"
	"testing"
)

// TestLinesUnderDays holds that lines that stand alone in the column of days are of the day above, in a column of their
// own, and that titles of months are not.
func TestLinesUnderDays(t *testing.T) {
	day := "|#/6/26|06:00|08:00|4\n"
	fish := day + "|wahoo 8 kg|||\n|mahi, let go|||\n"
	text := ""
	for _, d := range []string{"3", "4", "8", "9"} {
		text += strings.ReplaceAll(fish, "#", d)
	}
	const head = "Trip|Date|Start|End|Lines\n"
	text += strings.ReplaceAll(day, "#", "12") + strings.ReplaceAll(day, "#", "13")
	b := take(t, head+text).Blocks[0]
	if len(b.Rows) != 6 || len(b.Labels) != 6 || b.Rows[0].at(5).Text != "wahoo 8 kg; mahi, let go" ||
		b.Rows[4].at(5).Look != Blank {
		t.Errorf("fish under days: %d rows, %d labels: %+v", len(b.Rows), len(b.Labels), b.Rows)
	}
	months := ""
	for _, d := range []string{"3", "4", "5", "6", "7", "8"} {
		months += "|the season's " + d + "th|||\n" + strings.ReplaceAll(day, "#", d)
	}
	if b := take(t, head+months).Blocks[0]; len(b.Labels) != 5 {
		t.Errorf("titles: %+v", b.Labels)
	}
}
