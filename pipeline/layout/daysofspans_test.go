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

// TestDaysAlone holds that a paragraph under a day that is a line of its own is that day's, also where it begins with
// two clock times that could be a day.
func TestDaysAlone(t *testing.T) {
	s := take(t, "Bonito book, summer 22/23\n\n30 Dec\n"+
		"5.40 to 9.10, 3 lines, 6 kn. Two bonito, one lost at the side\n\n"+
		"3 Jan 23\n0600 - 1015. 4 lines, 6.5 kn. Three bonito, the best kept\n\n"+
		"8 Jan\nStayed in, too windy for the boat\n\n"+
		"14/15 Jan\n6.15am-10.20am, 4 lines, 7 kn, nothing but weed on them\n\n"+
		"4 Feb\n6.10-12.00, 4 lines, 7 kn. One bonito")
	if len(s.Blocks) != 1 || s.Blocks[0].Shape != Prose {
		t.Fatalf("%d blocks", len(s.Blocks))
	}
	var days []string
	for _, r := range s.Blocks[0].Rows {
		days = append(days, r.Cells[0].Text)
	}
	if got, want := strings.Join(days, "|"), "30 Dec|3 Jan 23|8 Jan|14 Jan|4 Feb"; got != want {
		t.Errorf("%s, want %s", got, want)
	}
}

// TestCommentsOfCells holds that comments at the top of a text file are one text each, whatever parts its cells.
func TestCommentsOfCells(t *testing.T) {
	text := "# fish: cm| k kept| r let go\n# boat| one line a row\nday|lines|bites\n1|4|2\n2|4|0\n3|5|1"
	s := take(t, text)
	if s.Grid.Rows[0].at(0).Text != "# fish: cm, k kept, r let go" || s.Grid.Rows[2].at(1).Text != "lines" {
		t.Errorf("%v", s.Grid.Rows[:3])
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

// TestFactsOfDays holds that lines under a day each of which tells a fact are parted, and that the weekday of a day in
// figures is kept where it tells whether the day or the month comes first.
func TestFactsOfDays(t *testing.T) {
	s := take(t, "SAT 6/1/24\nin 6:20  out 12:10\n6 lines, 7.2 kts\nbites: 4\nlost: 1\n\n"+
		"SUN 6/2/24\nin 6:15  out 11:30\n6 lines, 7 kts\nbites: 0\n\n"+
		"SAT 6/8/24\nin 6:05  out 1:20 pm\n5 lines\nbites: 3")
	if len(s.Blocks) != 1 || s.Blocks[0].Shape != Prose {
		t.Fatalf("%d blocks", len(s.Blocks))
	}
	var got []string
	for _, r := range s.Blocks[0].Rows {
		got = append(got, r.Cells[0].Text+": "+r.Cells[1].Text)
	}
	want := "6/1/24: in 6:20  out 12:10; 6 lines, 7.2 kts; bites: 4; lost: 1|SUN 6/2/24: in 6:15  out 11:30; 6 " +
		"lines, 7 kts; bites: 0|SAT 6/8/24: in 6:05  out 1:20 pm; 5 lines; bites: 3"
	if all := strings.Join(got, "|"); all != want {
		t.Errorf("%s, want %s", all, want)
	}
}
