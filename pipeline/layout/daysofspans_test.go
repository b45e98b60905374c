package layout

import (
	"strings"
	"testing"
)

// TestDaysOfSpans holds that a diary of a paragraph a day whose stretches are told from one clock to another is read by
// its days, also where a day is a weekday and a number, or several days are told of at once.
func TestDaysOfSpans(t *testing.T) {
	s := take(t,
		"Diary of the boat\n\nFri 5 July. To the island. Lines 7:10 - 11:30, 6 kn. 1 mahi, eaten by all hands\n"+
			"Sat 6 July. 9:00 to 12:30 at 5 kn, nothing, the wind died\nSun 7. At anchor, rain.\n"+
			"Mon 8 July. 10:05 lines in, up 15:00. A wahoo at 11:20, calm sea\n9-11 July. In port, waiting for "+
			"weather.\n"+
			"Fri 12 July. 8:00-12:00, 6 kn. 2 mahi\nSat 13. 8:30-11:00, 7 kn. Nothing, weed on every lure\n")
	if len(s.Blocks) != 1 || s.Blocks[0].Shape != Prose {
		t.Fatalf("%d blocks", len(s.Blocks))
	}
	var days []string
	for _, r := range s.Blocks[0].Rows {
		days = append(days, r.Cells[0].Text)
	}
	want := "5 July|6 July|7 July|8 July|9 July|12 July|13 July"
	if got := strings.Join(days, "|"); got != want {
		t.Errorf("%s, want %s", got, want)
	}
	events := take(t, "Log\n\nFri 5 July. 7:10 lines in. 8:20 strike. 11:30 lines up\n")
	if len(events.Blocks) > 0 && events.Blocks[0].Shape == Prose {
		t.Error("entries of a day are read as prose")
	}
}

// TestDayOfComputers holds that a line of a day as computers write it is no entry at 20:26.
func TestDayOfComputers(t *testing.T) {
	s := take(t, "Log\n2026-06-03\n06:10 lines in\n07:25 strike\n08:00 strike\n09:10 lines up\n2026-06-04\n"+
		"06:00 lines in\n08:00 strike\n11:00 lines up")
	if len(s.Blocks) != 1 || len(s.Blocks[0].Rows) != 7 {
		t.Fatalf("%d blocks", len(s.Blocks))
	}
	for _, i := range []int{0, 6} {
		if got, want := s.Blocks[0].Rows[i].Cells[0].Text, []string{"2026-06-03", "2026-06-04"}[i/6]; got != want {
			t.Errorf("row %d: %s, want %s", i, got, want)
		}
	}
}
